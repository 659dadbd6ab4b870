import type { Person, PersonId, PlanSegment, ScheduleProblem, Task } from '../model.ts'
import type { Entry } from './entry.ts'
import { atChores, here, type Presence, type Presences } from './presence.ts'
import type { Violation } from './violation.ts'
import { localDay } from './wall-clock.ts'

export function verifyShape(
  problem: ScheduleProblem,
  { task, planned, isFact }: Entry,
  found: Violation[],
): void {
  const { segments } = planned
  const first = segments[0]?.start ?? planned.start
  const last = segments[segments.length - 1]?.end ?? planned.end
  const isOrdered = segments.every((segment, index) => {
    return segment.start < segment.end && (index === 0 || (segments[index - 1]?.end ?? 0) < segment.start)
  })
  const startsRight =
    task.state.kind === 'started' ? planned.start === task.state.start : planned.start === first
  if (!isOrdered || !startsRight || planned.end !== last || planned.end < planned.start) {
    found.push({ rule: 'segmentsInOrder', task: task.id })
  }
  if (isFact) return
  const base = problem.clock.kind === 'unbroken' ? problem.clock.start : 0
  for (const { start, end } of segments) {
    for (const at of [start, end]) {
      if ((at - base) % problem.gridMinutes !== 0) found.push({ rule: 'onGrid', task: task.id, at })
    }
  }
}

export function verifyFacts(problem: ScheduleProblem, { task, planned }: Entry, found: Violation[]): void {
  const { state } = task
  const samePeople = (people: readonly PersonId[]): boolean =>
    people.length === planned.people.length && people.every((person) => planned.people.includes(person))
  if (state.kind === 'done') {
    const kept = planned.start === state.start && planned.end === state.end && samePeople(state.people)
    if (!kept) found.push({ rule: 'factsKept', task: task.id })
    return
  }
  if (state.kind === 'started' && !samePeople(state.people)) found.push({ rule: 'factsKept', task: task.id })
  if (state.kind === 'pinned') {
    const kept = planned.start === state.start && (state.people === null || samePeople(state.people))
    if (!kept) found.push({ rule: 'factsKept', task: task.id })
  }
  const firstNew = planned.segments[0]?.start ?? planned.end
  if (firstNew < problem.clock.start) found.push({ rule: 'notBefore', task: task.id, at: firstNew })
  if (state.kind !== 'started' && task.earliestStart !== null && planned.start < task.earliestStart) {
    found.push({ rule: 'notBefore', task: task.id, at: planned.start })
  }
}

export function verifyCrew(
  problem: ScheduleProblem,
  presences: Presences,
  entry: Entry,
  found: Violation[],
): void {
  const { task, planned } = entry
  const people = planned.people.map((id) => problem.people.find((person) => person.id === id))
  const work = task.state.kind === 'started' ? task.state.remainingWork : task.work
  const size = people.length
  const isNamed = task.state.kind !== 'open' && task.state.people !== null
  const hasSize = isNamed || (size >= task.crew.min && size <= task.crew.max)
  const isRepeated = new Set(planned.people).size !== size
  if ((work > 0 && !hasSize) || isRepeated || people.includes(undefined)) {
    found.push({ rule: 'crewSize', task: task.id, people: planned.people })
  }
  const grid = problem.gridMinutes
  const needed = Math.ceil(work / Math.max(1, size) / grid) * grid
  const worked = planned.segments.reduce((sum, { start, end }) => sum + end - start, 0)
  if (worked !== needed) found.push({ rule: 'workDone', task: task.id, planned: worked, needed })
  for (const person of people) {
    if (person === undefined || isNamed) continue
    if (!task.skills.every((skill) => person.skills.includes(skill))) {
      found.push({ rule: 'skills', task: task.id, person: person.id })
    }
  }
  if (problem.clock.kind === 'unbroken') {
    if (planned.segments.length > 1) found.push({ rule: 'pauses', task: task.id, at: planned.start })
    return
  }
  verifyPresence(
    presences,
    entry,
    people.filter((person) => person !== undefined),
    found,
  )
}

/** Every worked minute everybody is there; every minute of a pause somebody is not, and the pause is one the task allows. */
function verifyPresence(
  presences: Presences,
  { task, planned }: Entry,
  crew: readonly Person[],
  found: Violation[],
): void {
  const { segments } = planned
  if (segments.length === 0) return
  const everybody = crew.length === 0 ? [presences.of(null)] : crew.map(presences.of)
  for (let index = 0; index < segments.length; index++) {
    const { start, end } = segments[index] as PlanSegment
    for (const [who, there] of everybody.entries()) {
      const at = firstNotHere(presences, there, start, end)
      if (at === undefined) continue
      const rule = there[at - presences.clock.from] === atChores ? 'choresAtDaysEnds' : 'personPresent'
      found.push({ rule, task: task.id, person: crew[who]?.id ?? '', at })
    }
    const next = segments[index + 1]
    if (next !== undefined) verifyPause(presences, task, end, next.start, everybody, found)
  }
}

function firstNotHere({ clock }: Presences, there: Presence, from: number, to: number): number | undefined {
  for (let at = from; at < to; at++) if (there[at - clock.from] !== here) return at
  return undefined
}

function verifyPause(
  { clock }: Presences,
  task: Task,
  from: number,
  to: number,
  everybody: readonly Presence[],
  found: Violation[],
): void {
  const isOverNight = localDay(clock, from - 1) !== localDay(clock, to)
  const isAllowed = task.splitting === 'night' || (task.splitting === 'break' && !isOverNight)
  if (!isAllowed) found.push({ rule: 'pauses', task: task.id, at: from })
  const at = firstAllHere(everybody, Math.max(0, from - clock.from), to - clock.from)
  if (at !== undefined) found.push({ rule: 'pauses', task: task.id, at: clock.from + at })
}

function firstAllHere([first, ...others]: readonly Presence[], from: number, to: number): number | undefined {
  for (let at = first?.indexOf(here, from) ?? -1; at >= 0 && at < to; at = first?.indexOf(here, at + 1) ?? -1)
    if (others.every((there) => there[at] === here)) return at
  return undefined
}
