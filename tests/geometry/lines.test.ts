import { expect, test } from 'vitest'
import {
  areaBetween,
  largestGap,
  lineLength,
  lowerLine,
  smallestGap,
  stretchesBelow,
} from '../../core/geometry/band.ts'
import { heightAt, heightLineAlong } from '../../core/geometry/height-line.ts'
import { measureHole, segmentHead } from '../../core/geometry/hole.ts'
import { intervalsLeft, intervalsShared } from '../../core/geometry/interval.ts'

const line = (...points: readonly (readonly [number, number])[]) =>
  points.map(([at, height]) => ({ at, height }))

test('a line is straight between its points and level beyond its ends', () => {
  const roof = line([0, 4], [10, 14])
  expect([-5, 0, 2.5, 10, 99].map((at) => heightAt(roof, at))).toEqual([4, 4, 6.5, 14, 14])
})

test('a ridge across the plan is seen along a slanting wall where the wall passes under it', () => {
  const ridge = { axis: 'x', points: line([0, 2], [6, 8], [12, 2]) } as const
  const seen = heightLineAlong(ridge, { x: 12, y: 0 }, { x: 0, y: 9 }, 15)
  // Half of the 15 long wall is at x 6.
  expect(seen).toEqual(line([0, 2], [7.5, 8], [15, 2]))
})

test('area between two lines counts only where the upper is above the lower', () => {
  // A triangle of height 4 over the first half, nothing over the second, where the lines have crossed.
  expect(areaBetween(line([0, 0], [10, 8]), line([0, 4], [10, 4]), 0, 10)).toBeCloseTo((4 * 5) / 2, 12)
  expect(areaBetween(line([0, 1]), line([0, 4]), 2, 7)).toBe(15)
  expect(areaBetween(line([0, 5]), line([0, 4]), 2, 7)).toBe(0)
})

test('the lower of two lines bends where they cross', () => {
  expect(lowerLine(line([0, 0], [10, 10]), line([0, 4]), 0, 10)).toEqual(line([0, 0], [4, 4], [10, 4]))
})

test('a sloping line is measured along its slope', () => {
  expect(lineLength(line([0, 0], [3, 4], [8, 4]), 0, 8)).toBe(5 + 5)
  expect(lineLength(line([0, 7]), 1, 4)).toBe(3)
})

test('stretches below and gaps between lines', () => {
  const rising = line([0, 0], [10, 10])
  const level = line([0, 4])
  expect(stretchesBelow(rising, level, 0, 10)).toEqual([{ from: 0, to: 4 }])
  expect(stretchesBelow(level, level, 0, 10)).toEqual([])
  expect(largestGap(rising, level, 0, 10)).toBe(4)
  expect(smallestGap(rising, level, 0, 10)).toBe(-6)
})

test('stretches taken out of a whole may overlap and reach beyond it', () => {
  const left = intervalsLeft({ from: 0, to: 10 }, [
    { from: 6, to: 7 },
    { from: -2, to: 1 },
    { from: 3, to: 6.5 },
    { from: 9, to: 20 },
  ])
  expect(left).toEqual([
    { from: 1, to: 3 },
    { from: 7, to: 9 },
  ])
  expect(intervalsShared({ from: 0, to: 2 }, { from: 2, to: 3 })).toBe(0)
})

const floor = line([0, 0])
const high = line([0, 100])

test('a square hole: its mitred casing is longer by its width at each of two corners', () => {
  const hole = { from: 2, to: 5, bottom: 0, head: { kind: 'level', height: 7 } } as const
  expect(measureHole(hole, floor, high)).toEqual({
    area: 21,
    startSide: 7,
    endSide: 7,
    headLength: 3,
    bottomLength: 3,
    mitres: 2,
    arcTurn: 0,
  })
})

test('a half-round head: half a circle over upright sides, no mitres, half a turn', () => {
  const hole = { from: 0, to: 4, bottom: 1, head: segmentHead(0, 4, 8, 2) } as const
  const measure = measureHole(hole, floor, high)
  expect(measure.area).toBeCloseTo(4 * 5 + (Math.PI * 4) / 2, 9)
  expect(measure.startSide).toBeCloseTo(5, 9)
  expect(measure.headLength).toBeCloseTo(Math.PI * 2, 9)
  expect(measure.mitres).toBeCloseTo(0, 6)
  expect(measure.arcTurn).toBeCloseTo(Math.PI, 6)
})

test('a segment head: the circular segment by its formula', () => {
  // Width 6, rise 1: radius (9 + 1) / 2 = 5, half angle asin(3/5).
  const hole = { from: 0, to: 6, bottom: 0, head: segmentHead(0, 6, 5, 1) } as const
  const half = Math.asin(3 / 5)
  const segment = (25 * (2 * half - Math.sin(2 * half))) / 2
  const measure = measureHole(hole, floor, high)
  expect(measure.area).toBeCloseTo(6 * 4 + segment, 9)
  expect(measure.headLength).toBeCloseTo(5 * 2 * half, 9)
})

test('a hole under a slope is cut by it, and its head follows the slope', () => {
  const hole = { from: 0, to: 4, bottom: 0, head: { kind: 'level', height: 6 } } as const
  // The ceiling falls from 7 at 0 to 3 at 4: level head up to 1, then down the slope to 3.
  const measure = measureHole(hole, floor, line([0, 7], [4, 3]))
  expect(measure.area).toBeCloseTo(1 * 6 + ((6 + 3) / 2) * 3, 12)
  expect([measure.startSide, measure.endSide]).toEqual([6, 3])
  expect(measure.headLength).toBeCloseTo(1 + Math.hypot(3, 3), 12)
})

test('a hole wholly below the floor or above the ceiling is not there', () => {
  const hole = { from: 0, to: 4, bottom: 2, head: { kind: 'level', height: 6 } } as const
  expect(measureHole(hole, line([0, 8]), high).area).toBe(0)
  expect(measureHole(hole, floor, line([0, 1])).area).toBe(0)
  expect(measureHole(hole, line([0, 7], [4, 9]), high).area).toBe(0)
})
