import { type Point, pointsDistance } from '../../../core/geometry/point.ts'
import { rectangleCorners, typedOppositeCorner } from '../../../core/sketch/outline-drafting.ts'
import type { Length } from '../../../core/units/length.ts'
import { parseLength } from '../../../core/units/parse-length.ts'
import { newRoom } from './new-room.ts'
import { snapped } from './snap.ts'
import { type GestureOf, type Input, resting, type Surroundings, type Tool, type ToolStep } from './tool.ts'
import { isTypedKey, typedAfter } from './typing.ts'

type Drawing = GestureOf<'drawingRectangle'>

/**
 * A room by dragging from corner to corner, or by clicking one corner and typing `12' x 10' 6"` and Enter.
 * A click without a drag leaves the rectangle hanging on the pointer until the next click.
 */
export const rectangleTool: Tool = {
  step(gesture, input, around) {
    if (gesture.kind !== 'drawingRectangle') return atRest(input, around)
    switch (input.kind) {
      case 'move':
      case 'down': {
        const { point, guides } = snapped(input.point, around, { free: input.free })
        return { gesture: { ...gesture, to: point, guides } }
      }
      case 'up': {
        const { point } = snapped(input.point, around, { free: input.free })
        const isClick = pointsDistance(point, gesture.from) <= around.tolerance
        return isClick ? { gesture } : finish({ ...gesture, to: point }, around)
      }
      case 'key':
        return onKey(gesture, input.key, around)
    }
  },
  draft: (gesture, around) =>
    gesture.kind === 'drawingRectangle' && hasArea(gesture)
      ? [newRoom(rectangleCorners(gesture.from, gesture.to), around)]
      : [],
}

function atRest(input: Input, around: Surroundings): ToolStep {
  if (input.kind === 'key') return { gesture: resting }
  const { point, guides } = snapped(input.point, around, { free: input.free })
  if (input.kind !== 'down') return { gesture: { kind: 'hovering', guides, point } }
  return { gesture: { kind: 'drawingRectangle', from: point, to: point, typed: '', guides: [] } }
}

function hasArea({ from, to }: { readonly from: Point; readonly to: Point }): boolean {
  return from.x !== to.x && from.y !== to.y
}

function finish(gesture: Drawing, around: Surroundings): ToolStep {
  if (!hasArea(gesture)) return { gesture: resting }
  const command = newRoom(rectangleCorners(gesture.from, gesture.to), around)
  return {
    gesture: resting,
    action: { name: `draw ${command.name}`, commands: [command], select: [command.id], at: gesture.to },
  }
}

function onKey(gesture: Drawing, key: string, around: Surroundings): ToolStep {
  if (key === 'Escape') return { gesture: resting }
  if (key === 'Enter') return finishTyped(gesture, around)
  return isTypedKey(key) ? { gesture: { ...gesture, typed: typedAfter(gesture.typed, key) } } : { gesture }
}

function finishTyped(gesture: Drawing, around: Surroundings): ToolStep {
  if (gesture.typed.trim() === '') return finish(gesture, around)
  const sides = readSides(gesture.typed, around)
  if (!sides.ok)
    return { gesture: { ...gesture, typed: '' }, refusal: { sentence: sides.sentence, at: gesture.to } }
  return finish(
    { ...gesture, to: typedOppositeCorner(gesture.from, gesture.to, sides.width, sides.depth) },
    around,
  )
}

type Sides =
  | { readonly ok: true; readonly width: Length; readonly depth: Length }
  | { readonly ok: false; readonly sentence: string }

/** `12' x 10' 6"`: across the sheet, then down it; one length alone makes a square room. */
export function readSides(text: string, around: Pick<Surroundings, 'job'>): Sides {
  const system = around.job.header.unitSystem
  const [first = '', second = first, ...more] = text.split(/\s*[x×*]\s*/i)
  if (more.length > 0)
    return { ok: false, sentence: `"${text}" has more than two sides. Write the width, x, and the depth.` }
  const width = parseLength(first, system)
  const depth = parseLength(second, system)
  if (!width.ok) return width
  return depth.ok ? { ok: true, width: width.length, depth: depth.length } : depth
}
