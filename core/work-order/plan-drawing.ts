import { html, type Markup } from './html-template.ts'
import type { PlanOpening, PlanPoint, PlanWall, RoomPlan } from './room-plan.ts'

/** Everything below is in millimetres on paper. */
/** Room for wall letters and lengths around the outline. */
const margin = 7.5
const wallDepth = 1.6

/** Between two rooms drawn side by side. */
const apart = 3

interface PlanSize {
  readonly scale: number
  readonly width: number
  readonly height: number
}

/** The plans of a room set side by side at one scale, as large as `widest` and `deepest` allow, margins included; millimetres on paper. */
export function planSize(
  plans: readonly Pick<RoomPlan, 'widthMm' | 'depthMm'>[],
  widest: number,
  deepest: number,
): PlanSize {
  const edges = plans.length * 2 * margin + (plans.length - 1) * apart
  const wide = plans.reduce((sum, plan) => sum + plan.widthMm, 0)
  const deep = Math.max(0, ...plans.map((plan) => plan.depthMm))
  const scale = Math.max(wide / (widest - edges), deep / (deepest - 2 * margin))
  return { scale, width: wide / scale + edges, height: deep / scale + 2 * margin }
}

/** The plan of a room as an SVG. */
export function planDrawing(plan: RoomPlan, scale: number): Markup {
  const at = ({ x, y }: PlanPoint): PlanPoint => ({ x: x / scale + margin, y: y / scale + margin })
  const width = plan.widthMm / scale + 2 * margin
  const height = plan.depthMm / scale + 2 * margin
  const outline = plan.outline
    .map(at)
    .map(({ x, y }) => `${round(x)},${round(y)}`)
    .join(' ')
  return html`<svg class="plan" role="img" aria-label="Plan of ${plan.name}" width="${round(width)}mm" height="${round(height)}mm" viewBox="0 0 ${round(width)} ${round(height)}">
<polygon points="${outline}" fill="none" stroke="#23262b" stroke-width="${2 * wallDepth}" stroke-linejoin="miter"/>
<polygon points="${outline}" fill="none" stroke="#fff" stroke-width="${2 * wallDepth - 0.5}" stroke-linejoin="miter"/>
<polygon points="${outline}" fill="#fff" stroke="#23262b" stroke-width="0.5" stroke-linejoin="miter"/>
${plan.slope.bends.map(([from, to]) => line(at(from), at(to), 0.2, '3 1 0.6 1'))}
${plan.openings.map((opening) => drawnOpening(opening, at, plan))}
${plan.walls.map((_, index) => wallLabel(plan, index, at))}
${plan.openings.map((opening) => openingLabel(opening, at, plan))}
${plan.slope.heights.map(({ text, at: place }) => slopeHeight(text, at(place), place.x / plan.widthMm))}
${plan.markers.map(({ number, at: place }) => marker(number, at(place)))}
</svg>`
}

interface Direction {
  readonly along: PlanPoint
  readonly out: PlanPoint
  readonly length: number
}

function directionOf(from: PlanPoint, to: PlanPoint, turn: 1 | -1): Direction {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length }
  return { along, out: { x: along.y * turn, y: -along.x * turn }, length }
}

function shifted(point: PlanPoint, direction: PlanPoint, distance: number): PlanPoint {
  return { x: point.x + direction.x * distance, y: point.y + direction.y * distance }
}

/** The wall the opening lies in decides which side is out: its own ends may run either way along it. */
function outOf(opening: PlanOpening, plan: RoomPlan): PlanPoint {
  const middle = { x: (opening.from.x + opening.to.x) / 2, y: (opening.from.y + opening.to.y) / 2 }
  const wall = plan.walls.toSorted((a, b) => distance(middle, a) - distance(middle, b))[0]
  return wall === undefined ? { x: 0, y: -1 } : directionOf(wall.from, wall.to, plan.turn).out
}

function distance(point: PlanPoint, wall: PlanWall): number {
  const { along, length } = directionOf(wall.from, wall.to, 1)
  const reach = (point.x - wall.from.x) * along.x + (point.y - wall.from.y) * along.y
  const foot = shifted(wall.from, along, Math.max(0, Math.min(length, reach)))
  return Math.hypot(point.x - foot.x, point.y - foot.y)
}

/** Jambs at both ends; a window has glass lines, a door a threshold, a cased opening nothing, all else a cross. */
function drawnOpening(opening: PlanOpening, at: (point: PlanPoint) => PlanPoint, plan: RoomPlan): Markup {
  const [from, to] = [at(opening.from), at(opening.to)]
  const out = outOf(opening, plan)
  const [farFrom, farTo] = [shifted(from, out, wallDepth), shifted(to, out, wallDepth)]
  const [midFrom, midTo] = [shifted(from, out, wallDepth / 2), shifted(to, out, wallDepth / 2)]
  const lines: readonly Markup[] = (() => {
    switch (opening.kind) {
      case 'window':
        return [line(from, to, 0.2), line(midFrom, midTo, 0.35), line(farFrom, farTo, 0.2)]
      case 'door':
        return [line(midFrom, midTo, 0.3, '1.2 0.6')]
      case 'casedOpening':
        return []
      case 'fireplace':
      case 'builtIn':
      case 'other':
        return [
          line(from, farTo, 0.2),
          line(farFrom, to, 0.2),
          line(from, to, 0.2),
          line(farFrom, farTo, 0.2),
        ]
    }
  })()
  return html`${line(midFrom, midTo, wallDepth + 0.7, '', '#fff')}${line(from, farFrom, 0.4)}${line(to, farTo, 0.4)}${lines}`
}

