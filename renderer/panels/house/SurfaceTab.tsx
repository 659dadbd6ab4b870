import { useEffect } from 'react'
import { Button } from 'react-aria-components'
import type { Room } from '../../../core/project/sketch-records.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { formatArea } from '../../../core/units/area.ts'
import { formatLength, type LengthUnitSystem } from '../../../core/units/length.ts'
import { sketchStore } from '../../canvas/sketch-store.ts'
import { useJob, useView, viewStore } from '../../state/app.ts'
import { useTakeoff } from '../../state/derived.ts'
import { ElevationDrawing } from './ElevationDrawing.tsx'
import { litBy, mainFigure, surfaceTitle } from './surface-facts.ts'

/** Every surface of the room: pick one to read its figure, how it came about, and see on the sheet where it comes from. */
export function SurfaceTab(props: { readonly room: Room }) {
  const { room } = props
  const job = useJob()
  const takeoff = useTakeoff()
  const surfaceKey = useView((state) => state.surfaceKey)
  const surfaces = takeoff.surfaces.filter((surface) => surface.roomId === room.id)
  const picked = surfaces.find((surface) => surface.key === surfaceKey)
  const system = job.header.unitSystem
  useEffect(() => {
    sketchStore.setState({ litIds: picked === undefined ? [] : litBy(job, room, picked) })
    return () => sketchStore.setState({ litIds: [] })
  }, [picked, job, room])
  return (
    <div className="tab-pad">
      <ElevationDrawing room={room} pickedKey={surfaceKey} />
      <ul className="surface-names">
        {surfaces.map((surface) => (
          <li key={surface.key}>
            <Button
              className="room-name surface-name"
              aria-pressed={surface.key === surfaceKey}
              onPress={() =>
                viewStore.setState({ surfaceKey: surface.key === surfaceKey ? null : surface.key })
              }
            >
              <span>{surfaceTitle(job, surface.surface)}</span>
              <span className="number">{mainFigure(surface, system)}</span>
            </Button>
            {surface.key === surfaceKey ? <Derivation surface={surface} system={system} /> : null}
          </li>
        ))}
      </ul>
    </div>
  )
}

function Derivation(props: { readonly surface: SurfaceQuantity; readonly system: LengthUnitSystem }) {
  const { surface, system } = props
  const rows = [
    ['Net area', surface.netArea > 0 ? formatArea(surface.netArea, system) : null],
    ['By the rule', surface.policyArea !== surface.netArea ? formatArea(surface.policyArea, system) : null],
    [
      'Equivalent for hours',
      surface.equivalentArea !== surface.netArea ? formatArea(surface.equivalentArea, system) : null,
    ],
    ['Length', surface.length > 0 ? formatLength(surface.length, system) : null],
    ['Cutting-in', surface.cuttingIn > 0 ? formatLength(surface.cuttingIn, system) : null],
    ['Masking', surface.masking > 0 ? formatLength(surface.masking, system) : null],
    ['Glass cut-in', surface.glassPerimeter > 0 ? formatLength(surface.glassPerimeter, system) : null],
    ['Pieces', surface.count > 0 ? String(surface.count) : null],
  ].filter((row): row is [string, string] => row[1] !== null && row[1] !== undefined)
  return (
    <div className="derivation">
      <table>
        <tbody>
          {rows.map(([name, value]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <ol>
        {surface.derivation.map((line, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of one figure in their order
          <li key={index} className={`derivation-${line.kind}`}>
            {line.text}
          </li>
        ))}
      </ol>
    </div>
  )
}
