import { type Job, records } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Skill, SurfaceClass } from '../project/vocabulary.ts'
import type { Specification, Step } from '../specification/types.ts'
import { formatMinutes } from '../units/duration.ts'
import { formatCents, roundToCents } from '../units/money.ts'
import type { EstimateLine } from './estimate-types.ts'
import type { Labour } from './labour.ts'

interface HoursGroup {
  readonly roomId: RoomId
  readonly surfaceClass: SurfaceClass | null
  readonly minutesBySkill: Map<Skill, number>
}

/** Cents per hour before burden: the mean of those on the crew list who have the skill, of everybody where nobody has it. */
export function meanWage(job: Job, skill: Skill | null): number {
  const crew = records(job.crew)
  const able = crew.filter((person) => skill === null || person.skills.includes(skill))
  const counted = able.length > 0 ? able : crew
  if (counted.length === 0) return 0
  return counted.reduce((total, person) => total + person.wageCents, 0) / counted.length
}

/** One line per room and class of surface, one for the daily chores, one for what is done for the house as a whole: hours x mean wage x (1 + burden). */
export function labourCosts(job: Job, specification: Specification, hours: Labour): readonly EstimateLine[] {
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  const groups = new Map<string, HoursGroup>()
  for (const line of hours.steps) {
    const step = steps.get(line.stepKey)
    if (step === undefined) continue
    const group = groupOf(groups, step)
    group.minutesBySkill.set(step.skill, (group.minutesBySkill.get(step.skill) ?? 0) + line.minutes)
  }
  return [
    ...[...groups.values()].map((group) => groupLine(job, group)),
    ...choresLine(job, hours),
    ...houseWorkLines(job, hours),
  ]
}

/** What is done for the house as a whole, in no room and in no plan. */
export function houseWorkLines(job: Job, hours: Labour): readonly EstimateLine[] {
  return hours.houseWork.map(({ key, label, minutes, derivation }) =>
    wholeJobLine(job, `labour:${key}`, label, minutes, derivation),
  )
}

function groupOf(groups: Map<string, HoursGroup>, step: Step): HoursGroup {
  const key = `${step.roomId}:${step.surfaceClass ?? 'room'}`
  const found = groups.get(key)
  if (found !== undefined) return found
  const group: HoursGroup = {
    roomId: step.roomId,
    surfaceClass: step.surfaceClass,
    minutesBySkill: new Map(),
  }
  groups.set(key, group)
  return group
}

function groupLine(job: Job, group: HoursGroup): EstimateLine {
  const parts = [...group.minutesBySkill].map(([skill, minutes]) => ({ minutes, wage: meanWage(job, skill) }))
  return workLine(job, group.roomId, group.surfaceClass, parts)
}

/** The work on one class of surface of a room: minutes at wages in cents per hour, with burden. */
export function workLine(
  job: Job,
  roomId: RoomId,
  surfaceClass: SurfaceClass | null,
  parts: readonly { readonly minutes: number; readonly wage: number }[],
): EstimateLine {
  const { burdenPercent } = job.houseRules.price
  const cost = parts.reduce((total, part) => total + (part.minutes / 60) * part.wage, 0)
  const sums = parts.map(
    (part) => `${formatMinutes(part.minutes)} x ${formatCents(Math.round(part.wage))} per hour`,
  )
  return {
    kind: 'labour',
    key: `labour:${roomId}:${surfaceClass ?? 'room'}`,
    label: `${job.rooms[roomId]?.name ?? roomId}`,
    roomId,
    surfaceClass,
    cents: roundToCents(cost * (1 + burdenPercent / 100)),
    derivation: `(${sums.join(' + ')}) x ${1 + burdenPercent / 100} with ${burdenPercent}% burden`,
  }
}

function choresLine(job: Job, hours: Labour): readonly EstimateLine[] {
  const { minutes, derivation } = hours.dailyChores
  if (minutes === 0) return []
  return [wholeJobLine(job, 'labour:daily', 'Setting up and clearing away each day', minutes, derivation)]
}

/** Hours that belong to no room, at everybody's mean wage. */
function wholeJobLine(
  job: Job,
  key: string,
  label: string,
  minutes: number,
  derivation: string,
): EstimateLine {
  const { burdenPercent } = job.houseRules.price
  const wage = meanWage(job, null)
  return {
    kind: 'labour',
    key,
    label,
    roomId: null,
    surfaceClass: null,
    cents: roundToCents((minutes / 60) * wage * (1 + burdenPercent / 100)),
    derivation: `${derivation} = ${formatMinutes(minutes)} x ${formatCents(Math.round(wage))} per hour x ${1 + burdenPercent / 100} with ${burdenPercent}% burden`,
  }
}
