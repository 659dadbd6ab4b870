import { dayAtTick } from '../axis.ts'
import { never, type SiteNet } from '../net/site-net.ts'
import type { SitePlacements } from './site-placements.ts'

/** Delays (ticks for each task) under which the next decoding puts no room out of use on a day on which it was not. */
export interface RoomHolds {
  /** For a forward decoding: no task before the day on which its room was first out of use. */
  readonly firstDays: (found: SitePlacements, delays: Int32Array) => void
  /** For a mirrored decoding: none after the day on which it was last so. `found` is not mirrored. */
  readonly lastDays: (found: SitePlacements, delays: Int32Array) => void
  /** First tick of the local day so many days after the day of a tick. */
  readonly dayAfter: (tick: number, days: number) => number
}

export function createRoomHolds(net: SiteNet): RoomHolds {
  const { axis, tasks, roomCount } = net
  const { dayOfTick, horizon } = axis
  const dayStart = new Int32Array((dayOfTick[horizon] as number) + 2).fill(horizon)
  for (let day = 0, from = 0; day < dayStart.length; day++) {
    const tick = dayOfTick.indexOf(day, from)
    if (tick >= 0) dayStart[day] = from = tick
  }
  const edge = new Int32Array(roomCount)

  function dayAfter(tick: number, days: number): number {
    const day = dayAtTick(axis, tick) + days
    return dayStart[Math.max(0, Math.min(dayStart.length - 1, day))] as number
  }

  return {
    dayAfter,
    firstDays(found, delays) {
      edge.fill(never)
      for (const { room, outOfUse, index } of tasks) {
        if (outOfUse === null) continue
        edge[room] = Math.min(edge[room] as number, (found.start[index] as number) - outOfUse.before)
      }
      for (const { room, outOfUse, index } of tasks)
        delays[index] = outOfUse === null ? 0 : dayAfter(edge[room] as number, 0) + outOfUse.before
    },
    lastDays(found, delays) {
      edge.fill(-never)
      for (const { room, outOfUse, index } of tasks) {
        if (outOfUse === null) continue
        edge[room] = Math.max(edge[room] as number, (found.end[index] as number) + outOfUse.after)
      }
      for (const { room, outOfUse, index } of tasks)
        delays[index] =
          outOfUse === null ? 0 : horizon - dayAfter((edge[room] as number) - 1, 1) + outOfUse.after
    },
  }
}
