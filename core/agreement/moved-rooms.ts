import type { SiteMoment } from '../time/site-moment.ts'

/** As much of a plan as says when each room set is worked in. */
interface RoomTasks {
  readonly tasks: readonly {
    readonly roomSetId?: string | undefined
    readonly roomId: string
    readonly endsAt: SiteMoment
    readonly dryUntil?: SiteMoment | null
  }[]
}

interface MovedRoom {
  readonly roomId: string
  /** Local dates on which the room is dry behind its last work; null where a plan does not take it. */
  readonly before: string | null
  readonly after: string | null
}

/** The rooms that are ready again on another day by the second plan than by the first, in the order of the second. */
export function movedRooms(before: RoomTasks, after: RoomTasks): readonly MovedRoom[] {
  const [was, becomes] = [lastDays(before), lastDays(after)]
  return [...new Set([...becomes.keys(), ...was.keys()])]
    .map((roomId) => ({ roomId, before: was.get(roomId) ?? null, after: becomes.get(roomId) ?? null }))
    .filter((room) => room.before !== room.after)
}

function lastDays({ tasks }: RoomTasks): ReadonlyMap<string, string> {
  const days = new Map<string, string>()
  for (const { roomSetId, roomId, endsAt, dryUntil } of tasks) {
    const [key, day] = [roomSetId ?? roomId, (dryUntil ?? endsAt).slice(0, 10)]
    if (day > (days.get(key) ?? '')) days.set(key, day)
  }
  return days
}
