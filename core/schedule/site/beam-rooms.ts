import { slotAtTick } from '../axis.ts'
import { countBits, type NetTask, never, type SiteNet } from '../net/site-net.ts'
import { emptyPlan, type PartialPlan } from './beam-plans.ts'
import type { RoomHolds } from './room-holds.ts'
import type { SiteForecast } from './site-forecast.ts'
import type { SiteLedger } from './site-ledger.ts'
import { dayAt } from './site-value.ts'

/** What becomes of the rooms in partial plans. The ledger holds the plan asked about. */
export interface BeamRooms {
  /** A plan with only what is fixed in it. From now on all is to be done before a tick. */
  begin(deadline: number): PartialPlan
  /** Writes a task just placed into the rooms of a plan. */
  note(plan: PartialPlan, task: number): void
  /** Least days all rooms together are out of use in any plan made of this one; never when it cannot be done in time. */
  days(plan: PartialPlan): number
  /** Grows as what is left to do comes near the deadline, room by room; never where it is too late. */
  urgency(plan: PartialPlan): number
}

/** Time to spare before the deadline (hours of work) that makes a room's last end urgent. */
const urgentHours = 3

export function createBeamRooms(
  net: SiteNet,
  holds: RoomHolds,
  forecast: SiteForecast,
  { placements, free }: SiteLedger,
  workOf: (task: number) => number,
): BeamRooms {
  const { tasks, axis, roomCount } = net
  const membersOf = Array.from({ length: roomCount }, (_, room) =>
    tasks.flatMap((task) =>
      task.room === room && task.outOfUse !== null && task.fixed === 0 ? [task.index] : [],
    ),
  )
  const backs = new Int32Array(roomCount)
  const works = new Int32Array(roomCount)
  const shortest = new Map<number, number>()
  let deadline = never

  const slotOf = (tick: number): number => slotAtTick(axis, tick)
  const dayOf = (tick: number): number => dayAt(net, tick)

  function note({ roomFirst, roomEnd, roomBack, roomWaiting }: PartialPlan, task: number): void {
    const { room, outOfUse, fixed } = tasks[task] as NetTask
    if (outOfUse === null) return
    const [start, end] = [placements.start[task] as number, placements.end[task] as number]
    roomFirst[room] = Math.min(roomFirst[room] as number, start - outOfUse.before)
    roomEnd[room] = Math.max(roomEnd[room] as number, forecast.endAfter(task, start, end))
    roomBack[room] = Math.max(roomBack[room] as number, forecast.backAfter(task, start, end))
    if (fixed === 0) roomWaiting[room] = (roomWaiting[room] as number) - 1
  }

  function days({ now, isPlaced, roomFirst, roomBack, roomWaiting }: PartialPlan): number {
    let sum = 0
    let begun = 0
    for (let room = 0; room < roomCount; room++) {
      const first = roomFirst[room] as number
      const members = membersOf[room] as readonly number[]
      if (first === never && members.length === 0) continue
      if (first === never) sum += shortestStay(room, dayOf(now))
      else if (roomWaiting[room] === 0) sum += dayOf((roomBack[room] as number) - 1) - dayOf(first) + 1
      else {
        let back = roomBack[room] as number
        let work = 0
        for (const task of members) {
          if (isPlaced[task] === 1) continue
          back = Math.max(back, forecast.backFrom(task, now))
          work += workOf(task)
        }
        roomBack[room] = back
        backs[begun] = back
        works[begun++] = work
        sum += 1 - dayOf(first)
      }
      if (sum >= never) return never
    }
    return sum + daysOfBegun(now, begun)
  }

  /** Sum of the days on which rooms begun come back: the work left in some of them cannot be done faster than all people work. */
  function daysOfBegun(now: number, begun: number): number {
    const byBack = backs.subarray(0, begun).sort()
    const byWork = works.subarray(0, begun).sort()
    let [sum, needed, given, slot] = [0, 0, 0, slotOf(now)]
    for (let at = 0; at < begun; at++) {
      needed += byWork[at] as number
      while (given < needed && slot < free.length) given += countBits(free[slot++] as number)
      const worked = given < needed ? never : slot === 0 ? 0 : (axis.slotTick[slot - 1] as number) + 1
      if (worked > deadline) return never
      sum += dayOf(Math.max(byBack[at] as number, worked) - 1)
    }
    return sum
  }

  /** Fewest days a room not yet begun is out of use when its first task comes on some day or later. */
  function shortestStay(room: number, day: number): number {
    const key = room * 100_000 + day
    const known = shortest.get(key)
    if (known !== undefined) return known
    const first = axis.slotTick[slotOf(holds.dayAfter(0, day))] ?? never
    let stay = never
    if (first < deadline) {
      const members = membersOf[room] as readonly number[]
      const isInTime = members.every((task) => forecast.endFrom(task, first) <= deadline)
      const back = Math.max(...members.map((task) => forecast.backFrom(task, first)))
      if (isInTime) stay = Math.min(dayOf(back - 1) - dayOf(first) + 1, shortestStay(room, dayOf(first) + 1))
    }
    shortest.set(key, stay)
    return stay
  }

  function urgency({ now, isPlaced, roomEnd, roomWaiting }: PartialPlan): number {
    let sum = 0
    for (const [room, members] of membersOf.entries()) {
      if (roomWaiting[room] === 0) continue
      let latest = roomEnd[room] as number
      for (const task of members)
        if (isPlaced[task] === 0) latest = Math.max(latest, forecast.endFrom(task, now))
      if (latest > deadline) return never
      const hours = ((slotOf(deadline) - slotOf(latest)) * axis.grid) / 60
      sum += Math.exp(-hours / urgentHours)
    }
    return sum
  }

  return {
    begin(tick) {
      deadline = tick
      shortest.clear()
      const plan = emptyPlan(net, membersOf)
      for (const { index, fixed } of tasks) if (fixed !== 0) note(plan, index)
      return plan
    },
    note,
    days,
    urgency,
  }
}
