import type { Casing, Opening, Sash, Slab } from '../../../core/project/sketch-records.ts'
import { openingNouns } from '../../../core/project/sketch-words.ts'
import { openingKinds, sashOperations, slabKinds } from '../../../core/project/vocabulary.ts'
import { facingWall } from '../../../core/sketch/facing-wall.ts'
import { firstOpenings } from '../../../core/sketch/opening-templates.ts'
import { inches, type Length, zeroLength } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { openingName } from '../../../core/work-order/surface-words.ts'
import { useJob } from '../../state/app.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { command } from '../parts/edits.ts'
import { wholeNumber, words } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { LengthField } from './LengthField.tsx'
import { sashWords, slabWords } from './opening-words.ts'
import { removeSelected } from './selection-actions.ts'

const sideWords = { near: 'into this room', far: 'out of this room' } as const

type Change = Partial<Omit<Opening, 'id'>>
interface PartProps {
  readonly opening: Opening
  readonly set: (change: Change) => void
}

export function OpeningFields(props: { readonly opening: Opening }) {
  const { opening } = props
  const set = (change: Change) =>
    command(`change ${openingName(opening)}`, {
      kind: 'setOpening',
      openingId: opening.id,
      change,
    })
  const part = { opening, set: (change: Change) => void set(change) }
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
      <button type="button" className="stop-button" onClick={removeSelected}>
        Remove this {openingNouns[opening.kind]}
      </button>
    </div>
  )
}

function Place({ opening, set }: PartProps) {
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
          { id: 'segment', label: 'Segment arch' },
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
function Shared({ opening }: PartProps) {
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
        <button type="button" className="plain-button" onClick={() => join(null)}>
          Unlink
        </button>
      ) : behind !== null && behindRoom ? (
        <button
          type="button"
          className="plain-button"
          onClick={() => join({ roomId: behind.roomId, wallId: behind.wallId })}
        >
          Share it with {behindRoom.name}
        </button>
      ) : (
        <p className="quiet">No room is drawn right behind it.</p>
      )}
    </section>
  )
}

function Casings({ opening, set }: PartProps) {
  return (
    <section className="block">
      <h3>Casing</h3>
      <CasingFields
        label="On this side"
        casing={opening.casingNear}
        onSet={(casingNear) => set({ casingNear })}
      />
      {opening.far === null ? null : (
        <CasingFields
          label="On the far side"
          casing={opening.casingFar}
          onSet={(casingFar) => set({ casingFar })}
        />
      )}
    </section>
  )
}

const firstCasing: Casing = { width: inches(4.5), girth: inches(6), style: 'mitred', profiled: true }

function CasingFields(props: {
  readonly label: string
  readonly casing: Casing | null
  readonly onSet: (casing: Casing | null) => void
}) {
  const { casing, onSet } = props
  return (
    <>
      <Tick isOn={casing !== null} onChange={(isOn) => onSet(isOn ? firstCasing : null)}>
        {props.label}
      </Tick>
      {casing === null ? null : (
        <div className="field-grid">
          <LengthField
            label="Face width"
            length={casing.width}
            onCommit={(width) => onSet({ ...casing, width })}
            isSmall
          />
          <LengthField
            label="Girth to paint"
            length={casing.girth}
            onCommit={(girth) => onSet({ ...casing, girth })}
            isSmall
          />
          <Choice
            label="Made with"
            options={[
              { id: 'mitred', label: 'Miterd corners' },
              { id: 'plinthAndCornerBlocks', label: 'Plinth and corner blocks' },
            ]}
            chosen={casing.style}
            onChoose={(style) => onSet({ ...casing, style })}
          />
          <Tick isOn={casing.profiled} onChange={(profiled) => onSet({ ...casing, profiled })}>
            Profiled
          </Tick>
        </div>
      )}
    </>
  )
}

function Jamb({ opening, set }: PartProps) {
  return (
    <section className="block">
      <h3>Jamb or reveal</h3>
      <div className="field-grid">
        <LengthField
          label="Depth to paint"
          length={opening.jambDepth}
          onCommit={(jambDepth) => set({ jambDepth })}
          isSmall
        />
        <Choice
          label="Painted as"
          options={[
            { id: 'wood', label: 'Wood, with the trim' },
            { id: 'wall', label: 'Plaster, with the wall' },
          ]}
          chosen={opening.jambOf}
          onChoose={(jambOf) => set({ jambOf })}
        />
      </div>
    </section>
  )
}

function SlabFields({ opening, set }: PartProps) {
  const { slab } = opening
  const put = (change: Partial<Slab>) => slab !== null && set({ slab: { ...slab, ...change } })
  return (
    <section className="block">
      <h3>Door leaf</h3>
      <Tick isOn={slab !== null} onChange={(isOn) => set({ slab: isOn ? firstOpenings.door.slab : null })}>
        A leaf hangs in it
      </Tick>
      {slab === null ? null : (
        <div className="field-grid">
          <Choice
            label="Leaf"
            options={optionsOf(slabKinds, slabWords)}
            chosen={slab.kind}
            onChoose={(kind) => put({ kind })}
          />
          <LengthField
            label="Thickness"
            length={slab.thickness}
            onCommit={(thickness) => put({ thickness })}
            isSmall
          />
          <EntryField
            label="Leaves"
            shown={String(slab.leaves)}
            read={wholeNumber(1, 8)}
            onCommit={(leaves) => put({ leaves })}
            width="short"
          />
          <Choice
            label="Opens"
            options={optionsOf(['near', 'far'] as const, sideWords)}
            chosen={slab.edgesShow}
            onChoose={(edgesShow) => put({ edgesShow })}
          />
          <Tick isOn={slab.paintNear} onChange={(paintNear) => put({ paintNear })}>
            This side is painted
          </Tick>
          <Tick isOn={slab.paintFar} onChange={(paintFar) => put({ paintFar })}>
            The other side is painted
          </Tick>
        </div>
      )}
    </section>
  )
}

