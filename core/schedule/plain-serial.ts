import { packLevels } from './packed-levels.ts'
import { lagRows, type PlainNet } from './plain-net.ts'

/** Serial decoder for nets without maximum waits: each task of a list as early as waits and resources let it. */
export interface SerialDecoder {
  /** `order` lists every task after those it waits for. Writes starts and returns the latest end. */
  decode(order: Int32Array, starts: Int32Array): number
}

export function createSerialDecoder(net: PlainNet): SerialDecoder {
  const { durations, count, horizon } = net
  const incoming = lagRows(net, 'to')
  const packed = packLevels(net.capacities, net.demands)
  const levels = Array.from({ length: packed.words }, () => new Int32Array(horizon + 1))
  const [first, second] = levels
  const [firstDemands, secondDemands] = packed.demands
  const needsNothing = Uint8Array.from(durations, (duration, task) => {
    return duration === 0 || packed.demands.every((row) => row[task] === 0) ? 1 : 0
  })
  let dirty = horizon

  function clear(): void {
    for (const [word, row] of levels.entries()) row.fill(packed.full[word] as number, 0, dirty + 1)
    dirty = 0
  }

  function earliest(task: number, starts: Int32Array): number {
    let start = 0
    for (let row = incoming.start[task] as number; row < (incoming.start[task + 1] as number); row++) {
      const from = (starts[incoming.task[row] as number] as number) + (incoming.lag[row] as number)
      if (from > start) start = from
    }
    return start
  }

  /**
   * The fits below look at a stretch from its end backwards: a step where too little is left moves the start past it at once,
   * and what was seen behind it is not looked at again.
   */
  function fitOneWord(task: number, from: number): number {
    const row = first as Int32Array
    const guards = packed.guards[0] as number
    const demand = (firstDemands as Int32Array)[task] as number
    const duration = durations[task] as number
    let start = from
    for (let seen = from, tick = from + duration - 1; tick >= seen; tick--) {
      if ((((row[tick] as number) - demand) & guards) === guards) continue
      seen = start + duration
      start = tick + 1
      tick = start + duration
    }
    for (let tick = start; tick < start + duration; tick++) row[tick] = (row[tick] as number) - demand
    return start
  }

  function fitTwoWords(task: number, from: number): number {
    const one = first as Int32Array
    const two = second as Int32Array
    const oneGuards = packed.guards[0] as number
    const twoGuards = packed.guards[1] as number
    const oneDemand = (firstDemands as Int32Array)[task] as number
    const twoDemand = (secondDemands as Int32Array)[task] as number
    const duration = durations[task] as number
    let start = from
    for (let seen = from, tick = from + duration - 1; tick >= seen; tick--) {
      const isFree =
        (((one[tick] as number) - oneDemand) & oneGuards) === oneGuards &&
        (((two[tick] as number) - twoDemand) & twoGuards) === twoGuards
      if (isFree) continue
      seen = start + duration
      start = tick + 1
      tick = start + duration
    }
    for (let tick = start; tick < start + duration; tick++) {
      one[tick] = (one[tick] as number) - oneDemand
      two[tick] = (two[tick] as number) - twoDemand
    }
    return start
  }

  function isFreeInAllWords(task: number, tick: number): boolean {
    for (let word = 0; word < packed.words; word++) {
      const guards = packed.guards[word] as number
      const left = (levels[word]?.[tick] as number) - (packed.demands[word]?.[task] as number)
      if ((left & guards) !== guards) return false
    }
    return true
  }

  function fitManyWords(task: number, from: number): number {
    const duration = durations[task] as number
    let start = from
    for (let seen = from, tick = from + duration - 1; tick >= seen; tick--) {
      if (isFreeInAllWords(task, tick)) continue
      seen = start + duration
      start = tick + 1
      tick = start + duration
    }
    for (const [word, row] of levels.entries()) {
      const demand = packed.demands[word]?.[task] as number
      for (let tick = start; tick < start + duration; tick++) row[tick] = (row[tick] as number) - demand
    }
    return start
  }

  const placeTask = packed.words <= 1 ? fitOneWord : packed.words === 2 ? fitTwoWords : fitManyWords

  function decode(order: Int32Array, starts: Int32Array): number {
    clear()
    for (let at = 0; at < count; at++) {
      const task = order[at] as number
      const from = earliest(task, starts)
      const start = needsNothing[task] === 1 ? from : placeTask(task, from)
      starts[task] = start
      const end = start + (durations[task] as number)
      if (end > dirty) dirty = end
    }
    return dirty
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
