import { never, type SiteNet } from '../net/site-net.ts'

/** Where each task lies: ticks, people, and the stretch of its team calendar. Start is -never while a task is not placed. */
export interface SitePlacements {
  readonly start: Int32Array
  readonly end: Int32Array
  readonly team: Int32Array
  readonly calendar: Int32Array
  readonly index: Int32Array
  readonly duration: Int32Array
}

export function emptyPlacements(count: number): SitePlacements {
  return {
    start: new Int32Array(count).fill(-never),
    end: new Int32Array(count).fill(-never),
    team: new Int32Array(count),
    calendar: new Int32Array(count),
    index: new Int32Array(count),
    duration: new Int32Array(count),
  }
}

export function copyPlacements(from: SitePlacements, to: SitePlacements): void {
  to.start.set(from.start)
  to.end.set(from.end)
  to.team.set(from.team)
  to.calendar.set(from.calendar)
  to.index.set(from.index)
  to.duration.set(from.duration)
}

/** The same places with time running backwards; what is not placed stays so. */
export function mirrorPlacements(net: SiteNet, from: SitePlacements, into: SitePlacements): void {
  const { horizon } = net.axis
  copyPlacements(from, into)
  for (const { index } of net.tasks) {
    if (from.start[index] === -never) continue
    into.start[index] = horizon - (from.end[index] as number)
    into.end[index] = horizon - (from.start[index] as number)
    const slots = net.calendars[from.calendar[index] as number]?.slots.length ?? 0
    into.index[index] = slots - (from.index[index] as number) - (from.duration[index] as number)
  }
}
