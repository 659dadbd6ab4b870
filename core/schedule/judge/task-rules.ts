import { present } from '../../lists/lists.ts'
import type { PlanSegment } from '../model.ts'
import { atChores, away, type Court, elsewhere, here, type PlacedTask, workOf } from './court.ts'
import type { Violation } from './violation.ts'

/** Pieces lie on the grid one after the other, none of them before now; facts, work under way and pins lie where they have to. */
export function shapeRule({ problem }: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  const { clock, gridMinutes } = problem
  return entries.flatMap((entry): readonly Violation[] => {
    const { task, planned, isFact } = entry
    const tasks = [task.id]
    const { state } = task
    const { segments } = planned
    if (isFact) {
      const isThere = state.kind === 'done' && planned.start === state.start && planned.end === state.end
      return isThere ? [] : [{ rule: 'done', tasks }]
    }
    const ends = segments.every(
      ({ start, end }, index) => start < end && start >= (segments[index - 1]?.end ?? start),
    )
    const onGrid = segments.every(
      ({ start, end }) => (start - clock.start) % gridMinutes === 0 && (end - start) % gridMinutes === 0,
    )
    const isNamed =
      segments.length === 0 ||
      (planned.end === segments.at(-1)?.end &&
        (state.kind === 'started' || planned.start === segments[0]?.start))
    if (!ends || !onGrid || !isNamed || planned.start > planned.end) return [{ rule: 'shape', tasks }]
    if (state.kind === 'started' && planned.start !== state.start) return [{ rule: 'started', tasks }]
    if (state.kind === 'started' && state.people.join() !== planned.people.join() && state.people.length > 0)
      return sameSet(state.people, planned.people) ? [] : [{ rule: 'started', tasks }]
    if (state.kind !== 'pinned') return []
    const isHeld =
      planned.start === state.start && (state.people === null || sameSet(state.people, planned.people))
    return isHeld ? [] : [{ rule: 'pinned', tasks }]
  })
}

function sameSet(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((each) => other.includes(each))
}

/** As many people as it takes, somebody with all skills, and nobody who can do none of it. */
export function crewRule({ person }: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  return entries.flatMap(({ task, planned, isFact }): readonly Violation[] => {
    if (isFact || task.state.kind === 'started') return []
    const { min, max } = task.crew
    const size = new Set(planned.people).size
    const needed = task.work === 0 ? 0 : min
    const people = planned.people.map(person)
    const isEnough = size === planned.people.length && size >= needed && size <= max
    const isAble =
      size === 0 ||
      task.skills.length === 0 ||
      (people.some((each) => task.skills.every((skill) => each?.skills.includes(skill))) &&
        people.every((each) => task.skills.some((skill) => each?.skills.includes(skill))))
    const isKnown = people.every((each) => each !== undefined)
    return isEnough && isAble && isKnown ? [] : [{ rule: 'crew', tasks: [task.id] }]
  })
}

/** Everybody is there, and not setting up or leaving, in every minute of every piece. */
export function calendarRule(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  if (court.local === null) return []
  return entries.flatMap(({ task, planned, isFact }): readonly Violation[] => {
    if (isFact) return []
    const people = planned.people.length === 0 ? [null] : planned.people.map((id) => court.person(id) ?? null)
    return planned.segments.flatMap((segment) =>
      people.flatMap((person): readonly Violation[] => {
        const found = firstNotHere(court, person, segment)
        if (found === undefined) return []
        const rule = found.value === atChores ? 'dailyChores' : 'crewCalendar'
        return [{ rule, tasks: [task.id], at: found.at, ...(person === null ? {} : { person: person.id }) }]
      }),
    )
  })
}

function firstNotHere(
  court: Court,
  person: Parameters<Court['dayOf']>[0],
  { start, end }: PlanSegment,
): { readonly at: number; readonly value: number } | undefined {
  const day = court.dayAt(start)
  if (court.dayAt(end - 1) !== day) return { at: end, value: away }
  const minutes = court.dayOf(person, day)
  const first = court.minuteAt(start)
  const last = court.minuteAt(end - 1)
  for (let minute = first; minute <= last; minute++) {
    const value = present(minutes[minute])
    if (value !== here) return { at: start + minute - first, value }
  }
  return undefined
}

/** Within a day work stops only while somebody of its people has a break; over a night only where it may, with enough on both sides. */
export function brokenOffRule(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  return entries.flatMap(({ task, planned, isFact }): readonly Violation[] => {
    if (isFact || task.state.kind === 'started' || planned.segments.length < 2) return []
    const broken: Violation = { rule: 'brokenOff', tasks: [task.id] }
    if (court.local === null) return [broken]
    const parts: { day: number; minutes: number }[] = []
    for (const [index, { start, end }] of planned.segments.entries()) {
      const day = court.dayAt(start)
      const last = parts.at(-1)
      if (last === undefined || last.day !== day) parts.push({ day, minutes: end - start })
      else {
        const before = present(planned.segments[index - 1])
        if (couldGoOn(court, planned.people, before.end, start)) return [{ ...broken, at: before.end }]
        last.minutes += end - start
      }
    }
    const isSmall = parts.some(({ minutes }) => minutes < task.smallestPart)
    const isPinned = task.state.kind === 'pinned'
    // A room may be set up once more the day before all the work.
    const isSetUpBefore =
      parts.length === 2 && parts[1]?.minutes === workOf({ task, planned, isFact }, court.problem.gridMinutes)
    const isWrong = parts.length > 1 && !isPinned && !isSetUpBefore && (task.breaking === 'never' || isSmall)
    return isWrong ? [{ ...broken, at: planned.start }] : []
  })
}

/** Is there a minute in which nobody has a break, or one in which somebody is at another job? */
function couldGoOn(court: Court, people: readonly string[], from: number, to: number): boolean {
  const days = people.map((id) => court.dayOf(court.person(id) ?? null, court.dayAt(from)))
  for (let minute = court.minuteAt(from); minute < court.minuteAt(to); minute++) {
    if (days.every((day) => day[minute] === here) || days.some((day) => day[minute] === elsewhere))
      return true
  }
  return false
}

/** Nothing starts before now, nor before what it is held for is expected. */
export function notBeforeRule({ problem }: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  return entries.flatMap(({ task, planned }): readonly Violation[] => {
    const held = task.state.kind === 'open' ? (task.earliestStart ?? 0) : 0
    const first = task.state.kind === 'done' ? undefined : planned.segments[0]
    const at = Math.max(problem.clock.start, held)
    return first !== undefined && first.start < at ? [{ rule: 'notBefore', tasks: [task.id], at }] : []
  })
}
