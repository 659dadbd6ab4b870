import { choreMinutes } from '../calendar.ts'
import type { Windows } from './axis.ts'
import type { Net } from './net.ts'

/**
 * What a plan in the making costs: who is there on which day from when to when, on which days each room is out of use. Kept in stamped
 * tables, so that a new plan begins without clearing them.
 */
export interface Ledger {
  readonly clear: () => void
  readonly attend: (person: number, from: number, to: number) => void
  /** The room is out of use on the days of these ticks, both included. */
  readonly occupy: (room: number, from: number, to: number) => void
  /** Used before a day, but given back by then. */
  readonly isGivenBackBefore: (room: number, day: number) => boolean
  /** Cents for everybody's attendance. */
  readonly pay: () => number
  /** Cents for days that rooms are out of use or begun and waiting, and room-days beyond what the household allows. */
  readonly roomDays: () => { readonly cents: number; readonly beyond: number }
}

/** A pause of so many whole days in which nobody works and nothing is wet gives a room back meanwhile. */
const daysGivenBack = 3

/** Nothing attended and no room used yet; one serves all plans of a net. */
export function createLedger(net: Net): Ledger {
  const dayOfTick = net.axis.dayOfTick
  const horizon = net.axis.horizon
  const attendance = createAttendance(net)
  const use = createRoomUse(net)
  const dayAt = (tick: number): number => dayOfTick[tick < 0 ? 0 : Math.min(tick, horizon)] as number
  return {
    clear: () => {
      attendance.clear()
      use.clear()
    },
    attend: (person, from, to) => attendance.add(person, dayAt(from), from, to),
    occupy: (room, from, to) => use.add(room, dayAt(from), dayAt(to)),
    isGivenBackBefore: use.isGivenBackBefore,
    pay: attendance.pay,
    roomDays: use.cost,
  }
}

function createAttendance(net: Net) {
  const { axis, people } = net
  const days = axis.dayStart.length
  const first = new Int32Array(people.length * days)
  const last = new Int32Array(people.length * days)
  const stamps = new Uint32Array(people.length * days)
  const touched = new Int32Array(people.length * days)
  const { before, after } = choreMinutes(net.problem)
  const chores = (before + after) / axis.grid
  const least = net.problem.spending.leastPaid / axis.grid
  let stamp = 0
  let count = 0
  return {
    clear: () => {
      stamp++
      count = 0
    },
    add: (person: number, day: number, from: number, to: number): void => {
      const at = person * days + day
      if (stamps[at] !== stamp) {
        stamps[at] = stamp
        touched[count++] = at
        first[at] = from
        last[at] = to
        return
      }
      if (from < (first[at] as number)) first[at] = from
      if (to > (last[at] as number)) last[at] = to
    },
    pay: (): number => {
      let cents = 0
      for (let index = 0; index < count; index++) {
        const at = touched[index] as number
        const person = Math.floor(at / days)
        const { hours, price } = people[person] as Net['people'][number]
        const there = presentTicks(hours, at - person * days, first[at] as number, last[at] as number)
        cents += Math.max(least, there + chores) * price
      }
      return cents
    },
  }
}

/** Ticks of somebody's own hours between two ticks of a day. */
function presentTicks({ from, to, firstOfDay }: Windows, day: number, first: number, last: number): number {
  let sum = 0
  for (let at = firstOfDay[day] as number; at < from.length && (from[at] as number) < last; at++) {
    sum += Math.max(0, Math.min(to[at] as number, last) - Math.max(from[at] as number, first))
  }
  return sum
}

function createRoomUse(net: Net) {
  const { rooms } = net
  const days = net.axis.dayStart.length
  const stamps = new Uint32Array(rooms.length * days)
  const firstDay = new Int32Array(rooms.length)
  const lastDay = new Int32Array(rooms.length)
  const limit = net.problem.rules.roomsOutOfUse ?? rooms.length
  const perDay = new Uint16Array(days)
  let stamp = 0
  return {
    clear: () => {
      stamp++
      firstDay.fill(days)
      lastDay.fill(-1)
    },
    add: (room: number, from: number, to: number): void => {
      const last = Math.min(days - 1, to)
      for (let at = room * days + from; at <= room * days + last; at++) stamps[at] = stamp
      if (from < (firstDay[room] as number)) firstDay[room] = from
      if (last > (lastDay[room] as number)) lastDay[room] = last
    },
    isGivenBackBefore: (room: number, day: number): boolean => {
      if ((firstDay[room] as number) >= day) return false
      for (let back = 0; back <= daysGivenBack; back++) {
        if (stamps[room * days + day - back] === stamp) return false
      }
      return true
    },
    cost: () => {
      let cents = 0
      let beyond = 0
      if (limit < rooms.length) perDay.fill(0)
      for (let room = 0; room < rooms.length; room++) {
        const end = lastDay[room] as number
        let used = 0
        let waiting = 0
        let before = (firstDay[room] as number) - 1
        for (let day = before + 1; day <= end; day++) {
          if (stamps[room * days + day] !== stamp) continue
          const isGivenBack = day - before > daysGivenBack
          const from = isGivenBack ? day : before + 1
          if (isGivenBack) waiting += day - before - 1
          used += day - from + 1
          if (limit < rooms.length) {
            for (let at = from; at <= day; at++) {
              const open = (perDay[at] as number) + 1
              perDay[at] = open
              if (open > limit) beyond++
            }
          }
          before = day
        }
        const { centsPerDay, centsPerDayWaiting } = rooms[room] as Net['rooms'][number]
        cents += used * centsPerDay + waiting * centsPerDayWaiting
      }
      return { cents, beyond }
    },
  }
}
