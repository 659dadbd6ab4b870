import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { StoreyId } from '../../core/project/sketch-records.ts'
import { facingWall } from '../../core/sketch/facing-wall.ts'
import {
  closesOutline,
  nextCorner,
  rectangleCorners,
  typedOppositeCorner,
} from '../../core/sketch/outline-drafting.ts'
import { snapTargets } from '../../core/sketch/snap-targets.ts'
import { type SnapSettings, type SnapTargets, snapPoint } from '../../core/sketch/snapping.ts'
import { feet, inches } from '../../core/units/length.ts'
import { east, north, parlour, south, study, twoRooms, west } from './two-rooms.ts'

const plain: SnapSettings = { tolerance: inches(4), grid: null, partition: null, drawn: [] }
const nothing: SnapTargets = { points: [], walls: [] }

function at(xFeet: number, yFeet: number, plusX = 0, plusY = 0) {
  return { x: feet(xFeet, plusX), y: feet(yFeet, plusY) }
}

test('the pointer catches on a corner before anything else', () => {
  const targets = snapTargets(twoRooms(), 'ground' as StoreyId)
  const snapped = snapPoint(at(12, 10, 2, 1), targets, { ...plain, grid: inches(1) })
  expect(snapped).toMatchObject({ point: at(12, 10), guides: [{ kind: 'corner' }] })
})

test('a room that is being moved does not catch on itself', () => {
  const targets = snapTargets(twoRooms(), 'ground' as StoreyId, [study])
  expect(targets.points).toHaveLength(4)
  expect(snapTargets(twoRooms(), 'upper' as StoreyId).points).toEqual([])
})

test('x and y catch on alignments with different corners', () => {
  const targets = { points: [at(5, 30), at(40, 7)], walls: [] }
  const { point, guides } = snapPoint(at(5, 7, 3, -2), targets, plain)
  expect(point).toEqual(at(5, 7))
  expect(guides).toEqual([
    { kind: 'alignment', from: at(5, 30), to: at(5, 7) },
    { kind: 'alignment', from: at(40, 7), to: at(5, 7) },
  ])
})

test('the face of the next room stands one partition behind a wall', () => {
  const targets = { points: [], walls: [{ start: at(12, 0), end: at(12, 10) }] }
  const snapped = snapPoint(at(12, 3, 6), targets, { ...plain, partition: inches(5) })
  expect(snapped.point.x).toBe(feet(12, 5))
  expect(snapped.guides[0]?.kind).toBe('partition')
})

test('the grid holds where nothing nearer does', () => {
  expect(snapPoint(at(3, 4, 1.7, 0.2), nothing, { ...plain, grid: inches(1) }).point).toEqual(at(3, 4, 2))
  const free = snapPoint({ x: 12.4, y: 7.6 }, nothing, plain)
  expect(free).toEqual({ point: { x: 12, y: 8 }, guides: [] })
})

test('a right angle to a slanting side is found', () => {
  const drawn = [at(0, 0), at(3, 4)]
  // Square to (3, 4) from its end runs (-4, 3): ten feet along it is (3 - 8, 4 + 6).
  const snapped = snapPoint(at(-5, 10, 1, 1), nothing, { ...plain, drawn })
  expect(snapped.guides[0]?.kind).toBe('rightAngle')
  expect(snapped.point.x / feet(1)).toBeCloseTo(-5 + 0.0, 0)
  const fromEnd = { x: snapped.point.x - feet(3), y: snapped.point.y - feet(4) }
  expect(Math.abs(fromEnd.x * 3 + fromEnd.y * 4) / feet(1)).toBeLessThan(0.001)
})

test('a slanting wall is caught between its ends only', () => {
  const targets = { points: [], walls: [{ start: at(0, 0), end: at(10, 10) }] }
  expect(snapPoint(at(5, 5, 2, 0), targets, plain).point).toEqual(at(5, 5, 1, 1))
  expect(snapPoint(at(12, 12, 2, 0), targets, plain).guides).toEqual([])
})

test('a snapped point is whole and, when it moved, no farther than the tolerance on each axis', () => {
  const coordinate = fc.integer({ min: -1_000_000, max: 1_000_000 })
  const point = fc.record({ x: coordinate, y: coordinate })
  fc.assert(
    fc.property(point, fc.array(point, { maxLength: 8 }), (pointer, points) => {
      const snapped = snapPoint(pointer, { points, walls: [] }, { ...plain, grid: 50_000 }).point
      expect(Number.isInteger(snapped.x) && Number.isInteger(snapped.y)).toBe(true)
      expect(Math.abs(snapped.x - pointer.x)).toBeLessThanOrEqual(plain.tolerance)
      expect(Math.abs(snapped.y - pointer.y)).toBeLessThanOrEqual(plain.tolerance)
    }),
  )
})

test('a typed length runs in the direction of the pointer', () => {
  expect(nextCorner([at(0, 0)], at(3, 0, 0, 5), feet(12, 6.5), 'eighths')).toEqual(at(12, 0, 6.5))
  expect(nextCorner([at(0, 0)], at(0, -3), feet(10), 'eighths')).toEqual(at(0, -10))
  expect(nextCorner([at(0, 0)], at(3, 4), feet(10), 'free')).toEqual(at(6, 8))
})

test('without a typed length a side reaches as far as the pointer along its direction', () => {
  const reached = nextCorner([at(0, 0)], at(9, 0, 0, 6), null, 'eighths')
  expect(reached).toEqual(at(9, 0))
  expect(nextCorner([], { x: 1.6, y: 2.2 }, null, 'free')).toEqual({ x: 2, y: 2 })
})

test('an outline closes near its first corner, with three corners or more', () => {
  const corners = [at(0, 0), at(10, 0), at(10, 8)]
  expect(closesOutline(corners, at(0, 0, 2), inches(4))).toBe(true)
  expect(closesOutline(corners.slice(0, 2), at(0, 0), inches(4))).toBe(false)
  expect(closesOutline(corners, at(1, 0), inches(4))).toBe(false)
})

test('a rectangle runs clockwise from its least corner, dragged either way', () => {
  const corners = [at(0, 0), at(12, 0), at(12, 10), at(0, 10)]
  expect(rectangleCorners(at(0, 0), at(12, 10))).toEqual(corners)
  expect(rectangleCorners(at(12, 0), at(0, 10))).toEqual(corners)
  expect(typedOppositeCorner(at(12, 10), at(11, 9), feet(12), feet(10))).toEqual(at(0, 0))
})

test('the wall behind a stretch is found with the place of the stretch on it', () => {
  const job = twoRooms()
  expect(facingWall(job, study, east, feet(3), feet(5, 8))).toEqual({
    roomId: parlour,
    wallId: west,
    from: feet(4, 4),
    to: feet(7),
    gap: inches(5),
  })
  expect(facingWall(job, study, south, feet(3), feet(5))).toBeNull()
  expect(facingWall(job, parlour, north, feet(3), feet(5))).toBeNull()
})
