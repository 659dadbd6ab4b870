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

/** The same for the mirrored net: along a path the lengths of all tasks but the two at its ends cancel out. */
export function mirrorWaits({ count, durations }: PlainNet, waits: Int32Array): Int32Array {
  return waits.map((_, cell) => {
    const from = (cell / count) | 0
    const to = cell % count
    const wait = waits[to * count + from] as number
    return wait === noWait ? noWait : wait + (durations[from] as number) - (durations[to] as number)
  })
}

/** Tasks that may be placed before a given one and bear on its window: `least` from their start to its, `most` from its to theirs. */
export interface Near {
  readonly task: Int32Array
  readonly least: Int32Array
  readonly most: Int32Array
}

/** `next`: those that wait for a task and for none between; a task comes after all that must start before it or with it. */
export function neighbours(count: number, waits: Int32Array) {
  const wait = (from: number, to: number): number => waits[from * count + to] as number
  const isBefore = (from: number, to: number): boolean => {
    const least = wait(from, to)
    return from !== to && (least > 0 || (least === 0 && (wait(to, from) < 0 || from < to)))
  }
  const tasks = Array.from({ length: count }, (_, task) => task)
  const later = tasks.map((from) => tasks.filter((to) => isBefore(from, to)))
  const next = later.map((row) => {
    const isCovered = new Uint8Array(count)
    for (const between of row) for (const to of later[between] as number[]) isCovered[to] = 1
    return Int32Array.from(row.filter((to) => isCovered[to] === 0))
  })
  const waitingAtFirst = new Int32Array(count)
  for (const row of next) for (const to of row) waitingAtFirst[to] = (waitingAtFirst[to] as number) + 1
  const near = tasks.map((task): Near => {
    const others = tasks.filter((other) => {
      if (other === task || isBefore(task, other)) return false
      return wait(task, other) !== noWait || wait(other, task) !== noWait
    })
    return {
      task: Int32Array.from(others),
      least: Int32Array.from(others, (other) => wait(other, task)),
      most: Int32Array.from(others, (other) => wait(task, other)),
    }
  })
  return { next, waitingAtFirst, near }
}
