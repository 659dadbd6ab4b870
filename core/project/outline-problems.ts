import { type Point, pointsTurn } from '../geometry/point.ts'
import { polygonSelfContact } from '../geometry/polygon.ts'
import { present } from '../lists/lists.ts'
import { unitsPer64thInch } from '../units/length.ts'
import { type Problem, problem } from './problem.ts'
import type { Room } from './sketch-records.ts'
import { wallName } from './sketch-words.ts'
import { roomWalls, type Wall } from './walls.ts'

/** Shorter than this, the finest mark on a tape, two corners are one. */
const shortestWall = unitsPer64thInch

/** A wall without length, an outline that crosses or touches itself, or one that encloses nothing. */
export function outlineProblems(room: Room): readonly Problem[] {
  const short = roomWalls(room).filter((wall) => wall.length < shortestWall)
  if (short.length > 0) return short.map((wall) => shortWall(room, wall))
  if (allInLine(room)) return [degenerate(room)]
  const contact = polygonSelfContact(room.corners)
  return contact === null ? [] : [crossing(room, contact)]
}

function allInLine(room: Room): boolean {
  const first: Point = present(room.corners[0])
  const second: Point = present(room.corners[1])
  return room.corners.every((corner) => pointsTurn(first, second, corner) === 0)
}

function shortWall(room: Room, wall: Wall): Problem {
  const sentence = `${room.name}, ${wallName(wall)}: the wall has no length. Move one of its corners, or take one of the two away.`
  return problem('wallTooShort', sentence, [room.id, wall.id])
}

function degenerate(room: Room): Problem {
  const sentence = `${room.name}: the outline encloses no floor. Move a corner out of the line of the others.`
  return problem('outlineDegenerate', sentence, [room.id])
}

function crossing(room: Room, [one, other]: readonly [number, number]): Problem {
  const walls = roomWalls(room)
  const [first, second] = [present(walls[one]), present(walls[other])]
  const sentence = `${room.name}: ${wallName(first)} and ${wallName(second)} cross or touch. Move a corner so that the outline runs around the room once.`
  return problem('outlineCrossesItself', sentence, [room.id, first.id, second.id])
}
