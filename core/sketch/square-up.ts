import {
  isConvexQuad,
  mapBack,
  type ProjectiveMap,
  projected,
  type Quad,
  rectangleToQuad,
} from '../geometry/projective.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Underlay } from '../project/sketch-records.ts'
import { type Length, toMillimetres } from '../units/length.ts'
import { movedBy, nearestQuarter, type PicturePoint, placeOfPixel, sizeProblem } from './underlay.ts'

/** The corners of something rectangular in a photo: upper left, upper right, lower right, lower left. */
export type RectangleCorners = readonly [PicturePoint, PicturePoint, PicturePoint, PicturePoint]

/** How a photo taken at an angle is redrawn as seen from straight above, and where it then lies. */
interface SquareUp {
  /** Pixels of the new picture. */
  readonly size: { readonly width: number; readonly height: number }
  /** From pixels of the new picture to those of the photo. */
  readonly map: ProjectiveMap
  /** The new picture on the plan, once it has a hash. */
  readonly underlay: (picture: string) => Underlay
}

interface Extent {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/**
 * Squares a photo up by a rectangle of `width` x `height` plan units in it: what lies in one plane with the rectangle comes out square and to scale. The new picture has
 * at most `longest` pixels on its longer side; its first corner stays where it lies on the plan.
 */
export function squareUp(
  underlay: Underlay,
  corners: RectangleCorners,
  [width, height]: readonly [Length, Length],
  longest: number,
): Outcome<SquareUp> {
  const [p0, p1, p2, p3] = corners
  const quad: Quad = [pointOf(p0), pointOf(p1), pointOf(p2), pointOf(p3)]
  if (!isConvexQuad(quad)) {
    const sentence =
      'The four corners lie in a line or cross each other. Set them round the rectangle: 1 upper left, 2 upper right, 3 lower right, 4 lower left.'
    return fail('notAllowed', sentence)
  }
  const [wide, high] = [toMillimetres(width), toMillimetres(height)]
  const toPhoto = rectangleToQuad(wide, high, quad)
  const extent = extentOf(underlay, mapBack(toPhoto), wide, high)
  const across = extent.right - extent.left
  const down = extent.bottom - extent.top
  const density = Math.min(densityOf(quad, wide, high), longest / Math.max(across, down))
  const wrong = sizeProblem(1 / density)
  if (wrong !== null) return wrong
  const size = {
    width: Math.max(1, Math.round(across * density)),
    height: Math.max(1, Math.round(down * density)),
  }
  const corner = { across: -extent.left * density, down: -extent.top * density }
  return succeed({
    size,
    map: fromPixels(toPhoto, extent, density),
    underlay: (picture) => {
      const turnDegrees = nearestQuarter(underlay.turnDegrees)
      const next = { ...underlay, ...size, picture, mmPerPixel: 1 / density, turnDegrees }
      const [held, moved] = [placeOfPixel(underlay, p0), placeOfPixel(next, corner)]
      return movedBy(next, held.x - moved.x, held.y - moved.y)
    },
  })
}

function pointOf({ across, down }: PicturePoint) {
  return { x: across, y: down }
}

/** So many times the longer side of the rectangle is kept around it (our own choice): toward the horizon a photo shows ever more in ever fewer pixels. */
const mostAround = 1
/** Places looked at along each side of the photo. */
const grid = 32

/** What the photo shows of the rectangle's plane, in millimeters from its upper left corner. */
function extentOf(underlay: Underlay, back: ProjectiveMap, wide: number, high: number): Extent {
  const around = mostAround * Math.max(wide, high)
  const [xs, ys]: [number[], number[]] = [
    [0, wide],
    [0, high],
  ]
  for (let row = 0; row <= grid; row++) {
    for (let column = 0; column <= grid; column++) {
      const pixel = { x: (underlay.width * column) / grid, y: (underlay.height * row) / grid }
      const seen = projected(back, pixel)
      if (seen === null) continue
      xs.push(Math.min(wide + around, Math.max(-around, seen.x)))
      ys.push(Math.min(high + around, Math.max(-around, seen.y)))
    }
  }
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) }
}

/** Pixels per millimeter where the photo shows the rectangle best. */
function densityOf(quad: Quad, wide: number, high: number): number {
  const sides = quad.map((corner, index) => {
    const next = quad[(index + 1) % 4] ?? corner
    return Math.hypot(next.x - corner.x, next.y - corner.y) / (index % 2 === 0 ? wide : high)
  })
  return Math.max(...sides)
}

function fromPixels(toPhoto: ProjectiveMap, { left, top }: Extent, density: number): ProjectiveMap {
  const [one, two, three] = toPhoto.map(
    ([x, y, fixed]) => [x / density, y / density, x * left + y * top + fixed] as const,
  )
  return one === undefined || two === undefined || three === undefined ? toPhoto : [one, two, three]
}
