import type { Pass, Passes } from '../../passes/pass-types.ts'
import { type Job, records } from '../../project/job.ts'
import type { RoomSet } from '../../project/room-sets.ts'
import type { Room } from '../../project/sketch-records.ts'
import type { Condition } from '../../project/survey-records.ts'
import type { Takeoff } from '../../quantities/takeoff-types.ts'
import type { Relaxed } from '../../schedule/job/planning-site.ts'
import { cautionsOfRoom } from '../../specification/cautions.ts'
import type { Hold, Operation, Specification, Step } from '../../specification/types.ts'
import { instantOf, momentAfter, type SiteMoment } from '../../time/site-moment.ts'
import { inRoom } from '../by-room.ts'
import { holdLine } from '../hold-words.ts'
import { planSize } from '../plan-drawing.ts'
import { roomRegister } from '../register.ts'
import { markerReach, roomPlan, sizeOf } from '../room-plan.ts'
import { roomOfCondition } from '../surface-words.ts'
import { earliest, latest, type WorkPlanTask } from '../work-plan.ts'
import { colorLines, unpaintedOf } from './color-lines.ts'
import { sheetPasses } from './pass-entries.ts'
import { photoLines } from './photo-lines.ts'
import { planPlace } from './plan-place.ts'
import { repairLines } from './repair-lines.ts'
import { type SetContext, setContext } from './set-context.ts'
import type { NoticeLine, RoomSheet } from './sheet-types.ts'
import { shortLength } from './sheet-words.ts'
import { surfaceList } from './surface-list.ts'
import { wallDrawings } from './wall-drawings.ts'

export interface RoomSheetInput {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly passes: Passes
  readonly tasks: ReadonlyMap<string, readonly WorkPlanTask[]>
  /** What the plan had to assume. */
  readonly relaxed: readonly Relaxed[]
}

/** The sheet of one room set, but for its number in the order of the plan. */
export function roomSheet(input: RoomSheetInput, set: RoomSet): Omit<RoomSheet, 'number'> {
  const { job, takeoff, specification } = input
  const context = setContext(job, takeoff, specification, set)
  const rooms = set.roomIds.flatMap((id) => job.rooms[id] ?? [])
  const [main] = rooms
  const found = conditionsOf(job, set).map((condition, index) => ({ condition, number: index + 1 }))
  const holds = specification.holds.filter(({ roomId }) => set.roomIds.includes(roomId))
  const sizes = rooms.map(({ corners }) => sizeOf(corners))
  const reach = markerReach(planSize(sizes, planPlace.width, planPlace.depth).scale, rooms)
  const passes = input.passes.passes.filter(({ roomSetId }) => roomSetId === set.id)
  return {
    roomSetId: set.id,
    name: set.name,
    storey: main === undefined ? '' : (job.storeys[main.storeyId]?.name ?? ''),
    alongside: rooms.slice(1).map(({ name }) => name),
    ...datesOf(input, context, rooms, passes),
    ceilingHeight: ceilingHeight(context),
    leadSafe: context.steps.some(({ operation }) => operation === 'wipeCheck'),
    plans: rooms.map((room) =>
      roomPlan(
        job,
        room,
        context.letters,
        found.filter(({ condition }) => roomOfCondition(job, condition) === room.id),
        reach,
      ),
    ),
    walls: wallDrawings(context, found),
    openings: context.openings,
    colors: colorLines(context),
    unpainted: unpaintedOf(context),
    repairs: repairLines(
      context,
      found.map(({ condition }) => condition),
    ),
    photos: photoLines(job, set, found),
    passes: sheetPasses(
      context,
      passes,
      input.passes.order,
      holds.map(({ key }) => key),
    ),
    handling: handlingOf(context.steps),
    cautions: cautionsOfRoom(context.steps.flatMap(({ cautions }) => cautions)),
    holds: holds.map((hold) => ({
      ...holdLine(hold, input.relaxed, context.system),
      where: heldPlace(context, hold),
    })),
    notices: noticesOf(specification, set),
    register: set.roomIds.flatMap((id) => roomRegister(job, id, context.letters)),
    notes: rooms.map(({ note }) => note).filter((note) => note !== ''),
  }
}