/** The letter in a small frame, inside the room beside its opening. */
function openingLabel(
  opening: PlanOpening,
  at: (point: PlanPoint) => PlanPoint,
  plan: RoomPlan,
): Markup | null {
  if (opening.letter === '') return null
  const [from, to] = [at(opening.from), at(opening.to)]
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }
  return framedLetter(opening.letter, shifted(middle, outOf(opening, plan), -2.6))
}

/** Openings have letters in frames, findings numbers in rings. */
export function framedLetter(letter: string, at: PlanPoint): Markup {
  return html`<rect x="${round(at.x - 1.7)}" y="${round(at.y - 1.7)}" width="3.4" height="3.4" fill="#fff" stroke="#23262b" stroke-width="0.25"/><text x="${round(at.x)}" y="${round(at.y)}" text-anchor="middle" dominant-baseline="central" font-size="2.6">${letter}</text>`
}

function line(from: PlanPoint, to: PlanPoint, width: number, dashes = '', ink = '#23262b'): Markup {
  const dashed = dashes === '' ? null : html` stroke-dasharray="${dashes}"`
  return html`<line x1="${round(from.x)}" y1="${round(from.y)}" x2="${round(to.x)}" y2="${round(to.y)}" stroke="${ink}" stroke-width="${width}"${dashed}/>`
}

/** The letter, and the length beside it where the wall is long enough on paper for both. */
function wallLabel(plan: RoomPlan, index: number, at: (point: PlanPoint) => PlanPoint): Markup | null {
  const wall = plan.walls[index]
  if (wall === undefined) return null
  const [from, to] = [at(wall.from), at(wall.to)]
  const { along, out, length } = directionOf(from, to, plan.turn)
  const aside = awayFromInnerCorners(plan, index)
  const middle = shifted(shifted(from, along, length / 2 + aside), out, wallDepth + 2.4)
  const angle = uprightAngle(along)
  const text = labelFits(wall.length, length) ? `${wall.letter}  ${wall.length}` : wall.letter
  return html`<text x="${round(middle.x)}" y="${round(middle.y)}" transform="rotate(${round(angle)} ${round(middle.x)} ${round(middle.y)})" text-anchor="middle" dominant-baseline="central" font-size="2.7">${text}</text>`
}

/** Two labels meet in the angle of an inner corner: each steps back from it. */
function awayFromInnerCorners(plan: RoomPlan, index: number): number {
  const count = plan.walls.length
  const [before, wall, after] = [index + count - 1, index, index + 1].map((each) => plan.walls[each % count])
  const step = 2.8
  return (isInner(before, wall, plan.turn) ? step : 0) - (isInner(wall, after, plan.turn) ? step : 0)
}

function isInner(first: PlanWall | undefined, second: PlanWall | undefined, turn: 1 | -1): boolean {
  if (first === undefined || second === undefined) return false
  const [a, b] = [directionOf(first.from, first.to, 1).along, directionOf(second.from, second.to, 1).along]
  return (a.x * b.y - a.y * b.x) * turn < -1e-9
}

/** About 1.5 mm to a letter at this size. */
function labelFits(text: string, lengthOnPaper: number): boolean {
  return (text.length + 3) * 1.5 <= lengthOnPaper + 2
}

/** Degrees that keep text readable from below or from the right. */
function uprightAngle(along: PlanPoint): number {
  const degrees = (Math.atan2(along.y, along.x) * 180) / Math.PI
  if (degrees > 90.0001) return degrees - 180
  return degrees <= -90.0001 ? degrees + 180 : degrees === 90 ? -90 : degrees
}

/** A height of a sloping ceiling, from its side of the room inwards, on white so that lines under it do not cut it. */
function slopeHeight(text: string, at: PlanPoint, share: number): Markup {
  const anchor = share < 0.35 ? 'start' : share > 0.65 ? 'end' : 'middle'
  return html`<text x="${round(at.x)}" y="${round(at.y)}" text-anchor="${anchor}" dominant-baseline="central" font-size="2.4" paint-order="stroke" stroke="#fff" stroke-width="0.9" stroke-linejoin="round">${text}</text>`
}

/**
 * A number in a ring.
 *
 * @param at millimeters on the paper
 */
export function marker(number: number, at: PlanPoint): Markup {
  return html`<circle cx="${round(at.x)}" cy="${round(at.y)}" r="2.1" fill="#fff" stroke="#23262b" stroke-width="0.35"/><text x="${round(at.x)}" y="${round(at.y)}" text-anchor="middle" dominant-baseline="central" font-size="2.6" font-weight="600">${number}</text>`
}

function round(value: number): number {
  return Number(value.toFixed(2))
}
