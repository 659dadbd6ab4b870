import { expect, test } from 'vitest'
import { crossProduct, pointsTurn } from '../../core/geometry/point.ts'
import {
  polygonArea,
  polygonBand,
  polygonHolds,
  polygonSelfContact,
  polygonSignedDoubleArea,
} from '../../core/geometry/polygon.ts'
import { segmentShareAt, segmentsTouch } from '../../core/geometry/segment.ts'

const at = (x: number, y: number) => ({ x, y })
const square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)]

test('an outline that runs clockwise on the plan, y down, has a positive signed area; the other way round it is negative', () => {
  expect(polygonSignedDoubleArea(square)).toBe(2 * 10 * 10)
  expect(polygonSignedDoubleArea([...square].reverse())).toBe(-200)
  expect(polygonArea([...square].reverse())).toBe(100)
})

test('the area is exact wherever on the plan the outline lies and whichever corner is first', () => {
  // 0.001 mm more than a square of 40 m on a plan that is 150 m from its origin.
  const far = 150_000 * 8000
  const side = 40_000 * 8000
  const large = [at(far, far), at(far + side, far), at(far + side, far + side + 8), at(far, far + side + 8)]
  const exact = 2n * BigInt(side) * BigInt(side + 8)
  for (let first = 0; first < 4; first++) {
    const turned = [...large.slice(first), ...large.slice(0, first)]
    expect(polygonSignedDoubleArea(turned)).toBe(Number(exact))
  }
})

test('three points nearly in line at the far end of a plan still turn the right way', () => {
  const a = at(-1_599_999_999, -1_599_999_998)
  const b = at(1_599_999_999, 1_599_999_997)
  const exact = (c: { x: number; y: number }) =>
    BigInt(b.x - a.x) * BigInt(c.y - a.y) - BigInt(b.y - a.y) * BigInt(c.x - a.x)
  for (const c of [at(0, 0), at(1, 0), at(0, 1), at(-1, -1), at(7, 7)]) {
    const sign = exact(c)
    expect(Math.sign(pointsTurn(a, b, c))).toBe(sign > 0n ? 1 : sign < 0n ? -1 : 0)
  }
  expect(crossProduct(2 ** 31, 2 ** 31 - 1, 2 ** 31 - 1, 2 ** 31 - 2)).toBe(-1)
})

test('a simple outline has no contact with itself; crossing, touching and folding back are found', () => {
  expect(polygonSelfContact(square)).toBeNull()
  // A bow tie: edges 0 and 2 cross.
  expect(polygonSelfContact([at(0, 0), at(10, 10), at(10, 0), at(0, 10)])).toEqual([0, 2])
  // A corner that touches the opposite wall.
  expect(polygonSelfContact([at(0, 0), at(10, 0), at(10, 10), at(5, 0), at(0, 10)])).not.toBeNull()
  // A wall that runs back over the one before it.
  expect(polygonSelfContact([at(0, 0), at(10, 0), at(4, 0), at(4, 8)])).not.toBeNull()
})

test('a wall divided by a corner in its middle is still a simple outline', () => {
  expect(polygonSelfContact([at(0, 0), at(5, 0), at(10, 0), at(10, 10), at(0, 10)])).toBeNull()
})

test('points inside and on the edge are held, points outside and in a notch are not', () => {
  const ell = [at(0, 0), at(10, 0), at(10, 4), at(4, 4), at(4, 10), at(0, 10)]
  expect([at(1, 1), at(4, 7), at(10, 0), at(5, 0)].map((point) => polygonHolds(ell, point))).toEqual([
    true,
    true,
    true,
    true,
  ])
  expect([at(7, 7), at(-1, 0), at(11, 2)].map((point) => polygonHolds(ell, point))).toEqual([
    false,
    false,
    false,
  ])
})

test('a band of a U-shaped outline has the area of both of its legs', () => {
  const u = [at(0, 0), at(3, 0), at(3, 6), at(7, 6), at(7, 0), at(10, 0), at(10, 10), at(0, 10)]
  // Between y 2 and y 8: legs 2 x 3 x 4, bridge 10 x 2.
  expect(polygonArea(polygonBand(u, 'y', 2, 8))).toBe(2 * 3 * 4 + 10 * 2)
})

test('segments touch when they cross, meet at an end or lie on one another', () => {
  const one = { start: at(0, 0), end: at(10, 0) }
  expect(segmentsTouch(one, { start: at(5, -1), end: at(5, 1) })).toBe(true)
  expect(segmentsTouch(one, { start: at(10, 0), end: at(20, 5) })).toBe(true)
  expect(segmentsTouch(one, { start: at(8, 0), end: at(12, 0) })).toBe(true)
  expect(segmentsTouch(one, { start: at(11, 0), end: at(12, 0) })).toBe(false)
  expect(segmentsTouch(one, { start: at(5, 1), end: at(5, 2) })).toBe(false)
})

test('the foot of a perpendicular is given as a share of the segment, beyond its ends too', () => {
  const one = { start: at(0, 0), end: at(10, 0) }
  expect(segmentShareAt(one, at(5, 7))).toBe(0.5)
  expect(segmentShareAt(one, at(-5, 7))).toBe(-0.5)
})
