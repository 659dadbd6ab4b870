import { type Job, records } from '../project/job.ts'
import type { CrewMember } from '../project/shop-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import { stepTitle } from '../specification/trade-words.ts'
import type { Specification, Step } from '../specification/types.ts'
import { calendarInstant, calendarText, contentLine } from './calendar-text.ts'
import { instantOf, type SiteMoment } from './site-time.ts'
import { placeInSentence, stepPlace } from './surface-words.ts'
import type { WorkPlan, WorkPlanTask } from './work-plan.ts'

/** One stay of one person in one room within a day. */
interface Visit {
  readonly person: CrewMember
  readonly task: WorkPlanTask
  readonly startsAt: SiteMoment
  readonly endsAt: SiteMoment
  readonly stepKeys: readonly string[]
}

/**
 * The crew's calendar as iCalendar (RFC 5545), times in UTC. An event is one stay of one person in one room; its UID is
 * made of the job's own id, room, person and the number of the stay, so that a new plan moves the events of the old one in the calendars
 * that read it, and events of two jobs never meet. Stays that a plan accepted earlier had and this one has not are cancelled (RFC 5545
 * section 3.8.1.11). `madeAt` is when the file is made: a file made later counts as the newer one.
 */
export function crewCalendar(
  job: Job,
  takeoff: Takeoff,
  specification: Specification,
  plan: WorkPlan,
  madeAt: SiteMoment,
): string {
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  const made = instantOf(madeAt, job.header.timeZone)
  const staysNow = staysOf(job, plan)
  const now = new Set(staysNow.map(({ uid }) => uid))
  const gone = new Map(
    acceptedPlans(job)
      .flatMap((earlier) => staysOf(job, earlier))
      .filter(({ uid }) => !now.has(uid))
      .map((stay) => [stay.uid, stay]),
  )
  return [
    contentLine('BEGIN', 'VCALENDAR'),
    contentLine('VERSION', '2.0'),
    contentLine('PRODID', '-//Coatwright//Crew calendar//EN'),
    ...staysNow.flatMap((stay) => eventLines(job, stay, made, workLines(job, takeoff, steps, stay))),
    ...[...gone.values()].flatMap((stay) =>
      eventLines(job, stay, made, [contentLine('STATUS', 'CANCELLED')]),
    ),
    contentLine('END', 'VCALENDAR'),
  ].join('')
}

interface Stay {
  readonly uid: string
  readonly visit: Visit
}

function staysOf(job: Job, plan: WorkPlan): readonly Stay[] {
  return records(job.crew)
    .flatMap((person) => numbered(visitsOf(plan, person)))
    .map(({ visit, number }) => ({
      visit,
      uid: `${job.header.id}.${visit.task.roomId}.${visit.person.id}.${number}`,
    }))
}

/** Every plan that was accepted and can be opened, the oldest first. */
function acceptedPlans(job: Job): readonly WorkPlan[] {
  return records(job.issued).flatMap((issued) =>
    issued.kind === 'plan' && issued.body.version !== null ? [issued.body.plan] : [],
  )
}

/** Segments of a person in order, joined while room and day stay the same. */
function visitsOf(plan: WorkPlan, person: CrewMember): readonly Visit[] {
  const pieces = plan.tasks
    .filter((task) => task.crewMemberIds.includes(person.id))
    .flatMap((task) =>
      task.segments.map((segment) => ({ ...segment, task, person, stepKeys: task.stepKeys })),
    )
    .toSorted((a, b) => (a.startsAt < b.startsAt ? -1 : a.startsAt > b.startsAt ? 1 : 0))
  const visits: Visit[] = []
  for (const piece of pieces) {
    const last = visits.at(-1)
    if (last === undefined || !isSameStay(last, piece)) {
      visits.push(piece)
      continue
    }
    const stepKeys = [...new Set([...last.stepKeys, ...piece.stepKeys])]
    visits[visits.length - 1] = { ...last, endsAt: piece.endsAt, stepKeys }
  }
  return visits
}

function isSameStay(one: Visit, next: Visit): boolean {
  return one.task.roomId === next.task.roomId && one.startsAt.slice(0, 10) === next.startsAt.slice(0, 10)
}

/** Counts the stays of one person in each room. */
function numbered(visits: readonly Visit[]): readonly { readonly visit: Visit; readonly number: number }[] {
  return visits.map((visit, index) => ({
    visit,
    number: visits.slice(0, index + 1).filter((each) => each.task.roomId === visit.task.roomId).length,
  }))
}

function workLines(
  job: Job,
  takeoff: Takeoff,
  steps: ReadonlyMap<string, Step>,
  { visit }: Stay,
): readonly string[] {
  const { title, site } = job.header
  const work = visit.stepKeys.flatMap((key) => {
    const step = steps.get(key)
    return step === undefined ? [] : [`${stepTitle(step)}: ${placeInSentence(stepPlace(job, takeoff, step))}`]
  })
  return [
    contentLine('DESCRIPTION', calendarText([title, ...work].join('\n'))),
    ...(site === '' ? [] : [contentLine('LOCATION', calendarText(site))]),
  ]
}

/** `made` is the minute the file is made in: a number that grows, as SEQUENCE asks. */
function eventLines(
  job: Job,
  { uid, visit }: Stay,
  made: number,
  more: readonly string[],
): readonly string[] {
  const { timeZone } = job.header
  const room = job.rooms[visit.task.roomId]?.name ?? visit.task.roomId
  return [
    contentLine('BEGIN', 'VEVENT'),
    contentLine('UID', calendarText(`${uid}@coatwright`)),
    contentLine('DTSTAMP', calendarInstant(made)),
    contentLine('SEQUENCE', String(Math.max(0, made))),
    contentLine('DTSTART', calendarInstant(instantOf(visit.startsAt, timeZone))),
    contentLine('DTEND', calendarInstant(instantOf(visit.endsAt, timeZone))),
    contentLine('SUMMARY', calendarText(`${visit.person.name}: ${room}`)),
    ...more,
    contentLine('END', 'VEVENT'),
  ]
}
