import { memo } from 'react'
import { Line } from 'react-konva'
import type { LengthUnitSystem } from '../../core/units/length.ts'
import { unitsPerFoot } from '../../core/units/length.ts'
import type { DrawingColors } from './drawing-colors.ts'
import type { Size, View } from './view.ts'

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

export const Grid = memo(function Grid(props: {
  readonly view: View
  readonly size: Size
  readonly colors: DrawingColors
  readonly system: LengthUnitSystem
}) {
  const { view, size, colors } = props
  const step = gridStep(view, props.system) * view.scale
  const rows = placesFrom(view.y, step, size.height)
  const columns = placesFrom(view.x, step, size.width)
  return (
    <>
      {columns.map((x) => (
        <Line
          key={`x${x}`}
          points={[x, 0, x, size.height]}
          stroke={colors.paperSunk}
          strokeWidth={1}
          listening={false}
        />
      ))}
      {rows.map((y) => (
        <Line
          key={`y${y}`}
          points={[0, y, size.width, y]}
          stroke={colors.paperSunk}
          strokeWidth={1}
          listening={false}
        />
      ))}
    </>
  )
})

function placesFrom(origin: number, step: number, length: number): readonly number[] {
  const first = ((origin % step) + step) % step
  return Array.from(
    { length: Math.max(0, Math.ceil((length - first) / step)) },
    (_, index) => first + index * step,
  )
}
