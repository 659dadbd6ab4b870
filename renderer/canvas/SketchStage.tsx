import { useEffect, useRef, useState } from 'react'
import { Layer, Stage } from 'react-konva'
import type { Point } from '../../core/geometry/point.ts'
import { type Job, records } from '../../core/project/job.ts'
import { findWall } from '../../core/project/walls.ts'
import { jobStore, useJob, useView, viewStore } from '../state/app.ts'
import { DimensionField } from './DimensionField.tsx'
import { DrawingGuard } from './DrawingGuard.tsx'
import { useDraft } from './draft.ts'
import { GestureDrawing } from './GestureDrawing.tsx'
import { Grid } from './Grid.tsx'
import { fitStorey, handle, partitions, showsWholeStorey } from './hand.ts'
import { readInk } from './ink.ts'
import { OpeningDrawing } from './OpeningDrawing.tsx'
import { dimensionPlace, RoomBelow, RoomDrawing, RoomFloor, RoomTitle, WallSolid } from './RoomDrawing.tsx'
import { sketchStore, useSketch } from './sketch-store.ts'
import { panBy, toPlan, toScreen, type View, zoomAt } from './view.ts'

export function SketchStage() {
  const job = useJob()
  const container = useRef<HTMLDivElement>(null)
  const [ink] = useState(readInk)
  const [fall, setFall] = useState<{ readonly error: unknown } | null>(null)
  const storeyId = useView((state) => state.storeyId) ?? ''
  const selectedIds = useView((state) => state.selectedIds)
  const { tool, gesture, view, size, refusal, litIds, showsGrid } = useSketch((state) => state)
  const [measuring, setMeasuring] = useState<{ readonly roomId: string; readonly wallId: string } | null>(
    null,
  )
  // biome-ignore lint/correctness/useExhaustiveDependencies: words about the sketch as it was go when it changes
  useEffect(() => sketchStore.setState({ refusal: null }), [job])
  useSize(container)
  useWheel(container)
  const draft = useDraft()
  const shown = draft.ok ? draft.value : job
  const system = job.header.unitSystem
  const rooms = records(shown.rooms).filter((room) => room.storeyId === storeyId)
  const below = roomsBelow(shown, storeyId)
  const thickness = partitions[system]
  const handlers = usePointer(container, setMeasuring)
  const draftIds = draft.ok ? [] : movedIds(gesture)
  if (fall !== null) throw fall.error
  return (
    <div
      ref={container}
      className={`sheet-paper hand-${tool}`}
      data-testid="sheet"
      data-scale={view.scale}
      data-origin-x={view.x}
      data-origin-y={view.y}
      role="application"
      aria-label="Plan of the storey"
      {...handlers}
    >
      <Stage width={size.width} height={size.height} listening={false}>
        <DrawingGuard onFall={(error) => setFall({ error })}>
          <Layer listening={false}>
            {showsGrid ? <Grid view={view} size={size} ink={ink} system={system} /> : null}
            {rooms.map((room) => (
              <WallSolid key={room.id} room={room} view={view} thickness={thickness} color={ink.line} />
            ))}
            {rooms.map((room) => (
              <RoomFloor
                key={room.id}
                room={room}
                view={view}
                ink={ink}
                isSelected={selectedIds.includes(room.id)}
                litIds={litIds}
              />
            ))}
            {below.map((room) => (
              <RoomBelow key={room.id} room={room} view={view} ink={ink} />
            ))}
            {rooms.map((room) => (
              <RoomDrawing
                key={room.id}
                room={room}
                view={view}
                ink={ink}
                system={system}
                isSelected={selectedIds.includes(room.id)}
                isRefused={draftIds.includes(room.id)}
                litIds={litIds}
              />
            ))}
            {records(shown.openings).map((opening) => (
              <OpeningDrawing
                key={opening.id}
                job={shown}
                opening={opening}
                view={view}
                ink={ink}
                storeyId={storeyId}
                thickness={thickness}
                isSelected={selectedIds.includes(opening.id)}
                isLit={litIds.includes(opening.id)}
              />
            ))}
            {rooms.map((room) => (
              <RoomTitle
                key={room.id}
                room={room}
                view={view}
                ink={ink}
                system={system}
                isSelected={selectedIds.includes(room.id)}
              />
            ))}
          </Layer>
          <Layer listening={false}>
            <GestureDrawing gesture={gesture} view={view} ink={ink} system={system} />
          </Layer>
        </DrawingGuard>
      </Stage>
      {draft.ok || gesture.kind === 'resting' ? null : (
        <Refusal at={toScreen(view, pointOf(gesture))} sentence={draft.problem.sentence} size={size} />
      )}
      {refusal === null || !draft.ok ? null : (
        <Refusal
          at={toScreen(view, refusal.at)}
          sentence={refusal.sentence}
          size={size}
          onDismiss={() => sketchStore.setState({ refusal: null })}
        />
      )}
      {measuring === null ? null : <DimensionField {...measuring} onDone={() => setMeasuring(null)} />}
    </div>
  )
}

