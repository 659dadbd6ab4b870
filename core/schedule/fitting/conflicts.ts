import { groupedBy } from '../../lists/lists.ts'
import { isBegun, type ScheduleProblem, type ScheduleRoom, type Task } from '../model.ts'
import type { TickAxis } from './axis.ts'
import { type Conflict, ticksUp } from './numbers.ts'

/** For each task what it may not be under way together with: dust where something is wet, work behind a hall that is closed. */
export function conflictsOf(problem: ScheduleProblem, { grid }: TickAxis): readonly (readonly Conflict[])[] {
  const { tasks, rules } = problem
  const rooms = new Map(problem.rooms.map((room) => [room.id, room]))
  const found = tasks.map((): Conflict[] => [])
  const add = (one: number, oneTail: number, other: number, otherTail: number): void => {
    found[one]?.push({ other, ownTail: oneTail, otherTail })
    found[other]?.push({ other: one, ownTail: otherTail, otherTail: oneTail })
  }
  const inRoom = groupedBy(tasks.keys(), (at) => tasks[at]?.room)
  for (const [at, task] of tasks.entries()) {
    if (task.room === null) continue
    const room = rooms.get(task.room)
    if (room === undefined) continue
    const { touchDry, closedFor } = task.effects
    for (const index of nearby(problem, room).flatMap((id) => inRoom.get(id) ?? [])) {
      const other = tasks[index] as Task
      if (index === at || other.room === null || (isBegun(task) && isBegun(other))) continue
      if (
        rules.noDustNearWet &&
        touchDry !== null &&
        other.effects.dusty &&
        airMeets(room, rooms.get(other.room))
      )
        add(at, ticksUp(touchDry, grid), index, 0)
      if (rules.wayOutKeptOpen && closedFor !== null && isBehind(task, rooms.get(other.room)))
        add(at, ticksUp(closedFor, grid), index, 0)
    }
  }
  return found
}

/** Rooms whose air or way out a room can touch, itself among them. */
function nearby({ rooms }: ScheduleProblem, room: ScheduleRoom): readonly string[] {
  return rooms
    .filter(
      (other) =>
        other === room ||
        room.openTo.includes(other.id) ||
        other.openTo.includes(room.id) ||
        other.reachedThrough.includes(room.id),
    )
    .map(({ id }) => id)
}

function airMeets(one: ScheduleRoom, other: ScheduleRoom | undefined): boolean {
  return (
    other !== undefined && (one === other || one.openTo.includes(other.id) || other.openTo.includes(one.id))
  )
}

function isBehind(hall: Task, room: ScheduleRoom | undefined): boolean {
  return hall.room !== null && room?.reachedThrough.includes(hall.room) === true
}
