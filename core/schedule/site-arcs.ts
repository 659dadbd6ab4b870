import type { Axis } from './axis.ts'
import type { Link, ScheduleProblem, Task } from './model.ts'
import { type Arc, endSide, type Neighbours, never, startSide } from './site-net.ts'

/** Ticks between which a task may start because of facts it waits for. */
export interface StartLimits {
  readonly release: number
  readonly startBy: number
}

/** Links in ticks: minimum waits rounded up, maximum waits down. Links from facts become limits by task, exact to the minute. */
export function siteArcs(
  problem: ScheduleProblem,
  axis: Axis,
): { readonly arcs: readonly Arc[]; readonly limits: readonly StartLimits[] } {
  const limits = problem.tasks.map(() => ({ release: -never, startBy: never }))
  const arcs: Arc[] = []
  const indexOf = new Map(problem.tasks.map((task, index) => [task.id, index]))
  for (const link of problem.links) {
    const from = indexOf.get(link.from) as number
    const to = indexOf.get(link.to) as number
    const toState = problem.tasks[to]?.state.kind
    if (toState === 'done' || toState === 'started') continue
    const fact = factInstant(problem.tasks[from] as Task, link.measuredFrom)
    const limit = limits[to] as { release: number; startBy: number }
    if (fact === null) arcs.push(...tickArcs(axis.grid, from, to, link))
    if (fact !== null && link.atLeast !== null)
      limit.release = Math.max(limit.release, Math.ceil((fact + link.atLeast - axis.origin) / axis.grid))
    if (fact !== null && link.atMost !== null)
      limit.startBy = Math.min(limit.startBy, Math.floor((fact + link.atMost - axis.origin) / axis.grid))
  }
  return { arcs: [...arcs, ...hallsLastArcs(problem)], limits }
}

function factInstant({ state }: Task, side: 'start' | 'end'): number | null {
  if (state.kind === 'done') return side === 'end' ? state.end : state.start
  return state.kind === 'started' && side === 'start' ? state.start : null
}

function tickArcs(
  grid: number,
  from: number,
  to: number,
  { measuredFrom, atLeast, atMost }: Link,
): readonly Arc[] {
  const fromSide = measuredFrom === 'end' ? endSide : startSide
  const least = atLeast === null ? -never : Math.ceil(atLeast / grid)
  const most = atMost === null ? never : Math.floor(atMost / grid)
  if (least >= 0 || least === -never)
    return [{ from, fromSide, to, toSide: startSide, atLeast: least, atMost: most }]
  const backwards = {
    from: to,
    fromSide: startSide,
    to: from,
    toSide: fromSide,
    atLeast: -never,
    atMost: -least,
  }
  if (most === never) return [backwards]
  return [backwards, { from, fromSide, to, toSide: startSide, atLeast: -never, atMost: most }]
}

function hallsLastArcs(problem: ScheduleProblem): readonly Arc[] {
  const arcs: Arc[] = []
  if (!problem.rules.hallsLast) return arcs
  const behind = tasksBehind(problem)
  for (const [to, { room, effects, state }] of problem.tasks.entries()) {
    const isBlocking = effects.wetFor !== null || effects.closedFor !== null
    if (!isBlocking || room === null || state.kind === 'done' || state.kind === 'started') continue
    for (const from of behind.get(room) ?? []) {
      if (from !== to)
        arcs.push({ from, fromSide: endSide, to, toSide: startSide, atLeast: 0, atMost: never })
    }
  }
  return arcs
}

/** For each hall or stair the tasks, not yet done, in the rooms reached through it. */
function tasksBehind(problem: ScheduleProblem): ReadonlyMap<string, readonly number[]> {
  const halls = new Map(problem.rooms.map((room) => [room.id, new Set(room.reachedThrough)]))
  const behind = new Map<string, number[]>(problem.rooms.map((room) => [room.id, []]))
  for (const [index, { room, state }] of problem.tasks.entries()) {
    if (room === null || state.kind === 'done') continue
    for (const hall of halls.get(room) ?? []) behind.get(hall)?.push(index)
  }
  return behind
}

export function neighboursOf(count: number, arcs: readonly Arc[]): Neighbours {
  const rowStart = new Int32Array(count + 1)
  for (const { from, to } of arcs) {
    rowStart[from + 1] = (rowStart[from + 1] as number) + 1
    rowStart[to + 1] = (rowStart[to + 1] as number) + 1
  }
  for (let task = 0; task < count; task++)
    rowStart[task + 1] = (rowStart[task + 1] as number) + (rowStart[task] as number)
  const rows: Neighbours = {
    rowStart,
    other: new Int32Array(2 * arcs.length),
    otherSide: new Uint8Array(2 * arcs.length),
    mySide: new Uint8Array(2 * arcs.length),
    least: new Int32Array(2 * arcs.length),
    most: new Int32Array(2 * arcs.length),
  }
  const next = rowStart.slice()
  for (const { from, fromSide, to, toSide, atLeast, atMost } of arcs) {
    const late = next[to] as number
    next[to] = late + 1
    rows.other[late] = from
    rows.otherSide[late] = fromSide
    rows.mySide[late] = toSide
    rows.least[late] = atLeast
    rows.most[late] = atMost
    const early = next[from] as number
    next[from] = early + 1
    rows.other[early] = to
    rows.otherSide[early] = toSide
    rows.mySide[early] = fromSide
    rows.least[early] = -atMost
    rows.most[early] = -atLeast
  }
  return rows
}
