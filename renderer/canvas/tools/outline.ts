import type { Point } from '../../../core/geometry/point.ts'
import { closesOutline, nextCorner } from '../../../core/sketch/outline-drafting.ts'
import { parseLength } from '../../../core/units/parse-length.ts'
import { newRoom } from './new-room.ts'
import { snapped } from './snap.ts'
import { type GestureOf, type Input, resting, type Surroundings, type Tool, type ToolStep } from './tool.ts'
import { isTypedKey, typedAfter } from './typing.ts'

type Drawing = GestureOf<'drawingOutline'>

/**
 * A room corner by corner: click, or point in a direction and type the length and Enter. Enter alone, or a click on the first corner,
 * closes it; Backspace takes the last corner back.
 */
export const outlineTool: Tool = {
  step(gesture, input, around) {
    if (gesture.kind !== 'drawingOutline') return atRest(input, around)
    if (input.kind === 'key') return onKey(gesture, input.key, around)
    const { point, guides } = snapped(input.point, around, { free: input.free, drawn: gesture.corners })
    if (input.kind !== 'down') return { gesture: { ...gesture, to: point, guides } }
    return closesOutline(gesture.corners, point, around.tolerance)
      ? close(gesture, around)
      : addCorner(gesture, point)
  },
  draft(gesture, around) {
    if (gesture.kind !== 'drawingOutline') return []
    const corners = isOnCorner(gesture) ? gesture.corners : [...gesture.corners, gesture.to]
    return corners.length >= 3 ? [newRoom(corners, around)] : []
  },
}

/** The pointer still rests on the corner just set, or is about to close the outline. */
function isOnCorner({ corners, to }: Drawing): boolean {
  return [corners[0], corners.at(-1)].some((corner) => corner?.x === to.x && corner.y === to.y)
}

function atRest(input: Input, around: Surroundings): ToolStep {
  if (input.kind === 'key') return { gesture: resting }
  const { point, guides } = snapped(input.point, around, { free: input.free })
  if (input.kind !== 'down') return { gesture: { kind: 'hovering', guides, point } }
  return { gesture: { kind: 'drawingOutline', corners: [point], to: point, typed: '', guides: [] } }
}

function addCorner(gesture: Drawing, point: Point): ToolStep {
  const last = gesture.corners.at(-1)
  if (last !== undefined && last.x === point.x && last.y === point.y) return { gesture }
  return { gesture: { ...gesture, corners: [...gesture.corners, point], to: point, typed: '', guides: [] } }
}

function close(gesture: Drawing, around: Surroundings): ToolStep {
  if (gesture.corners.length < 3) {
    return {
      gesture,
      refusal: {
        sentence: 'A room needs at least three corners. Click or type the next one.',
        at: gesture.to,
      },
    }
  }
  const command = newRoom(gesture.corners, around)
  return {
    gesture: resting,
    action: { name: `draw ${command.name}`, commands: [command], select: [command.id], at: gesture.to },
  }
}

function onKey(gesture: Drawing, key: string, around: Surroundings): ToolStep {
  if (key === 'Escape') return { gesture: resting }
  if (key === 'Backspace' && gesture.typed === '') return takeBack(gesture)
  if (key === 'Enter') return gesture.typed.trim() === '' ? close(gesture, around) : addTyped(gesture, around)
  return isTypedKey(key) ? { gesture: { ...gesture, typed: typedAfter(gesture.typed, key) } } : { gesture }
}

function takeBack(gesture: Drawing): ToolStep {
  const corners = gesture.corners.slice(0, -1)
  return { gesture: corners.length === 0 ? resting : { ...gesture, corners } }
}

function addTyped(gesture: Drawing, around: Surroundings): ToolStep {
  const read = parseLength(gesture.typed, around.job.header.unitSystem)
  if (!read.ok)
    return { gesture: { ...gesture, typed: '' }, refusal: { sentence: read.sentence, at: gesture.to } }
  return addCorner(gesture, nextCorner(gesture.corners, gesture.to, read.length, 'eighths'))
}