function pointOf(gesture: ReturnType<typeof sketchStore.getState>['gesture']): Point {
  if ('to' in gesture) return gesture.to
  return 'point' in gesture ? gesture.point : { x: 0, y: 0 }
}

function movedIds(gesture: ReturnType<typeof sketchStore.getState>['gesture']): readonly string[] {
  if (gesture.kind === 'movingCorner' || gesture.kind === 'movingWall') return [gesture.roomId]
  return gesture.kind === 'movingRooms' ? gesture.roomIds : []
}

function roomsBelow(job: Job, storeyId: string) {
  const level = job.storeys[storeyId]?.level
  const below = records(job.storeys).find((storey) => storey.level === (level ?? 0) - 1)
  return records(job.rooms).filter((room) => room.storeyId === below?.id)
}

/** Words at the place where something cannot be. */
function Refusal(props: {
  readonly at: Point
  readonly sentence: string
  readonly size: { readonly width: number; readonly height: number }
  readonly onDismiss?: () => void
}) {
  const left = Math.min(Math.max(props.at.x + 14, 8), Math.max(props.size.width - 330, 8))
  const top = Math.min(Math.max(props.at.y + 14, 8), Math.max(props.size.height - 110, 8))
  return (
    <div className="refusal" role="alert" style={{ left, top }}>
      <span className="problem-mark" aria-hidden="true">
        !
      </span>
      <span>{props.sentence}</span>
      {props.onDismiss === undefined ? null : (
        <button
          type="button"
          className="plain-button"
          onClick={props.onDismiss}
          onPointerDown={(event) => event.stopPropagation()}
        >
          Understood
        </button>
      )}
    </div>
  )
}

function useSize(container: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = container.current
    if (element === null) return
    let isFirst = true
    const observer = new ResizeObserver(() => {
      const showsWhole = isFirst || showsWholeStorey()
      sketchStore.setState({ size: { width: element.clientWidth, height: element.clientHeight } })
      if (showsWhole) fitStorey()
      isFirst = false
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [container])
}

/** Wheel pans, with Ctrl it zooms at the pointer; as trackpads send it. */
function useWheel(container: React.RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const element = container.current
    if (element === null) return
    const onWheel = (event: WheelEvent) => {
      event.preventDefault()
      const { view } = sketchStore.getState()
      const next =
        event.ctrlKey || event.metaKey
          ? zoomAt(view, within(element, event), Math.exp(-event.deltaY / 300))
          : panBy(view, -(event.shiftKey ? event.deltaY : event.deltaX), -(event.shiftKey ? 0 : event.deltaY))
      sketchStore.setState({ view: next })
    }
    element.addEventListener('wheel', onWheel, { passive: false })
    return () => element.removeEventListener('wheel', onWheel)
  }, [container])
}

