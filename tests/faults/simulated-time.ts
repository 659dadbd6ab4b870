import type { Timer } from '../../renderer/state/timer.ts'

/** Time that passes only when a test says so. */
export interface SimulatedTime extends Timer {
  readonly now: () => number
  /** Lets so many milliseconds pass, each timer going off at its moment and everything it sets off being finished first. */
  readonly pass: (milliseconds: number) => Promise<void>
}

export function simulatedTime(): SimulatedTime {
  let now = 0
  let timers: readonly { readonly due: number; readonly act: () => void }[] = []
  return {
    now: () => now,
    after: (milliseconds, act) => {
      const timer = { due: now + milliseconds, act }
      timers = [...timers, timer]
      return () => {
        timers = timers.filter((each) => each !== timer)
      }
    },
    pass: async (milliseconds) => {
      const end = now + milliseconds
      await everythingElse()
      for (;;) {
        const next = timers.filter(({ due }) => due <= end).toSorted((one, other) => one.due - other.due)[0]
        if (next === undefined) break
        now = next.due
        timers = timers.filter((each) => each !== next)
        next.act()
        await everythingElse()
      }
      now = end
    },
  }
}

/** Until nothing that was promised is left to run. */
function everythingElse(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve))
}
