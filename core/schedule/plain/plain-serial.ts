import { createProfile } from './packed-levels.ts'
import { lagRows, type PlainNet } from './plain-net.ts'

/** Serial decoder for nets without maximum waits: each task of a list as early as waits and resources let it. */
export interface SerialDecoder {
  /** `order` lists every task after those it waits for. Writes starts and returns the latest end. */
  decode(order: Int32Array, starts: Int32Array): number
}

export function createSerialDecoder(net: PlainNet): SerialDecoder {
  const { durations, count, horizon } = net
  const incoming = lagRows(net, 'to')
  const { clear, firstFit, book } = createProfile(net.capacities, net.demands, durations, horizon)
  const needsNothing = Uint8Array.from(durations, (duration, task) => {
    return duration === 0 || net.demands[task]?.every((amount) => amount === 0) ? 1 : 0
  })

  function earliest(task: number, starts: Int32Array): number {
    let start = 0
    for (let row = incoming.start[task] as number; row < (incoming.start[task + 1] as number); row++) {
      const from = (starts[incoming.task[row] as number] as number) + (incoming.lag[row] as number)
      if (from > start) start = from
    }
    return start
  }

  function decode(order: Int32Array, starts: Int32Array): number {
    clear()
    let last = 0
    for (let at = 0; at < count; at++) {
      const task = order[at] as number
      let start = earliest(task, starts)
      if (needsNothing[task] === 0) {
        start = firstFit(task, start)
        book(task, start)
      }
      starts[task] = start
      const end = start + (durations[task] as number)
      if (end > last) last = end
    }
    return last
  }

  return { decode }
}

/** Tasks sorted so that each comes after those it waits for; undefined when waits go round in a circle. */
export function topologicalOrder(net: PlainNet): Int32Array | undefined {
  const waiting = new Int32Array(net.count)
  const outgoing = lagRows(net, 'from')
  for (const arc of net.arcs) waiting[arc.to] = (waiting[arc.to] as number) + 1
  const order: number[] = []
  for (let task = 0; task < net.count; task++) if (waiting[task] === 0) order.push(task)
  for (let at = 0; at < order.length; at++) {
    const task = order[at] as number
    for (let row = outgoing.start[task] as number; row < (outgoing.start[task + 1] as number); row++) {
      const later = outgoing.task[row] as number
      waiting[later] = (waiting[later] as number) - 1
      if (waiting[later] === 0) order.push(later)
    }
  }
  return order.length === net.count ? Int32Array.from(order) : undefined
}

/** Longest waits from the project's start to each task's start (heads), or undefined with a circle. */
export function longestHeads(net: PlainNet, order: Int32Array): Int32Array {
  const heads = new Int32Array(net.count)
  const outgoing = lagRows(net, 'from')
  for (const task of order) {
    for (let row = outgoing.start[task] as number; row < (outgoing.start[task + 1] as number); row++) {
      const later = outgoing.task[row] as number
      heads[later] = Math.max(heads[later] as number, (heads[task] as number) + (outgoing.lag[row] as number))
    }
  }
  return heads
}
