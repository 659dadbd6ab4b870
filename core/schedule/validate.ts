import { isTimeZone } from '../time/local-time.ts'
import type { DayWindow, Link, Person, ScheduleProblem, Task } from './model.ts'

/** Whose number or moment is at fault. Ids are those of the problem. */
export type FaultPlace =
  | { readonly of: 'task' | 'person' | 'room' | 'resource'; readonly id: string }
  | { readonly of: 'link'; readonly from: string; readonly to: string }
  | { readonly of: 'siteHours' | 'holidays' | 'houseRules' | 'clock' }

type NumberName =
  | 'work'
  | 'crew'
  | 'effects'
  | 'demand'
  | 'pinned'
  | 'started'
  | 'startedPeople'
  | 'done'
  | 'lag'
  | 'capacity'
  | 'gridMinutes'
  | 'start'
  | 'roomsOutOfUse'
  | 'dailyChores'

type ListName = 'task' | 'person' | 'room' | 'resource'

interface OffGrid {
  readonly kind: 'offGrid'
  readonly at: FaultPlace
  /** A minute of the day, a stretch of minutes, or the instant of a pin. */
  readonly what: 'timeOfDay' | 'stretch' | 'instant'
  readonly value: number
  readonly gridMinutes: number
}

/** Why a problem cannot be handed to the search at all. */
export type ProblemFault =
  | { readonly kind: 'duplicateId'; readonly what: ListName; readonly id: string }
  | { readonly kind: 'unknownId'; readonly what: ListName; readonly id: string; readonly at: FaultPlace }
  | { readonly kind: 'badNumber'; readonly what: NumberName; readonly at: FaultPlace; readonly value: number }
  | { readonly kind: 'badWindow'; readonly at: FaultPlace; readonly from: number; readonly to: number }
  | OffGrid
  | { readonly kind: 'badDate'; readonly at: FaultPlace; readonly date: string }
  | { readonly kind: 'unknownTimeZone'; readonly timeZone: string }
  | { readonly kind: 'emptyLink'; readonly from: string; readonly to: string }
  /** On an unbroken clock nobody works and no room has an evening. */
  | { readonly kind: 'needsSiteClock'; readonly usedBy: 'people' | 'rooms' | FaultPlace }
  | { readonly kind: 'tooManyPeople'; readonly count: number; readonly limit: number }

/** People are kept as bits of one 32-bit word. */
const mostPeople = 30

/** Every fault of the problem; an empty list means the search and the bounds may be called. */
export function validateProblem(problem: ScheduleProblem): readonly ProblemFault[] {
  const faults: ProblemFault[] = []
  const known = checkIds(problem, faults)
  checkClock(problem, faults)
  for (const person of problem.people) checkPerson(problem, person, faults)
  for (const task of problem.tasks) checkTask(problem, known, task, faults)
  for (const link of problem.links) checkLink(known, link, faults)
  for (const resource of problem.resources) {
    if (!isWhole(resource.capacity))
      faults.push(badNumber('capacity', { of: 'resource', id: resource.id }, resource.capacity))
  }
  checkRooms(problem, known, faults)
  checkRules(problem, faults)
  return faults
}

function isWhole(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0
}

function badNumber(what: NumberName, at: FaultPlace, value: number): ProblemFault {
  return { kind: 'badNumber', what, at, value }
}

type KnownIds = Readonly<Record<ListName, ReadonlySet<string>>>

function checkIds(problem: ScheduleProblem, faults: ProblemFault[]): KnownIds {
  function idsOf(what: ListName, list: readonly { readonly id: string }[]): ReadonlySet<string> {
    const seen = new Set<string>()
    for (const { id } of list) {
      if (seen.has(id)) faults.push({ kind: 'duplicateId', what, id })
      seen.add(id)
    }
    return seen
  }
  const known = {
    task: idsOf('task', problem.tasks),
    person: idsOf('person', problem.people),
    room: idsOf('room', problem.rooms),
    resource: idsOf('resource', problem.resources),
  }
  if (problem.people.length > mostPeople) {
    faults.push({ kind: 'tooManyPeople', count: problem.people.length, limit: mostPeople })
  }
  return known
}

function checkClock(problem: ScheduleProblem, faults: ProblemFault[]): void {
  const { clock, gridMinutes } = problem
  if (!isWhole(gridMinutes) || gridMinutes < 1)
    faults.push(badNumber('gridMinutes', { of: 'clock' }, gridMinutes))
  if (!Number.isSafeInteger(clock.start)) faults.push(badNumber('start', { of: 'clock' }, clock.start))
  if (clock.kind === 'unbroken') {
    if (problem.people.length > 0) faults.push({ kind: 'needsSiteClock', usedBy: 'people' })
    if (problem.rooms.length > 0) faults.push({ kind: 'needsSiteClock', usedBy: 'rooms' })
    return
  }
  if (!isTimeZone(clock.timeZone)) faults.push({ kind: 'unknownTimeZone', timeZone: clock.timeZone })
  for (const day of clock.siteHours) checkWindows(problem, { of: 'siteHours' }, day, faults)
  for (const date of clock.holidays) checkDate({ of: 'holidays' }, date, faults)
}

function checkWindows(
  problem: ScheduleProblem,
  at: FaultPlace,
  windows: readonly DayWindow[],
  faults: ProblemFault[],
): void {
  for (const { from, to } of windows) {
    if (!(isWhole(from) && isWhole(to) && from < to && to <= 1440))
      faults.push({ kind: 'badWindow', at, from, to })
    for (const value of [from, to]) checkOnGrid(problem, at, 'timeOfDay', value, faults)
  }
}

