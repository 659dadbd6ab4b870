import { expect, test } from 'vitest'
import { type ProjectiveMap, projected } from '../../core/geometry/projective.ts'
import { type Pixels, redrawn } from '../../core/pictures/redraw.ts'
import { type RectangleCorners, squareUp } from '../../core/sketch/square-up.ts'
import { firstUnderlay, type PicturePoint, placeOfPixel } from '../../core/sketch/underlay.ts'
import { feet, millimetres, unitsPerMillimetre } from '../../core/units/length.ts'
import { granted } from '../storage/books.ts'

const photo = firstUnderlay({ hash: 'a'.repeat(64), width: 800, height: 600 }, { x: 0, y: 0 })

function pixel(across: number, down: number): PicturePoint {
  return { across, down }
}

/** A photo of the floor, 4 m x 3 m marked on it: from pixels of the photo's plane at 10 mm each to pixels of the photo. */
const view: ProjectiveMap = [
  [1.1, 0.12, 60],
  [0.05, 0.9, 50],
  [0.0002, 0.0005, 1],
]

function seen(x: number, y: number): PicturePoint {
  const at = projected(view, { x: x / 10, y: y / 10 })
  return pixel(at?.x ?? 0, at?.y ?? 0)
}

const corners: RectangleCorners = [seen(1000, 1000), seen(5000, 1000), seen(5000, 4000), seen(1000, 4000)]

test('what lies in the plane of the rectangle comes out square and to scale, and the first corner stays', () => {
  const squared = granted(squareUp(photo, corners, [millimetres(4000), millimetres(3000)], 2400))
  const next = squared.underlay('b'.repeat(64))
  // Other points of the floor are as far from the first corner as they were measured.
  const [origin, far] = [placeOfPixel(photo, corners[0]), { x: 6200, y: 300 }]
  const inNew = pixel(
    (far.x - 1000) / next.mmPerPixel + pixelOf(squared.map, corners[0]).across,
    (far.y - 1000) / next.mmPerPixel + pixelOf(squared.map, corners[0]).down,
  )
  const place = placeOfPixel(next, inNew)
  expect((place.x - origin.x) / unitsPerMillimetre).toBeCloseTo(5200, 0)
  expect((place.y - origin.y) / unitsPerMillimetre).toBeCloseTo(-700, 0)
  const back = projected(squared.map, { x: inNew.across, y: inNew.down })
  expect(back?.x).toBeCloseTo(seen(far.x, far.y).across, 3)
  expect(back?.y).toBeCloseTo(seen(far.x, far.y).down, 3)
  expect(next).toMatchObject({ turnDegrees: 0, ...squared.size })
  expect(Math.max(next.width, next.height)).toBeLessThanOrEqual(2400)
})

/** The pixel of the new picture that a pixel of the photo goes to, looked for along both axes. */
function pixelOf(map: ProjectiveMap, wanted: PicturePoint): PicturePoint {
  let found = { x: 0, y: 0 }
  for (let step = 0; step < 60; step++) {
    const at = projected(map, found) ?? { x: 0, y: 0 }
    const [right, below] = [
      projected(map, { x: found.x + 1, y: found.y }) ?? at,
      projected(map, { x: found.x, y: found.y + 1 }) ?? at,
    ]
    const [a, b, c, d] = [right.x - at.x, below.x - at.x, right.y - at.y, below.y - at.y]
    const [ex, ey] = [wanted.across - at.x, wanted.down - at.y]
    found = {
      x: found.x + (ex * d - b * ey) / (a * d - b * c),
      y: found.y + (a * ey - ex * c) / (a * d - b * c),
    }
  }
  return pixel(found.x, found.y)
}

test('a photo is redrawn: a dark rectangle seen at an angle fills its own rectangle', () => {
  const source: Pixels = { width: 800, height: 600, data: new Uint8ClampedArray(800 * 600 * 4).fill(255) }
  const back = granted(squareUp(photo, corners, [millimetres(4000), millimetres(3000)], 400))
  for (let y = 0; y < 600; y++) {
    for (let x = 0; x < 800; x++) {
      if (isInside(x + 0.5, y + 0.5)) source.data.fill(20, (y * 800 + x) * 4, (y * 800 + x) * 4 + 3)
    }
  }
  const drawn = redrawn(source, back.map, back.size)
  const { mmPerPixel } = back.underlay('b'.repeat(64))
  const dark = [...drawn.data].filter((value, index) => index % 4 === 0 && value < 128).length
  // 12 square meters of dark, whatever stood around it, within the pixels of its edge.
  expect((dark * mmPerPixel ** 2) / 1e6).toBeCloseTo(12, 0)
  expect(Math.abs(dark * mmPerPixel ** 2 - 12e6)).toBeLessThan(14_000 * mmPerPixel)
})

function isInside(x: number, y: number): boolean {
  return corners.every((corner, index) => {
    const next = corners[(index + 1) % 4] ?? corner
    return (
      (next.across - corner.across) * (y - corner.down) - (next.down - corner.down) * (x - corner.across) >= 0
    )
  })
}

test('a rectangle seen straight on is only scaled', () => {
  const straight: RectangleCorners = [pixel(100, 100), pixel(500, 100), pixel(500, 300), pixel(100, 300)]
  const squared = granted(squareUp(photo, straight, [millimetres(4000), millimetres(2000)], 2400))
  expect(squared.size).toEqual({ width: 800, height: 600 })
  expect(squared.underlay('b'.repeat(64)).mmPerPixel).toBeCloseTo(10, 9)
})

test('toward the horizon the picture ends', () => {
  // The upper side is a twentieth of the lower: the horizon lies within the photo.
  const steep: RectangleCorners = [pixel(390, 300), pixel(410, 300), pixel(600, 590), pixel(200, 590)]
  const { size, underlay } = granted(squareUp(photo, steep, [feet(10), feet(20)], 2400))
  const { mmPerPixel } = underlay('b'.repeat(64))
  expect(Math.max(size.width, size.height)).toBeLessThanOrEqual(2400)
  // The longer side once more on either side of the rectangle and no more: 10 + 2 * 20 ft across.
  expect((size.width * mmPerPixel) / 304.8).toBeCloseTo(50, 1)
  expect((size.height * mmPerPixel) / 304.8).toBeLessThanOrEqual(60)
})

test('corners that are no rectangle from anywhere are refused in words', () => {
  const crossed: RectangleCorners = [corners[0], corners[2], corners[1], corners[3]]
  expect(squareUp(photo, crossed, [feet(10), feet(8)], 2400)).toMatchObject({
    problem: { sentence: expect.stringContaining('1 upper left, 2 upper right') },
  })
  expect(squareUp(photo, corners, [feet(600), feet(600)], 100).ok).toBe(false)
})
