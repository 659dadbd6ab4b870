import type { LengthUnitSystem } from '../../units/length.ts'
import { stretchWords } from '../family-page.ts'
import type { FamilyPage } from '../family-types.ts'
import { printable } from '../paper-size.ts'

/** Sizes of type of the family page, in points; the largest that fits is taken. */
const sizes = [13, 12, 11, 10, 9] as const

/** Printable millimetres of a Letter page, the lower of the two, less its margins and the line for whom to call. */
const room = printable('letter').height - 17
/** Width of an A4 page, the narrower of the two, between its margins. */
const width = printable('a4').width
/** Millimetres of a letter and of a line for each point of type, measured on a wide face. */
const letter = 0.185
const line = 1.32 * (25.4 / 72)
/** Share of the width that room name, days and things to take out have. */
const [nameShare, whenShare, thingsShare] = [0.2, 0.27, 0.27]

/** The largest type, in points, in which the household's page fits on one sheet; else the smallest. */
export function familyType(page: FamilyPage, system: LengthUnitSystem): number {
  return sizes.find((size) => heightAt(page, size, system) <= room) ?? sizes[sizes.length - 1] ?? 9
}

function heightAt({ rooms, keepAway }: FamilyPage, size: number, system: LengthUnitSystem): number {
  const lines = (text: string, share: number) =>
    Math.max(1, Math.ceil((text.length * size * letter) / (width * share)))
  const ofRooms = rooms.reduce((total, { name, stretches, moveBefore }) => {
    const most = Math.max(
      lines(name, nameShare),
      lines(stretches.map((each) => stretchWords(each, system)).join(', '), whenShare),
      lines(moveBefore.join('; '), thingsShare),
    )
    return total + most * size * line + 2.2
  }, 0)
  const ofWarnings = keepAway.reduce((total, text) => total + lines(text, 0.95) * size * line + 0.8, 0)
  // The head of the table, the heading and two sentences of two lines each.
  return ofRooms + ofWarnings + 6 * size * line + 12
}
