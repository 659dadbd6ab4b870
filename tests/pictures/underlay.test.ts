import fc from 'fast-check'
import { expect, test } from 'vitest'
import { firstUnderlay, movedBy, placeOfPixel, scaledByLine } from '../../core/sketch/underlay.ts'
import { feet, millimetres, unitsPerMillimetre } from '../../core/units/length.ts'
import { granted } from '../storage/books.ts'

const scan = { hash: 'a'.repeat(64), width: 2400, height: 1800 }
const fresh = firstUnderlay(scan, { x: 0, y: 0 })

function millimetresOf(point: { readonly x: number; readonly y: number }): readonly number[] {
  return [point.x, point.y].map((units) => Math.round(units / unitsPerMillimetre))
}

test('a fresh picture lies level and 12 m wide', () => {
  expect(millimetresOf(placeOfPixel(fresh, { across: 2400, down: 1800 }))).toEqual([12_000, 9000])
})

test('a wall of 500 pixels that is 14 ft long scales the rest, and its first end stays where it lies', () => {
  const line = [
    { across: 300, down: 200 },
    { across: 800, down: 200 },
  ] as const
  const scaled = granted(scaledByLine(fresh, line, feet(14), true))
  const [from, to] = line.map((point) => placeOfPixel(scaled, point))
  expect(millimetresOf(from ?? fresh)).toEqual([1500, 1000])
  // 14 ft are 4267.2 mm.
  expect(millimetresOf(to ?? fresh)).toEqual([5767, 1000])
  expect(scaled.turnDegrees).toBe(0)
})

test('a scan that lies askew is turned so that the wall is level or upright, whichever is nearer', () => {
  const turned = (across: number, down: number) =>
    granted(
      scaledByLine(
        fresh,
        [
          { across: 0, down: 0 },
          { across, down },
        ],
        millimetres(1000),
        true,
      ),
    ).turnDegrees
  expect(turned(100, 5)).toBeCloseTo(-2.862, 2)
  expect(turned(5, 100)).toBeCloseTo(2.862, 2)
  expect(turned(-100, 5)).toBeCloseTo(2.862, 2)
  expect(turned(-5, -100)).toBeCloseTo(2.862, 2)
})

test('whatever the line, its ends come to lie as far apart as was said, and squared on one level or upright', () => {
  const pixel = fc.record({
    across: fc.integer({ min: 0, max: 2400 }),
    down: fc.integer({ min: 0, max: 1800 }),
  })
  fc.assert(
    fc.property(
      pixel,
      pixel,
      fc.integer({ min: 500, max: 20_000 }),
      fc.boolean(),
      (from, to, mm, isSquared) => {
        fc.pre(Math.hypot(to.across - from.across, to.down - from.down) > 60)
        const scaled = granted(scaledByLine(fresh, [from, to], millimetres(mm), isSquared))
        const [one, other] = [placeOfPixel(scaled, from), placeOfPixel(scaled, to)]
        const [x, y] = [(other.x - one.x) / unitsPerMillimetre, (other.y - one.y) / unitsPerMillimetre]
        expect(Math.hypot(x, y)).toBeCloseTo(mm, 3)
        if (isSquared) expect(Math.min(Math.abs(x), Math.abs(y))).toBeCloseTo(0, 3)
        else expect(scaled.turnDegrees).toBe(0)
        const again = granted(scaledByLine(scaled, [from, to], millimetres(mm), isSquared))
        expect(again.turnDegrees).toBeCloseTo(scaled.turnDegrees, 6)
      },
    ),
  )
})

test('points on one another and lengths that cannot be are refused in words', () => {
  const at = { across: 10, down: 10 }
  expect(scaledByLine(fresh, [at, { across: 12, down: 10 }], feet(14), true)).toMatchObject({
    problem: { sentence: 'The two points lie too near each other. Pick the ends of a long wall.' },
  })
  expect(scaledByLine(fresh, [at, { across: 20, down: 10 }], millimetres(100_000), true).ok).toBe(false)
})

test('moving shifts it and nothing else', () => {
  expect(movedBy(fresh, 8000, -16_000)).toEqual({ ...fresh, x: 8000, y: -16_000 })
})
