import { countBits, type NetTask, never, type SiteNet, type TeamCalendar } from '../net/site-net.ts'
import { quietUntil } from '../net/site-quiet-hours.ts'
import { createRoomBook } from './room-book.ts'
import { emptyPlacements, type SitePlacements } from './site-placements.ts'

/** A place found for a task: the earliest one that ends first. `people` are those free for all of it. */
export interface Fit {
  start: number
  end: number
  people: number
  calendar: number
  index: number
  duration: number
}

/** `rooms`: only the limit on rooms out of use stands in the way, so another task may have to come first. */
export type FitOutcome = 'found' | 'noPlace' | 'rooms'

export interface StartLimits {
  start: number
  end: number
}

/** The books of one decoding: who and what is free in each slot, which rooms are out of use. Reused from plan to plan. */
export interface SiteLedger {
  readonly placements: SitePlacements
  /** People (bits) free in each slot. */
  readonly free: Int32Array
  clear(): void
  find(task: NetTask, size: number, duration: number, from: StartLimits, fit: Fit): FitOutcome
  enter(task: NetTask, fit: Fit, team: number): void
  /** How many rooms have all their tasks placed. */
  roomsGivenBack(): number
  /** Takes back tasks in the reverse of the order in which they were entered. */
  remove(task: NetTask): void
}

