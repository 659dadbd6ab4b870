import { useEffect, useMemo, useRef, useState } from 'react'
import type { Point } from '../../core/geometry/point.ts'
import { useJob } from '../state/app.ts'
import { DimensionField } from './DimensionField.tsx'
import { drawGesture } from './drawing/draw-gesture.ts'
import type { Pen } from './drawing/pen.ts'
import { useDrawingColors } from './drawing-colors.ts'
import { useGestureOutcome } from './gesture-outcome.ts'
import { RefusalNote } from './RefusalNote.tsx'
import { SheetDrawings } from './SheetDrawings.tsx'
import { usePointer, useSize, useWheel, type WallName } from './sheet-pointer.ts'
import { goWay } from './sketch-input.ts'
import { sketchStore, useSketch } from './sketch-store.ts'
import { useStoreyDrawing } from './storey-drawing.ts'
import { isMove, movedRoomIds } from './tools/pointer-moves.ts'
import type { Gesture } from './tools/tool.ts'
import { toScreen } from './view.ts'

const noIds: readonly string[] = []

/** The sheet of the House: one storey as it is or as the gesture drafts it, and words where something cannot be. */
export function SketchStage() {
  const job = useJob()
  const container = useRef<HTMLDivElement>(null)
  const colors = useDrawingColors()
  const [measuring, setMeasuring] = useState<WallName | null>(null)
  const { tool, gesture, view, size } = useSketch((state) => state)
  // biome-ignore lint/correctness/useExhaustiveDependencies: words about the sketch as it was go when it changes
  useEffect(dropRefusal, [job])
  useSize(container)
  useWheel(container)
  const draft = useGestureOutcome()
  const handlers = usePointer(container, setMeasuring)
  const system = job.header.unitSystem
  const refusedIds = useMemo(
    () => (!draft.ok && isMove(gesture) ? movedRoomIds(gesture) : noIds),
    [draft, gesture],
  )
  const drawStoreyNow = useStoreyDrawing({ job: draft.ok ? draft.value : job, colors, refusedIds })
  const drawGestureNow = useMemo(
    () => (pen: Pen) => drawGesture(pen, gesture, { view, colors, system }),
    [gesture, view, colors, system],
  )
  return (
    <div
      ref={container}
      className={`sheet-paper cursor-${tool}`}
      data-testid="sheet"
      data-scale={view.scale}
      data-origin-x={view.x}
      data-origin-y={view.y}
      role="application"
      aria-label="Plan of the floor: N and P pick a room, arrow keys move it"
      aria-describedby="tool-hint"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the sheet has keys of its own
      tabIndex={0}
      {...handlers}
    >
      <SheetDrawings size={size} storey={drawStoreyNow} gesture={drawGestureNow} />
      <Refusals draftProblem={draft.ok ? null : draft.problem.sentence} />
      {measuring === null ? null : <DimensionField {...measuring} onDone={() => setMeasuring(null)} />}
    </div>
  )
}

/** Why the gesture cannot end here; else why the last one could not, and what can be done instead. */
function Refusals({ draftProblem }: { readonly draftProblem: string | null }) {
  const { gesture, view, size, refusal } = useSketch((state) => state)
  if (draftProblem !== null) {
    return gesture.kind === 'resting' ? null : (
      <RefusalNote at={toScreen(view, pointOf(gesture))} sentence={draftProblem} size={size} buttons={[]} />
    )
  }
  if (refusal === null) return null
  const { ways, at, sentence } = refusal
  const leave = { label: ways.length === 0 ? 'OK' : 'Leave it where it is', onPress: dropRefusal }
  const buttons = [...ways.map((way) => ({ label: way.label, onPress: () => goWay(way, at) })), leave]
  return <RefusalNote at={toScreen(view, at)} sentence={sentence} size={size} buttons={buttons} />
}

function dropRefusal(): void {
  sketchStore.setState({ refusal: null })
}

function pointOf(gesture: Gesture): Point {
  if ('to' in gesture) return gesture.to
  return 'point' in gesture ? gesture.point : { x: 0, y: 0 }
}