function checkOnGrid(
  { gridMinutes }: ScheduleProblem,
  at: FaultPlace,
  what: OffGrid['what'],
  value: number,
  faults: ProblemFault[],
): void {
  if (value % gridMinutes !== 0) faults.push({ kind: 'offGrid', at, what, value, gridMinutes })
}

function checkDate(at: FaultPlace, date: string, faults: ProblemFault[]): void {
  const good = /^\d{4}-\d{2}-\d{2}$/.test(date) && !Number.isNaN(Date.parse(`${date}T00:00Z`))
  if (!good) faults.push({ kind: 'badDate', at, date })
}

function checkPerson(problem: ScheduleProblem, person: Person, faults: ProblemFault[]): void {
  const at = { of: 'person', id: person.id } as const
  for (const day of person.week) checkWindows(problem, at, day, faults)
  checkWindows(problem, at, person.breaks, faults)
  for (const date of person.daysOff) checkDate(at, date, faults)
  for (const partDay of person.partDays) {
    checkDate(at, partDay.date, faults)
    checkWindows(problem, at, partDay.windows, faults)
  }
}

function checkTask(problem: ScheduleProblem, known: KnownIds, task: Task, faults: ProblemFault[]): void {
  const at = { of: 'task', id: task.id } as const
  const { min, max } = task.crew
  if (!isWhole(task.work)) faults.push(badNumber('work', at, task.work))
  if (!isWhole(min) || !isWhole(max) || min > max) faults.push(badNumber('crew', at, max))
  if (min === 0 && max > 0) faults.push(badNumber('crew', at, min))
  if (max > 0 && problem.clock.kind === 'unbroken') faults.push({ kind: 'needsSiteClock', usedBy: at })
  const { touchDry, fumesFor, closedFor } = task.effects
  for (const value of [touchDry, fumesFor, closedFor]) {
    if (value !== null && !isWhole(value)) faults.push(badNumber('effects', at, value))
  }
  checkKnown(known, 'room', task.room, at, faults)
  for (const { resource, amount } of task.demands) {
    checkKnown(known, 'resource', resource, at, faults)
    if (!isWhole(amount)) faults.push(badNumber('demand', at, amount))
  }
  checkState(problem, known, task, at, faults)
}

function checkState(
  problem: ScheduleProblem,
  known: KnownIds,
  task: Task,
  at: FaultPlace,
  faults: ProblemFault[],
): void {
  const { state } = task
  if (state.kind === 'open') return
  for (const person of state.people ?? []) checkKnown(known, 'person', person, at, faults)
  if (state.kind === 'pinned') {
    checkOnGrid(problem, at, 'instant', state.start, faults)
    if (state.start < problem.clock.start) faults.push(badNumber('pinned', at, state.start))
  }
  if (state.kind === 'started' && state.start > problem.clock.start)
    faults.push(badNumber('started', at, state.start))
  if (state.kind === 'started' && state.people.length === 0 && task.crew.max > 0) {
    faults.push(badNumber('startedPeople', at, 0))
  }
  if (state.kind === 'done' && state.end < state.start) faults.push(badNumber('done', at, state.end))
}

function checkKnown(
  known: KnownIds,
  what: ListName,
  id: string | null,
  at: FaultPlace,
  faults: ProblemFault[],
): void {
  if (id !== null && !known[what].has(id)) faults.push({ kind: 'unknownId', what, id, at })
}

function checkLink(known: KnownIds, link: Link, faults: ProblemFault[]): void {
  const at = { of: 'link', from: link.from, to: link.to } as const
  checkKnown(known, 'task', link.from, at, faults)
  checkKnown(known, 'task', link.to, at, faults)
  for (const value of [link.atLeast, link.atMost]) {
    if (value !== null && !Number.isSafeInteger(value)) faults.push(badNumber('lag', at, value))
  }
  const empty = link.atLeast !== null && link.atMost !== null && link.atLeast > link.atMost
  if (empty) faults.push({ kind: 'emptyLink', from: link.from, to: link.to })
  if (link.measuredFrom === 'end' && link.atLeast !== null && link.atLeast < 0) {
    faults.push(badNumber('lag', at, link.atLeast))
  }
}

function checkRooms(problem: ScheduleProblem, known: KnownIds, faults: ProblemFault[]): void {
  for (const room of problem.rooms) {
    const at = { of: 'room', id: room.id } as const
    for (const id of [...room.openTo, ...room.reachedThrough]) checkKnown(known, 'room', id, at, faults)
    if (room.neededDaily !== null) checkDailySpan(problem, at, room.neededDaily, faults)
  }
}

function checkDailySpan(
  problem: ScheduleProblem,
  at: FaultPlace,
  span: DayWindow,
  faults: ProblemFault[],
): void {
  const { from, to } = span
  const good = isWhole(from) && isWhole(to) && from <= 1440 && to <= 1440 && from !== to
  if (!good) faults.push({ kind: 'badWindow', at, from, to })
  for (const value of [from, to]) checkOnGrid(problem, at, 'timeOfDay', value, faults)
}

function checkRules(problem: ScheduleProblem, faults: ProblemFault[]): void {
  const { rules } = problem
  const at = { of: 'houseRules' } as const
  if (rules.roomsOutOfUse !== null && !isWhole(rules.roomsOutOfUse)) {
    faults.push(badNumber('roomsOutOfUse', at, rules.roomsOutOfUse))
  }
  if (rules.noFumesWhileSleeping !== null) checkDailySpan(problem, at, rules.noFumesWhileSleeping, faults)
  const chores = [rules.dailyChores?.setUp, rules.dailyChores?.cleanUp, rules.alarmsRestoredDaily?.minutes]
  for (const minutes of chores) {
    if (minutes === undefined) continue
    if (!isWhole(minutes)) faults.push(badNumber('dailyChores', at, minutes))
    else checkOnGrid(problem, at, 'stretch', minutes, faults)
  }
}
