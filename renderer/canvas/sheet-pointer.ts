import { useEffect, useRef } from 'react'
import type { Point } from '../../core/geometry/point.ts'
import type { RoomId, WallId } from '../../core/project/sketch-records.ts'
import { findWall } from '../../core/project/walls.ts'
import { jobStore, viewStore } from '../state/app.ts'
import { dimensionPlace, leastDimension } from './drawing/wall-dimension.ts'
import { useFingers } from './fingers.ts'
import type { ScreenPoint } from './screen-point.ts'
import { fitStorey, handle, showsWholeStorey } from './sketch-input.ts'
import { sketchStore } from './sketch-store.ts'
import { panBy, toHouse, type View, zoomAt } from './view.ts'

type Sheet = React.RefObject<HTMLDivElement | null>

export interface WallName {
  readonly roomId: RoomId
  readonly wallId: WallId
}

/** Keeps the size of the sheet in the store; what was shown whole stays whole. */
export function useSize(container: Sheet): void {
  useEffect(() => {
    const element = container.current
    if (element === null) return
    let isFirst = true
    const observer = new ResizeObserver(() => {
      const showsWhole = isFirst || showsWholeStorey()
      const { clientWidth: width, clientHeight: height } = element
      const { size } = sketchStore.getState()
      if (size.width !== width || size.height !== height) sketchStore.setState({ size: { width, height } })
      if (showsWhole) fitStorey()
      isFirst = false
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [container])
}

/** Wheel pans, with Ctrl it zooms at the pointer; as trackpads send it. */
export function useWheel(container: Sheet): void {
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

function within(
  element: HTMLElement,
  event: { readonly clientX: number; readonly clientY: number },
): ScreenPoint {
  const box = element.getBoundingClientRect()
  return { left: event.clientX - box.left, top: event.clientY - box.top }
}

/** Pointer events as points of the house for the tool; middle button or space held pans; a click on a dimension opens its field. */
export function usePointer(container: Sheet, measure: (wall: WallName | null) => void) {
  const panning = useRef<ScreenPoint | null>(null)
  const spaceHeld = useSpace()
  const press = (at: ScreenPoint, adds: boolean, free: boolean) => {
    sketchStore.setState({ refusal: null })
    const { view, tool, gesture } = sketchStore.getState()
    const wall = tool === 'pick' && gesture.kind === 'resting' ? dimensionAt(view, at) : null
    measure(wall)
    if (wall === null) handle({ kind: 'down', point: pointAt(at), adds, free })
  }
  const fingers = useFingers({
    down: (at) => press(at, false, false),
    move: (at) => handle({ kind: 'move', point: pointAt(at), free: false }),
    up: (at) => handle({ kind: 'up', point: pointAt(at), free: false }),
  })
  return {
    onPointerDown(event: React.PointerEvent) {
      if (!(event.target instanceof HTMLCanvasElement)) return
      const element = container.current
      if (element === null) return
      if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
      event.preventDefault()
      element.setPointerCapture(event.pointerId)
      if (event.pointerType === 'touch') return fingers.down(touchOf(element, event))
      if (event.button === 1 || spaceHeld.current) {
        panning.current = { left: event.clientX, top: event.clientY }
        return
      }
      if (event.button !== 0) return
      const adds = event.shiftKey || event.ctrlKey || event.metaKey
      press(within(element, event), adds, event.altKey)
    },
    onPointerMove(event: React.PointerEvent<HTMLElement>) {
      if (event.pointerType === 'touch') return fingers.move(touchOf(event.currentTarget, event))
      if (panning.current !== null) {
        const { view } = sketchStore.getState()
        sketchStore.setState({
          view: panBy(view, event.clientX - panning.current.left, event.clientY - panning.current.top),
        })
        panning.current = { left: event.clientX, top: event.clientY }
        return
      }
      handle({ kind: 'move', point: pointAt(within(event.currentTarget, event)), free: event.altKey })
    },
    onPointerUp(event: React.PointerEvent<HTMLElement>) {
      if (event.pointerType === 'touch') return fingers.up(touchOf(event.currentTarget, event))
      if (panning.current !== null) {
        panning.current = null
        return
      }
      if (event.button !== 0) return
      handle({ kind: 'up', point: pointAt(within(event.currentTarget, event)), free: event.altKey })
    },
    onPointerCancel(event: React.PointerEvent) {
      if (event.pointerType === 'touch') fingers.cancel(event.pointerId)
      panning.current = null
      handle({ kind: 'key', key: 'Escape' })
    },
  }
}

function pointAt(at: ScreenPoint): Point {
  return toHouse(sketchStore.getState().view, at)
}

function touchOf(element: HTMLElement, event: React.PointerEvent) {
  return { id: event.pointerId, at: within(element, event) }
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
function dimensionAt(view: View, at: ScreenPoint): WallName | null {
  const { job } = jobStore.store.getState()
  const { selectedIds } = viewStore.getState()
  for (const id of selectedIds) {
    const room = job?.rooms[id]
    if (room === undefined) continue
    for (const corner of room.corners) {
      const wall = findWall(room, corner.wallId)
      if (wall === null) continue
      const place = dimensionPlace(wall, view)
      if (place.length >= leastDimension && onText(place, at)) return { roomId: room.id, wallId: wall.id }
    }
  }
  return null
}

/** The text is about 60 x 14 pixels, just above its dimension line, turned with it. */
function onText(place: ReturnType<typeof dimensionPlace>, at: ScreenPoint): boolean {
  const turn = (-place.rotation * Math.PI) / 180
  const [dx, dy] = [at.left - place.middle.left, at.top - place.middle.top]
  const along = dx * Math.cos(turn) - dy * Math.sin(turn)
  const across = dx * Math.sin(turn) + dy * Math.cos(turn)
  return Math.abs(along) <= 30 && across >= -15 && across <= 3
}
