import type { Room } from '../../../core/project/sketch-records.ts'
import { slopeBends, slopeMarks } from '../../../core/sketch/room-slopes.ts'
import { formatLength, type LengthUnitSystem } from '../../../core/units/length.ts'
import type { DrawingColors } from '../drawing-colors.ts'
import { type ScreenPoint, screenBetween, screenDistance, screenTurn } from '../screen-point.ts'
import { toScreen, type View } from '../view.ts'
import { letter, turned } from './lettering.ts'
import { fillOutline, type Pen, strokeLines, strokeOutline } from './pen.ts'

/** Pixels a height takes across the sheet and down it. */
const [textWide, textHigh] = [56, 20]

/** What slopes in a room: lines where its ceiling bends, its heights where the sheet is near enough, and an arrow up a slope that goes one way. */
export function drawSlopes(
  pen: Pen,
  room: Room,
  view: View,
  colors: DrawingColors,
  system: LengthUnitSystem,
): void {
  drawBends(pen, room, view, colors)
  const marks = slopeMarks(room).map((mark) => ({ ...mark, at: toScreen(view, mark.place) }))
  const [first, last] = [marks[0], marks.at(-1)]
  if (first === undefined || last === undefined) return
  const isAcross = room.ceiling.kind !== 'flat' && room.ceiling.along === 'x'
  const gap = isAcross ? textWide : textHigh
  if (screenDistance(first.at, last.at) < marks.length * gap) return
  if (room.ceiling.kind === 'shed') {
    const [low, high] = first.height <= last.height ? [first.at, last.at] : [last.at, first.at]
    drawUpArrow(pen, low, high, gap, colors.darkSoft)
  }
  marks.forEach(({ word, height, at }, index) => {
    const align = !isAcross || index === 0 ? 'left' : index === marks.length - 1 ? 'right' : 'center'
    // Heights between the first and the last keep off these.
    const aside = align === 'center' ? 45 - (90 * index) / (marks.length - 1) : 0
    letter(pen, {
      text: `${word} ${formatLength(height, system)}`,
      at: { left: at.left + aside, top: at.top - 0.5 },
      face: colors.face,
      size: 11,
      weight: word === 'low' ? 'bold' : 'normal',
      color: colors.darkSoft,
      align,
    })
  })
}

/** From one height to the other, clear of both; down the sheet it runs beside the words. */
function drawUpArrow(pen: Pen, from: ScreenPoint, to: ScreenPoint, gap: number, color: string): void {
  const share = gap / screenDistance(from, to)
  if (share > 0.4) return
  const aside = gap === textHigh ? -6 : 0
  const end = (at: number) => {
    const { left, top } = screenBetween(from, to, at)
    return { left: left + aside, top }
  }
  const [begin, tip] = [end(share), end(1 - share)]
  strokeLines(pen, [[begin, tip]], { color, width: 1 })
  const head = [
    { left: 0, top: 0 },
    { left: -6, top: 2.5 },
    { left: -6, top: -2.5 },
  ]
  turned(pen, tip, screenTurn(begin, tip), () => {
    fillOutline(pen, head, color)
    strokeOutline(pen, head, { color, width: 1 })
  })
}

/** Lines across the room where its ceiling bends: the ridge of a gable, the edges of a flat. */
function drawBends(pen: Pen, room: Room, view: View, colors: DrawingColors): void {
  for (const ends of slopeBends(room)) {
    const line = ends.map((end) => toScreen(view, end))
    strokeLines(pen, [line], { color: colors.lineStrong, width: 1, dash: [10, 4, 2, 4] })
  }
}
