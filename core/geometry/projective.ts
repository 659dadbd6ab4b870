import type { Point } from './point.ts'

/** Four corners in order round a figure; clockwise on a page with y down where it is not mirrored. */
export type Quad = readonly [Point, Point, Point, Point]

/**
 * A projective map of the plane: x' = (a x + b y + c) / (g x + h y + i), y' = (d x + e y + f) / (g x + h y + i), as rows a b c, d e f, g h i.
 * How a flat thing lies in a photo is such a map (Hartley and Zisserman, Multiple View Geometry, 2nd ed., section 2.3).
 */
type Row = readonly [number, number, number]
export type ProjectiveMap = readonly [Row, Row, Row]

/** A quarter of the plane's turn between two sides below this sine counts as none: the corners lie in a line. */
const leastTurn = 0.01

/** Whether four corners bulge outward all round, clockwise with y down: as a rectangle looks from anywhere in front of it. */
export function isConvexQuad(quad: Quad): boolean {
  return quad.every((corner, index) => {
    const before = quad[(index + 3) % 4] ?? corner
    const after = quad[(index + 1) % 4] ?? corner
    const [ax, ay, bx, by] = [
      corner.x - before.x,
      corner.y - before.y,
      after.x - corner.x,
      after.y - corner.y,
    ]
    return ax * by - ay * bx > leastTurn * Math.hypot(ax, ay) * Math.hypot(bx, by)
  })
}

/**
 * The map that takes the rectangle from (0, 0) to (width, height) to four corners, its upper left one first and on clockwise. In closed form: P. Heckbert,
 * Fundamentals of Texture Mapping and Image Warping, UC Berkeley 1989, section 2.2.3 (square to quadrilateral). The corners must be convex.
 */
export function rectangleToQuad(width: number, height: number, [p0, p1, p2, p3]: Quad): ProjectiveMap {
  const [dx1, dx2, sx] = [p1.x - p2.x, p3.x - p2.x, p0.x - p1.x + p2.x - p3.x]
  const [dy1, dy2, sy] = [p1.y - p2.y, p3.y - p2.y, p0.y - p1.y + p2.y - p3.y]
  const whole = dx1 * dy2 - dx2 * dy1
  const g = (sx * dy2 - dx2 * sy) / whole
  const h = (dx1 * sy - sx * dy1) / whole
  return [
    [(p1.x - p0.x + g * p1.x) / width, (p3.x - p0.x + h * p3.x) / height, p0.x],
    [(p1.y - p0.y + g * p1.y) / width, (p3.y - p0.y + h * p3.y) / height, p0.y],
    [g / width, h / height, 1],
  ]
}

/** The way back: the adjugate, which is the inverse but for a factor that does not matter (Heckbert 1989, section 2.2.1). */
export function mapBack([[a, b, c], [d, e, f], [g, h, i]]: ProjectiveMap): ProjectiveMap {
  return [
    [e * i - f * h, c * h - b * i, b * f - c * e],
    [f * g - d * i, a * i - c * g, c * d - a * f],
    [d * h - e * g, b * g - a * h, a * e - b * d],
  ]
}

/** Where a point goes; null for one that the map sends to infinity or behind the eye (`weight` at most `least`). */
export function projected(map: ProjectiveMap, { x, y }: Point, least = 0): Point | null {
  const [along, down, weight] = map.map(([one, other, fixed]) => one * x + other * y + fixed)
  if (along === undefined || down === undefined || weight === undefined || weight <= least) return null
  return { x: along / weight, y: down / weight }
}
