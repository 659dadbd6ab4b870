/** Translates between instants (minutes since 1970 UTC) and local dates and minutes of one time zone. */
export interface LocalTime {
  /** Minutes the zone is ahead of UTC at this instant. */
  offsetAt(instant: number): number
  /** Days since 1970-01-01 of the local date at this instant. */
  dayAt(instant: number): number
  /**
   * The instant of a local day and minute. A minute the clock jumps over in spring becomes the first one after the jump,
   * of a minute that comes twice in autumn the first one counts.
   */
  instantOf(day: number, minute: number): number
}

const minutesPerDay = 1440
/** Quarters of an hour. */
const halfWeek = 336

/** One for each zone: making its format costs more than thousands of uses. */
const zones = new Map<string, LocalTime>()

/** Needs the name of a zone, see `isTimeZone`. */
export function localTimeIn(timeZone: string): LocalTime {
  const known = zones.get(timeZone)
  if (known !== undefined) return known
  const found = localTimeOf(timeZone)
  zones.set(timeZone, found)
  return found
}

function localTimeOf(timeZone: string): LocalTime {
  const offsetOf = offsetsOf(timeZone)
  const midnights = new Map<number, number>()
  function search(day: number, minute: number): number {
    const wanted = day * minutesPerDay + minute
    const early = wanted - offsetOf(wanted - minutesPerDay)
    const late = wanted - offsetOf(wanted + minutesPerDay)
    for (const candidate of [Math.min(early, late), Math.max(early, late)]) {
      if (candidate + offsetOf(candidate) === wanted) return candidate
    }
    return firstAfterJump(offsetOf, Math.min(early, late), wanted)
  }
  function midnightOf(day: number): number {
    const known = midnights.get(day)
    if (known !== undefined) return known
    const found = search(day, 0)
    midnights.set(day, found)
    return found
  }
  return {
    offsetAt: offsetOf,
    dayAt: (instant) => Math.floor((instant + offsetOf(instant)) / minutesPerDay),
    instantOf: (day, minute) => {
      const midnight = midnightOf(day)
      return midnightOf(day + 1) - midnight === minutesPerDay ? midnight + minute : search(day, minute)
    },
  }
}

function firstAfterJump(offsetOf: (instant: number) => number, from: number, wanted: number): number {
  let instant = from
  while (instant + offsetOf(instant) < wanted) instant++
  return instant
}

/**
 * Minutes ahead of UTC at an instant. Clocks are changed at whole quarters of an hour (UTC) and not there and back within half a week, so
 * that the ends of a stretch that long tell all of it where they agree; where they do not, it is halved.
 */
function offsetsOf(timeZone: string): (instant: number) => number {
  const format = new Intl.DateTimeFormat('en-US', { timeZone, timeZoneName: 'longOffset' })
  const ofQuarters = new Map<number, number>()
  const ofStretches = new Map<number, number | null>()
  function ofQuarter(quarter: number): number {
    const known = ofQuarters.get(quarter)
    if (known !== undefined) return known
    // `3/28/2027, GMT+05:30`, or no more than `GMT` where there is no difference.
    const [, sign, hours, minutes] = /GMT(?:([+-])(\d+):(\d+))?/.exec(format.format(quarter * 900_000)) ?? []
    const ahead = sign === undefined ? 0 : Number(hours) * 60 + Number(minutes)
    const offset = sign === '-' ? -ahead : ahead
    ofQuarters.set(quarter, offset)
    return offset
  }
  /** Null where the clock is changed in between. */
  function ofStretch(stretch: number): number | null {
    const known = ofStretches.get(stretch)
    if (known !== undefined) return known
    const offset = ofQuarter(halfWeek * stretch)
    const even = offset === ofQuarter(halfWeek * (stretch + 1)) ? offset : null
    ofStretches.set(stretch, even)
    return even
  }
  return (instant) => {
    const quarter = Math.floor(instant / 15)
    const stretch = Math.floor(quarter / halfWeek)
    const even = ofStretch(stretch)
    if (even !== null) return even
    let [from, to] = [halfWeek * stretch, halfWeek * (stretch + 1)]
    while (to - from > 1 && ofQuarter(from) !== ofQuarter(to)) {
      const middle = (from + to) >> 1
      if (quarter < middle) to = middle
      else from = middle
    }
    return ofQuarter(from)
  }
}

/** Whether the name is one of a zone in the IANA list. */
export function isTimeZone(timeZone: string): boolean {
  try {
    localTimeIn(timeZone)
    return true
  } catch {
    return false
  }
}
