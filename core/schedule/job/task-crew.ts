import { polygonArea } from '../../geometry/polygon.ts'
import type { Job } from '../../project/job.ts'
import type { Room, RoomId } from '../../project/sketch-records.ts'
import { areaFromSquareUnits, toSquareFeet } from '../../units/area.ts'
import { presentWindows } from '../calendar.ts'
import type { Person, Splitting } from '../model.ts'
import { type LongestTimes, planGrid, type Site } from './planning-site.ts'
import { isSiteRuleOn, siteRuleNumber, siteRules } from './site-rules.ts'
import type { Manner } from './step-manner.ts'

/** One more person for every hour and a half of work, as far as the room and the crew go (shop assumption). */
export function crewMost(site: Site, manner: Manner, roomId: RoomId, work: number): number {
  const skilled = site.people.filter((person) => hasSkills(person, manner)).length
  const room = site.peopleAtOnce.get(roomId) ?? null
  return Math.max(1, Math.min(skilled, room ?? skilled, Math.ceil(work / 90)))
}

function hasSkills(person: Person, { skills }: Manner): boolean {
  return skills.every((skill) => person.skills.includes(skill))
}

export function peopleInRoom(job: Job, room: Room): number | null {
  if (!isSiteRuleOn(job, siteRules.crowding)) return null
  const floor = toSquareFeet(areaFromSquareUnits(polygonArea(room.corners)))
  if (floor < siteRuleNumber(job, siteRules.crowding, 'squareFeetForTwo')) return 1
  return floor < siteRuleNumber(job, siteRules.crowding, 'squareFeetForThree') ? 2 : null
}

export function wantedSplitting({ splittable }: Manner): Splitting {
  return splittable === 'no' ? 'none' : splittable
}

/** Work longer than anybody's longest stretch cannot be done in one; then it pauses over breaks, or over nights. */
export function splittingOf(site: Site, manner: Manner, work: number, crewMax: number): Splitting {
  const wanted = wantedSplitting(manner)
  if (wanted === 'night') return wanted
  const each = Math.ceil(work / crewMax / planGrid) * planGrid
  const times = site.longestTimes.filter((_, index) => hasSkills(site.people[index] as Person, manner))
  const stretch = Math.max(0, ...times.map((time) => time.stretch))
  const day = Math.max(0, ...times.map((time) => time.day))
  if (wanted === 'none' && each <= stretch) return 'none'
  return each <= day ? 'break' : 'night'
}

/** Chores are taken off both times. */
export function longestTimesOf(job: Job, clock: Site['clock'], person: Person): LongestTimes {
  const { setUpMinutes, cleanUpMinutes } = job.houseRules
  const alarms = 2 * siteRuleNumber(job, siteRules.alarms, 'minutes')
  const chores = setUpMinutes + cleanUpMinutes + alarms + 2 * planGrid
  // Any plain week shows the person's hours: 2001-01-07 was a Sunday, long before any day off of a job.
  const sunday = Date.UTC(2001, 0, 7) / 86_400_000
  const days = Array.from({ length: 7 }, (_, day) =>
    presentWindows(clock, person, sunday + day).map(({ from, to }) => to - from),
  )
  return {
    stretch: Math.max(0, ...days.flat()) - chores,
    day: Math.max(...days.map((lengths) => lengths.reduce((sum, length) => sum + length, 0))) - chores,
  }
}
