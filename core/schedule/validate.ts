import type { DayWindow, Link, Person, ScheduleProblem, Task } from './model.ts'

/** Why a problem cannot be handed to the search at all. Ids are those of the problem. */
export type ProblemFault =
  | {
      readonly kind: 'duplicateId'
      readonly what: 'task' | 'person' | 'room' | 'resource'
      readonly id: string
    }
  | {
      readonly kind: 'unknownId'
      readonly what: 'task' | 'person' | 'room' | 'resource'
      readonly id: string
      readonly usedBy: string
    }
  | { readonly kind: 'badNumber'; readonly what: string; readonly usedBy: string; readonly value: number }
  | { readonly kind: 'badWindow'; readonly usedBy: string; readonly from: number; readonly to: number }
  | {
      readonly kind: 'offGrid'
      readonly usedBy: string
      readonly value: number
      readonly gridMinutes: number
    }
  | { readonly kind: 'badDate'; readonly usedBy: string; readonly date: string }
  | { readonly kind: 'unknownTimeZone'; readonly timeZone: string }
  | { readonly kind: 'emptyLink'; readonly from: string; readonly to: string }
  | { readonly kind: 'needsSiteClock'; readonly usedBy: string }
  | { readonly kind: 'tooManyPeople'; readonly count: number; readonly limit: number }

/** People are kept as bits of one 32-bit word. */
export const mostPeople = 30

/** Every fault of the problem; an empty list means the search and the bounds may be called. */
export function validateProblem(problem: ScheduleProblem): readonly ProblemFault[] {
  const faults: ProblemFault[] = []
  checkIds(problem, faults)
  checkClock(problem, faults)
  for (const person of problem.people) checkPerson(problem, person, faults)
  for (const task of problem.tasks) checkTask(problem, task, faults)
  for (const link of problem.links) checkLink(problem, link, faults)
  for (const resource of problem.resources) {
    if (!isWhole(resource.capacity)) faults.push(badNumber('capacity', resource.id, resource.capacity))
  }
  checkRooms(problem, faults)
  checkRules(problem, faults)
  return faults
}

function isWhole(value: number): boolean {
  return Number.isSafeInteger(value) && value >= 0
}

function badNumber(what: string, usedBy: string, value: number): ProblemFault {
  return { kind: 'badNumber', what, usedBy, value }
}

function checkIds(problem: ScheduleProblem, faults: ProblemFault[]): void {
  const lists = [
    ['task', problem.tasks],
    ['person', problem.people],
    ['room', problem.rooms],
    ['resource', problem.resources],
  ] as const
  for (const [what, list] of lists) {
    const seen = new Set<string>()
    for (const { id } of list) {
      if (seen.has(id)) faults.push({ kind: 'duplicateId', what, id })
      seen.add(id)
    }
  }
  if (problem.people.length > mostPeople) {
    faults.push({ kind: 'tooManyPeople', count: problem.people.length, limit: mostPeople })
  }
}

function checkClock(problem: ScheduleProblem, faults: ProblemFault[]): void {
  const { clock, gridMinutes } = problem
  if (!isWhole(gridMinutes) || gridMinutes < 1) faults.push(badNumber('gridMinutes', 'problem', gridMinutes))
  if (!Number.isSafeInteger(clock.start)) faults.push(badNumber('start', 'clock', clock.start))
  if (clock.kind === 'unbroken') {
    if (problem.people.length > 0) faults.push({ kind: 'needsSiteClock', usedBy: 'people' })
    if (problem.rooms.length > 0) faults.push({ kind: 'needsSiteClock', usedBy: 'rooms' })
    return
  }
  if (!isTimeZone(clock.timeZone)) faults.push({ kind: 'unknownTimeZone', timeZone: clock.timeZone })
  for (const day of clock.siteHours) checkWindows(problem, 'siteHours', day, faults)
  for (const date of clock.holidays) checkDate('holidays', date, faults)
}

function isTimeZone(timeZone: string): boolean {
  try {
    new Intl.DateTimeFormat('en-US', { timeZone })
    return true
  } catch {
    return false
  }
}

function checkWindows(
  problem: ScheduleProblem,
  usedBy: string,
  windows: readonly DayWindow[],
  faults: ProblemFault[],
): void {
  for (const { from, to } of windows) {
    if (!(isWhole(from) && isWhole(to) && from < to && to <= 1440))
      faults.push({ kind: 'badWindow', usedBy, from, to })
    for (const value of [from, to]) checkOnGrid(problem, usedBy, value, faults)
  }
}

function checkOnGrid(problem: ScheduleProblem, usedBy: string, value: number, faults: ProblemFault[]): void {
  if (value % problem.gridMinutes !== 0) {
    faults.push({ kind: 'offGrid', usedBy, value, gridMinutes: problem.gridMinutes })
  }
}

function checkDate(usedBy: string, date: string, faults: ProblemFault[]): void {
  const good = /^\d{4}-\d{2}-\d{2}$/.test(date) && !Number.isNaN(Date.parse(`${date}T00:00Z`))
  if (!good) faults.push({ kind: 'badDate', usedBy, date })
}

