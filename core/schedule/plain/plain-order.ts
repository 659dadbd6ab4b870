import type { RandomStream } from '../random.ts'
import { lagRows, type PlainNet } from './plain-net.ts'

/** Keys are sorted by so many bits at a time. */
const digitBits = 11

/** Sorts tasks by key, least first; equal keys keep the order of `from`. */
export function createKeySort(
  count: number,
): (keys: Int32Array, from: Int32Array, order: Int32Array) => void {
  const spare = new Int32Array(count)
  const counts = new Int32Array(1 << digitBits)

  function pass(keys: Int32Array, least: number, most: number, shift: number, from: Int32Array): void {
    const mask = (1 << digitBits) - 1
    const digits = Math.min(mask, (most - least) >> shift) + 1
    counts.fill(0, 0, digits)
    for (let task = 0; task < count; task++) {
      const digit = (((keys[task] as number) - least) >> shift) & mask
      counts[digit] = (counts[digit] as number) + 1
    }
    let sum = 0
    for (let digit = 0; digit < digits; digit++) {
      const here = counts[digit] as number
      counts[digit] = sum
      sum += here
    }
    for (let at = 0; at < count; at++) {
      const task = from[at] as number
      const digit = (((keys[task] as number) - least) >> shift) & mask
      const place = counts[digit] as number
      spare[place] = task
      counts[digit] = place + 1
    }
  }

  return (keys, from, order) => {
    let least = keys[0] as number
    let most = least
    for (let task = 1; task < count; task++) {
      const key = keys[task] as number
      if (key < least) least = key
      if (key > most) most = key
    }
    pass(keys, least, most, 0, from)
    order.set(spare)
    for (let shift = digitBits; shift < 30 && most - least >= 1 << shift; shift += digitBits) {
      pass(keys, least, most, shift, order)
      order.set(spare)
    }
  }
}

/** Delays keys behind those of the tasks waited for, then sorts by key; equal keys keep an order that respects all waits. */
export function createSorter(
  net: PlainNet,
  ranked: Int32Array,
): (keys: Int32Array, order: Int32Array) => void {
  const incoming = lagRows(net, 'to')
  const sort = createKeySort(net.count)

  function delay(keys: Int32Array): void {
    for (let at = 0; at < net.count; at++) {
      const task = ranked[at] as number
      let key = keys[task] as number
      const end = incoming.start[task + 1] as number
      for (let row = incoming.start[task] as number; row < end; row++) {
        const other = keys[incoming.task[row] as number] as number
        if (other > key) key = other
      }
      keys[task] = key
    }
  }

  return (keys, order) => {
    delay(keys)
    sort(keys, ranked, order)
  }
}

/** First plans: biased random sampling on the latest start, with three strengths of the bias; the very first has no chance in it. */
export function createSampler(
  net: PlainNet,
  ranked: Int32Array,
  random: RandomStream,
): (keys: Int32Array) => void {
  const { count } = net
  const outgoing = lagRows(net, 'from')
  const slack = latestStarts(net, ranked, outgoing)
  const waitingAtFirst = new Int32Array(count)
  for (const arc of net.arcs) waitingAtFirst[arc.to] = (waitingAtFirst[arc.to] as number) + 1
  const waiting = new Int32Array(count)
  const weights = new Float64Array(count)
  let number = 0

  function pick(ready: readonly number[], strength: number): number {
    let latest = Number.NEGATIVE_INFINITY
    for (const task of ready) latest = Math.max(latest, slack[task] as number)
    let sum = 0
    for (const [at, task] of ready.entries()) {
      const regret = latest - (slack[task] as number) + 1
      sum += strength === 0 ? 1 : strength === 1 ? regret : regret * regret
      weights[at] = sum
    }
    const drawn = random() * sum
    for (let at = 0; at < ready.length; at++) if (drawn < (weights[at] as number)) return at
    return ready.length - 1
  }

  function mostUrgent(ready: readonly number[]): number {
    let best = 0
    for (let at = 1; at < ready.length; at++) {
      if ((slack[ready[at] as number] as number) < (slack[ready[best] as number] as number)) best = at
    }
    return best
  }

  return (keys) => {
    const strength = number % 3
    waiting.set(waitingAtFirst)
    const ready: number[] = []
    for (let task = 0; task < count; task++) if (waiting[task] === 0) ready.push(task)
    for (let at = 0; at < count; at++) {
      const picked = number === 0 ? mostUrgent(ready) : pick(ready, strength)
      const task = ready[picked] as number
      ready[picked] = ready[ready.length - 1] as number
      ready.pop()
      keys[task] = at
      for (let row = outgoing.start[task] as number; row < (outgoing.start[task + 1] as number); row++) {
        const later = outgoing.task[row] as number
        waiting[later] = (waiting[later] as number) - 1
        if (waiting[later] === 0) ready.push(later)
      }
    }
    number++
  }
}

/** Latest starts, as negative distances from the end of the project. */
function latestStarts(net: PlainNet, ranked: Int32Array, outgoing: ReturnType<typeof lagRows>): Int32Array {
  const latest = Int32Array.from(net.durations, (duration) => -duration)
  for (let at = net.count - 1; at >= 0; at--) {
    const task = ranked[at] as number
    for (let row = outgoing.start[task] as number; row < (outgoing.start[task + 1] as number); row++) {
      const bound = (latest[outgoing.task[row] as number] as number) - (outgoing.lag[row] as number)
      if (bound < (latest[task] as number)) latest[task] = bound
    }
  }
  return latest
}
