/** Work with something that stays open for a short while: wipe a stretch, coat it inside its window, then the next. */
interface OpenTimeWork {
  /** One person's minutes to wipe all of it. */
  readonly wipeMinutes: number
  /** One person's minutes to coat all of it. */
  readonly coatMinutes: number
  /** Elapsed minutes from wiping to coating, least and most, by the label. */
  readonly openMinimum: number
  readonly openMaximum: number
}

export interface OpenTimeBatches {
  readonly count: number
  /** Minutes from the end of wiping a batch to the start of coating it. */
  readonly minimumGap: number
  readonly maximumGap: number
}

/**
 * How many equal batches the work is cut into so that every part of a batch waits at least `openMinimum` and at most
 * `openMaximum`. A batch waits `openMinimum` once all of it is wiped; its first part has then waited a whole wiping longer, its last
 * waits a whole coating more, so the longer of the two must fit into the rest of the window. Null when there is no window.
 */
export function openTimeBatches(work: OpenTimeWork): OpenTimeBatches | null {
  const window = work.openMaximum - work.openMinimum
  if (window <= 0) return null
  const longest = Math.max(work.wipeMinutes, work.coatMinutes)
  const count = Math.max(1, Math.ceil(longest / window - 1e-9))
  return {
    count,
    minimumGap: work.openMinimum,
    maximumGap: Math.floor(work.openMaximum - longest / count + 1e-9),
  }
}

/** Splits a whole number into `count` whole parts that sum to it and differ by at most one. */
export function equalParts(total: number, count: number): readonly number[] {
  return Array.from(
    { length: count },
    (_, index) => Math.floor((total * (index + 1)) / count) - Math.floor((total * index) / count),
  )
}
