import type { Piece } from './fixed.ts'
import type { Net } from './net.ts'

/** How much of each pooled resource is held at each tick. */
export interface Levels {
  readonly clear: () => void
  readonly take: (task: number, pieces: readonly Piece[]) => void
  /** The first tick from which a task of this length finds enough of everything: `start` where it does there. */
  readonly freeFrom: (task: number, start: number, end: number) => number
}

/** Nothing held yet; one serves all plans of a net. */
export function createLevels({ axis, capacities, demands }: Net): Levels {
  const levels = capacities.map(() => new Int32Array(axis.horizon + 1))
  let used = 0
  return {
    clear: () => {
      for (const level of levels) level.fill(0, 0, used)
      used = 0
    },
    take: (task, pieces) => {
      for (const { resource, amount } of demands[task] as Net['demands'][number]) {
        const level = levels[resource] as Int32Array
        for (const { from, to } of pieces) {
          for (let tick = from; tick < to; tick++) level[tick] = (level[tick] as number) + amount
          if (to > used) used = to
        }
      }
    },
    freeFrom: (task, start, end) => {
      for (const { resource, amount } of demands[task] as Net['demands'][number]) {
        const level = levels[resource] as Int32Array
        const spare = (capacities[resource] as number) - amount
        for (let tick = end - 1; tick >= start; tick--) if ((level[tick] as number) > spare) return tick + 1
      }
      return start
    },
  }
}
