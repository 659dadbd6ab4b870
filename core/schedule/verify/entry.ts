import type { PlannedTask, ScheduleRoomId, Task } from '../model.ts'

/** A task of the problem with its place in the plan. */
export interface Entry {
  readonly task: Task
  readonly planned: PlannedTask
  /** Done: cannot be moved any more. */
  readonly isFact: boolean
}

/** The entries of each room, in the order given. */
export function entriesByRoom(entries: readonly Entry[]): ReadonlyMap<ScheduleRoomId, readonly Entry[]> {
  const byRoom = new Map<ScheduleRoomId, Entry[]>()
  for (const entry of entries) {
    const { room } = entry.task
    if (room === null) continue
    const known = byRoom.get(room)
    if (known === undefined) byRoom.set(room, [entry])
    else known.push(entry)
  }
  return byRoom
}
