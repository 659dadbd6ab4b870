import { highestBetween, smallestGap } from '../geometry/band.ts'
import { measureHole } from '../geometry/hole.ts'
import { intervalsShared } from '../geometry/interval.ts'
import { formatLength, type LengthUnitSystem } from '../units/length.ts'
import { lightSize, openingHole, openingLayout, sashFrames, sideFrames } from './opening-layout.ts'
import { type PlacedOpening, placeOpening } from './placed-opening.ts'
import { type Problem, problem } from './problem.ts'
import type { RoomParts, SidedOpening } from './room-parts.ts'
import type { Room, WallId } from './sketch-records.ts'
import { openingNoun, wallName } from './sketch-words.ts'
import { findWall, type OpeningPlace, type Wall, wallCeiling, wallFloor } from './walls.ts'

/** Every opening of a room that does not fit where it is. The outline and the heights must be sound. */
export function openingProblems(parts: RoomParts, system: LengthUnitSystem): readonly Problem[] {
  const placed = parts.openings.flatMap((sided) => placeOpening(sided) ?? [])
  return [
    ...parts.openings.flatMap((sided) => (sided.side === 'near' ? facingProblems(sided) : [])),
    ...placed.flatMap((each) => placeProblems(parts.room, each, system)),
    ...overlapProblems(parts.room, placed, system),
    ...placed.flatMap((each) => (each.side === 'near' ? fillingProblems(parts.room, each, system) : [])),
  ]
}

function where(room: Room, wall: Wall): string {
  return `${room.name}, ${wallName(wall)}`
}

function facingProblems(sided: SidedOpening): readonly Problem[] {
  const { opening, nearRoom, farRoom } = sided
  if (opening.far === null || farRoom === null) return []
  const nearWall = findWall(nearRoom, opening.wallId)
  const farWall = findWall(farRoom, opening.far.wallId)
  if (nearWall === null || farWall === null || placeOpening({ ...sided, side: 'far' }) !== null) return []
  const sentence = `${where(nearRoom, nearWall)}: the ${openingNoun(opening)} cannot lead to ${farRoom.name}, because ${wallName(farWall)} there does not run along the other side of the same wall. Move one of the rooms, or give the opening another far side.`
  return [
    problem('farSideDoesNotFace', sentence, [opening.id, nearRoom.id, nearWall.id, farRoom.id, farWall.id]),
  ]
}

/** Lengths of slanting walls are not whole; half a unit is less than anything that can be typed. */
const roundingOfWalls = 0.5

function placeProblems(room: Room, placed: PlacedOpening, system: LengthUnitSystem): readonly Problem[] {
  const { opening, wall, place } = placed
  const noun = openingNoun(opening)
  const ids = [opening.id, room.id, wall.id]
  const show = (length: number) => formatLength(length, system)
  if (place.to - place.from > wall.length + roundingOfWalls) {
    const sentence = `${where(room, wall)}: the ${noun} is ${show(opening.width)} wide, but the wall is only ${show(wall.length)} long. Make the opening narrower.`
    return [problem('openingOutsideWall', sentence, ids)]
  }
  if (place.from < -roundingOfWalls || place.to > wall.length + roundingOfWalls) {
    const sentence = `${where(room, wall)}: the ${noun} reaches past the end of the wall. Slide it along by ${show(Math.max(-place.from, place.to - wall.length))} or make it narrower.`
    return [problem('openingOutsideWall', sentence, ids)]
  }
  return heightOfOpening(room, placed, system)
}

/** A head may be cut by a slope, as over a closet under a stair, but not stand above the wall throughout, and no edge may vanish. */
function heightOfOpening(room: Room, placed: PlacedOpening, system: LengthUnitSystem): readonly Problem[] {
  const { opening, wall, place } = placed
  const noun = openingNoun(opening)
  const ids = [opening.id, room.id, wall.id]
  const ceiling = wallCeiling(room, wall)
  const highest = highestBetween(ceiling, place.from, place.to)
  if (place.top > highest + roundingOfWalls) {
    const sentence = `${where(room, wall)}: the ${noun} reaches ${formatLength(place.top - highest, system)} above the ceiling. Lower it or make it shorter.`
    return [problem('openingAboveCeiling', sentence, ids)]
  }
  const bottom = [
    { at: place.from, height: place.bottom },
    { at: place.to, height: place.bottom },
  ]
  if (smallestGap(bottom, ceiling, place.from, place.to) <= 0) {
    const sentence = `${where(room, wall)}: the slope of the ceiling comes down to the bottom of the ${noun}. Slide it to where the wall is higher.`
    return [problem('openingAboveCeiling', sentence, ids)]
  }
  if (opening.head.kind !== 'square') return headProblems(room, placed)
  if (measureHole(openingHole(opening, place), wallFloor(room, wall), ceiling).area > 0) return []
  const sentence = `${where(room, wall)}: the ${noun} lies below the floor. Slide it or raise its sill.`
  return [problem('openingOutsideWall', sentence, ids)]
}

