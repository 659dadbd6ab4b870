import { type Job, records } from '../project/job.ts'
import type { Problem } from '../project/problem.ts'
import type { Room } from '../project/sketch-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import { batched } from './batches.ts'
import { bookOf } from './book.ts'
import { draftsOf } from './drafts.ts'
import { dryingOf } from './drying.ts'
import { groupEdges } from './group-edges.ts'
import { followUp, type GroupPlan, isDusty, planGroup } from './group-plan.ts'
import { type Group, groupsOfRoom } from './groups.ts'
import { type Edge, mergeEdges, reduceOrder, sortSteps, stepOrder } from './order.ts'
import { type PlannedStep, plannedStep, type StepMaker } from './planned-step.ts'
import { roomEdges } from './room-edges.ts'
import { roomSteps } from './room-steps.ts'
import type { GroupRule } from './rule.ts'
import { allRules, ruleById } from './rule-list.ts'
import { stockOf } from './stock.ts'
import type { Notice, Specification, Step, StepOrder } from './types.ts'

const groupRules = allRules.filter((rule): rule is GroupRule => rule.level === 'group')

/**
 * Steps, their order, what the owner must know and where rules clash, for a whole job. Pure: the same job and takeoff
 * always give the same answer. Rooms in the file's order, ways out last.
 */
export function specify(job: Job, takeoff: Takeoff): Specification {
  const book = bookOf(job, allRules)
  const maker: StepMaker = { job, book, stock: stockOf(job), drying: dryingOf(job, book), ruleById }
  const parts = roomsInOrder(job).map((room) => specifyRoom(maker, room, takeoff))
  return {
    steps: parts.flatMap((part) => part.steps),
    order: parts.flatMap((part) => part.order),
    notices: parts.flatMap((part) => part.notices),
    clashes: parts.flatMap((part) => part.clashes),
  }
}

/** The only way out of other rooms is painted after them. */
function roomsInOrder(job: Job): readonly Room[] {
  const rooms = records(job.rooms)
  return [...rooms.filter((room) => !room.wayOut), ...rooms.filter((room) => room.wayOut)]
}

interface RoomPart {
  readonly steps: readonly Step[]
  readonly order: readonly StepOrder[]
  readonly notices: readonly Notice[]
  readonly clashes: readonly Problem[]
}
const nothing: RoomPart = { steps: [], order: [], notices: [], clashes: [] }

function specifyRoom(maker: StepMaker, room: Room, takeoff: Takeoff): RoomPart {
  const { job, book } = maker
  const groups = groupsOfRoom(job, room, takeoff, book)
  if (groups.length === 0) return nothing
  const keptItems = records(job.keptItems).filter((item) => item.roomId === room.id)
  const plans = planGroups(maker, room, groups)
  const work = plans.map((plan) => groupSteps(maker, room, plan))
  const onGroups = work.flatMap((each) => each.steps)
  const whole = roomSteps(maker, room, groups, keptItems, plans.some(isDusty))
  const edges = mergeEdges([
    ...work.flatMap((each) => each.edges),
    ...roomEdges(maker, room, whole, onGroups, keptItems),
  ])
  const ordered = orderSteps([...whole, ...onGroups], edges)
  return {
    ...ordered,
    notices: plans.flatMap((plan) => plan.notices),
    clashes: [...plans.flatMap((plan) => plan.clashes), ...ordered.clashes],
  }
}

function planGroups(maker: StepMaker, room: Room, groups: readonly Group[]): readonly GroupPlan[] {
  const { job, book, stock } = maker
  const plans = groups.map((group) =>
    planGroup({ job, room, group, book, planned: [], roomIsDusty: false }, groupRules, stock),
  )
  const dusty = plans.some(isDusty)
  return plans.map((plan) => followUp(plan, groupRules, dusty))
}

interface GroupWork {
  readonly steps: readonly PlannedStep[]
  readonly edges: readonly Edge[]
}

function groupSteps(maker: StepMaker, room: Room, plan: GroupPlan): GroupWork {
  const planned = draftsOf(plan.view, plan.requests).map((draft) =>
    plannedStep(maker, plan.view.group, room.id, draft),
  )
  const { steps, edges } = batched(maker, planned)
  return { steps, edges: [...groupEdges(steps, allRules, maker.book), ...edges] }
}

function orderSteps(
  planned: readonly PlannedStep[],
  edges: readonly Edge[],
): Pick<RoomPart, 'steps' | 'order' | 'clashes'> {
  const byKey = new Map(planned.map((each) => [each.step.key, each.step]))
  const sorted = sortSteps([...byKey.keys()], edges)
  const kept = sorted.clashes.length === 0 ? reduceOrder(sorted.keys, edges) : edges
  const steps = sorted.keys.flatMap((key) => byKey.get(key) ?? [])
  const isEvening = (step: Step) => step.operation === 'restoreAlarm'
  return {
    steps: [...steps.filter((step) => !isEvening(step)), ...steps.filter(isEvening)],
    order: kept.map(stepOrder),
    clashes: sorted.clashes,
  }
}