const members: readonly (readonly [
  keyof Sash & ('stile' | 'topRail' | 'meetingRail' | 'bottomRail' | 'muntin' | 'thickness'),
  string,
])[] = [
  ['stile', 'Stile'],
  ['topRail', 'Top rail'],
  ['meetingRail', 'Meeting rail'],
  ['bottomRail', 'Bottom rail'],
  ['muntin', 'Muntin'],
  ['thickness', 'Thickness'],
]

function SashFields({ opening, set }: PartProps) {
  const { sash } = opening
  const put = (change: Partial<Sash>) => sash !== null && set({ sash: { ...sash, ...change } })
  return (
    <section className="block">
      <h3>Sash</h3>
      <Tick isOn={sash !== null} onChange={(isOn) => set({ sash: isOn ? firstOpenings.window.sash : null })}>
        Wood sash to paint
      </Tick>
      {sash === null ? null : (
        <div className="field-grid">
          <Choice
            label="Works as"
            options={optionsOf(sashOperations, sashWords)}
            chosen={sash.operation}
            onChoose={(operation) => put({ operation })}
          />
          <EntryField
            label="Units side by side"
            shown={String(sash.units)}
            read={wholeNumber(1, 12)}
            onCommit={(units) => put({ units })}
            width="short"
          />
          <EntryField
            label="Lights across, each sash"
            shown={String(sash.lightsAcross)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsAcross) => put({ lightsAcross })}
            width="short"
          />
          <EntryField
            label="Lights down, each sash"
            shown={String(sash.lightsDown)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsDown) => put({ lightsDown })}
            width="short"
          />
          {members.map(([member, label]) => (
            <LengthField
              key={member}
              label={label}
              length={sash[member]}
              onCommit={(length: Length) => put({ [member]: length })}
              isSmall
            />
          ))}
        </div>
      )}
    </section>
  )
}

function StoolFields({ opening, set }: PartProps) {
  const { stool } = opening
  return (
    <section className="block">
      <h3>Stool and apron</h3>
      <Tick
        isOn={stool !== null}
        onChange={(isOn) => set({ stool: isOn ? firstOpenings.window.stool : null })}
      >
        A stool under the sash
      </Tick>
      {stool === null ? null : (
        <div className="field-grid">
          <LengthField
            label="Stool depth"
            length={stool.depth}
            onCommit={(depth) => set({ stool: { ...stool, depth } })}
            isSmall
          />
          <LengthField
            label="Stool thickness"
            length={stool.thickness}
            onCommit={(thickness) => set({ stool: { ...stool, thickness } })}
            isSmall
          />
          <LengthField
            label="Apron height"
            length={stool.apron}
            onCommit={(apron) => set({ stool: { ...stool, apron } })}
            isSmall
          />
        </div>
      )}
    </section>
  )
}

function Lights({ opening, set }: PartProps) {
  const { transom, sidelights } = opening
  return (
    <section className="block">
      <h3>Transom and sidelights</h3>
      <Tick
        isOn={transom !== null}
        onChange={(isOn) =>
          set({ transom: isOn ? { height: inches(14), lightsAcross: 1, lightsDown: 1 } : null })
        }
      >
        Transom inside the opening’s height
      </Tick>
      {transom === null ? null : (
        <div className="field-grid">
          <LengthField
            label="Height"
            length={transom.height}
            onCommit={(height) => set({ transom: { ...transom, height } })}
            isSmall
          />
          <EntryField
            label="Lights across"
            shown={String(transom.lightsAcross)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsAcross) => set({ transom: { ...transom, lightsAcross } })}
            width="short"
          />
          <EntryField
            label="Lights down"
            shown={String(transom.lightsDown)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsDown) => set({ transom: { ...transom, lightsDown } })}
            width="short"
          />
        </div>
      )}
      <Tick
        isOn={sidelights !== null}
        onChange={(isOn) =>
          set({ sidelights: isOn ? { count: 2, width: inches(10), lightsAcross: 1, lightsDown: 3 } : null })
        }
      >
        Sidelights inside the opening’s width
      </Tick>
      {sidelights === null ? null : (
        <div className="field-grid">
          <EntryField
            label="How many"
            shown={String(sidelights.count)}
            read={wholeNumber(1, 2)}
            onCommit={(count) => set({ sidelights: { ...sidelights, count } })}
            width="short"
          />
          <LengthField
            label="Width of each"
            length={sidelights.width ?? zeroLength}
            onCommit={(width) => set({ sidelights: { ...sidelights, width } })}
            isSmall
          />
          <EntryField
            label="Lights across"
            shown={String(sidelights.lightsAcross)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsAcross) => set({ sidelights: { ...sidelights, lightsAcross } })}
            width="short"
          />
          <EntryField
            label="Lights down"
            shown={String(sidelights.lightsDown)}
            read={wholeNumber(1, 20)}
            onCommit={(lightsDown) => set({ sidelights: { ...sidelights, lightsDown } })}
            width="short"
          />
        </div>
      )}
    </section>
  )
}
