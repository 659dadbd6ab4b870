import type { ScheduleProblem } from '../model.ts'

/**
 * A problem without people, rooms and calendars: tasks of fixed length, pooled resources, waits from start to start.
 * All in grid steps. This is the resource-constrained project problem of the literature, with or without maximum waits.
 */
export interface PlainNet {
  readonly problem: ScheduleProblem
  readonly count: number
  readonly durations: Int32Array
  /** Row per task of demands for each resource. */
  readonly demands: readonly Int32Array[]
  readonly capacities: readonly number[]
  /** `start(to) - start(from) >= lag`; negative lags are maximum waits written backwards. */
  readonly arcs: readonly { readonly from: number; readonly to: number; readonly lag: number }[]
  /** Every arc waits for the end of its first task. */
  readonly isFinishToStart: boolean
  /** No sensible plan lasts longer. */
  readonly horizon: number
}

export function isPlain(problem: ScheduleProblem): boolean {
  if (problem.clock.kind !== 'unbroken' || problem.promises.length > 0) return false
  return problem.tasks.every((task) => {
    return (
      task.state.kind === 'open' && task.crew.max === 0 && task.earliestStart === null && task.room === null
    )
  })
}

/** Needs a problem without faults for which `isPlain` holds. */
export function buildPlainNet(problem: ScheduleProblem): PlainNet {
  const grid = problem.gridMinutes
  const indexOf = new Map(problem.tasks.map((task, index) => [task.id, index]))
  const durations = Int32Array.from(problem.tasks, (task) => Math.ceil(task.work / grid))
  const demands = problem.tasks.map((task) => {
    return Int32Array.from(problem.resources, ({ id }) => {
      return task.demands.reduce((sum, demand) => (demand.resource === id ? sum + demand.amount : sum), 0)
    })
  })
  const arcs = problem.links.flatMap((link) => {
    const from = indexOf.get(link.from) ?? -1
    const to = indexOf.get(link.to) ?? -1
    const base = link.measuredFrom === 'end' ? (durations[from] ?? 0) : 0
    const least = link.atLeast === null ? [] : [{ from, to, lag: base + Math.ceil(link.atLeast / grid) }]
    const most =
      link.atMost === null ? [] : [{ from: to, to: from, lag: -(base + Math.floor(link.atMost / grid)) }]
    return [...least, ...most]
  })
  const longest = durations.map((duration, task) => {
    return arcs.reduce((most, arc) => (arc.from === task ? Math.max(most, arc.lag) : most), duration)
  })
  return {
    problem,
    count: problem.tasks.length,
    durations,
    demands,
    capacities: problem.resources.map((resource) => resource.capacity),
    arcs,
    isFinishToStart: arcs.every((arc) => arc.lag >= (durations[arc.from] ?? 0)),
    horizon: longest.reduce((sum, length) => sum + length, 0) + 1,
  }
}

/** The same net with time running backwards: start becomes `-end`. */
export function mirrorPlainNet(net: PlainNet): PlainNet {
  const arcs = net.arcs.map(({ from, to, lag }) => {
    return { from: to, to: from, lag: lag + (net.durations[to] ?? 0) - (net.durations[from] ?? 0) }
  })
  return { ...net, arcs }
}

/** Rows of (task, lag) kept flat. */
export interface LagRows {
  readonly start: Int32Array
  readonly task: Int32Array
  readonly lag: Int32Array
}

/** For each task the arcs that come in (`to`) or go out (`from`). */
export function lagRows(net: PlainNet, by: 'from' | 'to'): LagRows {
  const rows: (readonly [number, number])[][] = Array.from({ length: net.count }, () => [])
  for (const arc of net.arcs) rows[arc[by]]?.push([by === 'to' ? arc.from : arc.to, arc.lag])
  const start = new Int32Array(net.count + 1)
  for (const [task, row] of rows.entries()) start[task + 1] = (start[task] as number) + row.length
  const flat = rows.flat()
  return { start, task: Int32Array.from(flat, (row) => row[0]), lag: Int32Array.from(flat, (row) => row[1]) }
}
