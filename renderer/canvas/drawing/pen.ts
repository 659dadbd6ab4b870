import type { ScreenPoint } from '../screen-point.ts'

/** What the sheet is drawn with. Whoever changes its place or turn puts it back; all else is set before each stroke. */
export type Pen = CanvasRenderingContext2D

interface Stroke {
  readonly color: string
  /** Pixels, as those of the dashes. */
  readonly width: number
  readonly dash?: readonly number[]
}

const unbroken: readonly number[] = []

export function strokeLines(pen: Pen, lines: readonly (readonly ScreenPoint[])[], stroke: Stroke): void {
  pen.beginPath()
  for (const line of lines) trace(pen, line)
  strokePath(pen, stroke)
}

export function strokeOutline(pen: Pen, points: readonly ScreenPoint[], stroke: Stroke): void {
  outline(pen, points)
  strokePath(pen, stroke)
}

export function fillOutline(pen: Pen, points: readonly ScreenPoint[], color: string): void {
  outline(pen, points)
  pen.fillStyle = color
  pen.fill()
}

/** A quarter of a circle, clockwise from `from` (degrees clockwise from the right). */
export function strokeQuarter(
  pen: Pen,
  middle: ScreenPoint,
  radius: number,
  from: number,
  stroke: Stroke,
): void {
  const begin = (from * Math.PI) / 180
  pen.beginPath()
  pen.arc(middle.left, middle.top, radius, begin, begin + Math.PI / 2)
  strokePath(pen, stroke)
}

/** The corners of a square `reach` pixels round a place. */
export function squareAt({ left, top }: ScreenPoint, reach: number): readonly ScreenPoint[] {
  return [
    { left: left - reach, top: top - reach },
    { left: left + reach, top: top - reach },
    { left: left + reach, top: top + reach },
    { left: left - reach, top: top + reach },
  ]
}

function outline(pen: Pen, points: readonly ScreenPoint[]): void {
  pen.beginPath()
  trace(pen, points)
  pen.closePath()
}

function trace(pen: Pen, points: readonly ScreenPoint[]): void {
  let isFirst = true
  for (const { left, top } of points) {
    if (isFirst) pen.moveTo(left, top)
    else pen.lineTo(left, top)
    isFirst = false
  }
}

function strokePath(pen: Pen, { color, width, dash = unbroken }: Stroke): void {
  pen.strokeStyle = color
  pen.lineWidth = width
  pen.setLineDash(dash)
  pen.stroke()
}
