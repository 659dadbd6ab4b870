import { randomBelow } from '../../random.ts'
import { asKept, soonest } from '../genes.ts'
import { dayTicks, type Move, oneOf, someDays } from './changed-plan.ts'

/** All of a room some days earlier or later. */
export const shiftRoomTasks: Move = (changed) => {
  const { random, genes, tasks } = changed
  const by = someDays(random, 8) * dayTicks(changed)
  for (const task of tasks[oneOf(random, changed.rooms)] as readonly number[])
    genes.key[task] = (genes.key[task] as number) + by
}

/** Begins a room about when something else is done, however far away that is; half of the times pressed together. */
export const moveRoom: Move = ({ random, genes, rooms, tasks, open }) => {
  const room = oneOf(random, rooms)
  const members = tasks[room] as readonly number[]
  const first = members.reduce(
    (least, task) => Math.min(least, genes.key[task] as number),
    Number.POSITIVE_INFINITY,
  )
  const to = (genes.key[oneOf(random, open)] as number) - 1 / 128
  const factor = random() < 0.5 ? 1 : random()
  for (const task of members) {
    genes.key[task] = to + ((genes.key[task] as number) - first) * factor
    if (genes.rather[task] === asKept) genes.rather[task] = soonest
  }
  genes.opens[room] = 0
}

/** Presses a room, or what is left of it from some task on, towards its end or its begin. */
export const pressRoom: Move = (changed) => {
  const { random, genes, tasks } = changed
  const members = tasks[oneOf(random, changed.rooms)] as readonly number[]
  const keys = members.map((task) => genes.key[task] as number)
  const towards = random() < 0.7 ? Math.max(...keys) : Math.min(...keys)
  const factor = random()
  for (const task of members) genes.key[task] = towards + ((genes.key[task] as number) - towards) * factor
}

/** Each of two rooms begins when the other one did. */
export const swapRooms: Move = (changed) => {
  const { random, genes, tasks } = changed
  const [one, other] = [oneOf(random, changed.rooms), oneOf(random, changed.rooms)]
  const first = (room: number): number =>
    (tasks[room] as readonly number[]).reduce(
      (least, task) => Math.min(least, genes.key[task] as number),
      Number.POSITIVE_INFINITY,
    )
  const by = first(other) - first(one)
  for (const task of tasks[one] as readonly number[]) genes.key[task] = (genes.key[task] as number) + by
  for (const task of tasks[other] as readonly number[]) genes.key[task] = (genes.key[task] as number) - by
}

/** A room opens on another day at the earliest, or whenever it can again. */
export const openLater: Move = ({ net, random, genes, rooms, tasks, start }) => {
  const room = oneOf(random, rooms)
  const { axis } = net
  const first = (tasks[room] as readonly number[]).reduce(
    (least, task) => Math.min(least, start[task] as number),
    axis.horizon,
  )
  const day = axis.dayOfTick[Math.max(0, first)] as number
  const wanted = random() < 0.3 ? 0 : day + 1 + randomBelow(random, 4) - randomBelow(random, 4)
  genes.opens[room] = Math.max(0, Math.min(axis.dayStart.length - 2, wanted))
}
