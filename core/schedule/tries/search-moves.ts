import type { Net } from '../fitting/net.ts'
import { openTask } from '../fitting/numbers.ts'
import type { Changed, Move } from './moves/changed-plan.ts'
import { giveDay, giveRest, otherMode, otherPeople, otherTeam, togetherOnDay } from './moves/people-moves.ts'
import { moveRoom, openLater, pressRoom, shiftRoomTasks, swapRooms } from './moves/room-moves.ts'
import {
  besideAnother,
  besideInRoom,
  changeOrder,
  comeLater,
  nudgeTask,
  ratherNextDay,
} from './moves/task-moves.ts'

/** Opens a room a day later and lets one person do it. */
const laterByOne: Move = (changed) => {
  openLater(changed)
  giveRest(changed)
}

/** All changes with how often each is tried. */
const siteMoves: readonly (readonly [Move, number])[] = [
  [shiftRoomTasks, 10],
  [moveRoom, 6],
  [pressRoom, 8],
  [swapRooms, 4],
  [openLater, 6],
  [laterByOne, 3],
  [otherPeople, 8],
  [otherTeam, 3],
  [giveRest, 8],
  [giveDay, 6],
  [otherMode, 10],
  [togetherOnDay, 5],
  [ratherNextDay, 6],
  [comeLater, 3],
  [besideAnother, 12],
  [besideInRoom, 6],
  [nudgeTask, 8],
]

const moveWeight = siteMoves.reduce((sum, [, weight]) => sum + weight, 0)

/** So often one more change is made at once. */
const shareOfMore = 0.15

/** A change chosen by chance, sometimes several at once. Needs an open task. */
export function change(changed: Changed): void {
  if (changed.rooms.length === 0) {
    changeOrder(changed)
    return
  }
  do changeOnce(changed)
  while (changed.random() < shareOfMore)
}

function changeOnce(changed: Changed): void {
  let left = changed.random() * moveWeight
  for (const [move, weight] of siteMoves) {
    left -= weight
    if (left > 0) continue
    move(changed)
    return
  }
}

/** Rooms and tasks that can be changed. */
export function changeable(net: Net): Pick<Changed, 'rooms' | 'tasks' | 'open'> {
  const isOpen = (task: number): boolean => net.kind[task] === openTask
  const tasks = net.rooms.map((room) => room.tasks.filter(isOpen))
  return {
    tasks,
    rooms: [...tasks.keys()].filter((room) => (tasks[room] as readonly number[]).length > 0),
    open: Array.from({ length: net.count }, (_, task) => task).filter(isOpen),
  }
}
