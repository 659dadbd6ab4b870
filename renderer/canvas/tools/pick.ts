import { type Point, pointsDistance } from '../../../core/geometry/point.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { openingSides } from '../../../core/project/walls.ts'
import { placeOnWall, type Target, targetAt } from '../hit.ts'
import { commandsOf, follow, isMove, letGo } from './pointer-moves.ts'
import {
  type Gesture,
  type GestureOf,
  type Input,
  resting,
  type Surroundings,
  type Tool,
  type ToolStep,
} from './tool.ts'

/** Selects, and moves what is taken hold of: a corner, a wall, an opening along its wall, whole rooms; on empty paper it sweeps. */
export const pickTool: Tool = {
  step(gesture, input, around) {
    if (input.kind === 'key')
      return input.key === 'Escape' && gesture.kind === 'resting'
        ? { gesture, select: [] }
        : { gesture: resting }
    if (input.kind === 'down') return press(input, around)
    if (input.kind === 'move') return { gesture: drag(gesture, input, around) }
    return release(gesture, around)
  },
  draft: (gesture) => (isMove(gesture) ? commandsOf(gesture) : []),
}

function press(input: Extract<Input, { kind: 'down' }>, around: Surroundings): ToolStep {
  const target = targetAt(around.job, around.storeyId, input.point, around.tolerance, around.selectedIds)
  return { gesture: { kind: 'pressing', target, at: input.point, adds: input.adds } }
}

function drag(gesture: Gesture, input: Extract<Input, { kind: 'move' }>, around: Surroundings): Gesture {
  if (gesture.kind === 'pressing') {
    const moved = pointsDistance(gesture.at, input.point) > around.tolerance / 2
    return moved ? onward(begin(gesture, around), input, around) : gesture
  }
  return onward(gesture, input, around)
}

function onward(gesture: Gesture, input: Extract<Input, { kind: 'move' }>, around: Surroundings): Gesture {
  return isMove(gesture) ? follow(gesture, input, around) : gesture
}

/** The gesture a press turns into once the pointer has moved. */
function begin(gesture: GestureOf<'pressing'>, around: Surroundings): Gesture {
  const { target, at } = gesture
  switch (target?.kind) {
    case undefined:
      return { kind: 'sweeping', from: at, to: at, adds: gesture.adds }
    case 'corner':
      return { kind: 'movingCorner', roomId: target.roomId, wallId: target.wallId, to: at, guides: [] }
    case 'wall':
      return { kind: 'movingWall', roomId: target.roomId, wallId: target.wallId, by: 0, to: at }
    case 'opening':
      return beginSlide(target, at, around)
    case 'room': {
      const held = around.selectedIds.includes(target.roomId) ? selectedRooms(around) : [target.roomId]
      return { kind: 'movingRooms', roomIds: held, from: at, to: at, dx: 0, dy: 0, guides: [] }
    }
  }
}

function selectedRooms(around: Surroundings): readonly RoomId[] {
  return around.selectedIds.flatMap((id) => around.job.rooms[id]?.id ?? [])
}

function beginSlide(target: Extract<Target, { kind: 'opening' }>, at: Point, around: Surroundings): Gesture {
  const opening = around.job.openings[target.openingId]
  const near = opening === undefined ? null : openingSides(around.job, opening).near
  if (opening === undefined || near === null) return resting
  const grabbedAt = placeOnWall(near.wall, at).at - opening.offset
  return { kind: 'slidingOpening', openingId: target.openingId, grabbedAt, offset: opening.offset, to: at }
}

function release(gesture: Gesture, around: Surroundings): ToolStep {
  if (isMove(gesture)) return letGo(gesture, around)
  return gesture.kind === 'pressing'
    ? { gesture: resting, select: clicked(gesture, around.selectedIds) }
    : { gesture: resting }
}

function clicked(gesture: GestureOf<'pressing'>, selected: readonly string[]): readonly string[] {
  const { target, adds } = gesture
  if (target === null) return adds ? selected : []
  const id = target.kind === 'opening' ? target.openingId : target.roomId
  const wall = target.kind === 'wall' ? `${target.roomId}/${target.wallId}` : null
  if (!adds) return wall === null ? [id] : [id, wall]
  if (wall !== null) return toggled(wallsAlone(selected), wall)
  return toggled(selected, id)
}

function toggled(selected: readonly string[], id: string): readonly string[] {
  return selected.includes(id) ? selected.filter((one) => one !== id) : [...selected, id]
}

/** A wall that was clicked brought its room; once a second wall is added, walls are meant and not their rooms. */
function wallsAlone(selected: readonly string[]): readonly string[] {
  return selected.filter((id) => !selected.some((other) => other.startsWith(`${id}/`)))
}
