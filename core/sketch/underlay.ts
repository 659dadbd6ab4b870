import type { Point } from '../geometry/point.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Underlay } from '../project/sketch-records.ts'
import {
  type Length,
  type LengthUnitSystem,
  lengthFromUnits,
  millimetres,
  unitsPerMillimetre,
} from '../units/length.ts'

/** A place in a picture: pixels from its upper left corner. */
export interface PicturePoint {
  readonly across: number
  readonly down: number
}

/** A plan is taken to be so wide until two points and a length say better; millimeters. */
const firstWidth = 12_000

/** Where a picture lies before anybody has scaled it: level, with its upper left corner at `at`. */
export function firstUnderlay(
  picture: { readonly hash: string; readonly width: number; readonly height: number },
  at: Point,
): Underlay {
  const { hash, width, height } = picture
  return {
    ...{ picture: hash, width, height },
    ...{ x: lengthFromUnits(at.x), y: lengthFromUnits(at.y) },
    mmPerPixel: firstWidth / Math.max(width, height),
    turnDegrees: 0,
    strength: 'middle',
    isShown: true,
  }
}

/** Where a place of the picture lies on the plan, in plan units. */
export function placeOfPixel(underlay: Underlay, { across, down }: PicturePoint): Point {
  const [cos, sin] = turnOf(underlay.turnDegrees)
  const scale = underlay.mmPerPixel * unitsPerMillimetre
  return {
    x: underlay.x + (across * cos - down * sin) * scale,
    y: underlay.y + (across * sin + down * cos) * scale,
  }
}

/** Two points nearer to each other say too little of a picture's scale; pixels. */
const shortestLine = 8

/**
 * The picture scaled so that two of its points lie `length` (plan units) apart; the first stays where it lies. Squared, it is turned so that the line
 * between them is level or upright, whichever is nearer.
 */
export function scaledByLine(
  underlay: Underlay,
  [from, to]: readonly [PicturePoint, PicturePoint],
  length: number,
  isSquared: boolean,
): Outcome<Underlay> {
  const pixels = Math.hypot(to.across - from.across, to.down - from.down)
  if (pixels < shortestLine) {
    return fail('notAllowed', 'The two points lie too near each other. Pick the ends of a long wall.')
  }
  const mmPerPixel = length / unitsPerMillimetre / pixels
  const wrong = sizeProblem(mmPerPixel)
  if (wrong !== null) return wrong
  const slope = (Math.atan2(to.down - from.down, to.across - from.across) * 180) / Math.PI
  const turnDegrees = isSquared ? nearestQuarter(slope + underlay.turnDegrees) - slope : underlay.turnDegrees
  const next = { ...underlay, mmPerPixel, turnDegrees: withinHalfTurn(turnDegrees) }
  const [held, moved] = [placeOfPixel(underlay, from), placeOfPixel(next, from)]
  return succeed(movedBy(next, held.x - moved.x, held.y - moved.y))
}

/** A problem where a length makes the picture larger or smaller than any plan. */
export function sizeProblem(mmPerPixel: number): Outcome<never> | null {
  if (mmPerPixel >= 0.05 && mmPerPixel <= 500) return null
  return fail(
    'notAllowed',
    'With that length the picture would be as large as a town or as small as a stamp.',
  )
}

/** The picture shifted on the plan, in plan units. */
export function movedBy(underlay: Underlay, x: number, y: number): Underlay {
  return { ...underlay, x: lengthFromUnits(underlay.x + x), y: lengthFromUnits(underlay.y + y) }
}

export function nearestQuarter(degrees: number): number {
  return Math.round(degrees / 90) * 90
}

/** -180 to 180. */
function withinHalfTurn(degrees: number): number {
  const turned = ((((degrees + 180) % 360) + 360) % 360) - 180
  return Object.is(turned, -0) ? 0 : turned
}

function turnOf(degrees: number): readonly [number, number] {
  const radians = (degrees * Math.PI) / 180
  return [Math.cos(radians), Math.sin(radians)]
}

/** A step by which something on the plan is shifted by a press: a foot, or 100 mm. */
export function shiftStep(system: LengthUnitSystem): Length {
  return system === 'imperial' ? millimetres(304.8) : millimetres(100)
}
