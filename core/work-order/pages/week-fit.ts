import type { HalfDayWork, SiteDay } from '../document-types.ts'
import type { ChosenWeek } from '../paper-choice.ts'
import { printable } from '../paper-size.ts'
import { mergedCans } from '../site-days.ts'

/** Sizes of type that a week is set in, in points, with the letters that one line of a half day and of the cans holds. */
const densities = [
  { name: 'roomy', points: 9, half: 31, cans: 20 },
  { name: 'close', points: 8, half: 35, cans: 23 },
  { name: 'closest', points: 7, half: 40, cans: 26 },
] as const
type Density = (typeof densities)[number]

/** Of a Letter page, the lower of the two, less the head of one week, cautions and the note at its foot; millimetres. */
const room = printable('letter').height - 45
/** What another week on the same page takes for its own head. */
const headOfAnother = 24
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
    if (isShared && heightOfPage([...last, chosen], densities[1]) <= room) last.push(chosen)
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
  const line = density.points * 1.32 * pointsToMillimetres
  return week.days.reduce((total, day) => total + heightOfDay(day, density, line), 0)
}

function heightOfDay({ people, chores }: SiteDay, density: Density, line: number): number {
  const rows = people.reduce((total, { morning, afternoon }) => {
    const lines = Math.max(1, linesOf(morning, density.half), linesOf(afternoon, density.half))
    return total + lines * line + padding
  }, 0)
  const cans = mergedCans(people.map((each) => each.cans)).map(({ what }) => what)
  const ofCans = Math.ceil(cans.join('; ').length / density.cans) * line + padding
  const alarms = chores.find(({ kind }) => kind === 'alarms')
  const ofAlarms =
    alarms === undefined
      ? 0
      : Math.ceil((alarms.roomNames.join(', ').length + 40) / (3 * density.half)) * line + padding
  return Math.max(rows, ofCans) + ofAlarms
}

/** Above and below the text of a row, and its line. */
const padding = 2.6

function linesOf(works: readonly HalfDayWork[], letters: number): number {
  return works.reduce(
    (total, { roomName, passes }) =>
      total + Math.ceil((roomName.length + 2 + passes.join('; ').length) / letters),
    0,
  )
}
