import { useRef } from 'react'
import type { ScreenPoint } from './screen-point.ts'
import { sketchStore } from './sketch-store.ts'
import { panBy, type View, zoomAt } from './view.ts'

/** A finger that goes further than this (pixels) has not tapped. */
const tapReach = 10

/** The view after two fingers have gone from their places to others: what lay under them stays there, as far as two fingers can hold it. */
export function pinchedView(
  view: View,
  before: readonly [ScreenPoint, ScreenPoint],
  after: readonly [ScreenPoint, ScreenPoint],
): View {
  const [from, to] = [middleOf(before), middleOf(after)]
  const factor = spreadOf(after) / Math.max(1, spreadOf(before))
  return zoomAt(panBy(view, to.left - from.left, to.top - from.top), to, factor)
}

function middleOf([one, other]: readonly [ScreenPoint, ScreenPoint]): ScreenPoint {
  return { left: (one.left + other.left) / 2, top: (one.top + other.top) / 2 }
}

function spreadOf([one, other]: readonly [ScreenPoint, ScreenPoint]): number {
  return Math.hypot(one.left - other.left, one.top - other.top)
}

/** What a finger does with the tool in hand, once it is clear that it does not move the sheet. */
interface FingerTool {
  readonly down: (at: ScreenPoint) => void
  readonly move: (at: ScreenPoint) => void
  readonly up: (at: ScreenPoint) => void
}

type Touch = { readonly id: number; readonly at: ScreenPoint }
type Doing = 'waiting' | 'panning' | 'drawing' | 'pinching'

/**
 * Fingers on the sheet. One finger taps, or shifts the sheet while the tool picks, so that no wall moves by a stroke; with a drawing tool
 * it draws. Two fingers shift and zoom the sheet whatever the tool, and the tool hears nothing of them.
 */
export function useFingers(tool: FingerTool) {
  const fingers = useRef(new Map<number, ScreenPoint>())
  const doing = useRef<Doing>('waiting')
  const start = useRef<ScreenPoint>({ left: 0, top: 0 })
  return {
    down({ id, at }: Touch) {
      fingers.current.set(id, at)
      if (fingers.current.size === 1) {
        doing.current = 'waiting'
        start.current = at
      } else if (doing.current !== 'drawing') doing.current = 'pinching'
    },
    move({ id, at }: Touch) {
      const before = fingers.current.get(id)
      if (before === undefined) return
      if (doing.current === 'waiting' && spreadOf([start.current, at]) > tapReach) {
        doing.current = sketchStore.getState().tool === 'pick' ? 'panning' : 'drawing'
        if (doing.current === 'drawing') tool.down(start.current)
      }
      if (doing.current === 'drawing') tool.move(at)
      else if (doing.current !== 'waiting') shiftSheet(fingers.current, id, before, at, doing.current)
      fingers.current.set(id, at)
    },
    up({ id, at }: Touch) {
      if (!fingers.current.delete(id)) return
      if (doing.current === 'waiting') tool.down(at)
      if (doing.current === 'waiting' || doing.current === 'drawing') tool.up(at)
      doing.current = 'panning'
    },
    cancel(id: number) {
      fingers.current.delete(id)
      doing.current = 'panning'
    },
  }
}

function shiftSheet(
  fingers: ReadonlyMap<number, ScreenPoint>,
  id: number,
  before: ScreenPoint,
  at: ScreenPoint,
  doing: Doing,
): void {
  const { view } = sketchStore.getState()
  const other = [...fingers].find(([each]) => each !== id)?.[1]
  sketchStore.setState({
    view:
      doing === 'pinching' && other !== undefined
        ? pinchedView(view, [before, other], [at, other])
        : panBy(view, at.left - before.left, at.top - before.top),
  })
}
