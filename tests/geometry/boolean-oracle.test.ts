import { areaPaths, difference, FillRule, intersect, type Path64 } from 'clipper2-ts'
import { expect, test } from 'vitest'
import type { HeightPoint } from '../../core/geometry/height-line.ts'
import { type Hole, headHeightAt, measureHole, segmentHead } from '../../core/geometry/hole.ts'
import { polygonArea, polygonBand } from '../../core/geometry/polygon.ts'
import { sketchProblems } from '../../core/project/sketch-problems.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { metres, millimetres } from '../../core/units/length.ts'
import {
  between,
  oneOf,
  type Random,
  randomFrom,
  randomOpening,
  randomRoom,
} from '../quantities/random-sketch.ts'
import { sketch } from '../quantities/sketched.ts'

/** Polygon booleans by a library as the second opinion. It rounds crossing points to whole units, so areas may differ by the outline x 1 unit. */
const path = (points: readonly (readonly [number, number])[]): Path64 =>
  points.map(([x, y]) => ({ x: Math.round(x), y: Math.round(y) }))

function perimeter(points: Path64): number {
  return points.reduce((sum, point, index) => {
    const next = points[(index + 1) % points.length] as Path64[number]
    return sum + Math.hypot(next.x - point.x, next.y - point.y)
  }, 0)
}

const areaOf = (paths: Path64[]) => Math.abs(areaPaths(paths))

test('the part of an outline between two lines is what polygon booleans make of it, concave outlines too', () => {
  const random = randomFrom(11)
  for (let round = 0; round < 800; round++) {
    const { corners } = randomRoom(random, 'r', 'flat')
    const axis = oneOf(random, ['x', 'y'] as const)
    const places = corners.map((corner) => corner[axis])
    const [one, other] = [0, 1].map(() => between(random, Math.min(...places), Math.max(...places)))
    const [from, to] = [Math.min(one as number, other as number), Math.max(one as number, other as number)]
    const far = metres(100)
    const strip: [number, number][] = [
      [from, -far],
      [to, -far],
      [to, far],
      [from, far],
    ]
    const outline = path(corners.map((corner) => [corner.x, corner.y]))
    const clip = path(axis === 'x' ? strip : strip.map(([a, b]) => [b, a]))
    const expected = areaOf(intersect([outline], [clip], FillRule.NonZero))
    expect(Math.abs(polygonArea(polygonBand(corners, axis, from, to)) - expected)).toBeLessThanOrEqual(
      perimeter(outline),
    )
  }
})

function randomLine(random: Random, length: number, least: number, most: number): readonly HeightPoint[] {
  const height = () => between(random, least, most)
  const bends = between(random, 0, 2)
  const inner = Array.from({ length: bends }, (_, index) => ({
    at: ((index + 0.2 + 0.6 * random()) / bends) * length,
    height: height(),
  }))
  return [{ at: 0, height: height() }, ...inner, { at: length, height: height() }]
}

/** An arc as very many short straight pieces, closer together towards its steep ends. */
function holePath(hole: Hole): Path64 {
  const steps = hole.head.kind === 'arc' ? 4000 : 1
  const head = Array.from({ length: steps + 1 }, (_, step) => {
    const at = (hole.from + hole.to) / 2 + ((hole.to - hole.from) / 2) * Math.cos((step / steps) * Math.PI)
    return [at, headHeightAt(hole.head, at)] as const
  })
  return path([[hole.from, hole.bottom], [hole.to, hole.bottom], ...head])
}

function randomHole(random: Random, length: number): Hole {
  const width = between(random, millimetres(400), length * 0.6)
  const from = between(random, 0, length - width)
  const bottom = between(random, 0, metres(2))
  const top = bottom + between(random, millimetres(300), metres(2.5))
  const rise = Math.min(width / 2, top - bottom) * (0.1 + 0.9 * random())
  const head =
    random() < 0.5 ? ({ kind: 'level', height: top } as const) : segmentHead(from, from + width, top, rise)
  return { from, to: from + width, bottom, head }
}

