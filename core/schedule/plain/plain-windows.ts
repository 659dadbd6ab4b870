import { createProfile } from './packed-levels.ts'
import type { PlainNet } from './plain-net.ts'
import { createKeySort } from './plain-order.ts'
import { findNeighbours, type WaitRow } from './plain-waits.ts'

/** Costs at and above this say by how much maximum waits are missed; below it they are latest ends. */
export const failedCost = 100_000_000

export interface WindowDecoder {
  /**
   * Serial decoding by least key with maximum waits. A task that misses its window sends those that closed it to a later start
   * and everything from there on back to be placed again. After a few such repairs tasks are placed although they are late, so
   * that plans without a fit can be compared by their lateness. Returns the latest end, or `failedCost` and the lateness.
   */
  decode(keys: Int32Array, starts: Int32Array): number
}

/** `failures` counts, for each task, how often it was the one that found no place. */
export function createWindowDecoder(net: PlainNet, waits: Int32Array, failures: Int32Array): WindowDecoder {
  const { count, durations, horizon } = net
  const profile = createProfile(net.capacities, net.demands, durations, horizon)
  const heads = new Int32Array(count)
  for (let from = 0; from < count; from++) {
    for (let to = 0; to < count; to++)
      heads[to] = Math.max(heads[to] as number, waits[from * count + to] as number)
  }
  const { next, waitingAtFirst, least, most } = findNeighbours(count, waits)
  const asNumbered = Int32Array.from(durations.keys())
  const sort = createKeySort(count)
  const order = new Int32Array(count)
  let firstOpen = 0
  const release = new Int32Array(count)
  const waiting = new Int32Array(count)
  const isPlaced = new Uint8Array(count)
  /** More repairs were measured to cost more decodings than they save: lateness leads on as well. */
  const mostRepairs = 5 + 0.1 * count
  let earliest = 0
  let latest = 0
  let placedCount = 0

  function clear(): void {
    profile.clear()
    release.set(heads)
    waiting.set(waitingAtFirst)
    isPlaced.fill(0)
    placedCount = 0
    firstOpen = 0
  }

  function firstFit(task: number, from: number): number {
    if (from >= horizon) return horizon
    const start = profile.firstFit(task, from)
    return start + (durations[task] as number) > horizon ? horizon : start
  }

  /** The window that the tasks already placed leave for a task, reckoned only when it is its turn: repairs then cost little. */
  function findWindow(task: number, starts: Int32Array): void {
    const soonest = least[task] as WaitRow
    let from = release[task] as number
    for (let row = 0; row < soonest.task.length; row++) {
      const other = soonest.task[row] as number
      const bound = (starts[other] as number) + (soonest.wait[row] as number)
      if (bound > from && isPlaced[other] === 1) from = bound
    }
    const last = most[task] as WaitRow
    let to = horizon
    for (let row = 0; row < last.task.length; row++) {
      const other = last.task[row] as number
      const bound = (starts[other] as number) - (last.wait[row] as number)
      if (bound < to && isPlaced[other] === 1) to = bound
    }
    earliest = from
    latest = to
  }

  function countWaiting(task: number, change: number): void {
    const others = next[task] as Int32Array
    for (let row = 0; row < others.length; row++) {
      const other = others[row] as number
      waiting[other] = (waiting[other] as number) + change
    }
  }

  function place(task: number, start: number, starts: Int32Array): void {
    starts[task] = start
    isPlaced[task] = 1
    placedCount++
    profile.book(task, start)
    countWaiting(task, -1)
  }

  function takeOut(task: number, starts: Int32Array): void {
    isPlaced[task] = 0
    placedCount--
    profile.takeOut(task, starts[task] as number)
    countWaiting(task, 1)
  }

  /** Makes room for `task` at `start`: those whose maximum wait forbids it get a later release; all from there on are taken out. */
  function repair(task: number, start: number, starts: Int32Array): boolean {
    let from = horizon
    const last = most[task] as WaitRow
    for (let row = 0; row < last.task.length; row++) {
      const other = last.task[row] as number
      if (isPlaced[other] === 0) continue
      const needed = start + (last.wait[row] as number)
      if (needed <= (starts[other] as number)) continue
      if (needed >= horizon) return false
      from = Math.min(from, starts[other] as number)
      raise(other, needed)
    }
    if (from === horizon) return false
    for (let other = 0; other < count; other++) {
      if (isPlaced[other] === 1 && (starts[other] as number) >= from) takeOut(other, starts)
    }
    firstOpen = 0
    return true
  }

  function raise(task: number, needed: number): void {
    for (let other = 0; other < count; other++) {
      const from = needed + (waits[task * count + other] as number)
      if (from > (release[other] as number)) release[other] = from
    }
  }

  /** The first task in order that waits for none still to be placed. */
  function nextTask(): number {
    while (isPlaced[order[firstOpen] as number] === 1) firstOpen++
    let at = firstOpen
    while (isPlaced[order[at] as number] === 1 || waiting[order[at] as number] !== 0) at++
    return order[at] as number
  }

  function decode(keys: Int32Array, starts: Int32Array): number {
    clear()
    sort(keys, asNumbered, order)
    let repairs = 0
    let lateness = 0
    while (placedCount < count) {
      const task = nextTask()
      findWindow(task, starts)
      const start = firstFit(task, earliest)
      if (start <= latest && start < horizon) {
        place(task, start, starts)
        continue
      }
      if (start < horizon && ++repairs <= mostRepairs && repair(task, start, starts)) continue
      failures[task] = (failures[task] as number) + 1
      if (start >= horizon) {
        for (let other = 0; other < count; other++)
          if (isPlaced[other] === 0) starts[other] = release[other] as number
        return failedCost + lateness + horizon * (count - placedCount)
      }
      lateness += start - latest
      place(task, start, starts)
    }
    if (lateness > 0) return failedCost + lateness
    let end = 0
    for (let task = 0; task < count; task++)
      end = Math.max(end, (starts[task] as number) + (durations[task] as number))
    return end
  }

  return { decode }
}
