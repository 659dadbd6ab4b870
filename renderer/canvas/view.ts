import type { Point } from '../../core/geometry/point.ts'
import type { ScreenPoint } from './screen-point.ts'

/** How the plan lies on the screen: `scale` is screen pixels per plan unit (1/8000 mm), x and y where the plan's origin is shown. */
export interface View {
  readonly scale: number
  readonly x: number
  readonly y: number
}

export interface Size {
  readonly width: number
  readonly height: number
}

/** 40 pixels to a metre. */
export const firstView: View = { scale: 40 / 8_000_000, x: 80, y: 80 }
const leastScale = 2 / 8_000_000
const mostScale = 2000 / 8_000_000

export function toScreen(view: View, point: Point): ScreenPoint {
  return { left: point.x * view.scale + view.x, top: point.y * view.scale + view.y }
}

export function toHouse(view: View, at: ScreenPoint): Point {
  return { x: (at.left - view.x) / view.scale, y: (at.top - view.y) / view.scale }
}

export function isSameView(one: View, other: View): boolean {
  return one.scale === other.scale && one.x === other.x && one.y === other.y
}

/** Zooms by a factor with the place under `at` staying where it is. */
export function zoomAt(view: View, at: ScreenPoint, factor: number): View {
  const scale = Math.min(mostScale, Math.max(leastScale, view.scale * factor))
  const held = toHouse(view, at)
  return { scale, x: at.left - held.x * scale, y: at.top - held.y * scale }
}

export function panBy(view: View, dx: number, dy: number): View {
  return { ...view, x: view.x + dx, y: view.y + dy }
}

/** The view that shows all points with a margin round them. */
export function fitView(points: readonly Point[], size: Size, margin = 70): View {
  if (points.length === 0 || size.width < 2 * margin || size.height < 2 * margin) return firstView
  const xs = points.map((point) => point.x)
  const ys = points.map((point) => point.y)
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const wide = (size.width - 2 * margin) / Math.max(right - left, 1)
  const high = (size.height - 2 * margin) / Math.max(bottom - top, 1)
  const scale = Math.min(mostScale, Math.max(leastScale, Math.min(wide, high)))
  return {
    scale,
    x: size.width / 2 - ((left + right) / 2) * scale,
    y: size.height / 2 - ((top + bottom) / 2) * scale,
  }
}