test('an opening cut by raked floors and ceilings, square or arched, keeps the area that polygon booleans leave of it', () => {
  const random = randomFrom(12)
  let cut = 0
  for (let round = 0; round < 800; round++) {
    const length = between(random, metres(1.5), metres(6))
    const lower = randomLine(random, length, 0, metres(1))
    const upper = randomLine(random, length, metres(1), metres(4))
    const hole = randomHole(random, length)
    const wall = path([
      ...lower.map(({ at, height }) => [at, height] as const),
      ...[...upper].reverse().map(({ at, height }) => [at, height] as const),
    ])
    const whole = holePath(hole)
    const expected = areaOf(intersect([whole], [wall], FillRule.NonZero))
    if (expected < areaOf([whole]) * 0.999) cut++
    const measured = measureHole(hole, lower, upper).area
    // 4,000 chords miss less than 1e-6 of an arc's area.
    expect(Math.abs(measured - expected)).toBeLessThanOrEqual(perimeter(whole) + 1e-6 * expected)
  }
  expect(cut).toBeGreaterThan(200)
})

test('walls less openings that may be cut by the slope have the area polygon booleans leave', () => {
  const random = randomFrom(13)
  let rakesCut = 0
  for (let round = 0; round < 400; round++) {
    const room = randomRoom(random, 'r', oneOf(random, ['shed', 'gable', 'vault']))
    const job = sketch({ rooms: [room] })
    if (sketchProblems(job).length > 0) continue
    const [wall] = takeOff(job).surfaces.filter((surface) => surface.surface.kind === 'wall')
    if (wall?.surface.kind !== 'wall') continue
    const corner = room.corners[0] as (typeof room.corners)[number]
    const next = room.corners[1] as (typeof room.corners)[number]
    const length = Math.hypot(next.x - corner.x, next.y - corner.y)
    const opening = randomOpening(random, 'o', corner.wallId, length)
    const withOpening = sketch({ rooms: [room], openings: [opening] })
    if (sketchProblems(withOpening).length > 0) continue
    const figure = takeOff(withOpening).byKey.get(wall.key)
    const upper = ceilingAlong(room, corner, next, length)
    const outline = path([[0, 0], [length, 0], ...[...upper].reverse()])
    const hole = path([
      [opening.offset, opening.sill],
      [opening.offset + opening.width, opening.sill],
      [opening.offset + opening.width, opening.sill + opening.height],
      [opening.offset, opening.sill + opening.height],
    ])
    const left = areaOf(difference([outline], [hole], FillRule.NonZero))
    if (areaOf(intersect([hole], [outline], FillRule.NonZero)) < areaOf([hole]) * 0.999) rakesCut++
    expect(Math.abs((figure?.netArea ?? -1) * 6400 - left)).toBeLessThanOrEqual(
      2 * (perimeter(outline) + perimeter(hole)) + 6400,
    )
  }
  expect(rakesCut).toBeGreaterThan(10)
})

type Spot = { readonly x: number; readonly y: number }

/** Where the ceiling's bends show along a wall, from the record alone. */
function ceilingAlong(
  room: ReturnType<typeof randomRoom>,
  start: Spot,
  end: Spot,
  length: number,
): readonly (readonly [number, number])[] {
  const { ceiling } = room
  if (ceiling.kind !== 'shed' && ceiling.kind !== 'gable' && ceiling.kind !== 'vault')
    throw new Error('not raked')
  const places = room.corners.map((corner) => corner[ceiling.along])
  const least = Math.min(...places)
  const span = Math.max(...places) - least
  const inner =
    ceiling.kind === 'shed'
      ? []
      : ceiling.kind === 'gable'
        ? [[ceiling.ridgeAt, ceiling.ridgeHeight]]
        : [
            [ceiling.flatFrom, ceiling.flatHeight],
            [ceiling.flatTo, ceiling.flatHeight],
          ]
  const bends = [[0, ceiling.startHeight], ...inner, [span, ceiling.endHeight]] as [number, number][]
  const heightOn = (at: number) => {
    const after = Math.max(
      1,
      bends.findIndex(([place]) => place >= at),
    )
    const [a, b] = [bends[after - 1] as [number, number], bends[after] as [number, number]]
    return a[1] + ((b[1] - a[1]) * (at - a[0])) / (b[0] - a[0])
  }
  const [from, to] = [start[ceiling.along] - least, end[ceiling.along] - least]
  const shown = bends
    .filter(([at]) => (at - from) * (at - to) < 0)
    .map(([at, height]) => [((at - from) / (to - from)) * length, height] as const)
    .sort((a, b) => a[0] - b[0])
  return [[0, heightOn(from)], ...shown, [length, heightOn(to)]]
}