function headProblems(room: Room, { opening, wall }: PlacedOpening): readonly Problem[] {
  const rise = opening.head.kind === 'segment' ? opening.head.rise : opening.width / 2
  if (rise <= opening.width / 2 && rise <= opening.height) return []
  const sentence =
    rise > opening.height
      ? `the arched head of the ${openingNoun(opening)} is higher than the opening. Make the opening taller or the head flatter.`
      : `the arched head of the ${openingNoun(opening)} rises more than half the opening's width. Make the head flatter.`
  return [problem('headDoesNotFit', `${where(room, wall)}: ${sentence}`, [opening.id, room.id, wall.id])]
}

/** Two of a kind often have no names, so each is told by where it begins along the wall as seen from this room. */
function overlapProblems(
  room: Room,
  placed: readonly PlacedOpening[],
  system: LengthUnitSystem,
): readonly Problem[] {
  const walls = new Map<WallId, PlacedOpening[]>()
  for (const each of placed) {
    const onWall = walls.get(each.wall.id)
    if (onWall === undefined) walls.set(each.wall.id, [each])
    else onWall.push(each)
  }
  return [...walls.values()].flatMap((onWall) => overlapsOnWall(room, onWall, system))
}

/** More than any wall has: each is compared with each other one. */
const mostOpeningsOnWall = 60

function overlapsOnWall(
  room: Room,
  placed: readonly PlacedOpening[],
  system: LengthUnitSystem,
): readonly Problem[] {
  const [first] = placed
  if (first !== undefined && placed.length > mostOpeningsOnWall) {
    const sentence = `${where(room, first.wall)}: ${placed.length} openings in one wall; there may be ${mostOpeningsOnWall}. Take some away.`
    return [problem('openingsOverlap', sentence, [first.opening.id, room.id, first.wall.id])]
  }
  const which = ({ opening, place }: PlacedOpening) =>
    `the ${openingNoun(opening)} at ${formatLength(place.from, system)}`
  return placed.flatMap((one, index) =>
    placed.slice(index + 1).flatMap((other) => {
      if (!placesOverlap(one.place, other.place)) return []
      const sentence = `${where(room, one.wall)}: ${which(one)} and ${which(other)} from the wall's start overlap. Slide one of them along the wall.`
      return [problem('openingsOverlap', sentence, [one.opening.id, other.opening.id, room.id, one.wall.id])]
    }),
  )
}

function placesOverlap(one: OpeningPlace, other: OpeningPlace): boolean {
  return (
    intervalsShared(one, other) > 0 &&
    intervalsShared({ from: one.bottom, to: one.top }, { from: other.bottom, to: other.top }) > 0
  )
}

function fillingProblems(room: Room, placed: PlacedOpening, system: LengthUnitSystem): readonly Problem[] {
  const { opening, wall, place } = placed
  const ids = [opening.id, room.id, wall.id]
  const layout = openingLayout(opening, place)
  const refuse = (text: string) => [problem('sashDoesNotFit', `${where(room, wall)}: ${text}`, ids)]
  if (layout.main.to <= layout.main.from || layout.main.top <= layout.main.bottom) {
    return refuse(
      `the transom or sidelights of the ${openingNoun(opening)} leave nothing of it. Make them smaller.`,
    )
  }
  for (const frame of [...sashFrames(opening, layout), ...sideFrames(opening, layout)]) {
    const { width, height } = lightSize(frame)
    if (width <= 0 || height <= 0) {
      const short = width <= 0 ? frame.frame.to - frame.frame.from : frame.frame.top - frame.frame.bottom
      return refuse(
        `the sash members of the ${openingNoun(opening)} leave no glass in a sash ${formatLength(short, system)} ${width <= 0 ? 'wide' : 'high'}. Use narrower members or fewer lights.`,
      )
    }
  }
  return []
}
