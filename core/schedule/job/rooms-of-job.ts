import { polygonArea } from '../../geometry/polygon.ts'
import { type Job, records } from '../../project/job.ts'
import type { RoomSet } from '../../project/room-sets.ts'
import type { Room, RoomId } from '../../project/sketch-records.ts'
import { instantOf } from '../../time/site-moment.ts'
import { areaFromSquareUnits, toSquareFeet } from '../../units/area.ts'
import { workingMinutes } from '../../units/duration.ts'
import { isBegun, minutesUntilUsable, type PlanRules, type ScheduleRoom, type Task } from '../model.ts'
import { longestDay } from './longest-day.ts'
import { planGrid, type Site } from './planning-site.ts'
import { isSiteRuleOn, pricesOf, siteRuleNumber, siteRules } from './site-rules.ts'
import { hallsOnTheWay, openNeighbours } from './ways-through.ts'

/** Two people in a room at most: a lead and one more. */
const mostInRoom = 2

/** Every room set of the plan: what it is open to, how it is reached, when the household needs it, what a day without it costs. */
export function roomsOf(site: Site, tasks: readonly Task[]): readonly ScheduleRoom[] {
  const { job, clock, passes } = site
  const open = openNeighbours(job)
  const halls = hallsOnTheWay(job)
  const setOf = new Map(passes.sets.flatMap(({ id, roomIds }) => roomIds.map((room) => [room, id] as const)))
  const { roomDay, waitingDay } = pricesOf(job)
  return passes.sets.map((set) => {
    const rooms = roomsIn(job, set)
    const others = (near: ReadonlyMap<RoomId, readonly RoomId[]>): readonly RoomId[] => {
      const found = rooms.flatMap(({ id }) => near.get(id) ?? []).flatMap((id) => setOf.get(id) ?? [])
      return [...new Set(found.filter((id) => id !== set.id))]
    }
    const promised = rooms.flatMap(({ backBy }) => (backBy === null ? [] : [backBy])).toSorted()[0]
    return {
      id: set.id,
      openTo: others(open),
      sleeping: job.header.occupied && rooms.some(({ use }) => use === 'bedroom'),
      reachedThrough: others(halls),
      backBy: promised === undefined ? null : instantOf(promised, clock.timeZone),
      neededDaily: eveningsOf(site, set, rooms, tasks),
      alarm: records(job.keptItems).some(
        (item) => item.handling === 'coverDaily' && set.roomIds.some((id) => id === item.roomId),
      ),
      peopleAtOnce: peopleAtOnce(job, rooms),
      centsPerDay: roomDay,
      centsPerDayWaiting: waitingDay,
      setUpAgain: workingMinutes(setUpMinutes(site, set)),
    }
  })
}

function roomsIn(job: Job, set: RoomSet): readonly Room[] {
  return set.roomIds.flatMap((id) => job.rooms[id] ?? [])
}

/** One person at a time in a small room. */
export function peopleAtOnce(job: Job, rooms: readonly Room[]): number {
  if (!isSiteRuleOn(job, siteRules.crowding)) return mostInRoom
  const floor = rooms.reduce(
    (sum, room) => sum + toSquareFeet(areaFromSquareUnits(polygonArea(room.corners))),
    0,
  )
  return floor < siteRuleNumber(job, siteRules.crowding, 'squareFeetForTwo') ? 1 : mostInRoom
}

/** What a room that was given back meanwhile takes to be set up once more: protecting it again. What was taken off stays off. */
function setUpMinutes({ passes }: Site, set: RoomSet): number {
  const lines = passes.passes.filter(({ roomSetId }) => roomSetId === set.id).flatMap((pass) => pass.lines)
  const minutes = lines.reduce(
    (sum, line) => sum + (line.operation === 'protectRoom' ? line.personMinutes : 0),
    0,
  )
  return Math.ceil(minutes)
}

/**
 * How many rooms may be out of use. Where more of them are already when the plan is made, no plan can undo that: then it is as many
 * as are.
 */
export function roomLimitOf(
  site: Site,
  limit: PlanRules['roomsOutOfUse'],
  tasks: readonly Task[],
): PlanRules['roomsOutOfUse'] {
  if (limit === null) return null
  const begun = new Set(tasks.filter(isBegun).map((task) => task.room))
  const out = new Set(
    tasks.filter((task) => begun.has(task.room) && keepsOut(site, task)).map(({ room }) => room),
  )
  if (out.size <= limit) return limit
  for (const room of out) site.relaxed.push({ what: 'roomBegun', id: room ?? '' })
  return out.size
}

function keepsOut({ clock }: Site, { state, effects }: Task): boolean {
  return state.kind !== 'done' || state.end + minutesUntilUsable(effects) > clock.start
}

/** What a day takes besides the work itself, before a room can be open again in the evening; minutes. */
const pauseAndMove = 60

/** A bath or kitchen there is only one of is needed every evening, unless something in it must stay closed for longer than a day's work. */
function eveningsOf(
  site: Site,
  set: RoomSet,
  rooms: readonly Room[],
  tasks: readonly Task[],
): ScheduleRoom['neededDaily'] {
  const { job, clock, relaxed } = site
  if (!job.header.occupied || !isSiteRuleOn(job, siteRules.evenings)) return null
  const isOnly = ({ use }: Room): boolean =>
    (use === 'bath' || use === 'kitchen') &&
    records(job.rooms).filter((other) => other.use === use).length === 1
  if (!rooms.some(isOnly)) return null
  const from = siteRuleNumber(job, siteRules.evenings, 'from')
  const to = siteRuleNumber(job, siteRules.evenings, 'to')
  const starts = site.people.flatMap(({ week }) =>
    week.flatMap(([first]) => (first === undefined ? [] : [first.from])),
  )
  const begin = Math.max(clock.siteHours[1]?.[0]?.from ?? 0, ...starts) + job.houseRules.setUpMinutes
  const closing = tasks.filter(({ room, effects, state }) => {
    return room === set.id && effects.closedFor !== null && state.kind !== 'done'
  })
  const longest = Math.max(0, ...closing.map(({ work, effects }) => work + (effects.closedFor ?? 0)))
  const mostWork = Math.max(0, ...closing.map(({ work }) => work))
  if (begin + pauseAndMove + longest > from || mostWork > shortestLongDay(site)) {
    relaxed.push({ what: 'eveningsLost', id: set.id })
    return null
  }
  return { from, to }
}

/** A day that everybody who leads has: what is longer goes on over a night for somebody. */
function shortestLongDay(site: Site): number {
  return Math.min(...site.people.map((person) => longestDay(site, [person]))) - planGrid
}
