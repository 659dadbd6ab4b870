import { endSide, type NetTask, never, type SiteNet, type TeamCalendar } from './site-net.ts'

/**
 * Earliest start and end of every task when people and rooms are never short: lags, calendars, pauses, quiet hours and fixed
 * starts only. No plan can be earlier, so heads prove things. In a mirrored net they are the latest ends, and `notBefore` is the
 * deadline counted from the far end. `chain`: what pushed the task that found no place, last first.
 */
export type Heads =
  | { readonly kind: 'heads'; readonly start: readonly number[]; readonly end: readonly number[] }
  | { readonly kind: 'loop'; readonly tasks: readonly number[] }
  | { readonly kind: 'noPlace'; readonly task: number; readonly chain: readonly number[] }

export function propagateHeads(net: SiteNet, notBefore = -never): Heads {
  const count = net.tasks.length
  const start = new Array<number>(count).fill(-never)
  const end = new Array<number>(count).fill(-never)
  const pushedBy = new Int32Array(count).fill(-1)
  const lowStart = net.tasks.map((task) => {
    return task.fixed === 3 && !net.mirrored ? task.factStart : notBefore
  })
  const lowEnd = new Array<number>(count).fill(-never)
  const rounds = new Int32Array(count)
  const outgoing = outgoingArcs(net)
  const queue = net.tasks.map((task) => task.index)
  const isQueued = new Uint8Array(count).fill(1)
  for (let at = 0; at < queue.length; at++) {
    const index = queue[at] as number
    isQueued[index] = 0
    const task = net.tasks[index] as NetTask
    const place = staticFit(net, task, lowStart[index] as number, lowEnd[index] as number)
    rounds[index] = (rounds[index] as number) + 1
    if (place === undefined || (rounds[index] as number) > 20 * count + 100)
      return failure(pushedBy, index, place !== undefined)
    if (place.start <= (start[index] as number) && place.end <= (end[index] as number)) continue
    start[index] = place.start
    end[index] = place.end
    for (const arc of outgoing[index] ?? []) {
      const low = arc.mySide === endSide ? lowEnd : lowStart
      const value = (arc.side === endSide ? place.end : place.start) + arc.lag
      if (value <= (low[arc.to] as number)) continue
      low[arc.to] = value
      pushedBy[arc.to] = index
      if (isQueued[arc.to] === 0) {
        isQueued[arc.to] = 1
        queue.push(arc.to)
      }
    }
  }
  return { kind: 'heads', start, end }
}

/** Lower bounds both ways: a minimum wait pushes the later task, a maximum wait pulls the earlier one along. */
function outgoingArcs(net: SiteNet) {
  const outgoing: { to: number; side: number; mySide: number; lag: number }[][] = net.tasks.map(() => [])
  for (const { from, fromSide, to, toSide, atLeast, atMost } of net.arcs) {
    if (atLeast !== -never) outgoing[from]?.push({ to, side: fromSide, mySide: toSide, lag: atLeast })
    if (atMost !== never) outgoing[to]?.push({ to: from, side: toSide, mySide: fromSide, lag: -atMost })
  }
  return outgoing
}

function failure(pushedBy: Int32Array, task: number, isEndless: boolean): Heads {
  const chain: number[] = []
  const position = new Map<number, number>()
  for (let at = task; at !== -1; at = pushedBy[at] as number) {
    const seen = position.get(at)
    if (seen !== undefined) return { kind: 'loop', tasks: chain.slice(seen).reverse() }
    position.set(at, chain.length)
    chain.push(at)
  }
  return isEndless ? { kind: 'loop', tasks: chain.reverse() } : { kind: 'noPlace', task, chain }
}

/** Least start and least end over all crew sizes and calendars, each by itself. */
function staticFit(
  net: SiteNet,
  task: NetTask,
  lowStart: number,
  lowEnd: number,
): { readonly start: number; readonly end: number } | undefined {
  if (task.fixed === 1)
    return net.mirrored ? { start: lowStart, end: lowStart } : { start: task.factStart, end: task.factEnd }
  const from = Math.max(lowStart, task.release)
  const toEnd = Math.max(lowEnd, task.endFrom)
  const startBy = task.fixed === 3 && !net.mirrored ? Math.min(task.startBy, task.factStart) : task.startBy
  let start = never
  let end = never
  for (const duration of new Set(task.durations)) {
    if (duration === 0) {
      const moment = Math.max(from, toEnd)
      if (moment > startBy || moment > task.endBy) continue
      start = Math.min(start, moment)
      end = Math.min(end, moment)
      continue
    }
    for (const number of task.calendars) {
      const calendar = net.calendars[number] as TeamCalendar
      const index = firstIndex(net, task, calendar, duration, from, toEnd, startBy)
      if (index < 0) continue
      start = Math.min(start, calendar.ticks[index] as number)
      end = Math.min(end, (calendar.ticks[index + duration - 1] as number) + 1)
    }
  }
  if (start === never) return undefined
  return { start: task.fixed === 2 && !net.mirrored ? Math.min(start, task.factStart) : start, end }
}

function firstIndex(
  net: SiteNet,
  task: NetTask,
  calendar: TeamCalendar,
  duration: number,
  from: number,
  toEnd: number,
  startBy: number,
): number {
  const { ticks, runEnd, dayEnd, indexAt } = calendar
  if (from >= net.axis.horizon) return -1
  const pauseEnd = task.pausing === 'none' ? runEnd : task.pausing === 'break' ? dayEnd : null
  let index = indexAt[net.axis.slotAt[Math.max(0, from)] as number] as number
  while (index + duration <= ticks.length) {
    if (pauseEnd !== null && (pauseEnd[index] as number) < index + duration) {
      index = pauseEnd[index] as number
      continue
    }
    const start = ticks[index] as number
    const end = (ticks[index + duration - 1] as number) + 1
    if (start > startBy || end > task.endBy) return -1
    if (end >= toEnd && !isForbidden(task, start, end)) return index
    index++
  }
  return -1
}

function isForbidden(task: NetTask, start: number, end: number): boolean {
  return task.forbidden.some(({ ticks, reach }) => {
    return (ticks.nextForbidden[Math.max(0, start - reach.before)] ?? never) < end + reach.after
  })
}
