import type { HalfDayWork, PersonDay, SiteDay } from '../document-types.ts'
import type { ChosenWeek } from '../paper-choice.ts'
import { printable } from '../paper-size.ts'
import { lineCountOf } from '../room-sheet/fit.ts'
import { mergedCans } from '../site-days.ts'

/** How close a week is set: type in points, a line by the height of its type, mm above and below the text of a row with its rule. */
export const densities = [
  { name: 'roomy', points: 9, line: 1.32, padding: 2.2 },
  { name: 'close', points: 8, line: 1.25, padding: 1.6 },
  { name: 'closest', points: 7.4, line: 1.18, padding: 1.2 },
] as const
type Density = (typeof densities)[number]

/** Columns of a week of the crew, mm; the two halves of the day share what is left of the narrower paper. */
export const weekColumns = { day: 13, who: 13, cans: 40 } as const
/** Between columns. */
const gap = 2
const half = (printable('a4').width - weekColumns.day - weekColumns.who - weekColumns.cans) / 2

/** Of a Letter page, the lower of the two, less the head of one week, cautions and the note at its foot; millimetres. */
const room = printable('letter').height - 45
/** What another week on the same page takes for its own head. */
const headOfAnother = 21
const pointsToMillimetres = 25.4 / 72

/** The largest type in which the weeks of a page fit it. */
export function densityOf(weeks: readonly ChosenWeek[]): Density['name'] {
  const fitting = densities.find((density) => heightOfPage(weeks, density) <= room)
  return (fitting ?? densities[2]).name
}

/** Weeks in order, page by page: short ones of the same person share one. */
export function weeksByPage(weeks: readonly ChosenWeek[]): readonly (readonly ChosenWeek[])[] {
  const pages: ChosenWeek[][] = []
  for (const chosen of weeks) {
    const last = pages.at(-1)
    const isShared = last?.[0]?.person === chosen.person
    if (isShared && heightOfPage([...last, chosen], densities[2]) <= room) last.push(chosen)
    else pages.push([chosen])
  }
  return pages
}

function heightOfPage(weeks: readonly ChosenWeek[], density: Density): number {
  const rows = weeks.reduce((total, each) => total + heightOf(each, density), 0)
  return rows + (weeks.length - 1) * headOfAnother
}

/** Millimetres of the rows of a week. */
function heightOf({ week }: ChosenWeek, density: Density): number {
  const line = density.points * density.line * pointsToMillimetres
  return week.days.reduce((total, day) => total + heightOfDay(day, density, line), 0)
}

function heightOfDay({ people, chores }: SiteDay, { points, padding }: Density, line: number): number {
  const rows = people.reduce((total, each) => total + linesOfPerson(each, points) * line + padding, 0)
  const cans = mergedCans(people.map((each) => each.cans)).map(({ what }) => what)
  const ofCans = lineCountOf(cans.join('; '), weekColumns.cans - gap, points) * line + padding
  const alarms = chores.find(({ kind }) => kind === 'alarms')
  const ofAlarms =
    alarms === undefined
      ? 0
      : lineCountOf(alarmWords + alarms.roomNames.join(', '), 2 * half + weekColumns.cans, points) * line +
        padding
  return Math.max(rows, ofCans) + ofAlarms
}

/** About as long as what stands before the rooms, boxes included. */
const alarmWords = 'Alarms, somebody: ___ cover ___ uncover and test: '

function linesOfPerson(person: PersonDay, points: number): number {
  if (isSameAllDay(person)) return Math.max(1, linesOfWorks(person.morning, 2 * half - gap, points))
  const ofHalves = [person.morning, person.afternoon].map((works) => linesOfWorks(works, half - gap, points))
  return Math.max(1, ...ofHalves)
}

/** What goes on over noon is said once, across both halves of the day. */
export function isSameAllDay({ morning, afternoon }: PersonDay): boolean {
  return morning.length > 0 && JSON.stringify(morning) === JSON.stringify(afternoon)
}

function linesOfWorks(works: readonly HalfDayWork[], width: number, points: number): number {
  return works.reduce(
    (total, { roomName, passes }) => total + lineCountOf(`${roomName}: ${passes.join('; ')}`, width, points),
    0,
  )
}
