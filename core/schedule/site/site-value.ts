import { dayAtTick, slotAtTick } from '../axis.ts'
import { countBits, never, type SiteNet, type TeamCalendar } from '../net/site-net.ts'
import type { SitePlacements } from './site-placements.ts'

/**
 * Objective terms in their order of weight, all smaller is better:
 * finish later than promised, promises moved, finish (days or grid steps), room-days out of use, idle slots, product changes,
 * finish tick, sum of ends. The last two only break ties.
 */
export type SiteValue = Float64Array
const comparedTerms = 8
/** Index of one number that falls on the way to a better plan: the terms weighted, with hours where days are too coarse. */
export const guideTerm = 8

export function isBetter(one: SiteValue, other: SiteValue): boolean {
  return compareValues(one, other) < 0
}

export function compareValues(one: SiteValue, other: SiteValue): number {
  for (let term = 0; term < comparedTerms; term++) {
    const difference = (one[term] as number) - (other[term] as number)
    if (difference !== 0) return difference
  }
  return 0
}

export function worstValue(): SiteValue {
  return new Float64Array(comparedTerms + 1).fill(Number.POSITIVE_INFINITY)
}

/**
 * Reckons the value of complete placements of a forward (not mirrored) net; the result is written into `value`. `goal`: tick by
 * which all is to be done, or never. Until it is reached the guide goes by how late tasks end, since the last end alone is the
 * same for many plans.
 */
export function createSiteValuer(
  net: SiteNet,
): (placements: SitePlacements, value: SiteValue, goal: number) => void {
  const { axis, tasks } = net
  const hasPromises = tasks.some((task) => task.promisedStart !== -never)
  const promisedFinish = promisedFinishOf(net)
  const idle = createIdleCounter(net)
  const byStart = tasks.map((task) => task.index)
  const lastProduct = new Int32Array(net.problem.people.length)
  const roomFirst = new Int32Array(net.roomCount)
  const roomLast = new Int32Array(net.roomCount)

  function finishTick(placements: SitePlacements): number {
    let latest = net.firstTick
    for (const task of tasks)
      if (task.fixed !== 1) latest = Math.max(latest, placements.end[task.index] as number)
    return latest
  }

  function finishOf(tick: number): number {
    if (net.problem.clock.kind === 'unbroken') return tick
    return dayAtTick(axis, tick - 1)
  }

  function moved(placements: SitePlacements): number {
    let count = 0
    for (const task of tasks) {
      if (task.promisedStart === -never || task.fixed === 1 || task.fixed === 2) continue
      const sameTeam = (placements.team[task.index] as number) === task.promisedTeam
      if (placements.start[task.index] !== task.promisedStart || !sameTeam) count++
    }
    return count
  }

  function roomDays(placements: SitePlacements): number {
    roomFirst.fill(never)
    roomLast.fill(-never)
    for (const { room, outOfUse, index } of tasks) {
      if (outOfUse === null) continue
      roomFirst[room] = Math.min(
        roomFirst[room] as number,
        (placements.start[index] as number) - outOfUse.before,
      )
      roomLast[room] = Math.max(roomLast[room] as number, (placements.end[index] as number) + outOfUse.after)
    }
    let days = 0
    for (let room = 0; room < net.roomCount; room++) {
      if (roomFirst[room] === never) continue
      days += dayAt(net, (roomLast[room] as number) - 1) - dayAt(net, roomFirst[room] as number) + 1
    }
    return days
  }

  const slotOf = (tick: number): number => slotAtTick(axis, tick)

  /** Working time for which rooms are out of use, in slots, as left by the last call of `roomDays`. */
  function roomSlots(): number {
    let slots = 0
    for (let room = 0; room < net.roomCount; room++) {
      if (roomFirst[room] !== never)
        slots += slotOf(roomLast[room] as number) - slotOf(roomFirst[room] as number)
    }
    return slots
  }

  /** Working time by which tasks end after a tick, summed over the tasks. */
  function lateSlots(placements: SitePlacements, goal: number): number {
    const by = slotOf(goal)
    let late = 0
    for (const { index } of tasks) late += Math.max(0, slotOf(placements.end[index] as number) - by)
    return late
  }

  function productChanges(placements: SitePlacements): number {
    byStart.sort(
      (one, other) => (placements.start[one] as number) - (placements.start[other] as number) || one - other,
    )
    lastProduct.fill(-1)
    let changes = 0
    for (const index of byStart) {
      const product = tasks[index]?.product as number
      if (product < 0) continue
      for (let team = placements.team[index] as number; team !== 0; team &= team - 1) {
        const person = 31 - Math.clz32(team & -team)
        if (lastProduct[person] !== -1 && lastProduct[person] !== product) changes++
        lastProduct[person] = product
      }
    }
    return changes
  }

  return (placements, value, goal) => {
    const tick = finishTick(placements)
    const finish = finishOf(tick)
    value[0] = hasPromises ? Math.max(0, finish - finishOf(promisedFinish)) : 0
    value[1] = hasPromises ? moved(placements) : 0
    value[2] = finish
    value[3] = roomDays(placements)
    value[4] = idle(placements)
    value[5] = productChanges(placements)
    value[6] = tick
    let sum = 0
    for (let index = 0; index < tasks.length; index++) sum += placements.end[index] as number
    value[7] = sum
    const hours = net.axis.grid / 60
    const rest = 100 * value[3] + hours * (3 * roomSlots() + 0.5 * value[4]) + 2 * value[5]
    const days = net.problem.clock.kind === 'site' ? 200 * value[2] : 0
    const guide =
      goal === never
        ? days + hours * (2 * tick + 40 * slotOf(tick)) + rest
        : 60 * hours * lateSlots(placements, goal) + 0.3 * rest
    value[guideTerm] = 100_000 * value[0] + 2000 * value[1] + guide
  }
}

