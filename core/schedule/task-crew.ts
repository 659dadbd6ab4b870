import { polygonArea } from '../geometry/polygon.ts'
import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { areaFromSquareUnits, toSquareFeet } from '../units/area.ts'
import { presentWindows } from './calendar.ts'
import type { Person, Splitting } from './model.ts'
import { planGrid, type Site } from './planning-site.ts'
import { isSiteRuleOn, siteRuleNumber, siteRules } from './site-rules.ts'
import type { Manner } from './step-manner.ts'

/** One more person for every hour and a half of work, as far as the room and the crew go (shop assumption). */
export function crewMost(site: Site, manner: Manner, roomId: RoomId, work: number): number {
  const skilled = site.people.filter((person) => hasSkills(person, manner)).length
  const room = peopleInRoom(site.job, roomId)
  return Math.max(1, Math.min(skilled, room ?? skilled, Math.ceil(work / 90)))
}

function hasSkills(person: Person, { skills }: Manner): boolean {
  return skills.every((skill) => person.skills.includes(skill))
}

export function peopleInRoom(job: Job, roomId: RoomId): number | null {
  const room = job.rooms[roomId]
  if (room === undefined || !isSiteRuleOn(job, siteRules.crowding)) return null
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
  const { stretch, day } = longestTimes(site, manner)
  if (wanted === 'none' && each <= stretch) return 'none'
  return each <= day ? 'break' : 'night'
}

/** The longest stretch between breaks, and the longest day, of anybody with the skill, chores taken off. */
function longestTimes(site: Site, manner: Manner): { readonly stretch: number; readonly day: number } {
  const { setUpMinutes, cleanUpMinutes } = site.job.houseRules
  const alarms = 2 * siteRuleNumber(site.job, siteRules.alarms, 'minutes')
  const chores = setUpMinutes + cleanUpMinutes + alarms + 2 * planGrid
  let stretch = 0
  let day = 0
  for (const person of site.people) {
    if (!hasSkills(person, manner)) continue
    for (const windows of weekOf(site, person)) {
      const lengths = windows.map(({ from, to }) => to - from)
      stretch = Math.max(stretch, ...lengths.map((length) => length - chores))
      day = Math.max(day, lengths.reduce((sum, length) => sum + length, 0) - chores)
    }
  }
  return { stretch, day }
}

function weekOf(site: Site, person: Person) {
  // Any plain week shows the person's hours: 2001-01-07 was a Sunday, long before any day off of a job.
  const sunday = Date.UTC(2001, 0, 7) / 86_400_000
  return Array.from({ length: 7 }, (_, day) => presentWindows(site.clock, person, sunday + day))
}
