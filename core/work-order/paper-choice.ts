import type { CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { PersonDay, SiteDay, WeekSheet } from './document-types.ts'
import type { RoomSheet } from './room-sheet/sheet-types.ts'

/** What of the papers is wanted. Null asks for everything there is. */
export interface PaperChoice {
  /** Main rooms of room sets. */
  readonly rooms: readonly RoomId[] | null
  /** A week sheet for each of these people; null is one for the whole crew. */
  readonly people: readonly CrewMemberId[] | null
  /** Mondays of weeks, local dates. */
  readonly weeks: readonly string[] | null
  /** The day of `today`; null is the first on which somebody works. */
  readonly day: string | null
}

export const wholeJob: PaperChoice = { rooms: null, people: null, weeks: null, day: null }

/** Sheets of the room sets that were chosen; all where nothing was. */
export function chosenRooms(
  rooms: readonly RoomSheet[],
  { rooms: wanted }: PaperChoice,
): readonly RoomSheet[] {
  return wanted === null ? rooms : rooms.filter(({ roomSetId }) => wanted.includes(roomSetId))
}

/** A week as one person has it, or as the whole crew has it (`person` null). */
export interface ChosenWeek {
  readonly person: string | null
  readonly week: WeekSheet
}

/** Weeks by date, in each the people asked for. A week in which somebody is not here gives no page. */
export function chosenWeeks(weeks: readonly WeekSheet[], choice: PaperChoice): readonly ChosenWeek[] {
  const wanted = weeks.filter(({ monday }) => choice.weeks === null || choice.weeks.includes(monday))
  const { people } = choice
  if (people === null) return wanted.map((week) => ({ person: null, week }))
  return wanted.flatMap((week) =>
    people.flatMap((id): readonly ChosenWeek[] => {
      const days = week.days.flatMap((day) => onlyOf(day, id))
      const person = days[0]?.people[0]?.name
      return person === undefined ? [] : [{ person, week: { ...week, days } }]
    }),
  )
}

function onlyOf(day: SiteDay, id: CrewMemberId): readonly SiteDay[] {
  const people: readonly PersonDay[] = day.people.filter(({ crewMemberId }) => crewMemberId === id)
  return people.length === 0 ? [] : [{ ...day, people, chores: day.choresOwner === id ? day.chores : [] }]
}

/** The day asked for, or the first on or after it on which somebody works; the last one where none follows. */
export function chosenDay(days: readonly SiteDay[], { day }: PaperChoice): SiteDay | undefined {
  return days.find(({ date }) => day === null || date >= day) ?? days.at(-1)
}
