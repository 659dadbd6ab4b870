import type { Problem } from '../project/problem.ts'
import type { Room } from '../project/sketch-records.ts'
import { batched } from './batches.ts'
import { cautionsFor } from './cautions.ts'
import { cutsIntoPaint, disturbedSquareFeet } from './disturbed.ts'
import { followUp, type GroupPlan, isDusty, planGroup } from './group-plan.ts'
import { groupPrecedences, statementIndex } from './group-precedences.ts'
import { type Group, groupsOfRoom } from './groups.ts'
import { type HoldNeed, heldApart, heldFromDusting, type RoomHold, roomHolds } from './holds.ts'
import { servedJustInTime } from './just-in-time.ts'
import { leadPrecedences } from './lead-precedences.ts'
import { isLeadSafeWork, leadSteps, withExtraction } from './lead-steps.ts'
import { isServing } from './operation-facts.ts'
import { mergePrecedences, type Precedence, reduceOrder, sortSteps, stepOrder } from './order.ts'
import { type PlannedStep, plannedStep, type StepMaker } from './planned-step.ts'
import type { RoomFacts } from './room-facts.ts'
import { type GroupWork, roomNotices } from './room-notices.ts'
import { roomPrecedences } from './room-precedences.ts'
import { roomSteps } from './room-steps.ts'
import type { GroupRule, RoomView } from './rule.ts'
import type { RuleBook } from './rule-book.ts'
import { allRules } from './rule-list.ts'
import { draftsOf } from './step-drafts.ts'
import { touchUpLast, touchUpSteps } from './touch-up.ts'
import { stepTitle, surfaceNoun } from './trade-words.ts'
import type { Notice, Step, StepOrder } from './types.ts'

const statements = statementIndex(allRules)
const groupRules = allRules.filter((rule): rule is GroupRule => rule.level === 'group')

/** What a job's specification says of one room. */
export interface RoomPart {
  readonly steps: readonly Step[]
  readonly order: readonly StepOrder[]
  readonly holds: readonly RoomHold[]
  readonly notices: readonly Notice[]
  readonly clashes: readonly Problem[]
}
const nothing: RoomPart = { steps: [], order: [], holds: [], notices: [], clashes: [] }

/** Steps, order, notices and clashes of one room; nothing in it depends on another room. */
export function specifyRoom(maker: StepMaker, facts: RoomFacts): RoomPart {
  const { room, keptItems } = facts
  const planned = plannedRoom(maker, facts, groupsOfRoom(maker.job, facts, maker.book))
  const apart = heldApart(planned.groups, planned.needs)
  const { groups, plans, work, view, needs } =
    apart.size === 0 ? planned : plannedRoom(maker, facts, groupsOfRoom(maker.job, facts, maker.book, apart))
  if (groups.length === 0) return { ...nothing, notices: roomNotices(view, facts, []) }
  const onGroups = work.flatMap((each) => each.steps)
  const whole = [
    ...roomSteps(maker, room, groups, keptItems, plans.some(isDusty), heldFromDusting(needs)),
    ...leadSteps(maker, facts, view, work),
    ...touchUpSteps(maker, room, groups),
  ]
  const precedences = mergePrecedences([
    ...work.flatMap((each) => each.precedences),
    ...roomPrecedences(maker, room, whole, onGroups, keptItems),
    ...leadPrecedences(maker, whole, onGroups),
    ...touchUpLast(maker, whole, onGroups),
  ])
  const ordered = orderSteps([...whole, ...onGroups], precedences, maker.book)
  const cautious = withCautions(maker, view, work, whole, ordered.steps)
  return {
    ...ordered,
    steps: cautious,
    holds: roomHolds(room.id, needs, cautious),
    notices: [...plans.flatMap((plan) => plan.notices), ...roomNotices(view, facts, work)],
    clashes: [...plans.flatMap((plan) => plan.clashes), ...ordered.clashes],
  }
}

/** What the rules ask for on the groups of a room, and what has to be cleared first. */
function plannedRoom(maker: StepMaker, facts: RoomFacts, groups: readonly Group[]) {
  const plans = planGroups(maker, facts.room, groups)
  const work = plans.map((plan) => groupSteps(maker, facts.room, plan))
  const view = roomView(maker, facts, work)
  const needs = [...plans.flatMap((plan) => plan.holds), ...holdsOfRules(view)]
  return { groups, plans, work, view, needs }
}

