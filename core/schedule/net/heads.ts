import { type Axis, slotAtTick } from '../axis.ts'
import { endSide, type NetTask, never, type SiteNet, type TeamCalendar } from './site-net.ts'
import { quietUntil } from './site-quiet-hours.ts'

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
  const { neighbours } = net
  const count = net.tasks.length
  const start = new Array<number>(count).fill(-never)
  const end = new Array<number>(count).fill(-never)
  const pushedBy = new Int32Array(count).fill(-1)
  const lowStart = Int32Array.from(net.tasks, (task) => {
    return task.fixed === 3 && !net.mirrored ? task.factStart : notBefore
  })
  const lowEnd = new Int32Array(count).fill(-never)
  const rounds = new Int32Array(count)
  // Tasks mostly come in the order of work, so that one round settles most of them.
  const queue = net.tasks.map((task) => task.index)
  if (net.mirrored) queue.reverse()
  const isQueued = new Uint8Array(count).fill(1)
  for (let at = 0; at < queue.length; at++) {
    const index = queue[at] as number
    isQueued[index] = 0
    const place = staticFit(
      net,
      net.tasks[index] as NetTask,
      lowStart[index] as number,
      lowEnd[index] as number,
    )
    rounds[index] = (rounds[index] as number) + 1
    if (place === undefined || (rounds[index] as number) > 20 * count + 100)
      return failure(pushedBy, index, place !== undefined)
    if (place.start <= (start[index] as number) && place.end <= (end[index] as number)) continue
    start[index] = place.start
    end[index] = place.end
    // A minimum wait pushes the later task, a maximum wait pulls the earlier one along.
    const lastRow = neighbours.rowStart[index + 1] as number
    for (let row = neighbours.rowStart[index] as number; row < lastRow; row++) {
      const most = neighbours.most[row] as number
      if (most === never) continue
      const other = neighbours.other[row] as number
      const low = neighbours.otherSide[row] === endSide ? lowEnd : lowStart
      const value = (neighbours.mySide[row] === endSide ? place.end : place.start) - most
      if (value <= (low[other] as number)) continue
      low[other] = value
      pushedBy[other] = index
      if (isQueued[other] === 1) continue
      isQueued[other] = 1
      queue.push(other)
    }
  }
  return { kind: 'heads', start, end }
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
export function staticFit(
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
  for (let option = 0; option < task.durations.length; option++) {
    const duration = task.durations[option] as number
    if (option > 0 && duration === task.durations[option - 1]) continue
    if (duration === 0) {
      const moment = Math.max(from, toEnd)
      if (moment > startBy || moment > task.endBy) continue
      start = Math.min(start, moment)
      end = Math.min(end, moment)
      continue
    }
    for (const number of task.calendars) {
      const calendar = net.calendars[number] as TeamCalendar
      const index = firstIndex(net.axis, task, calendar, duration, from, toEnd, startBy)
      if (index < 0) continue
      start = Math.min(start, calendar.ticks[index] as number)
      end = Math.min(end, (calendar.ticks[index + duration - 1] as number) + 1)
    }
  }
  if (start === never) return undefined
  return { start: task.fixed === 2 && !net.mirrored ? Math.min(start, task.factStart) : start, end }
}

function firstIndex(
  axis: Axis,
  task: NetTask,
  calendar: TeamCalendar,
  duration: number,
  from: number,
  toEnd: number,
  startBy: number,
): number {
  const { ticks, runEnd, dayEnd } = calendar
  const pauseEnd = task.pausing === 'none' ? runEnd : task.pausing === 'break' ? dayEnd : null
  let index = Math.max(indexFrom(axis, calendar, from), indexFrom(axis, calendar, toEnd - 1) - duration + 1)
  while (index + duration <= ticks.length) {
    if (pauseEnd !== null && (pauseEnd[index] as number) < index + duration) {
      index = pauseEnd[index] as number
      continue
    }
    const start = ticks[index] as number
    const end = (ticks[index + duration - 1] as number) + 1
    if (start > startBy || end > task.endBy) return -1
    const clear = end < toEnd ? start + 1 : quietUntil(task, start, end)
    if (clear <= start) return index
    index = Math.max(index + 1, indexFrom(axis, calendar, clear))
  }
  return -1
}

/** First index of the calendar at or after a tick. */
function indexFrom(axis: Axis, { indexAt }: TeamCalendar, tick: number): number {
  return indexAt[slotAtTick(axis, tick)] as number
}
