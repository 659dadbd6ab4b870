import { staticFit } from '../net/heads.ts'
import { endSide, type NetTask, never, type SiteNet } from '../net/site-net.ts'
import { isOrdering } from './site-blocks.ts'

/** How soon things can be over, in ticks, when from some moment on neither people nor rooms are short. */
export interface SiteForecast {
  /** A task and all that waits for it, when it starts no sooner than a tick. */
  readonly endFrom: (task: number, tick: number) => number
  /** Its room given back, as far as the task and what waits for it in the room tell. */
  readonly backFrom: (task: number, tick: number) => number
  /** The same for a task that lies from `start` to `end`. */
  readonly endAfter: (task: number, start: number, end: number) => number
  readonly backAfter: (task: number, start: number, end: number) => number
}

/** Each answer is worked out once. */
export function createSiteForecast(net: SiteNet): SiteForecast {
  const { tasks, axis } = net
  const followers = tasks.map(({ index }) =>
    net.arcs.filter((arc) => arc.from === index && isOrdering(arc) && tasks[arc.to]?.fixed === 0),
  )
  const inRoom = followers.map((arcs, task) => arcs.filter(({ to }) => tasks[to]?.room === tasks[task]?.room))
  const ends: Int32Array[] = []
  const backs: Int32Array[] = []

  function endAfter(task: number, start: number, end: number): number {
    let latest = end
    for (const { to, fromSide, atLeast } of followers[task] ?? [])
      latest = Math.max(latest, endFrom(to, (fromSide === endSide ? end : start) + atLeast))
    return latest
  }

  function backAfter(task: number, start: number, end: number): number {
    const outOfUse = tasks[task]?.outOfUse ?? null
    let latest = outOfUse === null ? -never : end + outOfUse.after
    for (const { to, fromSide, atLeast } of inRoom[task] ?? [])
      latest = Math.max(latest, backFrom(to, (fromSide === endSide ? end : start) + atLeast))
    return latest
  }

  /** The place of a tick in the tables of a task, which are filled in there unless they are already. */
  function lookUp(task: number, tick: number): number {
    const at = Math.max(0, Math.min(axis.horizon, tick))
    ends[task] ??= new Int32Array(axis.horizon + 1).fill(-1)
    backs[task] ??= new Int32Array(axis.horizon + 1)
    const known = ends[task] as Int32Array
    if (known[at] !== -1) return at
    const place = staticFit(net, tasks[task] as NetTask, at, -never)
    known[at] = place === undefined ? never : endAfter(task, place.start, place.end)
    ;(backs[task] as Int32Array)[at] = place === undefined ? never : backAfter(task, place.start, place.end)
    return at
  }

  function endFrom(task: number, tick: number): number {
    const at = lookUp(task, tick)
    return (ends[task] as Int32Array)[at] as number
  }

  function backFrom(task: number, tick: number): number {
    const at = lookUp(task, tick)
    return (backs[task] as Int32Array)[at] as number
  }

  return { endFrom, backFrom, endAfter, backAfter }
}
