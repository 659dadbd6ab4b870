import { type Job, records } from '../project/job.ts'
import type { CrewMember, CrewMemberId } from '../project/shop-records.ts'
import type { Specification } from '../specification/types.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import { type CalendarEvent, calendarFile } from './calendar-file.ts'
import type { HalfDayWork, PersonDay, SiteDay } from './document-types.ts'
import { siteDays } from './site-days.ts'
import { earliest, latest, type WorkPlan } from './work-plan.ts'

/**
 * The calendar of the crew, or of one person: an event for each person and day, with the rooms and passes in its text. It is known by
 * the job's own id, person and date, so that a new plan changes the events of the old one in the calendars that read it, and events of
 * two jobs never meet. Days that a plan accepted earlier had and this one has not are cancelled (RFC 5545 section 3.8.1.11).
 */
export function crewCalendar(
  job: Job,
  specification: Specification,
  plan: WorkPlan,
  madeAt: SiteMoment,
  only: CrewMemberId | null = null,
): string {
  const crew = records(job.crew).filter(({ id }) => only === null || id === only)
  const days = new Map(siteDays(job, specification, plan).map((day) => [day.date, day]))
  const now = crew.flatMap((person) => hoursOf(plan, person))
  const known = new Set(now.map(({ uid }) => uid))
  const gone = new Map(
    acceptedPlans(job)
      .flatMap((earlier) => crew.flatMap((person) => hoursOf(earlier, person)))
      .filter(({ uid }) => !known.has(uid))
      .map((hours) => [hours.uid, hours]),
  )
  const name = only === null ? job.header.title : `${job.header.title}: ${job.crew[only]?.name ?? only}`
  return calendarFile({ name, timeZone: job.header.timeZone, madeAt }, [
    ...now.map((hours) => eventOf(job, hours, days.get(hours.date), only === null)),
    ...[...gone.values()].map((hours) => ({
      ...eventOf(job, hours, undefined, only === null),
      cancelled: true,
    })),
  ])
}

/** One person's day, from the first work to the last. */
interface DayHours {
  /** Within the job. */
  readonly uid: string
  readonly person: CrewMember
  readonly date: string
  readonly from: SiteMoment
  readonly to: SiteMoment
}

function hoursOf(plan: WorkPlan, person: CrewMember): readonly DayHours[] {
  const segments = plan.tasks
    .filter((task) => task.crewMemberIds.includes(person.id))
    .flatMap((task) => task.segments)
  const dates = [...new Set(segments.map(({ startsAt }) => startsAt.slice(0, 10)))].toSorted()
  return dates.flatMap((date) => {
    const own = segments.filter(({ startsAt }) => startsAt.slice(0, 10) === date)
    const [from, to] = [earliest(own.map((each) => each.startsAt)), latest(own.map((each) => each.endsAt))]
    return from === null || to === null ? [] : [{ uid: `${person.id}.${date}`, person, date, from, to }]
  })
}

/** Every plan that was accepted and can be opened, the oldest first. */
function acceptedPlans(job: Job): readonly WorkPlan[] {
  return records(job.issued).flatMap((issued) =>
    issued.kind === 'plan' && issued.body.version !== null ? [issued.body.plan] : [],
  )
}

function eventOf(job: Job, hours: DayHours, day: SiteDay | undefined, forCrew: boolean): CalendarEvent {
  const own = day?.people.find(({ crewMemberId }) => crewMemberId === hours.person.id)
  const rooms = own === undefined ? [] : [...new Set([...own.morning, ...own.afternoon].map(nameOf))]
  const summary = [forCrew || rooms.length === 0 ? [hours.person.name] : [], rooms.join(', ')].flat()
  return {
    uid: `${job.header.id}.${hours.uid}`,
    summary: summary.filter((part) => part !== '').join(': '),
    description: own === undefined ? '' : [job.header.title, ...workLines(own)].join('\n'),
    location: job.header.site,
    when: { kind: 'moments', from: hours.from, to: hours.to },
    cancelled: false,
  }
}

function nameOf({ roomName }: HalfDayWork): string {
  return roomName
}

function workLines(own: PersonDay): readonly string[] {
  const half = (title: string, works: readonly HalfDayWork[]) =>
    works.length === 0
      ? []
      : [title, ...works.map(({ roomName, passes }) => `${roomName}: ${passes.join('; ')}`)]
  const cans = own.cans.length === 0 ? [] : [`Cans: ${own.cans.map(({ what }) => what).join('; ')}`]
  return [...half('Morning', own.morning), ...half('Afternoon', own.afternoon), ...cans]
}
