import { Button } from 'react-aria-components'
import type { Opening } from '../../../core/project/sketch-records.ts'
import { openingNouns } from '../../../core/project/sketch-words.ts'
import { openingKinds } from '../../../core/project/vocabulary.ts'
import { facingWall } from '../../../core/sketch/facing-wall.ts'
import { firstOpenings } from '../../../core/sketch/opening-templates.ts'
import { inches } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { openingName } from '../../../core/work-order/surface-words.ts'
import { useJob } from '../../state/app.ts'
import { Choice } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { command } from '../parts/edits.ts'
import { words } from '../parts/entries.ts'
import { LengthField } from './LengthField.tsx'
import { Casings, Jamb } from './opening/CasingFields.tsx'
import { Lights } from './opening/LightFields.tsx'
import type { OpeningChange, OpeningPartProps } from './opening/opening-part.ts'
import { SashFields, StoolFields } from './opening/SashFields.tsx'
import { SlabFields } from './opening/SlabFields.tsx'
import { removeSelected } from './selection-actions.ts'

export function OpeningFields(props: { readonly opening: Opening }) {
  const { opening } = props
  const set = (change: OpeningChange) =>
    command(`change ${openingName(opening)}`, {
      kind: 'setOpening',
      openingId: opening.id,
      change,
    })
  const part = { opening, set: (change: OpeningChange) => void set(change) }
  return (
    <div className="tab-pad opening-fields">
      <h2>{capital(openingName(opening))}</h2>
      <Place {...part} />
      <Shared {...part} />
      <Casings {...part} />
      <Jamb {...part} />
      {opening.kind === 'window' ? null : <SlabFields {...part} />}
      {opening.kind === 'window' ? <SashFields {...part} /> : null}
      {opening.kind === 'window' ? <StoolFields {...part} /> : null}
      {opening.kind === 'door' || opening.kind === 'window' ? <Lights {...part} /> : null}
      <Button className="stop-button" onPress={removeSelected}>
        Remove this {openingNouns[opening.kind]}
      </Button>
    </div>
  )
}

function Place({ opening, set }: OpeningPartProps) {
  return (
    <section className="block field-grid">
      <EntryField
        label="Name"
        shown={opening.name}
        read={words(200)}
        onCommit={(name) => set({ name })}
        width="wide"
      />
      <Choice
        label="Kind"
        options={openingKinds.map((id) => ({ id, label: capital(openingNouns[id]) }))}
        chosen={opening.kind}
        onChoose={(kind) =>
          set({
            kind,
            slab: firstOpenings[kind].slab,
            sash: firstOpenings[kind].sash,
            stool: firstOpenings[kind].stool,
          })
        }
      />
      <LengthField
        label="From the wall’s start"
        length={opening.offset}
        onCommit={(offset) => set({ offset })}
      />
      <LengthField label="Width" length={opening.width} onCommit={(width) => set({ width })} />
      <LengthField label="Height" length={opening.height} onCommit={(height) => set({ height })} />
      <LengthField label="Sill above the floor" length={opening.sill} onCommit={(sill) => set({ sill })} />
      <Choice
        label="Head"
        options={[
          { id: 'square', label: 'Square' },
          { id: 'segment', label: 'Segmental arch' },
          { id: 'halfRound', label: 'Half-round' },
        ]}
        chosen={opening.head.kind}
        onChoose={(kind) => set({ head: kind === 'segment' ? { kind, rise: inches(4) } : { kind } })}
      />
      {opening.head.kind === 'segment' ? (
        <LengthField
          label="Rise of the arch"
          length={opening.head.rise}
          onCommit={(rise) => set({ head: { kind: 'segment', rise } })}
          isSmall
        />
      ) : null}
    </section>
  )
}

/** One thing between two rooms, or only this room's. */
function Shared({ opening }: OpeningPartProps) {
  const job = useJob()
  const far = opening.far === null ? null : job.rooms[opening.far.roomId]
  const behind = facingWall(
    job,
    opening.roomId,
    opening.wallId,
    opening.offset,
    opening.offset + opening.width,
  )
  const behindRoom = behind === null ? null : job.rooms[behind.roomId]
  const join = (place: typeof opening.far) =>
    command(
      place === null ? 'part an opening from the room behind' : 'share an opening with the room behind',
      {
        kind: 'joinOpening',
        openingId: opening.id,
        far: place,
        casingFar: place === null ? null : opening.casingNear,
      },
    )
  return (
    <section className="block">
      <h3>Rooms it joins</h3>
      <p>
        {job.rooms[opening.roomId]?.name} {far ? `and ${far.name}: one opening, counted once` : 'only'}
      </p>
      {far ? (
        <Button className="plain-button" onPress={() => join(null)}>
          Unlink
        </Button>
      ) : behind !== null && behindRoom ? (
        <Button
          className="plain-button"
          onPress={() => join({ roomId: behind.roomId, wallId: behind.wallId })}
        >
          Share it with {behindRoom.name}
        </Button>
      ) : (
        <p className="quiet">No room is drawn right behind it.</p>
      )}
    </section>
  )
}
