import { groupedBy } from '../../lists/lists.ts'
import type { Pass, Passes, PassOrder } from '../../passes/pass-types.ts'
import { type Job, records } from '../../project/job.ts'
import type { RoomSet } from '../../project/room-sets.ts'
import type { Room } from '../../project/sketch-records.ts'
import type { Condition } from '../../project/survey-records.ts'
import type { Takeoff } from '../../quantities/takeoff-types.ts'
import type { Relaxed } from '../../schedule/job/planning-site.ts'
import { cautionsOfRoom } from '../../specification/cautions.ts'
import type { Hold, Operation, Specification, Step } from '../../specification/types.ts'
import { instantOf, momentAfter, type SiteMoment } from '../../time/site-moment.ts'
import type { ElapsedMinutes } from '../../units/duration.ts'
import { compareText } from '../../words/text.ts'
import { inRoom } from '../by-room.ts'
import { holdLine } from '../hold-words.ts'
import { madeWhenAsked, once } from '../once.ts'
import { planSize } from '../plan-drawing.ts'
import { roomRegister } from '../register.ts'
import { markerReach, type NumberedCondition, type RoomPlan, roomPlan, sizeOf } from '../room-plan.ts'
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

interface RoomSheetInput {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly passes: Passes
  readonly tasks: ReadonlyMap<string, readonly WorkPlanTask[]>
  /** What the plan had to assume. */
  readonly relaxed: readonly Relaxed[]
}

/**
 * One sheet for each room set, each of its parts put together when it is first asked for. Numbered in the order in which the plan begins
 * them; what nobody planned yet comes last, in the order of the job.
 */
export function roomSheets(input: RoomSheetInput): readonly RoomSheet[] {
  const { passes, order } = input.passes
  const passesOf = groupedBy(passes, ({ roomSetId }) => roomSetId)
  const waitsOf = groupedBy(order, ({ after }) => after)
  return input.passes.sets
    .map((set) => {
      const steps = set.roomIds.flatMap((roomId) => inRoom(input.specification.steps, roomId))
      const tasks = [...new Set(steps.flatMap(({ key }) => input.tasks.get(key) ?? []))]
      const firstDay = earliest(tasks.map(({ startsAt }) => startsAt))?.slice(0, 10) ?? null
      return { set, steps, tasks, firstDay, passes: passesOf.get(set.id) ?? [], waitsOf }
    })
    .toSorted((one, other) => compareText(one.firstDay ?? '9', other.firstDay ?? '9'))
    .map((one, index) => roomSheet(input, one, index + 1))
}

/** A room set with what the job, its passes and its plan hold of it. */
interface OneSet {
  readonly set: RoomSet
  readonly steps: readonly Step[]
  readonly tasks: readonly WorkPlanTask[]
  /** Local date of the first work in it. */
  readonly firstDay: string | null
  readonly passes: readonly Pass[]
  /** What each pass of the job waits for, by its key. */
  readonly waitsOf: ReadonlyMap<string, readonly PassOrder[]>
}

function roomSheet(input: RoomSheetInput, one: OneSet, number: number): RoomSheet {
  const { job, takeoff, specification } = input
  const { set, steps, tasks, passes } = one
  const rooms = set.roomIds.flatMap((id) => job.rooms[id] ?? [])
  const [main] = rooms
  const context = once(() => setContext(job, takeoff, set, steps))
  const found = once(() =>
    conditionsOf(job, set).map((condition, index) => ({ condition, number: index + 1 })),
  )
  const holds = once(() => specification.holds.filter(({ roomId }) => set.roomIds.includes(roomId)))
  const holdKeys = () => holds().map(({ key }) => key)
  return madeWhenAsked<RoomSheet>({
    roomSetId: () => set.id,
    number: () => number,
    name: () => set.name,
    storey: () => (main === undefined ? '' : (job.storeys[main.storeyId]?.name ?? '')),
    alongside: () => rooms.slice(1).map(({ name }) => name),
    personMinutes: () => passes.reduce((sum, pass) => sum + pass.personMinutes, 0),
    firstDay: () => one.firstDay,
    lastDay: () => latest(tasks.map(({ endsAt }) => endsAt))?.slice(0, 10) ?? null,
    freeAt: () => freeAt(input, steps),
    promisedBy: () => earliest(rooms.flatMap(({ backBy }) => backBy ?? [])),
    lead: () => leadOf(job, tasks),
    ceilingHeight: () => ceilingHeight(context()),
    leadSafe: () => steps.some(({ operation }) => operation === 'wipeCheck'),
    plans: () => plansOf(context(), rooms, found()),
    walls: () => wallDrawings(context(), found()),
    openings: () => context().openings,
    colors: () => colorLines(context()),
    unpainted: () => unpaintedOf(context()),
    repairs: () =>
      repairLines(
        context(),
        found().map(({ condition }) => condition),
      ),
    photos: () => photoLines(job, set, found()),
    passes: () => sheetPasses(context(), passes, one.waitsOf, holdKeys()),
    handling: () => handlingOf(steps),
    cautions: () => cautionsOfRoom(steps.flatMap(({ cautions }) => cautions)),
    holds: () =>
      holds().map((hold) => ({
        ...holdLine(hold, input.relaxed, job.header.unitSystem),
        where: heldPlace(context(), hold),
      })),
    notices: () => noticesOf(specification, set),
    register: () => set.roomIds.flatMap((id) => roomRegister(job, id, context().letters)),
    notes: () => rooms.map(({ note }) => note).filter((note) => note !== ''),
  })
}

/** The floor plans of the rooms, all to one scale. */
function plansOf(
  { job, letters }: SetContext,
  rooms: readonly Room[],
  found: readonly NumberedCondition[],
): readonly RoomPlan[] {
  const sizes = rooms.map(({ corners }) => sizeOf(corners))
  const reach = markerReach(planSize(sizes, planPlace.width, planPlace.depth).scale, rooms)
  return rooms.map((room) => {
    const here = found.filter(({ condition }) => roomOfCondition(job, condition) === room.id)
    return roomPlan(job, room, letters, here, reach)
  })
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

/** When the last step has ended and everything put on is dry to the touch. */
function freeAt(input: RoomSheetInput, steps: readonly Step[]): SiteMoment | null {
  const { timeZone } = input.job.header
  const drying = new Map<WorkPlanTask, ElapsedMinutes>()
  for (const { key, touchDry } of steps) {
    for (const task of input.tasks.get(key) ?? []) {
      if (touchDry >= (drying.get(task) ?? 0)) drying.set(task, touchDry)
    }
  }
  return latest([...drying].map(([{ endsAt }, minutes]) => momentAfter(endsAt, minutes, timeZone)))
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
