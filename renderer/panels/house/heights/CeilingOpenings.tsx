import { Button } from 'react-aria-components'
import { polygonBounds } from '../../../../core/geometry/polygon.ts'
import { records } from '../../../../core/project/job.ts'
import type { CeilingOpening, Room } from '../../../../core/project/sketch-records.ts'
import { ceilingOpeningKinds } from '../../../../core/project/vocabulary.ts'
import { inches, lengthFromUnits, zeroLength } from '../../../../core/units/length.ts'
import { useJob } from '../../../state/app.ts'
import { newId } from '../../../state/new-id.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { putRecord, removeRecord } from '../../parts/edits.ts'
import { LengthField } from '../LengthField.tsx'

const ceilingOpeningWords = { stairwell: 'Stairwell', skylight: 'Skylight', hatch: 'Hatch' } as const

export function CeilingOpenings(props: { readonly room: Room }) {
  const { room } = props
  const holes = records(useJob().ceilingOpenings).filter((hole) => hole.roomId === room.id)
  const { min } = polygonBounds(room.corners)
  const put = (hole: CeilingOpening) => putRecord('change a ceiling opening', 'ceilingOpenings', hole)
  return (
    <section className="block">
      <h3>Openings in the ceiling</h3>
      {holes.map((hole) => (
        <div key={hole.id} className="field-grid boxed">
          <Choice
            label="Kind"
            options={optionsOf(ceilingOpeningKinds, ceilingOpeningWords)}
            chosen={hole.kind}
            onChoose={(kind) => put({ ...hole, kind })}
          />
          <LengthField
            label="From the left"
            length={lengthFromUnits(hole.x - min.x)}
            onCommit={(x) => put({ ...hole, x: lengthFromUnits(min.x + x) })}
          />
          <LengthField
            label="From the top"
            length={lengthFromUnits(hole.y - min.y)}
            onCommit={(y) => put({ ...hole, y: lengthFromUnits(min.y + y) })}
          />
          <LengthField label="Width" length={hole.width} onCommit={(width) => put({ ...hole, width })} />
          <LengthField label="Depth" length={hole.depth} onCommit={(depth) => put({ ...hole, depth })} />
          <LengthField
            label="Painted shaft"
            length={hole.revealDepth}
            onCommit={(revealDepth) => put({ ...hole, revealDepth })}
            isSmall
          />
          <Button
            className="stop-button"
            onPress={() => removeRecord('remove a ceiling opening', 'ceilingOpenings', hole.id)}
          >
            Remove
          </Button>
        </div>
      ))}
      <Button
        className="plain-button"
        onPress={() =>
          put({
            id: newId('hatch'),
            roomId: room.id,
            kind: 'hatch',
            x: lengthFromUnits(min.x + inches(6)),
            y: lengthFromUnits(min.y + inches(6)),
            width: inches(24),
            depth: inches(24),
            revealDepth: zeroLength,
          })
        }
      >
        Add a hatch
      </Button>
    </section>
  )
}
