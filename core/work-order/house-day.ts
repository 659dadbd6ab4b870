import { type Job, records } from '../project/job.ts'
import { type RoomSet, roomSetsOf } from '../project/room-sets.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { dateWords } from '../time/date-words.ts'
import { addDays, dateOfDay, dayOfDate } from '../time/local-date.ts'
import { dateOf, type SiteMoment } from '../time/site-moment.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { outOfUseOf, readyAfter } from './family-page.ts'
import type { FamilyStretch } from './family-types.ts'
import type { RoomDay } from './room-day.ts'
import { type JudgedPlan, latest, type WorkPlanTask } from './work-plan.ts'

export const roomDayKinds = ['notBegun', 'inWork', 'drying', 'closed', 'givenBack', 'ready'] as const

export const roomDayWords: Readonly<Record<RoomDay['kind'], string>> = {
  noWork: 'no work',
  notBegun: 'not begun',
  inWork: 'in work',
  drying: 'drying',
  closed: 'closed',
  givenBack: 'given back',
  ready: 'ready',
}

/** The house over the days of a plan. */
interface HouseDays {
  /** Local dates: of the first day of work, and of the one on which all rooms are back. */
  readonly dates: readonly string[]
  /** By the main room of each set; a date outside of `dates` is answered too. The same day is worked out once. */
  readonly on: (date: string) => ReadonlyMap<RoomId, RoomDay>
}

interface Course {
  readonly id: RoomId
  readonly tasks: readonly WorkPlanTask[]
  readonly worked: ReadonlySet<string>
  /** Out of use, by begin. */
  readonly stretches: readonly FamilyStretch[]
}

/** Every room set on every day of a plan. */
export function houseDays(job: Job, plan: JudgedPlan): HouseDays {
  const courses = roomSetsOf(job).map((set) => courseOf(plan, set))
  const stretches = courses.flatMap((course) => course.stretches)
  const begins = [...stretches.map(({ from }) => from), ...courses.flatMap(({ worked }) => [...worked])]
  const first = begins.toSorted()[0] ?? plan.startsOn
  const last = latest(stretches.map(({ to }) => addDays(to, 1))) ?? plan.finishesOn
  const days = dayOfDate(last) - dayOfDate(first) + 1
  const known = new Map<string, ReadonlyMap<RoomId, RoomDay>>()
  return {
    dates: Array.from({ length: Math.max(1, days) }, (_, index) => dateOfDay(dayOfDate(first) + index)),
    on: (date) => {
      const before = known.get(date)
      if (before !== undefined) return before
      const rooms = new Map(
        courses.map((course) => [course.id, roomDay(course, date, job.houseRules.siteHours)]),
      )
      known.set(date, rooms)
      return rooms
    },
  }
}

/** A plan says nothing of rooms whose work is done: what was worked and dried there stands in. */
function courseOf(plan: JudgedPlan, set: RoomSet): Course {
  const tasks = plan.tasks.filter((task) => set.roomIds.includes(task.roomSetId ?? task.roomId))
  const said = outOfUseOf(plan, set)
  const { roomsOutOfUse: _none, ...unsaid } = plan
  const moments = said.length > 0 ? said : outOfUseOf({ ...unsaid, tasks }, set)
  return {
    id: set.id,
    tasks,
    worked: new Set(tasks.flatMap(datesOf)),
    stretches: moments.map(({ from, to }) => ({ from: from.slice(0, 10), to: to.slice(0, 10) })),
  }
}

/** Done work has no segments left, only its begin and end. */
function datesOf({ segments, endsAt }: WorkPlanTask): readonly string[] {
  return segments.length === 0 ? [dateOf(endsAt)] : segments.map(({ startsAt }) => dateOf(startsAt))
}

function roomDay(
  course: Course,
  date: string,
  hours: { readonly from: string; readonly to: string },
): RoomDay {
  const last = course.stretches.at(-1)
  const backOn = last === undefined ? null : addDays(last.to, 1)
  const base = { dryUntil: null, beginsOn: null, freeOn: null, backOn }
  if (backOn === null) return { ...base, kind: 'noWork' }
  if (date >= backOn) return { ...base, kind: 'ready' }
  const here = course.stretches.find(({ from, to }) => from <= date && date <= to)
  const isWorked = course.worked.has(date)
  if (here === undefined && !isWorked) {
    const beginsOn = course.stretches.find(({ from }) => from > date)?.from ?? null
    const isBegun = [...course.worked].some((day) => day < date)
    return { ...base, kind: isBegun ? 'givenBack' : 'notBegun', beginsOn }
  }
  const dryUntil = wetAt(course, `${date}T${isWorked ? hours.to : hours.from}`)
  const kind = isWorked ? 'inWork' : dryUntil === null ? 'closed' : 'drying'
  return { ...base, kind, dryUntil, freeOn: addDays(here?.to ?? date, 1) }
}

/** Until when something is wet that was wet at a moment; null where nothing was. */
function wetAt({ tasks }: Course, moment: SiteMoment): SiteMoment | null {
  const wet = tasks.flatMap(({ endsAt, dryUntil }) =>
    dryUntil !== null && dryUntil !== undefined && endsAt <= moment && dryUntil > moment ? [dryUntil] : [],
  )
  return latest(wet)
}

/** What stands in a room below its name, most first: its state, what dries until when, the day it is back. */
export function roomDayLines(day: RoomDay, system: LengthUnitSystem): readonly string[] {
  const on = (date: string | null) =>
    date === null ? '' : dateWords(date, system).split(' ').slice(1).join(' ')
  const word = roomDayWords[day.kind]
  const back = `back ${on(day.backOn)}`
  switch (day.kind) {
    case 'noWork':
      return [word]
    case 'notBegun':
      return [`from ${on(day.beginsOn)}`, back]
    case 'givenBack':
      return [word, `until ${on(day.beginsOn)}`, back]
    case 'ready':
      return [`✓ ${word}`, `since ${on(day.backOn)}`]
    case 'inWork':
    case 'drying':
    case 'closed': {
      const dry = day.dryUntil === null ? null : readyAfter(day.dryUntil)
      const dries =
        dry === null ? [] : [`${day.kind === 'inWork' ? 'dries ' : ''}until ${on(dry.date)}, ${dry.half}`]
      const free = day.freeOn === day.backOn ? [back] : [`free ${on(day.freeOn)}`, back]
      return day.kind === 'drying' ? [word, ...dries, ...free] : [word, ...free, ...dries]
    }
  }
}

/** Names of sets of a state, in the order of the job, as a sentence says them. */
export function roomsInState(
  job: Job,
  rooms: ReadonlyMap<RoomId, RoomDay>,
  kind: RoomDay['kind'],
): readonly string[] {
  return records(job.rooms).flatMap(({ id, name }) => (rooms.get(id)?.kind === kind ? [name] : []))
}
