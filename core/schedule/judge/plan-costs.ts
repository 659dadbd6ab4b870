import type { PersonId, Plan, PlanCost, ScheduleProblem, ScheduleRoomId, TaskId } from '../model.ts'
import { type Court, courtOf, entriesOf, here, type PlacedTask } from './court.ts'
import {
  daysOutOfUse,
  daysWaiting,
  entriesByRoom,
  type Stretch,
  stretchesOf,
  usableFrom,
} from './room-use.ts'

/** What somebody is paid for on a day: from setting up to leaving, without breaks. Minutes; instants of the first and last work. */
export interface Attendance {
  readonly person: PersonId
  /** Since 1970. */
  readonly day: number
  readonly from: number
  readonly to: number
  readonly minutes: number
}

/** A plan in figures, read off its pieces alone. */
export interface PlanFigures {
  readonly cost: PlanCost
  readonly attendance: readonly Attendance[]
  readonly rooms: readonly { readonly room: ScheduleRoomId; readonly stretches: readonly Stretch[] }[]
  readonly handOvers: readonly TaskId[]
}

/** What a plan costs and how long rooms are out of use, counted from its pieces alone, without the search's own sums. */
export function figuresOf(problem: ScheduleProblem, plan: Plan): PlanFigures {
  const court = courtOf(problem)
  const entries = entriesOf(problem, plan)
  const byRoom = entriesByRoom(entries)
  const attendance = attendanceOf(court, entries)
  const rooms = problem.rooms.map(({ id }) => ({
    room: id,
    stretches: stretchesOf(court, byRoom.get(id) ?? []),
  }))
  const { prices } = problem
  const handOvers = [...byRoom.values()].flatMap(handOversOf)
  const goingOver = handOvers.length * prices.handOver + coatsTakenUp(court, entries) * prices.takeUp
  const pay = payOf(problem, attendance)
  const siteDays = siteDaysOf(court, entries) * problem.prices.siteDay
  const roomDays = problem.rooms.reduce((sum, { centsPerDay, centsPerDayWaiting }, index) => {
    const stretches = rooms[index]?.stretches ?? []
    return sum + centsPerDay * daysOutOfUse(stretches) + centsPerDayWaiting * daysWaiting(stretches)
  }, 0)
  const cost = {
    pay,
    siteDays,
    roomDays,
    handOvers: goingOver,
    total: pay + siteDays + roomDays + goingOver,
    lateDays: lateDaysOf(court, byRoom),
    movedTasks: movedTasksOf(court, entries).length,
  }
  return { cost, attendance, rooms, handOvers }
}

function attendanceOf(court: Court, entries: readonly PlacedTask[]): readonly Attendance[] {
  if (court.local === null) return []
  const spans = new Map<string, { person: PersonId; day: number; from: number; to: number }>()
  for (const { planned, isFact } of entries) {
    if (isFact) continue
    for (const { start, end } of planned.segments) {
      const day = court.dayAt(start)
      for (const person of planned.people) {
        const key = `${day} ${person}`
        const known = spans.get(key)
        if (known === undefined) spans.set(key, { person, day, from: start, to: end })
        else {
          known.from = Math.min(known.from, start)
          known.to = Math.max(known.to, end)
        }
      }
    }
  }
  return [...spans.values()]
    .map((span) => ({ ...span, minutes: paidMinutes(court, span) }))
    .toSorted((one, other) => one.day - other.day || (one.person < other.person ? -1 : 1))
}

function paidMinutes(
  court: Court,
  { person: id, day, from, to }: { person: PersonId; day: number; from: number; to: number },
): number {
  const person = court.person(id)
  if (person === undefined) return 0
  const minutes = court.dayOf(person, day)
  let there = 0
  for (let at = court.minuteAt(from); at < court.minuteAt(to - 1) + 1; at++) if (minutes[at] === here) there++
  return Math.max(court.problem.spending.leastPaid, there + court.chores.before + court.chores.after)
}

/** Rounded once for each person. */
function payOf({ people }: ScheduleProblem, attendance: readonly Attendance[]): number {
  const minutes = new Map<PersonId, number>()
  for (const day of attendance) minutes.set(day.person, (minutes.get(day.person) ?? 0) + day.minutes)
  return people.reduce((sum, { id, centsPerHour }) => {
    return sum + Math.round(((minutes.get(id) ?? 0) * centsPerHour) / 60)
  }, 0)
}

/**
 * Days on which somebody could work, from the day the job may begin (or goes on) until the last work. A day of waiting before the first
 * work costs as much as one behind it, or a plan could begin late for nothing. On an unbroken clock: grid steps until the end.
 */
function siteDaysOf({ problem, dayAt, dayOf }: Court, entries: readonly PlacedTask[]): number {
  const { clock } = problem
  if (clock.kind === 'unbroken')
    return entries.reduce(
      (latest, { planned }) => Math.max(latest, (planned.end - clock.start) / problem.gridMinutes),
      0,
    )
  const pieces = entries.flatMap(({ planned, isFact }) => (isFact ? [] : planned.segments))
  if (pieces.length === 0) return 0
  const first = dayAt(clock.start)
  const last = dayAt(pieces.reduce((latest, { end }) => Math.max(latest, end - 1), 0))
  let days = 0
  for (let day = first; day <= last; day++) {
    if (problem.people.some((person) => dayOf(person, day).includes(here))) days++
  }
  return days
}

/** The tasks a room goes over to somebody with who began none of those right before. What begins at once goes together. */
function handOversOf(entries: readonly PlacedTask[]): readonly TaskId[] {
  const free = entries
    .filter(({ task, planned }) => task.state.kind === 'open' && planned.people.length > 0)
    .toSorted((one, other) => one.planned.start - other.planned.start)
  let before: readonly PersonId[] = []
  let group: readonly PersonId[] = []
  let since = -1
  return free.flatMap(({ task, planned }) => {
    if (planned.start !== since) {
      before = group
      group = []
      since = planned.start
    }
    group = [...group, ...planned.people]
    const isNew = before.length > 0 && !planned.people.some((person) => before.includes(person))
    return isNew ? [task.id] : []
  })
}

/** Coats that go on after a night, once for each: the edge is found again, and what is wet looks different from what has dried. */
function coatsTakenUp({ dayAt }: Court, entries: readonly PlacedTask[]): number {
  return entries.reduce((sum, { task, planned }) => {
    const isCoat = task.state.kind === 'open' && task.effects.touchDry !== null && planned.people.length > 0
    const days = new Set(planned.segments.map(({ start }) => dayAt(start)))
    return isCoat ? sum + Math.max(0, days.size - 1) : sum
  }, 0)
}

function lateDaysOf(court: Court, byRoom: ReadonlyMap<ScheduleRoomId, readonly PlacedTask[]>): number {
  return court.problem.keeping.rooms.reduce((sum, { room, by }) => {
    return sum + Math.max(0, court.dayAt(usableFrom(byRoom.get(room) ?? [])) - court.dayAt(by))
  }, 0)
}

/** Tasks that begin on another day than was said, or are done by others. */
function movedTasksOf(court: Court, entries: readonly PlacedTask[]): readonly TaskId[] {
  const byId = new Map(entries.map((entry) => [entry.task.id, entry]))
  return court.problem.keeping.tasks.flatMap(({ task, start, people }) => {
    const entry = byId.get(task)
    if (entry === undefined || entry.task.state.kind !== 'open') return []
    const isSame =
      court.dayAt(entry.planned.start) === court.dayAt(start) &&
      entry.planned.people.toSorted().join() === people.toSorted().join()
    return isSame ? [] : [task]
  })
}
