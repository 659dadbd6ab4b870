import { expect, test } from 'vitest'
import { levelOf } from '../../core/geometry/band.ts'
import { heightAt } from '../../core/geometry/height-line.ts'
import { sketchProblems } from '../../core/project/sketch-problems.ts'
import type { CeilingOpening, Opening, Room } from '../../core/project/sketch-records.ts'
import { roomWalls, type Wall, wallCeiling, wallFloor } from '../../core/project/walls.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { metres } from '../../core/units/length.ts'
import {
  between,
  type CeilingKind,
  ceilingKinds,
  type Random,
  randomFrom,
  randomOpening,
  randomRoom,
} from './random-sketch.ts'
import { meshAreas } from './room-mesh.ts'
import { ceilingOpening, sketch } from './sketched.ts'

const roomsOfEachKind = 350

interface Case {
  readonly room: Room
  readonly openings: readonly Opening[]
  readonly holes: readonly CeilingOpening[]
}

/** The next sound room of a kind with openings that fit. */
function nextCase(random: Random, kind: CeilingKind): Case {
  for (;;) {
    const room = randomRoom(random, 'r', kind)
    if (sketchProblems(sketch({ rooms: [room] })).length > 0) continue
    return { room, openings: fittingOpenings(random, room), holes: fittingHole(random, room) }
  }
}

function fittingOpenings(random: Random, room: Room): readonly Opening[] {
  let fitting: readonly Opening[] = []
  for (const wall of roomWalls(room)) {
    for (let attempt = 0; attempt < 3; attempt++) {
      const more = [...fitting, randomOpening(random, `o${fitting.length}`, wall.id, wall.length)]
      const problems = sketchProblems(sketch({ rooms: [room], openings: more }))
      if (problems.length === 0 && clearOfEdges(room, wall, more.at(-1) as Opening)) fitting = more
    }
  }
  return fitting
}

/** The mesh takes holes inside the wall and notches in a level floor; openings cut by a slope have an oracle of their own. */
function clearOfEdges(room: Room, wall: Wall, opening: Opening): boolean {
  const floor = wallFloor(room, wall)
  const lowestCeiling = Math.min(...wallCeiling(room, wall).map((point) => point.height))
  const highestFloor = Math.max(...floor.map((point) => point.height))
  const level = levelOf(floor) !== null
  const bottom = heightAt(floor, opening.offset) + opening.sill
  const inside = opening.offset > 0 && opening.offset + opening.width < wall.length
  const above = opening.sill === 0 ? level : bottom > highestFloor
  return inside && above && bottom + opening.height < lowestCeiling
}

function fittingHole(random: Random, room: Room): readonly CeilingOpening[] {
  const xs = room.corners.map((corner) => corner.x)
  const ys = room.corners.map((corner) => corner.y)
  const hole = ceilingOpening(
    'r',
    [between(random, Math.min(...xs), Math.max(...xs)), between(random, Math.min(...ys), Math.max(...ys))],
    between(random, metres(0.3), metres(1.5)),
    between(random, metres(0.3), metres(1.5)),
  )
  const fits = sketchProblems(sketch({ rooms: [room], ceilingOpenings: [hole] })).length === 0
  return fits && strictlyInside(room, hole) ? [hole] : []
}

/** A hole that touches the outline would not be a hole to the triangulation. */
function strictlyInside(room: Room, hole: CeilingOpening): boolean {
  const wider = {
    ...hole,
    x: hole.x - 8,
    y: hole.y - 8,
    width: hole.width + 16,
    depth: hole.depth + 16,
  } as CeilingOpening
  return sketchProblems(sketch({ rooms: [room], ceilingOpenings: [wider] })).length === 0
}

/** One figure may be off by half a grain (1/20000 mm2) for each rounding in it, and by 1e-9 of itself. */
function near(measured: number, meshed: number, roundings: number): boolean {
  const areaUnits = meshed / 6400
  return Math.abs(measured - areaUnits) <= 1e-9 * areaUnits + 0.5 * roundings + 0.01
}

test.each(ceilingKinds)('350 random rooms with a %s ceiling have the areas of their 3-D mesh', (kind) => {
  const random = randomFrom(20_270 + ceilingKinds.indexOf(kind))
  let openings = 0
  let holes = 0
  for (let index = 0; index < roomsOfEachKind; index++) {
    const one = nextCase(random, kind)
    openings += one.openings.length
    holes += one.holes.length
    const job = sketch({ rooms: [one.room], openings: one.openings, ceilingOpenings: one.holes })
    const mesh = meshAreas(one.room, one.openings, one.holes)
    const { byKey } = takeOff(job)
    for (const [wallId, area] of mesh.walls) {
      const figure = byKey.get(`wall:r:${wallId}:whole`)
      const roundings = 1 + one.openings.length
      expect(near(figure?.netArea ?? -1, area, roundings), `${kind} ${index} ${wallId}`).toBe(true)
    }
    const ceiling = byKey.get('ceiling:r')
    expect(near(ceiling?.netArea ?? -1, mesh.ceiling, 12), `${kind} ${index} ceiling`).toBe(true)
  }
  // The rooms were worth measuring: openings in most of them, hatches in many.
  expect(openings).toBeGreaterThan(roomsOfEachKind)
  expect(holes).toBeGreaterThan(roomsOfEachKind / 5)
})
