import type { Axis } from '../axis.ts'
import { isBegun, type Link, type ScheduleProblem, type ScheduleRoomId, type Task } from '../model.ts'
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
    if (isBegun(problem.tasks[to] as Task)) continue
    const fact = factInstant(problem.tasks[from] as Task, link.measuredFrom)
    const limit = limits[to] as { release: number; startBy: number }
    if (fact === null) arcs.push(...tickArcs(axis.grid, from, to, link))
    if (fact !== null && link.atLeast !== null)
      limit.release = Math.max(limit.release, Math.ceil((fact + link.atLeast - axis.origin) / axis.grid))
    if (fact !== null && link.atMost !== null)
      limit.startBy = Math.min(limit.startBy, Math.floor((fact + link.atMost - axis.origin) / axis.grid))
  }
  return { arcs: [...arcs, ...hallsLastArcs(problem, arcs)], limits }
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

/**
 * Work that blocks a hall or stair comes after all work behind it. Waits order most of these tasks among themselves, so that only the
 * last ones behind it and the first ones in it need an arc.
 */
function hallsLastArcs(problem: ScheduleProblem, waits: readonly Arc[]): readonly Arc[] {
  if (!problem.rules.hallsLast) return []
  const orders = waits.filter(({ fromSide, toSide, atLeast }) => {
    return fromSide === endSide && toSide === startSide && atLeast >= 0
  })
  const arcs = problem.rooms.flatMap((hall) => {
    const lasts = new Set(tasksBehind(problem, hall.id))
    const firsts = new Set(lasts.size === 0 ? [] : blockingTasks(problem, hall.id))
    if (firsts.size === 0) return []
    const isInside = { behind: new Set(lasts), hall: new Set(firsts) }
    for (const { from, to } of orders) {
      if (isInside.behind.has(from) && isInside.behind.has(to)) lasts.delete(from)
      if (isInside.hall.has(from) && isInside.hall.has(to)) firsts.delete(to)
    }
    return [...firsts].flatMap((to) => {
      return [...lasts].filter((from) => from !== to).map((from) => orderArc(from, to))
    })
  })
  return arcs.toSorted((one, other) => one.to - other.to)
}

function orderArc(from: number, to: number): Arc {
  return { from, fromSide: endSide, to, toSide: startSide, atLeast: 0, atMost: never }
}

/** Tasks not yet done in the rooms reached through a hall. */
function tasksBehind(problem: ScheduleProblem, hall: ScheduleRoomId): readonly number[] {
  const behind = new Set(
    problem.rooms.flatMap((room) => (room.reachedThrough.includes(hall) ? [room.id] : [])),
  )
  if (behind.size === 0) return []
  return problem.tasks.flatMap(({ room, state }, index) => {
    return room !== null && behind.has(room) && state.kind !== 'done' ? [index] : []
  })
}

/** Tasks in a hall, not yet begun, that leave something wet or close it. */
function blockingTasks(problem: ScheduleProblem, hall: ScheduleRoomId): readonly number[] {
  return problem.tasks.flatMap((task, index) => {
    const { room, effects } = task
    const isBlocking = effects.wetFor !== null || effects.closedFor !== null
    return room === hall && isBlocking && !isBegun(task) ? [index] : []
  })
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
