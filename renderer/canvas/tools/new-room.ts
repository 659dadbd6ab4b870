import type { Point } from '../../../core/geometry/point.ts'
import { records } from '../../../core/project/job.ts'
import type { Corner } from '../../../core/project/sketch-records.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { roomDefaultsFor } from '../../../core/sketch/room-defaults.ts'
import { lengthFromUnits } from '../../../core/units/length.ts'
import type { Surroundings } from './tool.ts'

/** The command that makes a room of these corners, with the storey's habits for ceiling and trim. */
export function newRoom(
  points: readonly Point[],
  around: Surroundings,
): Extract<SketchCommand, { kind: 'addRoom' }> {
  return {
    kind: 'addRoom',
    id: around.newId('room'),
    storeyId: around.storeyId,
    name: freeName(around),
    use: 'other',
    corners: points.map(
      (point): Corner => ({
        wallId: around.newId('wall'),
        x: lengthFromUnits(point.x),
        y: lengthFromUnits(point.y),
        behind: 'heated',
      }),
    ),
    defaults: roomDefaultsFor(around.job, around.storeyId, () => around.newId('trim')),
  }
}

function freeName(around: Surroundings): string {
  const taken = new Set(records(around.job.rooms).map((room) => room.name))
  let number = taken.size + 1
  while (taken.has(`Room ${number}`)) number++
  return `Room ${number}`
}
