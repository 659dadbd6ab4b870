import { dayOf } from '../fitting/axis.ts'
import type { Net } from '../fitting/net.ts'
import { openTask } from '../fitting/numbers.ts'

/** Ticks after midnight between which anybody ever works. */
interface WidestDay {
  readonly from: number
  readonly to: number
}

/** The longest stretch of a day in which anybody is there, in ticks from midnight. */
export function widestDay({ axis, people }: Net): WidestDay {
  let [from, to] = [Number.POSITIVE_INFINITY, 0]
  for (const { hours } of people) {
    for (const [at, begin] of hours.from.entries()) {
      const midnight = axis.dayStart[dayOf(axis, begin)] as number
      from = Math.min(from, begin - midnight)
      to = Math.max(to, (hours.to[at] as number) - midnight)
    }
  }
  return { from, to }
}

/** A tick of some day on which the room is worked in; days on which nobody works there are not counted. */
interface Moment {
  readonly day: number
  readonly tick: number
}

/**
 * On how many days a room is worked in at least for its waits alone: whatever cannot begin on the same day begins the next morning, for the
 * room may be given back meanwhile. 0 where something in it is pinned, begun or done, or waits for nothing that is said here.
 *
 * @param ticksOf how long a task takes at least
 */
export function leastDaysByWaits(
  net: Net,
  room: number,
  widest: WidestDay,
  ticksOf: (task: number) => number,
): number {
  const { arcs } = net
  const tasks = net.rooms[room]?.tasks ?? []
  if (tasks.some((task) => net.kind[task] !== openTask) || widest.from >= widest.to) return 0
  const start = new Map<number, Moment>()
  const end = new Map<number, Moment>()
  const later = (one: Moment, other: Moment): Moment =>
    one.day > other.day || (one.day === other.day && one.tick >= other.tick) ? one : other
  const after = ({ day, tick }: Moment, ticks: number): Moment =>
    tick + ticks < widest.to ? { day, tick: tick + ticks } : { day: day + 1, tick: widest.from }

  function place(task: number): Moment {
    const known = end.get(task)
    if (known !== undefined) return known
    let from: Moment = { day: 0, tick: widest.from }
    for (let at = arcs.intoAt[task] as number; at < (arcs.intoAt[task + 1] as number); at++) {
      const before = arcs.before[at] as number
      if (net.room[before] !== room) continue
      const over = place(before)
      const since = arcs.fromStart[at] === 1 ? (start.get(before) as Moment) : over
      const ticks = arcs.ticks[at] as number
      from = later(from, ticks === 0 ? since : after(since, ticks))
    }
    const length = ticksOf(task)
    const isWhole = net.natural[task] === 0 && from.tick + length > widest.to
    const begin = isWhole ? { day: from.day + 1, tick: widest.from } : from
    start.set(task, begin)
    const over = worked(begin, length)
    end.set(task, over)
    return over
  }

  /** Over as many days as it takes. */
  function worked({ day, tick }: Moment, length: number): Moment {
    const today = widest.to - tick
    if (length <= today) return { day, tick: tick + length }
    const daily = widest.to - widest.from
    const nights = Math.ceil((length - today) / daily)
    return { day: day + nights, tick: widest.from + length - today - (nights - 1) * daily }
  }

  return tasks.reduce((most, task) => Math.max(most, place(task).day + 1), 0)
}
