/** A point on the screen in pixels from the sheet's upper left corner. Its names keep it apart from a `Point` of the house. */
export interface ScreenPoint {
  readonly left: number
  readonly top: number
}

export function screenBetween(a: ScreenPoint, b: ScreenPoint, share: number): ScreenPoint {
  return { left: a.left + (b.left - a.left) * share, top: a.top + (b.top - a.top) * share }
}

export function screenDistance(a: ScreenPoint, b: ScreenPoint): number {
  return Math.hypot(b.left - a.left, b.top - a.top)
}

/** Degrees clockwise from the right, the way from a to b; the canvas turns its shapes so. */
export function screenTurn(a: ScreenPoint, b: ScreenPoint): number {
  return (Math.atan2(b.top - a.top, b.left - a.left) * 180) / Math.PI
}