function holdsOfRules(view: RoomView): readonly HoldNeed[] {
  return allRules.flatMap((rule) =>
    rule.level === 'room' && view.book.isOn(rule.id) ? (rule.holds?.(view) ?? []) : [],
  )
}

function planGroups(maker: StepMaker, room: Room, groups: readonly Group[]): readonly GroupPlan[] {
  const { job, book, stock } = maker
  const plans = groups.map((group) =>
    planGroup({ job, room, group, book, planned: [], roomIsDusty: false }, groupRules, stock),
  )
  const dusty = plans.some(isDusty)
  return plans.map((plan) => followUp(plan, groupRules, dusty))
}

interface OrderedWork extends GroupWork {
  readonly precedences: readonly Precedence[]
}

function groupSteps(maker: StepMaker, room: Room, plan: GroupPlan): OrderedWork {
  const planned = draftsOf(plan.view, plan.requests).map((draft) =>
    plannedStep(maker, plan.view.group, room.id, draft),
  )
  const { steps, precedences, withoutWindow } = batched(maker, planned)
  return {
    group: plan.view.group,
    steps,
    withoutWindow,
    precedences: [...groupPrecedences(steps, statements, maker.book), ...precedences],
  }
}

function roomView(
  { job, book }: StepMaker,
  { room, keptItems }: RoomFacts,
  work: readonly GroupWork[],
): RoomView {
  return {
    job,
    room,
    book,
    keptItems,
    groups: work.map((each) => each.group),
    disturbedSquareFeet: work.reduce((sum, { group, steps }) => sum + disturbedSquareFeet(group, steps), 0),
    disturbedGroups: new Set(
      work.filter(({ steps }) => steps.some(cutsIntoPaint)).map(({ group }) => group.key),
    ),
  }
}

/** Adds the cautions; where the lead rule covers the room, work that cuts into its paint shuts it. */
function withCautions(
  maker: StepMaker,
  view: RoomView,
  work: readonly GroupWork[],
  whole: readonly PlannedStep[],
  steps: readonly Step[],
): readonly Step[] {
  const contained = isLeadSafeWork(view)
  const cautioned = new Map(
    [{ group: null, steps: whole }, ...work].flatMap((each) =>
      each.steps.map((planned) => {
        const closesRoom = planned.step.effects.closesRoom || (contained && cutsIntoPaint(planned))
        const effects = { ...planned.step.effects, closesRoom }
        const step = { ...withExtraction(maker, view, planned).step, effects }
        const cautions = cautionsFor(view, { ...planned, step }, each.group)
        return [step.key, { ...step, cautions }] as const
      }),
    ),
  )
  return steps.map((step) => cautioned.get(step.key) ?? step)
}

/** `Coat 2 (walls)`: a step as a sentence names it. */
function stepOnSurface(step: Step | undefined): string {
  if (step === undefined) return 'a step'
  return step.surfaceClass === null
    ? stepTitle(step)
    : `${stepTitle(step)} (${surfaceNoun(step.surfaceClass)})`
}

function orderSteps(
  planned: readonly PlannedStep[],
  precedences: readonly Precedence[],
  book: RuleBook,
): Pick<RoomPart, 'steps' | 'order' | 'clashes'> {
  const byKey = new Map(planned.map((each) => [each.step.key, each.step]))
  const sorted = sortSteps([...byKey.keys()], precedences, {
    rule: book.title,
    step: (key) => stepOnSurface(byKey.get(key)),
  })
  const serving = new Set(planned.flatMap(({ step, role }) => (isServing(role) ? [step.key] : [])))
  const isClear = sorted.clashes.length === 0
  const inTime = isClear
    ? servedJustInTime(sorted.keys, precedences, (key) => serving.has(key))
    : { ...sorted, precedences }
  const kept = isClear ? reduceOrder(inTime.keys, inTime.precedences) : precedences
  const steps = inTime.keys.flatMap((key) => byKey.get(key) ?? [])
  const isEvening = (step: Step) => step.operation === 'restoreAlarm'
  return {
    steps: [...steps.filter((step) => !isEvening(step)), ...steps.filter(isEvening)],
    order: kept.map(stepOrder),
    clashes: sorted.clashes,
  }
}
