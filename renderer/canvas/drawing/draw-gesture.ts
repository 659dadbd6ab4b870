import { type Point, pointsDistance } from '../../../core/geometry/point.ts'
import type { SnapGuide } from '../../../core/sketch/snapping.ts'
import { formatLength, type LengthUnitSystem } from '../../../core/units/length.ts'
import type { DrawingColors } from '../drawing-colors.ts'
import { type ScreenPoint, screenBetween } from '../screen-point.ts'
import type { Gesture, GestureOf } from '../tools/tool.ts'
import { toScreen, type View } from '../view.ts'
import { letter, widthIn } from './lettering.ts'
import { fillOutline, type Pen, squareAt, strokeLines, strokeOutline } from './pen.ts'

interface GestureLook {
  readonly view: View
  readonly colors: DrawingColors
  readonly system: LengthUnitSystem
}

/** The gesture that is going on: lines being drawn with their lengths, and the guides they catch on. */
export function drawGesture(pen: Pen, gesture: Gesture, look: GestureLook): void {
  if ('guides' in gesture) drawGuides(pen, gesture.guides, look)
  if (isDrawn(gesture)) drawStrokes(pen, gesture, look)
}

type Drawn = 'hovering' | 'drawingRectangle' | 'drawingOutline' | 'sweeping'

/** How each gesture that draws something of its own looks. What is moved shows in the drafted rooms. */
const strokes: {
  readonly [Kind in Drawn]: (pen: Pen, gesture: GestureOf<Kind>, look: GestureLook) => void
} = {
  hovering: (pen, { point }, look) => drawCross(pen, point, look),
  drawingRectangle: drawRectangle,
  drawingOutline: drawOutline,
  sweeping: drawSweep,
}

function isDrawn(gesture: Gesture): gesture is GestureOf<Drawn> {
  return Object.hasOwn(strokes, gesture.kind)
}

function drawStrokes<Kind extends Drawn>(
  pen: Pen,
  gesture: { [Each in Kind]: GestureOf<Each> }[Kind],
  look: GestureLook,
): void {
  strokes[gesture.kind](pen, gesture, look)
}

function drawRectangle(pen: Pen, gesture: GestureOf<'drawingRectangle'>, look: GestureLook): void {
  const { from, to } = gesture
  const [across, down] = [
    { x: to.x, y: from.y },
    { x: from.x, y: to.y },
  ]
  drawNamedSide(pen, from, across, look)
  drawNamedSide(pen, across, to, look)
  drawSide(pen, to, down, look)
  drawSide(pen, down, from, look)
  drawTyped(pen, to, gesture.typed, look)
}

function drawOutline(pen: Pen, gesture: GestureOf<'drawingOutline'>, look: GestureLook): void {
  const { corners, to } = gesture
  corners.forEach((corner, index) => {
    drawNamedSide(pen, corner, corners[index + 1] ?? to, look)
  })
  for (const corner of corners) drawCross(pen, corner, look)
  drawTyped(pen, to, gesture.typed, look)
}

function drawSweep(pen: Pen, gesture: GestureOf<'sweeping'>, { view, colors }: GestureLook): void {
  const [a, b] = [toScreen(view, gesture.from), toScreen(view, gesture.to)]
  const swept = [a, { left: b.left, top: a.top }, b, { left: a.left, top: b.top }]
  pen.globalAlpha = 0.5
  fillOutline(pen, swept, colors.actSoft)
  strokeOutline(pen, swept, { color: colors.act, width: 2, dash: [5, 4] })
  pen.globalAlpha = 1
}

function drawSide(pen: Pen, from: Point, to: Point, { view, colors }: GestureLook): void {
  strokeLines(pen, [[toScreen(view, from), toScreen(view, to)]], { color: colors.act, width: 2.25 })
}

function drawNamedSide(pen: Pen, from: Point, to: Point, look: GestureLook): void {
  const { view, colors, system } = look
  drawSide(pen, from, to, look)
  const at = screenBetween(toScreen(view, from), toScreen(view, to), 0.5)
  const text = formatLength(Math.round(pointsDistance(from, to)), system)
  drawNote(pen, at, text, { paper: colors.paper, ink: colors.dark }, colors)
}

function drawTyped(pen: Pen, to: Point, typed: string, { view, colors }: GestureLook): void {
  if (typed === '') return
  const { left, top } = toScreen(view, to)
  const at = { left: left + 18, top: top + 26 }
  drawNote(pen, at, `${typed}▏`, { paper: colors.act, ink: colors.onAct }, colors)
}

function drawNote(
  pen: Pen,
  at: ScreenPoint,
  text: string,
  look: { readonly paper: string; readonly ink: string },
  { act, face }: DrawingColors,
): void {
  const font = { face, size: 12.5 }
  const left = at.left - text.length * 3.4 - 6
  pen.beginPath()
  pen.roundRect(left, at.top - 10, widthIn(pen, font)(text) + 8, 20.5, 2)
  pen.fillStyle = look.paper
  pen.fill()
  pen.strokeStyle = act
  pen.lineWidth = 1
  pen.setLineDash([])
  pen.stroke()
  letter(pen, {
    ...font,
    text,
    at: { left: left + 4, top: at.top + 0.25 },
    color: look.ink,
    align: 'left',
  })
}

function drawCross(pen: Pen, at: Point, { view, colors }: GestureLook): void {
  const { left, top } = toScreen(view, at)
  const lines = [
    [
      { left: left - 6, top },
      { left: left + 6, top },
    ],
    [
      { left, top: top - 6 },
      { left, top: top + 6 },
    ],
  ]
  strokeLines(pen, lines, { color: colors.act, width: 1.25 })
}

function drawGuides(pen: Pen, guides: readonly SnapGuide[], { view, colors }: GestureLook): void {
  for (const guide of guides) {
    if (guide.kind === 'grid') continue
    const [from, to] = [toScreen(view, guide.from), toScreen(view, guide.to)]
    if (guide.kind === 'corner') {
      strokeOutline(pen, squareAt(to, 6), { color: colors.wait, width: 2 })
    } else strokeLines(pen, [[from, to]], { color: colors.wait, width: 1, dash: [6, 4] })
  }
}
