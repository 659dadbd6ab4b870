import { type Job, records } from '../project/job.ts'
import { type RoomSet, roomSetsOf } from '../project/room-sets.ts'
import type { Room, RoomId } from '../project/sketch-records.ts'
import type { RoomUse } from '../project/vocabulary.ts'
import type { Specification, Step } from '../specification/types.ts'
import { dateWords } from '../time/date-words.ts'
import { addDays } from '../time/local-date.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { compareText } from '../words/text.ts'
import type { FamilyPage, FamilyRoom, FamilyStretch } from './family-types.ts'
import { type JudgedPlan, latest, type WorkPlanTask } from './work-plan.ts'

/** What the household needs to know, and nothing of hours, wages, prices or products. */
export function familyPage(job: Job, specification: Specification, plan: JudgedPlan): FamilyPage {
  const worked = new Set(specification.steps.map(({ roomId }) => roomId))
  const sets = roomSetsOf(job).filter(({ roomIds }) => roomIds.some((id) => worked.has(id)))
  const rooms = sets
    .map((set) => familyRoom(job, plan, set))
    .toSorted((one, other) => compareText(firstDay(one), firstDay(other)))
  return {
    title: job.header.title,
    startsOn: plan.startsOn,
    finishesOn: plan.finishesOn,
    rooms,
    keepAway: keepAway(job, specification),
  }
}

/** Rooms nobody planned yet come last. */
function firstDay({ stretches }: FamilyRoom): string {
  return stretches[0]?.from ?? '9'
}

function familyRoom(job: Job, plan: JudgedPlan, set: RoomSet): FamilyRoom {
  const stretches = outOfUseOf(plan, set)
  const last = latest(stretches.map(({ to }) => to))
  const rooms = set.roomIds.flatMap((id) => job.rooms[id] ?? [])
  return {
    roomSetId: set.id,
    name: set.name,
    stretches: stretches.map(
      ({ from, to }): FamilyStretch => ({ from: from.slice(0, 10), to: to.slice(0, 10) }),
    ),
    readyAt: last === null ? null : readyAfter(last),
    moveBefore: [...new Set(rooms.flatMap((room) => toMove(job, room)))],
  }
}

interface Moments {
  readonly from: SiteMoment
  readonly to: SiteMoment
}

/** As the plan gives the room back; a plan that does not say it has its first and last work, drying included. */
export function outOfUseOf(plan: JudgedPlan, set: RoomSet): readonly Moments[] {
  const isIn = (roomId: RoomId) => set.roomIds.includes(roomId)
  if (plan.roomsOutOfUse !== undefined) {
    return plan.roomsOutOfUse.filter(({ roomId }) => isIn(roomId)).toSorted(byFrom)
  }
  const tasks = plan.tasks.filter((task) => isIn(task.roomSetId ?? task.roomId)).toSorted(byStart)
  const [first] = tasks
  const to = latest(tasks.map((task) => task.dryUntil ?? task.endsAt))
  return first === undefined || to === null ? [] : [{ from: first.startsAt, to }]
}

function byFrom(one: Moments, other: Moments): number {
  return compareText(one.from, other.from)
}

function byStart(one: WorkPlanTask, other: WorkPlanTask): number {
  return compareText(one.startsAt, other.startsAt)
}

/** The next noon, evening or morning: a household does not count minutes. */
export function readyAfter(moment: SiteMoment): NonNullable<FamilyRoom['readyAt']> {
  const [date, time] = [moment.slice(0, 10), moment.slice(11)]
  if (time <= '12:00') return { date, half: 'noon' }
  return time <= '18:00' ? { date, half: 'evening' } : { date: addDays(date, 1), half: 'morning' }
}

/** What a household takes out itself; heavy furniture is moved by the crew (common practice). */
const byUse: Readonly<Record<RoomUse, string>> = {
  entry: 'coats and shoes',
  hall: 'small furniture',
  stairHall: 'small furniture',
  living: 'lamps, small things',
  dining: 'lamps, china',
  kitchen: 'food, things on counters',
  bath: 'towels, things on shelves',
  bedroom: 'bedding, lamps, small things',
  study: 'papers, screens, small things',
  closet: 'the closet',
  atticStair: 'things on the stairs',
  attic: 'boxes along the walls',
  utility: 'things on shelves',
  other: 'small things',
}

function toMove(job: Job, room: Room): readonly string[] {
  const hasShelves = records(job.builtItems).some(
    ({ roomId, kind }) => roomId === room.id && (kind === 'shelf' || kind === 'cabinet'),
  )
  return [byUse[room.use], ...(hasShelves ? ['built-in shelves'] : [])]
}

interface Danger {
  readonly applies: (step: Step) => boolean
  readonly words: (rooms: string) => string
}

/** Besides wet paint; each is said where a step of the job brings it. Common practice, product labels. */
const dangers: readonly Danger[] = [
  {
    applies: ({ operation }) => operation === 'postSigns' || operation === 'sheetFloor',
    words: () =>
      'Rooms closed off with plastic and a warning sign: nobody goes in until the crew says so. The dust may hold lead.',
  },
  {
    applies: ({ effects }) => effects.fumes,
    words: (rooms) =>
      `Strong smell at times: stay out of ${rooms}, and sleep with the door to it shut, until it is ready again.`,
  },
  {
    applies: ({ surfaceClass, operation }) => surfaceClass === 'radiators' && operation === 'coat',
    words: (rooms) => `Radiators in ${rooms} stay off until their paint is dry.`,
  },
  {
    applies: ({ operation }) => operation === 'coverAlarm',
    words: () =>
      'Alarms covered after hours: they are covered only while the crew works. Call if you see one.',
  },
  {
    applies: ({ surfaceClass, operation }) => surfaceClass === 'sash' && operation === 'coat',
    words: () => 'Painted windows and doors: do not open or shut them before the crew has.',
  },
]

function keepAway(job: Job, { steps }: Specification): readonly string[] {
  const brought = dangers.flatMap(({ applies, words }) => {
    const rooms = new Set(steps.filter(applies).map(({ roomId }) => job.rooms[roomId]?.name ?? roomId))
    return rooms.size === 0 ? [] : [words(rooms.size > 3 ? 'a room in work' : [...rooms].join(', '))]
  })
  return [
    'Rooms in work: wet paint, dust, ladders and tools, until the room is ready again.',
    ...brought,
    'Cans, rags and brushes, wherever they are.',
  ]
}

/** `Fri Apr 2, evening`. */
export function readyWords({ readyAt }: FamilyRoom, system: LengthUnitSystem): string {
  return readyAt === null ? '' : `${dateWords(readyAt.date, system)}, ${readyAt.half}`
}

/** Without weekdays: `Apr 8–22`, `Mar 29–Apr 15`, `29 Mar–15 Apr`. */
export function stretchWords({ from, to }: FamilyStretch, system: LengthUnitSystem): string {
  const [first, last] = [from, to].map((date) => dateWords(date, system).split(' ').slice(1).join('\u00a0'))
  if (from === to) return first ?? ''
  const isOneMonth = from.slice(0, 7) === to.slice(0, 7)
  const day = Number((system === 'imperial' ? to : from).slice(8))
  if (!isOneMonth) return `${first}–${last}`
  return system === 'imperial' ? `${first}–${day}` : `${day}–${last}`
}
