import { useMemo } from 'react'
import type { SurfaceClass } from '../../../core/project/vocabulary.ts'
import type { SurfaceQuantity, Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { type Area, formatArea, sumAreas } from '../../../core/units/area.ts'
import { type Length, sumLengths } from '../../../core/units/length.ts'
import { shortLength } from '../../../core/work-order/room-sheet/sheet-words.ts'
import { useJobAfterGesture } from '../../canvas/gesture-outcome.ts'
import { useView } from '../../state/app.ts'
import { takeoffOf } from '../../state/derived.ts'

interface Sums {
  readonly walls: Area
  readonly ceiling: Area
  readonly trim: Length
  readonly sash: Area
  readonly glass: Length
}

function sumsOf(surfaces: readonly SurfaceQuantity[]): Sums {
  const of = (...classes: readonly SurfaceClass[]) =>
    surfaces.filter((surface) => classes.includes(surface.surfaceClass))
  return {
    walls: sumAreas(of('walls', 'wainscot').map((surface) => surface.netArea)),
    ceiling: sumAreas(of('ceiling').map((surface) => surface.netArea)),
    trim: sumLengths(of('trim').map((surface) => surface.length)),
    sash: sumAreas(of('sash').map((surface) => surface.netArea)),
    glass: sumLengths(of('sash').map((surface) => surface.glassPerimeter)),
  }
}

/** What the drawing measures while it is drawn: the room being drawn beside the whole house. */
export function FigureStrip() {
  const job = useJobAfterGesture()
  const roomId = useView((state) => state.roomId)
  const takeoff: Takeoff = useMemo(() => takeoffOf(job), [job])
  const room = roomId === null ? undefined : job.rooms[roomId]
  const system = job.header.unitSystem
  const rows = [
    {
      id: 'room-figures',
      name: room?.name ?? 'No room selected',
      sums: room === undefined ? null : sumsOf(takeoff.surfaces.filter((one) => one.roomId === room.id)),
    },
    { id: 'house-figures', name: 'Whole house', sums: sumsOf(takeoff.surfaces) },
  ]
  return (
    <table className="figure-strip" aria-label="Net figures" aria-live="off">
      <thead>
        <tr>
          <th scope="col">Net</th>
          <th scope="col" className="number">
            Walls
          </th>
          <th scope="col" className="number">
            Ceiling
          </th>
          <th scope="col" className="number">
            Trim length
          </th>
          <th scope="col" className="number">
            Sash wood
          </th>
          <th scope="col" className="number">
            Glass cut-in
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ id, name, sums }) => (
          <tr key={id} data-testid={id}>
            <th scope="row">{name}</th>
            <td className="number">{sums === null ? '–' : formatArea(sums.walls, system)}</td>
            <td className="number">{sums === null ? '–' : formatArea(sums.ceiling, system)}</td>
            <td className="number">{sums === null ? '–' : shortLength(sums.trim, system)}</td>
            <td className="number">{sums === null ? '–' : formatArea(sums.sash, system)}</td>
            <td className="number">{sums === null ? '–' : shortLength(sums.glass, system)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