export function createSiteLedger(net: SiteNet): SiteLedger {
  const { axis, tasks, calendars } = net
  const slotCount = axis.slotTick.length
  const free = new Int32Array(slotCount)
  const left = net.capacities.map(() => new Int32Array(slotCount))
  const placements = emptyPlacements(tasks.length)
  const rooms = createRoomBook(net)

  function clear(): void {
    free.set(axis.present)
    for (const [resource, levels] of left.entries()) levels.fill(net.capacities[resource] ?? 0)
    placements.start.fill(-never)
    rooms.clear()
  }

  /** First index from which every slot has enough people, or the index to try next as -1 - index. */
  function peopleFor(task: NetTask, size: number, calendar: TeamCalendar, from: number, to: number): number {
    let people = task.skilled
    for (let index = to - 1; index >= from; index--) {
      const rest = people & (free[calendar.slots[index] as number] as number)
      if (rest === people) continue
      people = rest
      if (countBits(people) < size) return -2 - index
    }
    for (const group of calendar.peopleOfGroup) if ((group & people) === 0) return -2 - from
    return people
  }

  function poolShort(task: NetTask, size: number, calendar: TeamCalendar, from: number, to: number): number {
    for (const { resource, amount, perPerson } of task.demands) {
      const levels = left[resource] as Int32Array
      const needed = perPerson ? amount * size : amount
      for (let index = to - 1; index >= from; index--) {
        if ((levels[calendar.slots[index] as number] as number) < needed) return index
      }
    }
    return -1
  }

  /** The tick before which the task cannot start because of quiet hours or of other tasks near by; 0 when it can. */
  function blockedUntil(task: NetTask, start: number, end: number): number {
    const quiet = quietUntil(task, start, end)
    if (quiet > start) return quiet
    for (const { other, mine, others } of task.conflicts) {
      const otherStart = placements.start[other] as number
      if (otherStart === -never) continue
      const otherEnd = (placements.end[other] as number) + others.after
      if (start - mine.before < otherEnd && otherStart - others.before < end + mine.after)
        return otherEnd + mine.before
    }
    return 0
  }

  function findOn(
    task: NetTask,
    size: number,
    duration: number,
    number: number,
    from: StartLimits,
    fit: Fit,
  ): FitOutcome {
    const calendar = calendars[number] as TeamCalendar
    const { ticks, runEnd, dayEnd, indexAt } = calendar
    const at = (tick: number): number =>
      tick >= axis.horizon ? ticks.length : (indexAt[axis.slotAt[Math.max(0, tick)] as number] as number)
    const pauseEnd = task.pausing === 'none' ? runEnd : task.pausing === 'break' ? dayEnd : null
    let index = Math.max(
      at(Math.max(from.start, task.release)),
      at(Math.max(from.end, task.endFrom) - 1) - duration + 1,
    )
    let outcome: FitOutcome = 'noPlace'
    for (;;) {
      const to = index + duration
      if (to > ticks.length) return outcome
      if (pauseEnd !== null && (pauseEnd[index] as number) < to) {
        index = pauseEnd[index] as number
        continue
      }
      const start = ticks[index] as number
      const end = (ticks[to - 1] as number) + 1
      if (start > task.startBy || end > task.endBy || end >= fit.end) return outcome
      if (end < from.end || end < task.endFrom) {
        index++
        continue
      }
      const people = size === 0 ? 0 : peopleFor(task, size, calendar, index, to)
      if (people < 0) {
        index = -1 - people
        continue
      }
      const short = task.demands.length === 0 ? -1 : poolShort(task, size, calendar, index, to)
      if (short >= 0) {
        index = short + 1
        continue
      }
      const until = blockedUntil(task, start, end)
      if (until > 0) {
        index = Math.max(index + 1, at(until))
        continue
      }
      const roomFrom = task.outOfUse === null ? 0 : rooms.blockedUntil(task, start, end)
      if (roomFrom > 0) {
        outcome = 'rooms'
        if (roomFrom >= never) return outcome
        index = Math.max(index + 1, at(roomFrom))
        continue
      }
      fit.start = start
      fit.end = end
      fit.people = people
      fit.calendar = number
      fit.index = index
      fit.duration = duration
      return 'found'
    }
  }

  function find(task: NetTask, size: number, duration: number, from: StartLimits, fit: Fit): FitOutcome {
    fit.end = never
    if (duration === 0) return findMoment(task, from, fit)
    let outcome: FitOutcome = 'noPlace'
    for (const calendar of task.calendars) {
      const one = findOn(task, size, duration, calendar, from, fit)
      if (one === 'found' || outcome === 'noPlace') outcome = one
    }
    return fit.end < never ? 'found' : outcome
  }

  function findMoment(task: NetTask, from: StartLimits, fit: Fit): FitOutcome {
    const tick = Math.max(from.start, from.end, task.release, task.endFrom)
    if (tick > task.startBy || tick > task.endBy) return 'noPlace'
    Object.assign(fit, { start: tick, end: tick, people: 0, calendar: 0, index: 0, duration: 0 })
    return 'found'
  }

  function book(task: NetTask, sign: 1 | -1): void {
    const { index } = task
    const duration = placements.duration[index] as number
    if (duration === 0) return
    const { slots } = calendars[placements.calendar[index] as number] as TeamCalendar
    const first = placements.index[index] as number
    const team = placements.team[index] as number
    for (let at = first; at < first + duration; at++) {
      const slot = slots[at] as number
      free[slot] = sign === 1 ? (free[slot] as number) & ~team : (free[slot] as number) | team
    }
    for (const { resource, amount, perPerson } of task.demands) {
      const levels = left[resource] as Int32Array
      const taken = sign * (perPerson ? amount * countBits(team) : amount)
      for (let at = first; at < first + duration; at++)
        levels[slots[at] as number] = (levels[slots[at] as number] as number) - taken
    }
  }

  function enter(task: NetTask, fit: Fit, team: number): void {
    const { index } = task
    placements.start[index] =
      task.fixed === 2 && !net.mirrored ? Math.min(fit.start, task.factStart) : fit.start
    placements.end[index] = fit.end
    placements.team[index] = team
    placements.calendar[index] = fit.calendar
    placements.index[index] = fit.index
    placements.duration[index] = fit.duration
    book(task, 1)
    if (task.outOfUse !== null) rooms.enter(task, placements.start[index] as number, fit.end)
  }

  function remove(task: NetTask): void {
    book(task, -1)
    placements.start[task.index] = -never
    if (task.outOfUse !== null) rooms.remove(task)
  }

  return { placements, free, clear, find, enter, remove, roomsGivenBack: rooms.givenBack }
}
