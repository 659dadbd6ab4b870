import { groupedBy } from '../lists/lists.ts'
import { productOf } from '../price/materials.ts'
import { type Job, records } from '../project/job.ts'
import type { CrewMember, CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { gravestFirst } from '../specification/cautions.ts'
import { productClassWords, sheenWords, stepTitle } from '../specification/trade-words.ts'
import type { Operation, Specification, Step } from '../specification/types.ts'
import { dateOfDay, dayOfDate, weekdayOf } from '../time/local-date.ts'
import { compareText } from '../words/text.ts'
import type { CanLine, DayChore, HalfDayWork, PersonDay, SiteDay, WeekSheet } from './document-types.ts'
import type { WorkPlan, WorkPlanTask } from './work-plan.ts'

type Segment = WorkPlanTask['segments'][number]

/** What one task has of one day. */
interface Visit {
  readonly task: WorkPlanTask
  readonly segments: readonly Segment[]
}

/** Minute of the day at which the morning ends. */
const noon = 12 * 60
/** A pass that reaches less far into the other half of the day stays in the half it is mostly in (shop assumption). */
const worthSaying = 30

/** Every day somebody works on site, by date. */
export function siteDays(job: Job, specification: Specification, plan: WorkPlan): readonly SiteDay[] {
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  const daily = specification.steps.filter((step) => step.daily)
  return [...visitsByDate(plan)]
    .toSorted(([one], [other]) => compareText(one, other))
    .map(([date, visits]) => siteDay({ job, steps, daily, done: stepsDone(job) }, date, visits))
}

/** The same days week by week. */
export function weekSheets(days: readonly SiteDay[]): readonly WeekSheet[] {
  const weeks = groupedBy(days, ({ date }) => mondayOf(date))
  return [...weeks].map(([monday, own]) => ({ monday, days: own }))
}

/** Local date of the Monday on or before a date. */
export function mondayOf(date: string): string {
  const day = dayOfDate(date)
  return dateOfDay(day - ((weekdayOf(day) + 6) % 7))
}

function visitsByDate(plan: WorkPlan): ReadonlyMap<string, readonly Visit[]> {
  const byDate = new Map<string, Visit[]>()
  for (const task of plan.tasks) {
    for (const date of new Set(task.segments.map(({ startsAt }) => startsAt.slice(0, 10)))) {
      const segments = task.segments.filter(({ startsAt }) => startsAt.slice(0, 10) === date)
      const known = byDate.get(date)
      if (known === undefined) byDate.set(date, [{ task, segments }])
      else known.push({ task, segments })
    }
  }
  return byDate
}

interface DayInput {
  readonly job: Job
  readonly steps: ReadonlyMap<string, Step>
  /** Steps that come back every day. */
  readonly daily: readonly Step[]
  /** Keys of steps that are done or left out. */
  readonly done: ReadonlySet<string>
}

/** By the last mark of each. */
function stepsDone(job: Job): ReadonlySet<string> {
  const last = new Map(
    records(job.marks)
      .toSorted((one, other) => compareText(one.at, other.at))
      .map(({ stepKey, mark }) => [stepKey, mark]),
  )
  return new Set([...last].flatMap(([key, mark]) => (mark === 'done' || mark === 'skipped' ? [key] : [])))
}

function siteDay(input: DayInput, date: string, visits: readonly Visit[]): SiteDay {
  const { job } = input
  const inOrder = visits.toSorted((a, b) => compareText(startOf(a), startOf(b)))
  const people = records(job.crew).flatMap((person) => {
    const own = inOrder.filter(({ task }) => task.crewMemberIds.includes(person.id))
    return own.length === 0 ? [] : [{ person, own }]
  })
  const chores = choresOf(input, visits)
  return {
    date,
    people: people.map(({ person, own }) => personDay(input, person, own)),
    chores,
    choresOwner: chores.length === 0 ? null : lastToLeave(people),
  }
}

function startOf({ segments }: Visit): string {
  return segments[0]?.startsAt ?? ''
}

function personDay(input: DayInput, person: CrewMember, visits: readonly Visit[]): PersonDay {
  const worked = visits.flatMap(({ task }) => task.stepKeys.flatMap((key) => input.steps.get(key) ?? []))
  return {
    crewMemberId: person.id,
    name: person.name,
    morning: halfDay(input, visits, 'morning'),
    afternoon: halfDay(input, visits, 'afternoon'),
    cans: cansOf(input.job, worked),
    cautions: gravestFirst(worked.flatMap((step) => step.cautions)).filter(
      ({ id }) => id === 'lead' || id === 'asbestos',
    ),
  }
}

type Half = 'morning' | 'afternoon'

function halfDay(input: DayInput, visits: readonly Visit[], half: Half): readonly HalfDayWork[] {
  const byRoom = new Map<RoomId, { readonly roomName: string; readonly passes: Set<string> }>()
  for (const { task, segments } of visits) {
    if (!segments.some((segment) => isIn(segment, half))) continue
    const roomSetId = task.roomSetId ?? task.roomId
    const known = byRoom.get(roomSetId) ?? { roomName: nameOf(input.job, roomSetId), passes: new Set() }
    const isDone = task.stepKeys.length > 0 && task.stepKeys.every((key) => input.done.has(key))
    known.passes.add(`${passName(input, task)}${isDone ? ' (done)' : ''}`)
    byRoom.set(roomSetId, known)
  }
  return [...byRoom].map(([roomSetId, { roomName, passes }]) => ({
    roomSetId,
    roomName,
    passes: [...passes],
  }))
}

function isIn({ startsAt, endsAt }: Segment, half: Half): boolean {
  const [from, to] = [minuteOf(startsAt), minuteOf(endsAt)]
  const before = Math.max(0, Math.min(to, noon) - from)
  const after = Math.max(0, to - Math.max(from, noon))
  const [here, there] = half === 'morning' ? [before, after] : [after, before]
  return here >= worthSaying || here > there || (here === there && half === 'morning')
}

function minuteOf(moment: string): number {
  const [hours = 0, minutes = 0] = moment.slice(11).split(':').map(Number)
  return hours * 60 + minutes
}

/** Plans accepted before there were passes say it by their first step. */
function passName({ steps }: DayInput, task: WorkPlanTask): string {
  if (task.name !== undefined) return task.name
  const [first] = task.stepKeys.flatMap((key) => steps.get(key) ?? [])
  return first === undefined ? 'work' : stepTitle(first)
}

function nameOf(job: Job, roomId: RoomId): string {
  return job.rooms[roomId]?.name ?? roomId
}

function cansOf(job: Job, steps: readonly Step[]): readonly CanLine[] {
  const rooms = new Map<string, Set<string>>()
  for (const step of steps) {
    const what = canWords(job, step)
    if (what === '') continue
    rooms.set(what, (rooms.get(what) ?? new Set()).add(nameOf(job, step.roomId)))
  }
  return [...rooms].map(([what, roomNames]) => ({ what, roomNames: [...roomNames] }))
}

/** As it stands on the can: product, color, sheen. */
function canWords(job: Job, step: Step): string {
  if (step.productClass === null) return ''
  const product = productOf(job, step)?.name ?? productClassWords[step.productClass]
  const colour = step.colourId === null ? [] : [job.colours[step.colourId]?.name ?? step.colourId]
  const sheen = step.sheen === null ? [] : [sheenWords[step.sheen]]
  return [product, ...colour, ...sheen].join(', ')
}

/** Cans of several people, each once. */
export function mergedCans(lists: readonly (readonly CanLine[])[]): readonly CanLine[] {
  const rooms = new Map<string, Set<string>>()
  for (const { what, roomNames } of lists.flat()) {
    rooms.set(what, new Set([...(rooms.get(what) ?? []), ...roomNames]))
  }
  return [...rooms].map(([what, roomNames]) => ({ what, roomNames: [...roomNames] }))
}

/** Daily steps of the rooms anybody works in on that day; alarms are covered and uncovered in one go. */
function choresOf({ job, steps, daily }: DayInput, visits: readonly Visit[]): readonly DayChore[] {
  const worked = visits.flatMap(({ task }) => task.stepKeys.flatMap((key) => steps.get(key)?.roomId ?? []))
  const rooms = new Set([...visits.map(({ task }) => task.roomId), ...worked])
  const byKind = new Map<DayChore['kind'], Set<string>>()
  for (const { operation, roomId } of daily) {
    const kind = choreKinds[operation]
    if (kind === undefined || !rooms.has(roomId)) continue
    byKind.set(kind, (byKind.get(kind) ?? new Set()).add(nameOf(job, roomId)))
  }
  return [...byKind].map(([kind, roomNames]) => ({ kind, roomNames: [...roomNames] }))
}

const choreKinds: Partial<Record<Operation, DayChore['kind']>> = {
  coverAlarm: 'alarms',
  restoreAlarm: 'alarms',
  cleanDaily: 'cleaning',
}

/** Of those who leave last, who came first; then by the crew list. */
function lastToLeave(
  people: readonly { readonly person: CrewMember; readonly own: readonly Visit[] }[],
): CrewMemberId | null {
  const hours = people.map(({ person, own }) => {
    const segments = own.flatMap((visit) => visit.segments)
    return {
      id: person.id,
      from: segments.map(({ startsAt }) => startsAt).toSorted()[0] ?? '',
      to:
        segments
          .map(({ endsAt }) => endsAt)
          .toSorted()
          .at(-1) ?? '',
    }
  })
  const [owner] = hours.toSorted((a, b) =>
    a.to === b.to ? (a.from < b.from ? -1 : 1) : a.to > b.to ? -1 : 1,
  )
  return owner?.id ?? null
}
