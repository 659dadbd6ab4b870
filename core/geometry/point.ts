/** A point on the plan in length units (1/8000 mm): x to the right, y down. */
export interface Point {
  readonly x: number
  readonly y: number
}

export type Axis = 'x' | 'y'

/** Not `Math.hypot`: a sum of squares is the same whichever way the plan is turned or mirrored. */
export function pointsDistance(a: Point, b: Point): number {
  const dx = b.x - a.x
  const dy = b.y - a.y
  return Math.sqrt(dx * dx + dy * dy)
}

/** The point at a share of the way from `a` (0) to `b` (1); not rounded to whole lengths. */
export function pointBetween(a: Point, b: Point, share: number): Point {
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
}

/**
 * Twice the signed area of a, b, c: positive when they turn clockwise on the plan (y down), 0 when in line.
 * The sign is exact for whole coordinates of any size a plan may have.
 */
export function pointsTurn(a: Point, b: Point, c: Point): number {
  return crossProduct(b.x - a.x, b.y - a.y, c.x - a.x, c.y - a.y)
}

/** Exactly the same place, without a tolerance. */
export function pointsEqual(a: Point, b: Point): boolean {
  return a.x === b.x && a.y === b.y
}

/** Beyond this a double no longer holds every whole number, and two products of lengths may lose their difference. */
const largestExact = 2 ** 53
/** Each of three roundings errs by at most 2^-53 of its operands. */
const doubtfulShare = 2 ** -51

/** ax x by - ay x bx; where doubles cannot tell the sign of whole numbers, worked in long whole numbers. */
export function crossProduct(ax: number, ay: number, bx: number, by: number): number {
  const one = ax * by
  const other = ay * bx
  const difference = one - other
  const size = Math.abs(one) + Math.abs(other)
  if (size < largestExact || Math.abs(difference) > size * doubtfulShare) return difference
  if (![ax, ay, bx, by].every(Number.isInteger)) return difference
  return Number(BigInt(ax) * BigInt(by) - BigInt(ay) * BigInt(bx))
}
