import type { BuiltItem } from '../../../../core/project/built-records.ts'
import { roomSpan } from '../../../../core/project/heights.ts'
import type { Room } from '../../../../core/project/sketch-records.ts'
import type { SketchCommand } from '../../../../core/sketch/commands.ts'
import { type StairMeasure, usualSlopeAxis } from '../../../../core/sketch/room-slopes.ts'
import { feet, inches, lengthFromUnits } from '../../../../core/units/length.ts'
import { newId } from '../../../state/new-id.ts'
import { firstStair } from './first-stair.ts'

/** A usual stair, with no more treads than the room is long. */
export function firstMeasure(room: Room): StairMeasure {
  const across = usualSlopeAxis(room)
  const span = roomSpan(room, across === 'x' ? 'y' : 'x')
  const { treadDepth: run, riserHeight: rise } = firstStair
  const treads = Math.max(1, Math.min(firstStair.treads, Math.floor(span / run)))
  return { rise, run, treads, foot: across === 'x' ? 'bottom' : 'left', headroom: feet(8) }
}

/** The stair as built work, with what follows from its rise, run and treads; the rest is the usual stair. */
export function putStair(room: Room, { rise, run, treads }: StairMeasure): SketchCommand {
  const across = usualSlopeAxis(room)
  const risers = treads + 1
  const slope = lengthFromUnits(Math.hypot(run * treads, rise * risers))
  const record: BuiltItem = {
    ...firstStair,
    kind: 'stair',
    id: newId('stair'),
    roomId: room.id,
    name: 'Stair',
    treads,
    risers,
    stepLength: lengthFromUnits(Math.max(inches(12), roomSpan(room, across))),
    treadDepth: run,
    riserHeight: rise,
    stringerLength: slope,
    handrailLength: slope,
    balusters: 2 * treads,
  }
  return { kind: 'putRecord', collection: 'builtItems', record }
}
