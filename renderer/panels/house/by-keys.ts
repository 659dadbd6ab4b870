import { pointBetween } from '../../../core/geometry/point.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { Outcome } from '../../../core/project/problem.ts'
import type { RoomId, WallId } from '../../../core/project/sketch-records.ts'
import { openingNouns } from '../../../core/project/sketch-words.ts'
import type { OpeningKind } from '../../../core/project/vocabulary.ts'
import { findWall } from '../../../core/project/walls.ts'
import { applyCommands } from '../../../core/sketch/apply-command.ts'
import { rectangleCorners } from '../../../core/sketch/outline-drafting.ts'
import { unitsPerFoot } from '../../../core/units/length.ts'
import { fitStorey, surroundings } from '../../canvas/sketch-input.ts'
import { sketchStore } from '../../canvas/sketch-store.ts'
import { newRoom } from '../../canvas/tools/new-room.ts'
import { addOpeningAt } from '../../canvas/tools/opening.ts'
import { readSides } from '../../canvas/tools/rectangle.ts'
import { jobStore, viewStore } from '../../state/app.ts'
import { command } from '../parts/edits.ts'

/** A rectangular room of a typed size, clear of what is drawn; answers a sentence when the size cannot be read. */
export function addRoomOfSize(job: Job, text: string): string | null {
  const around = surroundings(job)
  const sides = readSides(text, around)
  if (!sides.ok) return sides.sentence
  const from = { x: clearOf(job, around.storeyId), y: 0 }
  const to = { x: from.x + sides.width, y: from.y + sides.depth }
  const room = newRoom(rectangleCorners(from, to), around)
  if (command(`draw ${room.name}`, room)) {
    viewStore.setState({ selectedIds: [room.id], roomId: room.id, surfaceKey: null })
    sketchStore.setState({ namingId: room.id })
    fitStorey()
  }
  return null
}

/** Two feet to the right of everything on the storey. */
function clearOf(job: Job, storeyId: string): number {
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId)
  if (rooms.length === 0) return 0
  const rightmost = Math.max(...rooms.flatMap((room) => room.corners.map((corner) => corner.x)))
  return rightmost + 2 * unitsPerFoot
}

/** Where along a wall an opening is tried, as shares of its length: the middle first. */
const places = [0.5, 0.25, 0.75, 0.125, 0.875]

/** Sets an opening in a wall at the first place where it fits; its exact place is then typed in its fields. */
export function setOpeningInWall(job: Job, roomId: RoomId, wallId: WallId, kind: OpeningKind): void {
  const room = job.rooms[roomId]
  const wall = room === undefined ? null : findWall(room, wallId)
  if (wall === null) return
  const tries = places.flatMap((share) => {
    const add = addOpeningAt(kind, pointBetween(wall.start, wall.end, share), surroundings(job))
    return add === null ? [] : [{ id: add.opening.id, outcome: applyCommands(job, [add]) }]
  })
  const [first] = tries
  if (first === undefined) return
  const chosen = tries.find((one) => one.outcome.ok) ?? first
  const outcome: Outcome<Job> = chosen.outcome
  if (jobStore.perform(`set a ${openingNouns[kind]}`, outcome)) {
    viewStore.setState({ selectedIds: [chosen.id], roomId })
  }
}
