import type { PlanBody } from '../../project/issued-records.ts'
import type { Table } from '../../project/job.ts'
import type { CrewMember } from '../../project/shop-records.ts'
import { type EpochMinutes, epochMinutes } from '../../time/instant.ts'
import { instantOf } from '../../time/site-moment.ts'
import type { PlanSegment } from '../model.ts'
import type { Busy } from './problem-of-job.ts'

/** Somebody at work for a job on a day, setting up and leaving included. */
export interface Presence {
  readonly crewMemberId: string
  readonly from: EpochMinutes
  readonly to: EpochMinutes
}

/** When people are at a job by its accepted plan, one stretch for each person and day. Plans accepted before it was kept know no time for setting up. */
export function presencesOf({ tasks, days }: PlanBody['plan'], timeZone: string): readonly Presence[] {
  const spans = new Map<string, { readonly crewMemberId: string; from: string; to: string }>()
  for (const { crewMemberIds, segments } of tasks) {
    for (const { startsAt, endsAt } of segments) {
      for (const crewMemberId of crewMemberIds) {
        const key = `${startsAt.slice(0, 10)} ${crewMemberId}`
        const known = spans.get(key)
        if (known === undefined) spans.set(key, { crewMemberId, from: startsAt, to: endsAt })
        else {
          if (startsAt < known.from) known.from = startsAt
          if (endsAt > known.to) known.to = endsAt
        }
      }
    }
  }
  const chores = new Map((days ?? []).map((day) => [`${day.date} ${day.crewMemberId}`, day]))
  return [...spans].map(([key, { crewMemberId, from, to }]) => {
    const { setUpMinutes = 0, leavingMinutes = 0 } = chores.get(key) ?? {}
    return {
      crewMemberId,
      from: epochMinutes(instantOf(from, timeZone) - setUpMinutes),
      to: epochMinutes(instantOf(to, timeZone) + leavingMinutes),
    }
  })
}

/** Who it is, besides, by the name that the job knows. */
export interface NamedPresence extends Presence {
  readonly name: string
}

/** Somebody at work for another job of the book. */
export interface WorkElsewhere extends NamedPresence {
  readonly jobKey: string
  readonly jobTitle: string
}

/**
 * When people of a crew are on other jobs, by their ids here. Who has the same id is the same person, for a new job copies the crew of the one
 * before; where the ids differ the name decides.
 */
export function busyOf(crew: Table<CrewMember>, elsewhere: readonly NamedPresence[]): Busy {
  const busy: Record<string, readonly PlanSegment[]> = {}
  for (const member of Object.values(crew)) {
    const own = elsewhere.filter((work) => isWorkOf(crew, member, work))
    if (own.length > 0) busy[member.id] = united(own.map(({ from, to }) => ({ start: from, end: to })))
  }
  return busy
}

function isWorkOf(
  crew: Table<CrewMember>,
  member: CrewMember,
  { crewMemberId, name }: NamedPresence,
): boolean {
  return crew[crewMemberId] === undefined
    ? nameKey(name) === nameKey(member.name)
    : crewMemberId === member.id
}

/** By what two names are held to be of one person. */
export function nameKey(name: string): string {
  return name.trim().toLowerCase()
}

/** One person at two jobs at once. */
interface SharedTime {
  readonly name: string
  /** The other job. */
  readonly jobKey: string
  readonly jobTitle: string
  readonly from: EpochMinutes
  readonly to: EpochMinutes
}

/** Where a plan has people of its crew at work while they are at other jobs of the book, by time. */
export function sharedWithOthers(
  crew: Table<CrewMember>,
  own: readonly Presence[],
  elsewhere: readonly WorkElsewhere[],
): readonly SharedTime[] {
  const shared = own.flatMap((presence) => {
    const member = crew[presence.crewMemberId]
    if (member === undefined) return []
    return elsewhere
      .filter((work) => isWorkOf(crew, member, work))
      .flatMap(({ jobKey, jobTitle, ...work }): readonly SharedTime[] => {
        const span = commonTime(presence, work)
        return span === null ? [] : [{ name: member.name, jobKey, jobTitle, ...span }]
      })
  })
  return shared.toSorted((one, other) => one.from - other.from)
}

interface Stretch {
  readonly from: EpochMinutes
  readonly to: EpochMinutes
}

/** The time two stretches have in common; null where they only touch or lie apart. */
export function commonTime(one: Stretch, other: Stretch): Stretch | null {
  const [from, to] = [Math.max(one.from, other.from), Math.min(one.to, other.to)]
  return from < to ? { from: epochMinutes(from), to: epochMinutes(to) } : null
}

/** Stretches that touch or overlap made one, in order. */
function united(spans: readonly PlanSegment[]): readonly PlanSegment[] {
  const joined: PlanSegment[] = []
  for (const span of spans.toSorted((one, other) => one.start - other.start)) {
    const last = joined.at(-1)
    if (last !== undefined && span.start <= last.end)
      joined[joined.length - 1] = { start: last.start, end: epochMinutes(Math.max(last.end, span.end)) }
    else joined.push(span)
  }
  return joined
}
