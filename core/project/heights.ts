import type { HeightLine, HeightPoint } from '../geometry/height-line.ts'
import type { Axis } from '../geometry/point.ts'
import { polygonBounds } from '../geometry/polygon.ts'
import type { LinePoint, Room } from './sketch-records.ts'

/** The ceiling's height above the floor datum, along the axis on which it varies; plan coordinates. */
export function ceilingLine(room: Room): HeightLine {
  const { ceiling } = room
  switch (ceiling.kind) {
    case 'flat':
      return { axis: 'x', points: [{ at: 0, height: ceiling.height }] }
    case 'shed':
      return shaped(room, ceiling.along, (span) => [
        { at: 0, height: ceiling.startHeight },
        { at: span, height: ceiling.endHeight },
      ])
    case 'gable':
      return shaped(room, ceiling.along, (span) => [
        { at: 0, height: ceiling.startHeight },
        { at: ceiling.ridgeAt, height: ceiling.ridgeHeight },
        { at: span, height: ceiling.endHeight },
      ])
    case 'vault':
      return shaped(room, ceiling.along, (span) => [
        { at: 0, height: ceiling.startHeight },
        { at: ceiling.flatFrom, height: ceiling.flatHeight },
        { at: ceiling.flatTo, height: ceiling.flatHeight },
        { at: span, height: ceiling.endHeight },
      ])
    case 'stair':
      return shaped(room, ceiling.along, () => ceiling.line)
  }
}

/** The floor's height above the datum: 0 for a level floor, the raked line of a stair otherwise. */
export function floorLine(room: Room): HeightLine {
  const { floor } = room
  if (floor.kind === 'level') return { axis: 'x', points: [{ at: 0, height: 0 }] }
  return shaped(room, floor.along, () => floor.line)
}

/** Distance the outline covers on an axis. */
export function roomSpan(room: Room, axis: Axis): number {
  const bounds = polygonBounds(room.corners)
  return bounds.max[axis] - bounds.min[axis]
}

function shaped(
  room: Room,
  axis: Axis,
  points: (span: number) => readonly (LinePoint | HeightPoint)[],
): HeightLine {
  const bounds = polygonBounds(room.corners)
  const least = bounds.min[axis]
  return {
    axis,
    points: points(bounds.max[axis] - least).map(({ at, height }) => ({ at: least + at, height })),
  }
}
