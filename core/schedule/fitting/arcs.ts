import { isBegun, type ScheduleProblem } from '../model.ts'
import { ticksUp } from './numbers.ts'

/** `start(after) >= start or end(before) + ticks`. Sorted by `after` in `into`, so that those of a task lie together. */
export interface Arcs {
  /** For each task where its arcs in begin; one more entry for the end. */
  readonly intoAt: Int32Array
  readonly before: Int32Array
  readonly ticks: Int32Array
  readonly fromStart: Uint8Array
  /** For each task those that wait for it. */
  readonly outOf: readonly (readonly number[])[]
  /** `start(later) <= start or end(earlier) + ticks`, by each of both ends. */
  readonly latest: readonly (readonly Latest[])[]
}

interface Latest {
  readonly earlier: number
  readonly later: number
  readonly ticks: number
  readonly fromStart: boolean
}

interface Arc {
  readonly before: number
  readonly after: number
  readonly ticks: number
  readonly fromStart: boolean
}

/**
 * Waits between tasks in ticks: least ones rounded up, longest ones down. Those into tasks that have begun are facts and left
 * out.
 */
export function buildArcs(problem: ScheduleProblem): Arcs {
  const { tasks, gridMinutes: grid } = problem
  const index = new Map(tasks.map(({ id }, at) => [id, at]))
  const arcs: Arc[] = [...hallArcs(problem, index)]
  const limits: Latest[] = []
  for (const link of problem.links) {
    const before = index.get(link.from) as number
    const after = index.get(link.to) as number
    const fromStart = link.measuredFrom === 'start'
    if (link.atLeast !== null && link.atLeast >= 0)
      arcs.push({ before, after, ticks: ticksUp(link.atLeast, grid), fromStart })
    // A negative wait is a longest wait said backwards.
    if (link.atLeast !== null && link.atLeast < 0)
      limits.push({ earlier: after, later: before, ticks: Math.floor(-link.atLeast / grid), fromStart: true })
    if (link.atMost !== null)
      limits.push({ earlier: before, later: after, ticks: Math.floor(link.atMost / grid), fromStart })
  }
  const judged = arcs.filter(({ after }) => !isBegun(tasks[after] as { state: { kind: 'open' } }))
  const sorted = judged.toSorted((one, other) => one.after - other.after)
  const intoAt = new Int32Array(tasks.length + 1)
  for (const { after } of sorted) intoAt[after + 1] = (intoAt[after + 1] as number) + 1
  for (let at = 0; at < tasks.length; at++)
    intoAt[at + 1] = (intoAt[at + 1] as number) + (intoAt[at] as number)
  const outOf = tasks.map((): number[] => [])
  for (const { before, after } of judged) outOf[before]?.push(after)
  const latest = tasks.map((): Latest[] => [])
  for (const limit of limits) {
    latest[limit.earlier]?.push(limit)
    latest[limit.later]?.push(limit)
  }
  return {
    intoAt,
    before: Int32Array.from(sorted, (arc) => arc.before),
    ticks: Int32Array.from(sorted, (arc) => arc.ticks),
    fromStart: Uint8Array.from(sorted, (arc) => (arc.fromStart ? 1 : 0)),
    outOf,
    latest,
  }
}

/** From what ends a room behind a hall to what begins the hall; rooms that are ways out themselves do not count. */
function hallArcs(problem: ScheduleProblem, index: ReadonlyMap<string, number>): readonly Arc[] {
  if (!problem.rules.hallsLast) return []
  const ways = new Set(problem.rooms.flatMap(({ reachedThrough }) => reachedThrough))
  const preceded = new Set(
    problem.links.flatMap(({ from, to, atLeast }) =>
      isOrder(problem, index, from, to, atLeast) ? [to] : [],
    ),
  )
  const followed = new Set(
    problem.links.flatMap(({ from, to, atLeast }) =>
      isOrder(problem, index, from, to, atLeast) ? [from] : [],
    ),
  )
  return problem.rooms.flatMap(({ id, reachedThrough }) => {
    if (ways.has(id)) return []
    const lasts = problem.tasks.filter((task) => task.room === id && !followed.has(task.id))
    return reachedThrough.flatMap((hall) => {
      const firsts = problem.tasks.filter((task) => task.room === hall && !preceded.has(task.id))
      return lasts.flatMap((last) =>
        firsts.map((first) => ({
          before: index.get(last.id) as number,
          after: index.get(first.id) as number,
          ticks: 0,
          fromStart: false,
        })),
      )
    })
  })
}

/** An order within one room, so that whoever is last or first of it is found. */
function isOrder(
  { tasks }: ScheduleProblem,
  index: ReadonlyMap<string, number>,
  from: string,
  to: string,
  atLeast: number | null,
): boolean {
  const [one, other] = [tasks[index.get(from) as number], tasks[index.get(to) as number]]
  return (
    atLeast !== null && atLeast >= 0 && one?.room === other?.room && other !== undefined && !isBegun(other)
  )
}
