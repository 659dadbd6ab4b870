import { packLevels } from './packed-levels.ts'
import type { PlainNet } from './plain-net.ts'

/** Below every sum of lags: no wait between two tasks. */
export const noWait = -1_000_000_000

/**
 * Longest waits between all pairs of tasks, row by row: `start(b) - start(a) >= waits[a * count + b]`. When waits round a circle
 * push a task behind itself, the tasks of one such circle instead: that no plan exists is then proved.
 */
export function allWaits(
  net: PlainNet,
): { readonly waits: Int32Array } | { readonly circle: readonly number[] } {
  const { count } = net
  const waits = new Int32Array(count * count).fill(noWait)
  const via = new Int32Array(count * count).fill(-1)
  for (let task = 0; task < count; task++) waits[task * count + task] = 0
  for (const { from, to, lag } of net.arcs) {
    const cell = from * count + to
    if (lag > (waits[cell] as number)) waits[cell] = lag
  }
  for (let middle = 0; middle < count; middle++) {
    for (let from = 0; from < count; from++) {
      const first = waits[from * count + middle] as number
      if (first === noWait) continue
      for (let to = 0; to < count; to++) {
        const second = waits[middle * count + to] as number
        if (second === noWait || first + second <= (waits[from * count + to] as number)) continue
        waits[from * count + to] = first + second
        via[from * count + to] = middle
      }
      if ((waits[from * count + from] as number) > 0) return { circle: unfold(via, count, from, from) }
    }
  }
  return { waits }
}

function unfold(via: Int32Array, count: number, from: number, to: number): readonly number[] {
  const middle = via[from * count + to] as number
  if (middle === -1) return [from]
  return [...unfold(via, count, from, middle), ...unfold(via, count, middle, to)]
}

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
  const packed = packLevels(net.capacities, net.demands)
  const levels = Array.from({ length: packed.words }, () => new Int32Array(horizon + 2))
  const [first, second] = levels
  const heads = new Int32Array(count)
  const later: number[][] = Array.from({ length: count }, () => [])
  const waitingAtFirst = new Int32Array(count)
  for (let from = 0; from < count; from++) {
    for (let to = 0; to < count; to++) {
      const wait = waits[from * count + to] as number
      if (from === to || wait === noWait) continue
      heads[to] = Math.max(heads[to] as number, wait)
      const isOrdered = wait > 0 || (wait === 0 && ((waits[to * count + from] as number) < 0 || from < to))
      if (!isOrdered) continue
      later[from]?.push(to)
      waitingAtFirst[to] = (waitingAtFirst[to] as number) + 1
    }
  }
  const waitsTo = Int32Array.from(
    waits,
    (_, cell) => waits[(cell % count) * count + ((cell / count) | 0)] as number,
  )
  const release = new Int32Array(count)
  const waiting = new Int32Array(count)
  const isPlaced = new Uint8Array(count)
  /** More repairs were measured to cost more decodings than they save: lateness leads on as well. */
  const mostRepairs = 5 + 0.1 * count
  let earliest = 0
  let latest = 0
  let placedCount = 0
  let dirty = horizon

  function clear(): void {
    for (const [word, row] of levels.entries()) row.fill(packed.full[word] as number, 0, dirty + 1)
    dirty = 0
    release.set(heads)
    waiting.set(waitingAtFirst)
    isPlaced.fill(0)
    placedCount = 0
  }

  function fits(task: number, tick: number): boolean {
    if (packed.words === 0) return true
    const guards = packed.guards[0] as number
    if (
      ((((first as Int32Array)[tick] as number) - (packed.demands[0]?.[task] as number)) & guards) !==
      guards
    )
      return false
    if (packed.words === 1) return true
    const more = packed.guards[1] as number
    if (((((second as Int32Array)[tick] as number) - (packed.demands[1]?.[task] as number)) & more) !== more)
      return false
    for (let word = 2; word < packed.words; word++) {
      const last = packed.guards[word] as number
      if ((((levels[word]?.[tick] as number) - (packed.demands[word]?.[task] as number)) & last) !== last)
        return false
    }
    return true
  }

  function firstFit(task: number, from: number): number {
    const duration = durations[task] as number
    let start = from
    for (let seen = from, tick = from + duration - 1; tick >= seen; tick--) {
      if (tick >= horizon) return horizon
      if (fits(task, tick)) continue
      seen = start + duration
      start = tick + 1
      tick = start + duration
    }
    return start
  }

  function book(task: number, start: number, sign: number): void {
    const to = start + (durations[task] as number)
    for (const [word, row] of levels.entries()) {
      const demand = sign * (packed.demands[word]?.[task] as number)
      if (demand === 0) continue
      for (let tick = start; tick < to; tick++) row[tick] = (row[tick] as number) - demand
    }
    if (to > dirty) dirty = to
  }

  /** The window that the tasks already placed leave for a task, reckoned only when it is its turn: repairs then cost little. */
  function findWindow(task: number, starts: Int32Array): void {
    const row = task * count
    let from = release[task] as number
    let to = horizon
    for (let other = 0; other < count; other++) {
      if (isPlaced[other] === 0) continue
      const start = starts[other] as number
      const least = start + (waitsTo[row + other] as number)
      if (least > from) from = least
      const most = start - (waits[row + other] as number)
      if (most < to) to = most
    }
    earliest = from
    latest = to
  }

  function place(task: number, start: number, starts: Int32Array): void {
    starts[task] = start
    isPlaced[task] = 1
    placedCount++
    book(task, start, 1)
    for (const other of later[task] as readonly number[]) waiting[other] = (waiting[other] as number) - 1
  }

  function takeOut(task: number, starts: Int32Array): void {
    isPlaced[task] = 0
    placedCount--
    book(task, starts[task] as number, -1)
    for (const other of later[task] as readonly number[]) waiting[other] = (waiting[other] as number) + 1
  }

  /** Makes room for `task` at `start`: those whose maximum wait forbids it get a later release; all from there on are taken out. */
  function repair(task: number, start: number, starts: Int32Array): boolean {
    let from = horizon
    for (let other = 0; other < count; other++) {
      if (isPlaced[other] === 0) continue
      const needed = start + (waits[task * count + other] as number)
      if (needed <= (starts[other] as number)) continue
      if (needed >= horizon) return false
      from = Math.min(from, starts[other] as number)
      raise(other, needed)
    }
    if (from === horizon) return false
    for (let other = 0; other < count; other++) {
      if (isPlaced[other] === 1 && (starts[other] as number) >= from) takeOut(other, starts)
    }
    return true
  }

  function raise(task: number, needed: number): void {
    for (let other = 0; other < count; other++) {
      const from = needed + (waits[task * count + other] as number)
      if (from > (release[other] as number)) release[other] = from
    }
  }

  function nextTask(keys: Int32Array): number {
    let next = -1
    let least = Number.POSITIVE_INFINITY
    for (let task = 0; task < count; task++) {
      if (isPlaced[task] === 1 || waiting[task] !== 0 || (keys[task] as number) >= least) continue
      next = task
      least = keys[task] as number
    }
    return next
  }

  function decode(keys: Int32Array, starts: Int32Array): number {
    clear()
    let repairs = 0
    let lateness = 0
    while (placedCount < count) {
      const task = nextTask(keys)
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
