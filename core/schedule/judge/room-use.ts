import { groupedByEach } from '../../lists/lists.ts'
import { minutesUntilUsable, type ScheduleRoomId } from '../model.ts'
import type { Court, PlacedTask } from './court.ts'

/** Days (since 1970) from first to last on which a room is out of use without being given back. */
export interface Stretch {
  readonly first: number
  readonly last: number
}

/** A pause of so many whole days in which nobody works and nothing is wet gives a room back meanwhile. */
export const daysGivenBack = 3

/** Days on which a task is under way in a room, nights and days off within it too, or something there is wet or closed. */
export function daysUsed(court: Court, entries: readonly PlacedTask[]): ReadonlySet<number> {
  const days = new Set<number>()
  const add = (from: number, to: number): void => {
    for (let day = court.dayAt(from); day <= court.dayAt(to); day++) days.add(day)
  }
  for (const { task, planned, isFact } of entries) {
    if (isFact) add(planned.start, Math.max(planned.start, planned.end - 1))
    if (task.state.kind === 'started' || task.state.kind === 'pinned') add(planned.start, planned.start)
    // What was ticked in a moment has no segment, and was there all the same.
    const from = planned.segments[0]?.start ?? (isFact ? planned.start : null)
    if (from !== null) add(from, planned.end + minutesUntilUsable(task.effects))
  }
  return days
}

/** When a room is out of use, pauses of three whole days or more taken out. */
export function stretchesOf(court: Court, entries: readonly PlacedTask[]): readonly Stretch[] {
  const stretches: Stretch[] = []
  for (const day of [...daysUsed(court, entries)].sort((one, other) => one - other)) {
    const last = stretches.at(-1)
    if (last !== undefined && day - last.last <= daysGivenBack)
      stretches[stretches.length - 1] = { ...last, last: day }
    else stretches.push({ first: day, last: day })
  }
  return stretches
}

export function daysOutOfUse(stretches: readonly Stretch[]): number {
  return stretches.reduce((days, { first, last }) => days + last - first + 1, 0)
}

/** Days on which a room is begun and not done, and given back meanwhile. */
export function daysWaiting(stretches: readonly Stretch[]): number {
  const [first] = stretches
  const last = stretches.at(-1)
  return first === undefined || last === undefined ? 0 : last.last - first.first + 1 - daysOutOfUse(stretches)
}

/** Placed tasks by room, in their order; those of no room are left out. */
export function entriesByRoom(
  entries: readonly PlacedTask[],
): ReadonlyMap<ScheduleRoomId, readonly PlacedTask[]> {
  return groupedByEach(entries, ({ task }) => (task.room === null ? [] : [task.room]))
}

/** When the last of these is done, dry and open again. */
export function usableFrom(entries: readonly PlacedTask[]): number {
  return entries.reduce(
    (latest, { task, planned }) => Math.max(latest, planned.end + minutesUntilUsable(task.effects)),
    0,
  )
}