/** Local day of a tick; before the axis and after it every day has 24 hours. */
export function dayAt(net: SiteNet, tick: number): number {
  const { axis } = net
  const ticksPerDay = 1440 / axis.grid
  if (tick < 0) return Math.floor(tick / ticksPerDay)
  if (tick < axis.horizon) return axis.dayOfTick[tick] as number
  return (axis.dayOfTick[axis.horizon] as number) + Math.floor((tick - axis.horizon) / ticksPerDay)
}

function promisedFinishOf(net: SiteNet): number {
  return net.tasks.reduce((latest, task) => {
    if (task.promisedStart === -never) return latest
    const work = net.problem.tasks[task.index]?.work ?? 0
    const size = Math.max(1, countBits(task.promisedTeam))
    const slots = Math.ceil(work / size / net.axis.grid)
    return Math.max(latest, endOfWork(net, task.promisedTeam, task.promisedStart, slots))
  }, net.firstTick)
}

function endOfWork(net: SiteNet, team: number, start: number, slots: number): number {
  const { axis } = net
  let left = slots
  for (let slot = slotAtTick(axis, Math.ceil(start)); slot < axis.slotTick.length; slot++) {
    if (left === 0) break
    if (((axis.present[slot] as number) & team) !== team) continue
    left--
    if (left === 0) return (axis.slotTick[slot] as number) + 1
  }
  return start
}

/** Slots between a person's first and last work of a day in which the person could work and does not. */
function createIdleCounter(net: SiteNet): (placements: SitePlacements) => number {
  const { axis, tasks } = net
  const people = net.problem.people.length
  const days = (axis.dayOfTick[axis.horizon] as number) + 1
  const first = new Int32Array(people * days).fill(never)
  const last = new Int32Array(people * days).fill(-1)
  const touched: number[] = []
  const presentBefore = slotsBefore(net)

  function note(person: number, day: number, from: number, to: number): void {
    const cell = person * days + day
    if (first[cell] === never) touched.push(cell)
    first[cell] = Math.min(first[cell] as number, from)
    last[cell] = Math.max(last[cell] as number, to)
  }

  return (placements) => {
    let worked = 0
    for (const { index } of tasks) {
      const duration = placements.duration[index] as number
      const team = placements.team[index] as number
      if (duration === 0 || team === 0) continue
      const calendar = net.calendars[placements.calendar[index] as number] as TeamCalendar
      worked += duration * countBits(team)
      const begin = placements.index[index] as number
      for (let at = begin; at < begin + duration; ) {
        const to = Math.min(begin + duration, calendar.dayEnd[at] as number)
        const day = axis.dayOfTick[calendar.ticks[at] as number] as number
        for (let rest = team; rest !== 0; rest &= rest - 1) {
          note(
            31 - Math.clz32(rest & -rest),
            day,
            calendar.slots[at] as number,
            calendar.slots[to - 1] as number,
          )
        }
        at = to
      }
    }
    let between = 0
    for (const cell of touched) {
      const counts = presentBefore[(cell / days) | 0] as Int32Array
      between += (counts[(last[cell] as number) + 1] as number) - (counts[first[cell] as number] as number)
      first[cell] = never
      last[cell] = -1
    }
    touched.length = 0
    return between - worked
  }
}

/** For each person how many slots of theirs lie before each slot: what the calendar of them alone, or of their equals, tells. */
function slotsBefore(net: SiteNet): readonly (Int32Array | undefined)[] {
  return net.problem.people.map((_, person) => {
    const own = net.calendars.find(({ peopleOfGroup: [people = 0, ...others] }) => {
      return others.length === 0 && (people >> person) & 1
    })
    return own?.indexAt
  })
}
