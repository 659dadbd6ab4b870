import { type Link, nothingKept, type ScheduleProblem, type Task } from '../../core/schedule/model.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { elapsedMinutes, workingMinutes } from '../../core/units/duration.ts'
import { noEffects, noPlanRules } from '../fixtures/plain-rules.ts'

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

function linesOf(text: string): readonly string[] {
  return text
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim().replace(/\s+/g, ' '))
    .filter((line) => line !== '')
}

/** PSPLIB single-mode `.sm` text; throws an error in words when it is not one. */
export function readSm(text: string): ProjectInstance {
  const lines = linesOf(text)
  const rowsUnder = (heading: string): readonly (readonly number[])[] => {
    const at = lines.findIndex((line) => line.toUpperCase().startsWith(heading))
    if (at === -1) throw new Error(`no heading ${heading}`)
    const rest = lines.slice(at + 1)
    const end = rest.findIndex((line) => line.startsWith('*'))
    return (end === -1 ? rest : rest.slice(0, end)).filter((line) => /^\d/.test(line)).map(numbersOf)
  }
  const precedence = rowsUnder('PRECEDENCE RELATIONS')
  const rows = rowsUnder('REQUESTS/DURATIONS')
  if (precedence.some((row) => row[1] !== 1)) throw new Error('tasks with more than one mode')
  if (precedence.some((row) => row.length < 3 + (row[2] ?? 0))) throw new Error('a task lacks successors')
  if (precedence.length !== rows.length) throw new Error('tasks without a row of successors or of demands')
  const durations = rows.map((row) => row[2] ?? 0)
  const lags = durations.flatMap((duration, from) => {
    const successors = precedence[from]?.slice(3, 3 + (precedence[from]?.[2] ?? 0)) ?? []
    return successors.map((to) => ({ from, to: to - 1, lag: duration }))
  })
  const capacities = rowsUnder('RESOURCEAVAILABILITIES').flat()
  return checked({ durations, demands: rows.map((row) => row.slice(3)), capacities, lags })
}

/** ProGen/max `.sch` text; throws an error in words when it is not one. */
export function readSch(text: string): ProjectInstance {
  const lines = linesOf(text)
  const [real, resources = 0] = numbersOf(lines[0])
  if (real === undefined) throw new Error('no number of tasks in the first line')
  const count = real + 2
  if (lines.length < 2 + 2 * count) throw new Error(`fewer lines than ${count} tasks need`)
  const lags = Array.from({ length: count }, (_, from) => {
    const row = numbersOf(lines[1 + from])
    const arcs = row[2] ?? 0
    if (row[0] !== from || row.length !== 3 + 2 * arcs)
      throw new Error(`arcs of task ${from} are not in form`)
    return Array.from({ length: arcs }, (_, arc) => ({
      from,
      to: row[3 + arc] ?? 0,
      lag: row[3 + arcs + arc] ?? 0,
    }))
  }).flat()
  const rows = Array.from({ length: count }, (_, task) => numbersOf(lines[1 + count + task]))
  const capacities = numbersOf(lines[1 + 2 * count]).slice(0, resources)
  return checked({
    durations: rows.map((row) => row[2] ?? 0),
    demands: rows.map((row) => row.slice(3)),
    capacities,
    lags,
  })
}

function checked(instance: ProjectInstance): ProjectInstance {
  const { durations, demands, capacities, lags } = instance
  if (durations.length === 0) throw new Error('no tasks')
  if (durations.some((duration) => duration < 0)) throw new Error('a duration below 0')
  const oddDemands = demands.findIndex((row) => row.length !== capacities.length)
  if (oddDemands !== -1)
    throw new Error(`row ${oddDemands + 1} of demands does not fit ${capacities.length} capacities`)
  const lost = lags.find(({ to }) => to < 0 || to >= durations.length)
  if (lost !== undefined) throw new Error(`row ${lost.from + 1} leads to a task that is not there`)
  return instance
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
      breaking: 'never',
      smallestPart: workingMinutes(0),
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
    rules: noPlanRules,
    spending: { moving: 0, changingProduct: 0, leastPaid: 0 },
    prices: { siteDay: 10_000, handOver: 0, takeUp: 0 },
    keeping: nothingKept,
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
