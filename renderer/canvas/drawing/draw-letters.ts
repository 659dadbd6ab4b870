import { pointBetween } from '../../../core/geometry/point.ts'
import { openingLetter } from '../../../core/project/opening-letters.ts'
import type { Opening } from '../../../core/project/sketch-records.ts'
import type { openingSides } from '../../../core/project/walls.ts'
import { screenBetween, screenDistance } from '../screen-point.ts'
import { toScreen } from '../view.ts'
import { letter } from './lettering.ts'
import type { Pen } from './pen.ts'
import type { StoreyLook } from './storey-look.ts'

/** How far into the room a letter stands, pixels; behind the written lengths of a selected room. */
const inset = 9
const insetBehindLengths = 40
/** An opening narrower than this on the screen, in pixels, has no room for a letter. */
const narrowest = 12

/** The letters of an opening, one in each room it is seen from: the same as in lists and on paper. */
export function drawLetters(
  pen: Pen,
  opening: Opening,
  sides: ReturnType<typeof openingSides>,
  { job, view, colors, storeyId, selected }: StoreyLook,
): void {
  for (const side of [sides.near, sides.far]) {
    if (side === null || side.room.storeyId !== storeyId || side.wall.length === 0) continue
    const { room, wall, place } = side
    const at = (off: number) => toScreen(view, pointBetween(wall.start, wall.end, off / wall.length))
    const [from, to] = [at(place.from), at(place.to)]
    const width = screenDistance(from, to)
    if (width < narrowest) continue
    const off =
      ((wall.inside === 'right' ? 1 : -1) * (selected.has(room.id) ? insetBehindLengths : inset)) / width
    const way = place.from <= place.to ? off : -off
    const middle = screenBetween(from, to, 0.5)
    letter(pen, {
      text: openingLetter(job, opening.id, room.id),
      at: {
        left: middle.left - (to.top - from.top) * way,
        top: middle.top + (to.left - from.left) * way,
      },
      face: colors.face,
      size: 10,
      weight: 600,
      color: selected.has(opening.id) ? colors.act : colors.darkSoft,
    })
  }
}
