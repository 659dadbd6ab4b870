import { dayOf, tickOf } from './axis.ts'
import type { Net } from './net.ts'
import { bitsOf, none } from './numbers.ts'

/** How far a plan in the making keeps to an older one. */
export interface Kept {
  readonly clear: () => void
  readonly place: (task: number, start: number, team: number) => void
  /** Tasks on another day or with other people. */
  readonly moved: () => number
  readonly lateDays: (roomUsable: Int32Array) => number
}

/** Nothing placed yet; one serves all plans of a net. */
export function createKept(net: Net): Kept {
  const { axis, problem, rooms } = net
  const { keeping } = problem
  const people = new Map(problem.people.map(({ id }, index) => [id, index]))
  const index = new Map(problem.tasks.map(({ id }, task) => [id, task]))
  const day = new Int32Array(net.count).fill(none)
  const team = new Int32Array(net.count)
  for (const { task, start, people: names } of keeping.tasks) {
    const at = index.get(task)
    if (at === undefined) continue
    day[at] = dayOf(axis, tickOf(axis, start))
    team[at] = bitsOf(names, people)
  }
  let moved = 0
  return {
    clear: () => {
      moved = 0
    },
    place: (task, start, by) => {
      const isKept = day[task] === none || (day[task] === dayOf(axis, start) && team[task] === by)
      if (!isKept) moved++
    },
    moved: () => moved,
    lateDays: (roomUsable) =>
      keeping.rooms.length === 0
        ? 0
        : rooms.reduce((sum, { promised }, room) => {
            const late = dayOf(axis, roomUsable[room] as number) - dayOf(axis, promised)
            return sum + Math.max(0, late)
          }, 0),
  }
}
