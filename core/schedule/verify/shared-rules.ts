import type { ScheduleProblem, TaskId } from '../model.ts'
import { type Entry, entriesByRoom } from './entry.ts'
import type { Violation } from './violation.ts'

/** A stretch of somebody's work. */
interface Worked {
  readonly task: TaskId
  readonly start: number
  readonly end: number
}

export function verifyPeople(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  const worked = new Map(problem.people.map(({ id }) => [id, [] as Worked[]]))
  for (const { task, planned, isFact } of entries) {
    if (isFact) continue
    for (const person of planned.people) {
      const own = worked.get(person)
      for (const { start, end } of planned.segments) own?.push({ task: task.id, start, end })
    }
  }
  for (const [person, own] of worked) {
    own.sort((one, other) => one.start - other.start)
    for (let index = 1; index < own.length; index++) {
      const [before, next] = [own[index - 1] as Worked, own[index] as Worked]
      if (before.end <= next.start) continue
      found.push({ rule: 'oneTaskPerPerson', person, tasks: [before.task, next.task], at: next.start })
    }
  }
}

export function verifyLinks(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  const byId = new Map(entries.map((entry) => [entry.task.id, entry]))
  for (const { from, to, measuredFrom, atLeast, atMost } of problem.links) {
    const early = byId.get(from)
    const late = byId.get(to)
    if (early === undefined || late === undefined) continue
    if (late.isFact || late.task.state.kind === 'started') continue
    const wait = late.planned.start - (measuredFrom === 'end' ? early.planned.end : early.planned.start)
    if (atLeast !== null && wait < atLeast) found.push({ rule: 'minimumWait', from, to, wait, atLeast })
    if (atMost !== null && wait > atMost) found.push({ rule: 'maximumWait', from, to, wait, atMost })
  }
}

export function verifyCapacities(
  problem: ScheduleProblem,
  entries: readonly Entry[],
  found: Violation[],
): void {
  for (const { id, capacity } of problem.resources) {
    const over = firstOverload(entries, capacity, ({ task }) => {
      return task.demands.reduce((sum, demand) => (demand.resource === id ? sum + demand.amount : sum), 0)
    })
    if (over !== undefined)
      found.push({ rule: 'resourceCapacity', resource: id, at: over.at, used: over.used })
  }
  const byRoom = entriesByRoom(entries)
  for (const room of problem.rooms) {
    const inRoom = byRoom.get(room.id) ?? []
    const tasks = room.tasksAtOnce === null ? undefined : firstOverload(inRoom, room.tasksAtOnce, () => 1)
    const people =
      room.peopleAtOnce === null
        ? undefined
        : firstOverload(inRoom, room.peopleAtOnce, ({ planned }) => planned.people.length)
    const over = tasks ?? people
    if (over !== undefined) found.push({ rule: 'roomCapacity', room: room.id, at: over.at })
  }
}

/** The first minute at which more is held than there is. */
function firstOverload(entries: readonly Entry[], capacity: number, amountOf: (entry: Entry) => number) {
  const changes: { readonly at: number; readonly amount: number }[] = []
  for (const entry of entries) {
    const amount = entry.isFact ? 0 : amountOf(entry)
    if (amount === 0) continue
    for (const { start, end } of entry.planned.segments)
      changes.push({ at: start, amount }, { at: end, amount: -amount })
  }
  changes.sort((one, other) => one.at - other.at || one.amount - other.amount)
  let used = 0
  for (const { at, amount } of changes) {
    used += amount
    if (used > capacity) return { at, used }
  }
  return undefined
}