function checkPerson(problem: ScheduleProblem, person: Person, faults: ProblemFault[]): void {
  for (const day of person.week) checkWindows(problem, person.id, day, faults)
  checkWindows(problem, person.id, person.breaks, faults)
  for (const date of person.daysOff) checkDate(person.id, date, faults)
  for (const partDay of person.partDays) {
    checkDate(person.id, partDay.date, faults)
    checkWindows(problem, person.id, partDay.windows, faults)
  }
}

function checkTask(problem: ScheduleProblem, task: Task, faults: ProblemFault[]): void {
  const { min, max } = task.crew
  if (!isWhole(task.work)) faults.push(badNumber('work', task.id, task.work))
  if (!isWhole(min) || !isWhole(max) || min > max) faults.push(badNumber('crew', task.id, max))
  if (min === 0 && max > 0) faults.push(badNumber('crew', task.id, min))
  if (max > 0 && problem.clock.kind === 'unbroken') faults.push({ kind: 'needsSiteClock', usedBy: task.id })
  const { wetFor, fumesFor, closedFor } = task.effects
  for (const value of [wetFor, fumesFor, closedFor]) {
    if (value !== null && !isWhole(value)) faults.push(badNumber('effects', task.id, value))
  }
  checkKnown(problem.rooms, 'room', task.room, task.id, faults)
  for (const { resource, amount } of task.demands) {
    checkKnown(problem.resources, 'resource', resource, task.id, faults)
    if (!isWhole(amount)) faults.push(badNumber('amount', task.id, amount))
  }
  checkState(problem, task, faults)
}

function checkState(problem: ScheduleProblem, task: Task, faults: ProblemFault[]): void {
  const { state } = task
  if (state.kind === 'open') return
  for (const person of state.people ?? []) checkKnown(problem.people, 'person', person, task.id, faults)
  if (state.kind === 'pinned') {
    const offset = state.start % problem.gridMinutes
    if (offset !== 0)
      faults.push({ kind: 'offGrid', usedBy: task.id, value: state.start, gridMinutes: problem.gridMinutes })
    if (state.start < problem.clock.start) faults.push(badNumber('pinned start', task.id, state.start))
  }
  if (state.kind === 'started' && state.start > problem.clock.start)
    faults.push(badNumber('started', task.id, state.start))
  if (state.kind === 'started' && state.people.length === 0 && task.crew.max > 0) {
    faults.push(badNumber('people', task.id, 0))
  }
  if (state.kind === 'done' && state.end < state.start) faults.push(badNumber('done', task.id, state.end))
}

function checkKnown(
  list: readonly { readonly id: string }[],
  what: 'task' | 'person' | 'room' | 'resource',
  id: string | null,
  usedBy: string,
  faults: ProblemFault[],
): void {
  if (id !== null && !list.some((entry) => entry.id === id))
    faults.push({ kind: 'unknownId', what, id, usedBy })
}

function checkLink(problem: ScheduleProblem, link: Link, faults: ProblemFault[]): void {
  const usedBy = `${link.from} -> ${link.to}`
  checkKnown(problem.tasks, 'task', link.from, usedBy, faults)
  checkKnown(problem.tasks, 'task', link.to, usedBy, faults)
  for (const value of [link.atLeast, link.atMost]) {
    if (value !== null && !Number.isSafeInteger(value)) faults.push(badNumber('lag', usedBy, value))
  }
  const empty = link.atLeast !== null && link.atMost !== null && link.atLeast > link.atMost
  if (empty) faults.push({ kind: 'emptyLink', from: link.from, to: link.to })
  if (link.measuredFrom === 'end' && link.atLeast !== null && link.atLeast < 0) {
    faults.push(badNumber('lag', usedBy, link.atLeast))
  }
}

function checkRooms(problem: ScheduleProblem, faults: ProblemFault[]): void {
  for (const room of problem.rooms) {
    for (const id of [...room.openTo, ...room.reachedThrough])
      checkKnown(problem.rooms, 'room', id, room.id, faults)
    if (room.neededDaily !== null) checkDailySpan(problem, room.id, room.neededDaily, faults)
  }
}

function checkDailySpan(
  problem: ScheduleProblem,
  usedBy: string,
  span: DayWindow,
  faults: ProblemFault[],
): void {
  const { from, to } = span
  const good = isWhole(from) && isWhole(to) && from <= 1440 && to <= 1440 && from !== to
  if (!good) faults.push({ kind: 'badWindow', usedBy, from, to })
  for (const value of [from, to]) checkOnGrid(problem, usedBy, value, faults)
}

function checkRules(problem: ScheduleProblem, faults: ProblemFault[]): void {
  const { rules } = problem
  if (rules.roomsOutOfUse !== null && !isWhole(rules.roomsOutOfUse)) {
    faults.push(badNumber('roomsOutOfUse', 'rules', rules.roomsOutOfUse))
  }
  if (rules.noFumesWhileSleeping !== null)
    checkDailySpan(problem, 'noFumesWhileSleeping', rules.noFumesWhileSleeping, faults)
  const chores = [rules.dailyChores?.setUp, rules.dailyChores?.cleanUp, rules.alarmsRestoredDaily?.minutes]
  for (const minutes of chores) {
    if (minutes === undefined) continue
    if (!isWhole(minutes)) faults.push(badNumber('dailyChores', 'rules', minutes))
    else checkOnGrid(problem, 'dailyChores', minutes, faults)
  }
}