function within(element: HTMLElement, event: { readonly clientX: number; readonly clientY: number }): Point {
  const box = element.getBoundingClientRect()
  return { x: event.clientX - box.left, y: event.clientY - box.top }
}

/** Pointer events in plan units for the tool; middle button or space held pans; a click on a dimension opens its field. */
function usePointer(
  container: React.RefObject<HTMLDivElement | null>,
  measure: (wall: { readonly roomId: string; readonly wallId: string } | null) => void,
) {
  const panning = useRef<Point | null>(null)
  const spaceHeld = useSpace()
  const planPoint = (event: React.PointerEvent): Point => {
    const element = container.current
    return element === null ? { x: 0, y: 0 } : toPlan(sketchStore.getState().view, within(element, event))
  }
  return {
    onPointerDown(event: React.PointerEvent) {
      if ((event.target as HTMLElement).tagName !== 'CANVAS') return
      const element = container.current
      if (element === null) return
      ;(document.activeElement as HTMLElement | null)?.blur()
      event.preventDefault()
      element.setPointerCapture(event.pointerId)
      if (event.button === 1 || spaceHeld.current) {
        panning.current = { x: event.clientX, y: event.clientY }
        return
      }
      if (event.button !== 0) return
      sketchStore.setState({ refusal: null })
      const { view, tool, gesture } = sketchStore.getState()
      const wall =
        tool === 'pick' && gesture.kind === 'resting' ? dimensionAt(view, within(element, event)) : null
      measure(wall)
      if (wall === null)
        handle({ kind: 'down', point: planPoint(event), adds: event.shiftKey, free: event.altKey })
    },
    onPointerMove(event: React.PointerEvent) {
      if (panning.current !== null) {
        const { view } = sketchStore.getState()
        sketchStore.setState({
          view: panBy(view, event.clientX - panning.current.x, event.clientY - panning.current.y),
        })
        panning.current = { x: event.clientX, y: event.clientY }
        return
      }
      handle({ kind: 'move', point: planPoint(event), free: event.altKey })
    },
    onPointerUp(event: React.PointerEvent) {
      if (panning.current !== null) {
        panning.current = null
        return
      }
      if (event.button === 0) handle({ kind: 'up', point: planPoint(event), free: event.altKey })
    },
    onPointerCancel() {
      panning.current = null
      handle({ kind: 'key', key: 'Escape' })
    },
  }
}

function useSpace(): React.RefObject<boolean> {
  const held = useRef(false)
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.code === 'Space') held.current = event.type === 'keydown'
    }
    window.addEventListener('keydown', onKey)
    window.addEventListener('keyup', onKey)
    return () => {
      window.removeEventListener('keydown', onKey)
      window.removeEventListener('keyup', onKey)
    }
  }, [])
  return held
}

/** The wall of a selected room whose written length is under a screen point. */
function dimensionAt(view: View, at: Point): { readonly roomId: string; readonly wallId: string } | null {
  const { job } = jobStore.store.getState()
  const { selectedIds } = viewStore.getState()
  for (const id of selectedIds) {
    const room = job?.rooms[id]
    if (room === undefined) continue
    for (const corner of room.corners) {
      const wall = findWall(room, corner.wallId)
      if (wall === null) continue
      const place = dimensionPlace(wall, view)
      if (place.length >= 34 && onText(place, at)) return { roomId: room.id, wallId: wall.id }
    }
  }
  return null
}

/** The text is about 60 x 14 pixels, just above its dimension line, turned with it. */
function onText(place: ReturnType<typeof dimensionPlace>, at: Point): boolean {
  const turn = (-place.rotation * Math.PI) / 180
  const [dx, dy] = [at.x - place.middle.x, at.y - place.middle.y]
  const along = dx * Math.cos(turn) - dy * Math.sin(turn)
  const across = dx * Math.sin(turn) + dy * Math.cos(turn)
  return Math.abs(along) <= 30 && across >= -15 && across <= 3
}