/** Of the main room, up to its highest place: what to reach. */
function ceilingHeight({ takeoff, set, system }: SetContext): string {
  const reaches = inRoom(takeoff.surfaces, set.id).map(({ reachHeight }) => reachHeight)
  return reaches.length === 0 ? '' : shortLength(Math.max(...reaches), system)
}

/** `walls A`, `ceiling (Rear closet)`. */
function heldPlace(context: SetContext, { stepKeys }: Hold): string {
  return surfaceList(
    context,
    stepKeys.flatMap((key) => context.stepOf.get(key) ?? []),
    false,
  )
}

/** Of the main room first. */
function conditionsOf(job: Job, set: RoomSet): readonly Condition[] {
  return set.roomIds.flatMap((id) =>
    records(job.conditions).filter((condition) => roomOfCondition(job, condition) === id),
  )
}

function datesOf(
  input: RoomSheetInput,
  { steps }: SetContext,
  rooms: readonly Room[],
  passes: readonly Pass[],
): Pick<RoomSheet, 'personMinutes' | 'firstDay' | 'lastDay' | 'freeAt' | 'promisedBy' | 'lead'> {
  const tasks = [...new Set(steps.flatMap(({ key }) => input.tasks.get(key) ?? []))]
  return {
    personMinutes: passes.reduce((sum, pass) => sum + pass.personMinutes, 0),
    firstDay: earliest(tasks.map(({ startsAt }) => startsAt))?.slice(0, 10) ?? null,
    lastDay: latest(tasks.map(({ endsAt }) => endsAt))?.slice(0, 10) ?? null,
    freeAt: freeAt(input, steps),
    promisedBy: earliest(rooms.flatMap(({ backBy }) => backBy ?? [])),
    lead: leadOf(input.job, tasks),
  }
}

/** When the last step has ended and everything put on is dry to the touch. */
function freeAt(input: RoomSheetInput, steps: readonly Step[]): SiteMoment | null {
  const { timeZone } = input.job.header
  return latest(
    steps.flatMap((step) =>
      (input.tasks.get(step.key) ?? []).map((task) => momentAfter(task.endsAt, step.touchDry, timeZone)),
    ),
  )
}

/** Who works longest here; the first of the crew list where two do. */
function leadOf(job: Job, tasks: readonly WorkPlanTask[]): string | null {
  const { timeZone } = job.header
  const minutesOf = (id: string) =>
    tasks
      .filter(({ crewMemberIds }) => crewMemberIds.some((each) => each === id))
      .flatMap(({ segments }) => segments)
      .reduce(
        (sum, { startsAt, endsAt }) => sum + instantOf(endsAt, timeZone) - instantOf(startsAt, timeZone),
        0,
      )
  const worked = records(job.crew)
    .map(({ id, name }) => ({ name, minutes: minutesOf(id) }))
    .filter(({ minutes }) => minutes > 0)
  return worked.toSorted((one, other) => other.minutes - one.minutes)[0]?.name ?? null
}

/** Rules whose reason says how the brush goes: it changes what a hand does. */
const brushRules = ['doors', 'moving-sash', 'fixed-sash', 'stairs']
const repairing: ReadonlySet<Operation> = new Set<Operation>([
  'openCrack',
  'fill',
  'sealChalk',
  'blockStain',
  'reattachPlaster',
  'washOffCalcimine',
  'degloss',
  'tapeCrack',
])

function handlingOf(steps: readonly Step[]): readonly string[] {
  const told = steps.flatMap((step) =>
    step.because.filter(({ ruleId, conditionIds }) => {
      const isBrushwork = step.operation === 'coat' && brushRules.includes(ruleId)
      return isBrushwork || (repairing.has(step.operation) && conditionIds.length > 0)
    }),
  )
  return [...new Set(told.map(({ reason }) => reason))]
}

/** Besides the holds, and besides lead-safe work, whose rules stand on the cover. */
function noticesOf(specification: Specification, set: RoomSet): readonly NoticeLine[] {
  const here = specification.notices.filter(
    ({ roomId, holdKey, kind }) =>
      roomId !== null && set.roomIds.includes(roomId) && holdKey === undefined && kind !== 'leadSafe',
  )
  return here.map(({ sentence, hold }) => ({ sentence, stops: hold }))
}
