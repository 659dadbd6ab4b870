import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Point } from '../../core/geometry/point.ts'
import type { WayToMove } from '../../core/sketch/linked-rooms.ts'
import { type Gesture, resting, type ToolName } from './tools/tool.ts'
import { firstView, type Size, type View } from './view.ts'

/** Words at the place on the sheet where something could not be done, and what can be done instead. */
interface Refusal {
  readonly sentence: string
  readonly at: Point
  readonly ways: readonly WayToMove[]
}

/** What is drawn and looked at in the House station; none of it belongs to the job. */
interface SketchState {
  readonly tool: ToolName
  readonly gesture: Gesture
  readonly view: View
  readonly size: Size
  readonly refusal: Refusal | null
  /** Ids (rooms, walls as `room/wall`, openings, runs) lit on the drawing because a figure comes from them. */
  readonly litIds: readonly string[]
  readonly showsGrid: boolean
  /** The room just drawn, until its name was looked at. */
  readonly namingId: string | null
}

export const sketchStore = createStore<SketchState>(() => ({
  tool: 'pick',
  gesture: resting,
  view: firstView,
  size: { width: 0, height: 0 },
  refusal: null,
  litIds: [],
  showsGrid: true,
  namingId: null,
}))

export function useSketch<Part>(pick: (state: SketchState) => Part): Part {
  return useStore(sketchStore, pick)
}

export function takeTool(tool: ToolName): void {
  sketchStore.setState({ tool, gesture: resting, refusal: null })
}
