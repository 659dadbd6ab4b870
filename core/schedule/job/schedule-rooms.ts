import { type Job, records } from '../../project/job.ts'
import type { Room, RoomId } from '../../project/sketch-records.ts'
import { type HouseRules, isBegun, minutesUntilUsable, type ScheduleRoom, type Task } from '../model.ts'
import type { Relaxed, Site } from './planning-site.ts'
import { localInstant } from './site-hours.ts'
import { isSiteRuleOn, siteRuleNumber, siteRules } from './site-rules.ts'
import { hallsOnTheWay, openNeighbours } from './ways-through.ts'

/** Every room of the house as the engine takes it: what it is open to, how it is reached, and when the household needs it. */
export function roomsOf(site: Site, tasks: readonly Task[], relaxed: Relaxed[]): readonly ScheduleRoom[] {
  const { job, clock } = site
  const open = openNeighbours(job)
  const halls = hallsOnTheWay(job)
  return records(job.rooms).map((room) => ({
    id: room.id,
    openTo: open.get(room.id) ?? [],
    sleeping: job.header.occupied && room.use === 'bedroom',
    reachedThrough: halls.get(room.id) ?? [],
    backBy: room.backBy === null ? null : localInstant(room.backBy, clock.timeZone),
    neededDaily: eveningsOf(site, room, tasks, relaxed),
    alarm: hasCoveredAlarm(job, room.id),
    tasksAtOnce: null,
    peopleAtOnce: site.peopleAtOnce.get(room.id) ?? null,
  }))
}

/**
 * How many rooms may be out of use. Where more of them are already when the plan is made, no plan can undo that: then it is as many
 * as are.
 */
export function roomLimitOf(
  site: Site,
  limit: HouseRules['roomsOutOfUse'],
  tasks: readonly Task[],
  relaxed: Relaxed[],
): HouseRules['roomsOutOfUse'] {
  if (limit === null) return null
  const begun = new Set(tasks.filter(isBegun).map((task) => task.room))
  const out = new Set(
    tasks.filter((task) => begun.has(task.room) && keepsOut(site, task)).map(({ room }) => room),
  )
  if (out.size <= limit) return limit
  for (const room of out) relaxed.push({ what: 'roomBegun', id: room ?? '' })
  return out.size
}

function keepsOut({ clock }: Site, { state, effects }: Task): boolean {
  return state.kind !== 'done' || state.end + minutesUntilUsable(effects) > clock.start
}

function hasCoveredAlarm(job: Job, roomId: RoomId): boolean {
  return records(job.keptItems).some((item) => item.roomId === roomId && item.handling === 'coverDaily')
}

/** A bath or kitchen there is only one of is needed every evening, unless something in it must stay closed for longer than a day's work. */
function eveningsOf(
  site: Site,
  room: Room,
  tasks: readonly Task[],
  relaxed: Relaxed[],
): ScheduleRoom['neededDaily'] {
  const { job } = site
  if (!job.header.occupied || !isSiteRuleOn(job, siteRules.evenings)) return null
  if (room.use !== 'bath' && room.use !== 'kitchen') return null
  if (records(job.rooms).filter((other) => other.use === room.use).length > 1) return null
  const from = siteRuleNumber(job, siteRules.evenings, 'from')
  const to = siteRuleNumber(job, siteRules.evenings, 'to')
  const opens = site.clock.siteHours[1]?.[0]?.from ?? 0
  const longest = Math.max(0, ...tasks.map((task) => closedMinutes(task, room.id)))
  if (opens + longest > from) {
    relaxed.push({ what: 'eveningsLost', id: room.id })
    return null
  }
  return { from, to }
}

function closedMinutes(task: Task, roomId: RoomId): number {
  const { closedFor } = task.effects
  if (task.room !== roomId || closedFor === null || task.state.kind === 'done') return 0
  return task.work / Math.max(1, task.crew.max) + closedFor
}
