import { largestGap } from '../geometry/band.ts'
import { intervalsShared } from '../geometry/interval.ts'
import { polygonArea, polygonBand } from '../geometry/polygon.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import type { BuiltItem } from './built-records.ts'
import { heightProblems } from './height-problems.ts'
import type { Job } from './job.ts'
import { openingProblems } from './opening-problems.ts'
import { outlineProblems } from './outline-problems.ts'
import { type Problem, problem } from './problem.ts'
import { radiatorSectionSquareFeet } from './radiator-surface.ts'
import { allRoomParts, type RoomParts, sameParts } from './room-parts.ts'
import type { CeilingOpening, Room, TrimRun } from './sketch-records.ts'
import { trimNoun, wallName } from './sketch-words.ts'
import { roomWalls, type Wall, wallCeiling, wallFloor } from './walls.ts'

/** Every reason why what is drawn cannot be: empty for a sketch that can be measured. Rooms in the order of the file. */
export function sketchProblems(job: Job): readonly Problem[] {
  return allRoomParts(job).flatMap((parts) => rememberedProblems(parts, job.header.unitSystem))
}

interface Judged {
  readonly parts: RoomParts
  readonly system: LengthUnitSystem
  readonly problems: readonly Problem[]
}

/** What was said of a room last. Records never change in place, so it holds while the same ones are drawn in it. */
const judged = new WeakMap<Room, Judged>()

function rememberedProblems(parts: RoomParts, system: LengthUnitSystem): readonly Problem[] {
  const known = judged.get(parts.room)
  if (known !== undefined && known.system === system && sameParts(known.parts, parts)) return known.problems
  const problems = problemsOfRoom(parts, system)
  judged.set(parts.room, { parts, system, problems })
  return problems
}

/**
 * Problems of one room from its own records alone. What the outline gets wrong is said first and alone, then the heights: the
 * rest cannot be judged before.
 */
function problemsOfRoom(parts: RoomParts, system: LengthUnitSystem): readonly Problem[] {
  const { room } = parts
  const outline = outlineProblems(room)
  if (outline.length > 0) return outline
  const heights = heightProblems(room, system)
  if (heights.length > 0) return heights
  return [
    ...openingProblems(parts, system),
    ...ceilingOpeningProblems(room, parts.ceilingOpenings),
    ...parts.trimRuns.flatMap((run) => trimProblems(room, run)),
    ...parts.builtItems.flatMap((item) => builtProblems(room, item)),
  ]
}

/** More than any ceiling has: each is compared with each other one. */
const mostCeilingOpenings = 60

function ceilingOpeningProblems(room: Room, holes: readonly CeilingOpening[]): readonly Problem[] {
  const refuse = (text: string, ...ids: readonly string[]) =>
    problem('ceilingOpeningOutside', `${room.name}: ${text}`, [...ids, room.id])
  if (room.above === 'open') {
    return holes.map((hole) =>
      refuse(
        `the ${hole.kind} has no ceiling to be in, because the room is open above. Take it away.`,
        hole.id,
      ),
    )
  }
  if (holes.length > mostCeilingOpenings) {
    const many = `${holes.length} openings in one ceiling; there may be ${mostCeilingOpenings}. Take some away.`
    return [refuse(many, ...holes.slice(0, 1).map((hole) => hole.id))]
  }
  const outside = holes
    .filter((hole) => !outlineHolds(room, hole))
    .map((hole) =>
      refuse(`the ${hole.kind} in the ceiling reaches past the walls. Move it or make it smaller.`, hole.id),
    )
  const overlapping = holes.flatMap((one, index) =>
    holes
      .slice(index + 1)
      .filter((other) => ceilingOpeningsOverlap(one, other))
      .map((other) =>
        refuse(
          `the ${one.kind} and the ${other.kind} in the ceiling overlap. Move one of them.`,
          one.id,
          other.id,
        ),
      ),
  )
  return [...outside, ...overlapping]
}

/** The outline's part under the opening is as large as the opening; slanting walls are cut in rounded places. */
function outlineHolds(room: Room, hole: CeilingOpening): boolean {
  const across = polygonBand(room.corners, 'x', hole.x, hole.x + hole.width)
  const under = polygonArea(polygonBand(across, 'y', hole.y, hole.y + hole.depth))
  const whole = hole.width * hole.depth
  return Math.abs(under - whole) <= whole * 1e-9
}

function ceilingOpeningsOverlap(one: CeilingOpening, other: CeilingOpening): boolean {
  return (
    intervalsShared({ from: one.x, to: one.x + one.width }, { from: other.x, to: other.x + other.width }) >
      0 &&
    intervalsShared({ from: one.y, to: one.y + one.depth }, { from: other.y, to: other.y + other.depth }) > 0
  )
}

/** A run along all walls leaves out those too low for it, as under eaves; one along named walls must fit each of them. */
function trimProblems(room: Room, run: TrimRun): readonly Problem[] {
  const walls = roomWalls(room).filter((wall) => run.walls === null || run.walls.includes(wall.id))
  const low = walls.filter((wall) => wallHeight(room, wall) < neededHeight(run))
  const wall = low[0]
  if (wall === undefined || (run.walls === null && low.length < walls.length)) return []
  const place = run.walls === null ? room.name : `${room.name}, ${wallName(wall)}`
  const sentence = `${place}: the ${trimNoun(run)} is higher than the wall it runs along. Make it shorter, set it lower, or leave that wall out.`
  return [problem('trimDoesNotFit', sentence, [run.id, room.id, wall.id])]
}

function neededHeight(run: TrimRun): number {
  return run.kind === 'crown' || run.kind === 'baseboard' ? run.height : run.level + run.height
}

function wallHeight(room: Room, wall: Wall): number {
  return largestGap(wallFloor(room, wall), wallCeiling(room, wall), 0, wall.length)
}

function builtProblems(room: Room, item: BuiltItem): readonly Problem[] {
  const refuse = (text: string) => [problem('notValid', `${room.name}: ${text}`, [item.id, room.id])]
  if (item.kind === 'radiator' && radiatorSectionSquareFeet(item) === null) {
    return refuse(
      `no surface is published for a radiator of ${item.columns} ${item.pattern}s, ${item.heightInches} in high. Choose the nearest that is.`,
    )
  }
  if (item.kind === 'mantel' && (2 * item.legWidth > item.width || item.friezeHeight > item.height)) {
    return refuse(`the legs or the frieze of the mantel are larger than the mantel. Make them smaller.`)
  }
  return []
}
