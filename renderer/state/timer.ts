/** The page's clock, so that what waits and tries again can be tested without waiting. */
export interface Timer {
  /** Acts once after so many milliseconds; answers how to call it off. */
  readonly after: (milliseconds: number, act: () => void) => () => void
}

export const pageTimer: Timer = {
  after: (milliseconds, act) => {
    const id = setTimeout(act, milliseconds)
    return () => clearTimeout(id)
  },
}
