import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Point } from '../../core/geometry/point.ts'
import {
  isConvexQuad,
  mapBack,
  type ProjectiveMap,
  projected,
  type Quad,
  rectangleToQuad,
} from '../../core/geometry/projective.ts'

function at(x: number, y: number): Point {
  return { x, y }
}

function through(map: ProjectiveMap, point: Point): Point {
  const found = projected(map, point)
  if (found === null) throw new Error('the point goes to infinity')
  return found
}

function expectNear(found: Point, wanted: Point, digits = 6): void {
  expect(found.x).toBeCloseTo(wanted.x, digits)
  expect(found.y).toBeCloseTo(wanted.y, digits)
}

const rectangle: Quad = [at(0, 0), at(3, 0), at(3, 2), at(0, 2)]

test('a rectangle that is shifted, stretched and leaning is mapped by shares of its sides', () => {
  const map = rectangleToQuad(3, 2, [at(10, 5), at(16, 7), at(17, 11), at(11, 9)])
  expect(map[2].map(Math.abs)).toEqual([0, 0, 1])
  // Half way along and a quarter down: 10 + 6/2 + 1/4, 5 + 2/2 + 4/4.
  expectNear(through(map, at(1.5, 0.5)), at(13.25, 7))
})

test('a map that is known is found again from where it takes the corners', () => {
  // Worked by hand: x' = (4x + y + 2) / (x/2 + 1), y' = (x + 3y + 1) / (x/2 + 1).
  const known: ProjectiveMap = [
    [4, 1, 2],
    [1, 3, 1],
    [0.5, 0, 1],
  ]
  const corners = rectangle.map((corner) => through(known, corner))
  expect(corners).toEqual([at(2, 1), at(5.6, 1.6), at(6.4, 4), at(4, 7)])
  const found = rectangleToQuad(3, 2, corners as unknown as Quad)
  for (const [row, entries] of known.entries()) {
    for (const [column, entry] of entries.entries()) expect(found[row]?.[column]).toBeCloseTo(entry, 9)
  }
})

test('straight lines stay straight, and the crossing of the diagonals stays their crossing', () => {
  const quad: Quad = [at(100, 80), at(520, 40), at(610, 460), at(60, 380)]
  const map = rectangleToQuad(3, 2, quad)
  const middle = through(map, at(1.5, 1))
  const turn = (a: Point, b: Point, c: Point) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
  expect(turn(quad[0], quad[2], middle)).toBeCloseTo(0, 6)
  expect(turn(quad[1], quad[3], middle)).toBeCloseTo(0, 6)
  expect(turn(through(map, at(0, 0.7)), through(map, at(1, 0.7)), through(map, at(3, 0.7)))).toBeCloseTo(0, 6)
})

test('whatever the four corners, the rectangle goes to them and comes back', () => {
  const near = (x: number, y: number) =>
    fc.record({
      x: fc.double({ min: x - 90, max: x + 90, noNaN: true }),
      y: fc.double({ min: y - 90, max: y + 90, noNaN: true }),
    })
  fc.assert(
    fc.property(near(0, 0), near(400, 0), near(400, 300), near(0, 300), (...corners) => {
      fc.pre(isConvexQuad(corners))
      const map = rectangleToQuad(3, 2, corners)
      const back = mapBack(map)
      for (const [index, corner] of rectangle.entries()) {
        expectNear(through(map, corner), corners[index] ?? corner)
        expectNear(through(back, corners[index] ?? corner), corner)
      }
      expectNear(through(back, through(map, at(1.1, 0.4))), at(1.1, 0.4))
    }),
  )
})

test('corners in a line, crossed or mirrored are no view of a rectangle', () => {
  expect(isConvexQuad(rectangle)).toBe(true)
  expect(isConvexQuad([at(0, 0), at(1, 0), at(2, 0), at(0, 2)])).toBe(false)
  expect(isConvexQuad([at(0, 0), at(3, 2), at(3, 0), at(0, 2)])).toBe(false)
  expect(isConvexQuad([at(3, 0), at(0, 0), at(0, 2), at(3, 2)])).toBe(false)
  expect(isConvexQuad([at(0, 0), at(3, 0), at(1, 0.5), at(0, 2)])).toBe(false)
  expect(isConvexQuad([at(1, 1), at(1, 1), at(1, 1), at(1, 1)])).toBe(false)
})
