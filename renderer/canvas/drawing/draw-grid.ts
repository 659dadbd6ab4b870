import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { unitsPerFoot } from '../../../core/units/length.ts'
import type { Size, View } from '../view.ts'
import { type Pen, strokeLines } from './pen.ts'

/** Distances of grid lines the sheet can show, in plan units: feet or metres and their parts, and the widest. */
const steps: Readonly<Record<LengthUnitSystem, readonly number[]>> = {
  imperial: [unitsPerFoot / 4, unitsPerFoot, unitsPerFoot * 4],
  metric: [800_000, 4_000_000, 8_000_000],
}

const coarsest: Readonly<Record<LengthUnitSystem, number>> = {
  imperial: unitsPerFoot * 16,
  metric: 40_000_000,
}

/** The finest grid whose lines stand at least 11 pixels apart. */
function gridStep(view: View, system: LengthUnitSystem): number {
  return steps[system].find((step) => step * view.scale >= 11) ?? coarsest[system]
}

/** What the pointer catches on: a quarter of the shown grid, never finer than 1 in or 10 mm. */
export function snapGrid(view: View, system: LengthUnitSystem): number {
  const shown = gridStep(view, system)
  return system === 'imperial' ? Math.max(unitsPerFoot / 12, shown / 4) : Math.max(80_000, shown / 5)
}

export function drawGrid(pen: Pen, view: View, size: Size, system: LengthUnitSystem, color: string): void {
  const step = gridStep(view, system) * view.scale
  const { width, height } = size
  const columns = placesFrom(view.x, step, width).map((left) => [
    { left, top: 0 },
    { left, top: height },
  ])
  const rows = placesFrom(view.y, step, height).map((top) => [
    { left: 0, top },
    { left: width, top },
  ])
  strokeLines(pen, [...columns, ...rows], { color, width: 1 })
}

function placesFrom(origin: number, step: number, length: number): readonly number[] {
  const first = ((origin % step) + step) % step
  return Array.from(
    { length: Math.max(0, Math.ceil((length - first) / step)) },
    (_, index) => first + index * step,
  )
}
