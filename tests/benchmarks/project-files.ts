import {
  epochMinutes,
  type Link,
  noEffects,
  noHouseRules,
  type ScheduleProblem,
  type Task,
} from '../../core/schedule/model.ts'
import { elapsedMinutes, workingMinutes } from '../../core/units/duration.ts'

/** A benchmark instance as its file says it: lags run from start to start. */
export interface ProjectInstance {
  readonly durations: readonly number[]
  readonly demands: readonly (readonly number[])[]
  readonly capacities: readonly number[]
  readonly lags: readonly { readonly from: number; readonly to: number; readonly lag: number }[]
}

function numbersOf(line: string | undefined): readonly number[] {
  return (line ?? '').match(/-?\d+/g)?.map(Number) ?? []
}

/** PSPLIB single-mode `.sm` text. */
export function readSm(text: string): ProjectInstance {
  const lines = text.split(/\r?\n/)
  const lineWith = (words: string): number => lines.findIndex((line) => line.startsWith(words))
  const count = numbersOf(lines.find((line) => line.startsWith('jobs')))[0] ?? 0
  const precedence = lineWith('PRECEDENCE RELATIONS') + 2
  const requests = lineWith('REQUESTS/DURATIONS') + 3
  const capacities = numbersOf(lines[lineWith('RESOURCEAVAILABILITIES') + 2])
  const rows = Array.from({ length: count }, (_, task) => numbersOf(lines[requests + task]))
  const durations = rows.map((row) => row[2] ?? 0)
  const lags = durations.flatMap((duration, from) => {
    const successors = numbersOf(lines[precedence + from]).slice(3)
    return successors.map((to) => ({ from, to: to - 1, lag: duration }))
  })
  return { durations, demands: rows.map((row) => row.slice(3)), capacities, lags }
}

/** ProGen/max `.sch` text. */
export function readSch(text: string): ProjectInstance {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '')
  const count = (numbersOf(lines[0])[0] ?? 0) + 2
  const lags = Array.from({ length: count }, (_, from) => {
    const row = numbersOf(lines[1 + from])
    const arcs = row[2] ?? 0
    return Array.from({ length: arcs }, (_, arc) => ({
      from,
      to: row[3 + arc] ?? 0,
      lag: row[3 + arcs + arc] ?? 0,
    }))
  }).flat()
  const rows = Array.from({ length: count }, (_, task) => numbersOf(lines[1 + count + task]))
  const capacities = numbersOf(lines[1 + 2 * count])
  return {
    durations: rows.map((row) => row[2] ?? 0),
    demands: rows.map((row) => row.slice(3)),
    capacities,
    lags,
  }
}

/** The instance as a scheduling problem on an unbroken clock, one minute to the grid step. */
export function problemOf(instance: ProjectInstance): ScheduleProblem {
  const tasks = instance.durations.map((duration, index): Task => {
    const amounts = instance.demands[index] ?? []
    return {
      id: `${index}`,
      work: workingMinutes(duration),
      crew: { min: 0, max: 0 },
      skills: [],
      room: null,
      splitting: 'none',
      effects: noEffects,
      product: null,
      earliestStart: null,
      state: { kind: 'open' },
      demands: amounts.flatMap((amount, resource) =>
        amount > 0 ? [{ resource: `r${resource}`, amount }] : [],
      ),
    }
  })
  return {
    clock: { kind: 'unbroken', start: epochMinutes(0) },
    gridMinutes: 1,
    tasks,
    links: instance.lags.map((lag) => linkOf(instance, lag)),
    people: [],
    resources: instance.capacities.map((capacity, index) => ({ id: `r${index}`, capacity })),
    rooms: [],
    rules: noHouseRules,
    promises: [],
  }
}

function linkOf(instance: ProjectInstance, { from, to, lag }: ProjectInstance['lags'][number]): Link {
  const duration = instance.durations[from] ?? 0
  const base = { from: `${from}`, to: `${to}`, atMost: null }
  if (lag >= duration) return { ...base, measuredFrom: 'end', atLeast: elapsedMinutes(lag - duration) }
  return { ...base, measuredFrom: 'start', atLeast: elapsedMinutes(lag) }
}

/** Longest path from the first to the last task over all lags. */
export function criticalPathOf(instance: ProjectInstance): number {
  const heads = instance.durations.map(() => 0)
  for (let round = 0; round < heads.length; round++) {
    for (const { from, to, lag } of instance.lags)
      heads[to] = Math.max(heads[to] ?? 0, (heads[from] ?? 0) + lag)
  }
  return Math.max(...heads.map((head, task) => head + (instance.durations[task] ?? 0)))
}

/** Lags and capacities broken by these starts, counted straight from the file's own numbers, minute by minute. */
export function countViolations(instance: ProjectInstance, starts: readonly number[]): number {
  let broken = instance.lags.filter(
    ({ from, to, lag }) => (starts[to] ?? 0) - (starts[from] ?? 0) < lag,
  ).length
  broken += starts.filter((start) => start < 0 || !Number.isInteger(start)).length
  const end = Math.max(...starts.map((start, task) => start + (instance.durations[task] ?? 0)))
  for (const [resource, capacity] of instance.capacities.entries()) {
    const used = new Int32Array(end)
    for (const [task, start] of starts.entries()) {
      for (let minute = start; minute < start + (instance.durations[task] ?? 0); minute++) {
        used[minute] = (used[minute] ?? 0) + (instance.demands[task]?.[resource] ?? 0)
      }
    }
    broken += used.filter((amount) => amount > capacity).length
  }
  return broken
}
