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

/** Waits between a task and others. */
export interface WaitRow {
  readonly task: Int32Array
  readonly wait: Int32Array
}

/** What the tasks placed before it mean for each task. A task comes after all that must start before it or with it. */
export interface Neighbours {
  /** Those that wait for a task and for none between. */
  readonly next: readonly Int32Array[]
  /** For how many `next` makes each task wait. */
  readonly waitingAtFirst: Int32Array
  /** Waits for a task from others that may be placed before it; left out where a third, certainly placed by then, says as much. */
  readonly least: readonly WaitRow[]
  /** Waits from a task for others that may be placed before it, which bound it from above; thinned out likewise. */
  readonly most: readonly WaitRow[]
}

export function findNeighbours(count: number, waits: Int32Array): Neighbours {
  const wait = (from: number, to: number): number => waits[from * count + to] as number
  const isBefore = (from: number, to: number): boolean => {
    const least = wait(from, to)
    return from !== to && (least > 0 || (least === 0 && (wait(to, from) < 0 || from < to)))
  }
  const tasks = Array.from({ length: count }, (_, task) => task)
  const later = tasks.map((from) => tasks.filter((to) => isBefore(from, to)))
  const next = later.map((row) => {
    const isCovered = new Uint8Array(count)
    for (const between of row) for (const to of later[between] as readonly number[]) isCovered[to] = 1
    return Int32Array.from(row.filter((to) => isCovered[to] === 0))
  })
  const waitingAtFirst = new Int32Array(count)
  for (const row of next) for (const to of row) waitingAtFirst[to] = (waitingAtFirst[to] as number) + 1
  const earlier = tasks.map((task) => tasks.filter((other) => isBefore(other, task)))
  const waitsTo = turned(waits, count)
  return {
    next,
    waitingAtFirst,
    least: tasks.map((task) => rowOf(task, waitsTo)),
    most: tasks.map((task) => rowOf(task, waits)),
  }

  /** Of two that cannot move against each other only one speaks for the other. */
  function isImplied(matrix: Int32Array, task: number, other: number): boolean {
    const own = matrix[task * count + other] as number
    for (const between of earlier[task] as readonly number[]) {
      const onward = matrix[between * count + other] as number
      if (between === other || (matrix[task * count + between] as number) + onward < own) continue
      if (between < other || onward + (matrix[other * count + between] as number) < 0) return true
    }
    return false
  }

  function rowOf(task: number, matrix: Int32Array): WaitRow {
    const waitFor = (other: number): number => matrix[task * count + other] as number
    const others = tasks.filter((other) => {
      if (other === task || waitFor(other) === noWait || isBefore(task, other)) return false
      return !isImplied(matrix, task, other)
    })
    return { task: Int32Array.from(others), wait: Int32Array.from(others, waitFor) }
  }
}

/** Rows become columns. */
function turned(matrix: Int32Array, count: number): Int32Array {
  return matrix.map((_, cell) => matrix[(cell % count) * count + ((cell / count) | 0)] as number)
}
