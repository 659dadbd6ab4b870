import { randomBelow } from '../../random.ts'
import { nextDay, soonest } from '../genes.ts'
import { type Changed, dayTicks, type Move, oneOf, someDays } from './changed-plan.ts'

/** A task waits for the next morning, or no longer does. */
export const ratherNextDay: Move = ({ random, genes, open }) => {
  const task = oneOf(random, open)
  genes.rather[task] = genes.rather[task] === soonest ? nextDay : soonest
}

/** Open tasks of a day that share people with one of them, or its room too, by begin. */
function dayOfWork(
  { net, open, start, team }: Changed,
  about: number,
  isWholeRoom: boolean,
): readonly number[] {
  const dayOf = (task: number): number => net.axis.dayOfTick[Math.max(0, start[task] as number)] as number
  return open
    .filter((task) => {
      const isTheirs = ((team[task] as number) & (team[about] as number)) !== 0
      const isThere = isTheirs || (isWholeRoom && net.room[task] === net.room[about])
      return isThere && dayOf(task) === dayOf(about)
    })
    .sort((one, other) => (start[one] as number) - (start[other] as number))
}

/** The longest time between tasks that follow one another; ticks. */
function longestGap({ start, end }: Changed, tasks: readonly number[]): number {
  let free = Number.POSITIVE_INFINITY
  let gap = 0
  for (const task of tasks) {
    gap = Math.max(gap, (start[task] as number) - free)
    free = Math.max(free === Number.POSITIVE_INFINITY ? 0 : free, end[task] as number)
  }
  return gap
}

/** So many days are looked at for one on which somebody waits. */
const daysLookedAt = 6

/** Somebody who waits for something on a day comes later by some of that time, sometimes everybody in that room; or as soon as they can again. */
export const comeLater: Move = (changed) => {
  const { random, genes, open, start } = changed
  for (let turn = 0; turn < daysLookedAt; turn++) {
    const stops = dayOfWork(changed, oneOf(random, open), random() < 0.5)
    const gap = longestGap(changed, stops)
    const isLater = stops.some((task) => genes.later[task] !== 0)
    if (isLater && (gap === 0 || random() < 0.3)) {
      for (const task of stops) genes.later[task] = 0
      return
    }
    if (gap === 0) continue
    const by = random() < 0.6 ? gap : 1 + randomBelow(random, gap)
    const first = start[stops[0] as number]
    for (const task of stops)
      if (start[task] === first) genes.later[task] = (genes.later[task] as number) + by
    return
  }
}

/** Right before or after another task of the same people, or of any. */
export const besideAnother: Move = ({ random, genes, open, team, start }) => {
  const task = oneOf(random, open)
  const isNear = (other: number): boolean =>
    ((team[other] as number) & (team[task] as number)) !== 0 &&
    Math.abs((start[other] as number) - (start[task] as number)) < 2000
  let other = oneOf(random, open)
  for (let turn = 0; turn < 6 && !isNear(other); turn++) other = oneOf(random, open)
  genes.key[task] = (genes.key[other] as number) + (random() - 0.5) / 64
}

/** Right before or after another task of its room. */
export const besideInRoom: Move = ({ random, genes, rooms, tasks }) => {
  const members = tasks[oneOf(random, rooms)] as readonly number[]
  genes.key[oneOf(random, members)] = (genes.key[oneOf(random, members)] as number) + (random() - 0.5) / 64
}

/** One task some days earlier or later. */
export const nudgeTask: Move = (changed) => {
  const { random, genes, open } = changed
  const task = oneOf(random, open)
  genes.key[task] = (genes.key[task] as number) + someDays(random, 3) * dayTicks(changed)
}

/** Where there are neither rooms nor people, only the order can be changed: a task goes right before or after another. */
export function changeOrder({ random, genes, open, start }: Changed): void {
  const turns = random() < 0.75 ? 1 : 2
  for (let turn = 0; turn < turns; turn++) {
    const task = oneOf(random, open)
    let other = oneOf(random, open)
    for (
      let tries = 0;
      tries < 4 && Math.abs((start[other] as number) - (start[task] as number)) > 20;
      tries++
    )
      other = oneOf(random, open)
    genes.key[task] = (genes.key[other] as number) + (random() - 0.5) / 64
  }
}
