import type { Casing, Corner, Opening, Room, Sash } from '../../../../core/project/sketch-records.ts'
import { roomUses, sashOperations, slabKinds } from '../../../../core/project/vocabulary.ts'
import type { Picked } from '../../../../core/sketch/many/picked.ts'
import { behindMany, openingsOnMany, roomsOnMany } from '../../../../core/sketch/many/set-sketch.ts'
import { isPassage } from '../../../../core/sketch/room-kinds.ts'
import type { Length } from '../../../../core/units/length.ts'
import { Choice, optionsOf } from '../../parts/Choice.tsx'
import { EntryField } from '../../parts/EntryField.tsx'
import { together } from '../../parts/edits.ts'
import { wholeNumber } from '../../parts/entries.ts'
import { sashWords, slabWords } from '../opening-words.ts'
import { aboveWords, behindWords, useWords } from '../room-choices.ts'
import { common, differs, pickedWords } from './common.ts'
import { ManyLength } from './ManyLength.tsx'

/** Heights and uses of rooms, sizes of openings, what is behind walls. */
export function ManySizes({ picked }: { readonly picked: Picked }) {
  return (
    <>
      {picked.rooms.length === 0 ? null : <RoomSizes picked={picked} rooms={picked.rooms} />}
      {picked.openings.length === 0 ? null : <OpeningSizes picked={picked} openings={picked.openings} />}
      {picked.walls.length === 0 ? null : <WallsBehind picked={picked} />}
    </>
  )
}

/** `set the height of 3 rooms`. */
function actionName(what: string, picked: Picked): string {
  return `set the ${what} of ${pickedWords(picked)}`
}

function RoomSizes({ picked, rooms }: { readonly picked: Picked; readonly rooms: readonly Room[] }) {
  const set = (what: string, change: Partial<Omit<Room, 'id' | 'corners'>>) =>
    together(actionName(what, picked), roomsOnMany(rooms, change))
  const isFlat = rooms.every(({ ceiling }) => ceiling.kind === 'flat')
  return (
    <section className="block field-grid" aria-label="Rooms">
      <ManyLength
        label={isFlat ? 'Height' : 'Height, made flat'}
        length={common(rooms, ({ ceiling }) => (ceiling.kind === 'flat' ? ceiling.height : null))}
        onCommit={(height) => set('height', { ceiling: { kind: 'flat', height } })}
      />
      <Choice
        label="Over the ceiling"
        options={optionsOf(['heated', 'unheated', 'open'] as const, aboveWords)}
        chosen={common(rooms, ({ above }) => above)}
        unchosen={differs}
        onChoose={(above) => set('space over the ceiling', { above })}
      />
      <Choice
        label="Used as"
        options={optionsOf(roomUses, useWords)}
        chosen={common(rooms, ({ use }) => use)}
        unchosen={differs}
        onChoose={(use) => set('use', { use, wayOut: isPassage(use) })}
      />
    </section>
  )
}

function OpeningSizes(props: { readonly picked: Picked; readonly openings: readonly Opening[] }) {
  const { picked, openings } = props
  const set = (what: string, change: (opening: Opening) => Partial<Omit<Opening, 'id'>>) =>
    together(actionName(what, picked), openingsOnMany(openings, change))
  return (
    <section className="block field-grid" aria-label="Openings">
      {(['width', 'height', 'sill'] as const).map((side) => (
        <ManyLength
          key={side}
          label={{ width: 'Width', height: 'Height', sill: 'Sill above the floor' }[side]}
          length={common(openings, (opening) => opening[side])}
          onCommit={(length) => set(side, () => ({ [side]: length }))}
        />
      ))}
      <ManyLength
        label="Jamb depth to paint"
        length={common(openings, ({ jambDepth }) => jambDepth)}
        onCommit={(jambDepth) => set('jamb depth', () => ({ jambDepth }))}
        isSmall
      />
      {(['width', 'girth'] as const).map((side) => (
        <ManyLength
          key={side}
          label={{ width: 'Casing face width', girth: 'Casing girth to paint' }[side]}
          length={common(openings, ({ casingNear }) => casingNear?.[side] ?? null)}
          onCommit={(length) => set(`casing ${side}`, (opening) => casings(opening, { [side]: length }))}
          isSmall
        />
      ))}
      <SashAndLeaf openings={openings} set={set} />
    </section>
  )
}

/** Changes the casings that are there. */
function casings({ casingNear, casingFar }: Opening, change: { width?: Length; girth?: Length }) {
  const changed = (casing: Casing | null) => (casing === null ? null : { ...casing, ...change })
  return { casingNear: changed(casingNear), casingFar: changed(casingFar) }
}

function SashAndLeaf(props: {
  readonly openings: readonly Opening[]
  readonly set: (what: string, change: (opening: Opening) => Partial<Omit<Opening, 'id'>>) => boolean
}) {
  const { openings, set } = props
  const sashes = openings.flatMap(({ sash }) => sash ?? [])
  const slabs = openings.flatMap(({ slab }) => slab ?? [])
  const setSash = (what: string, change: Partial<Sash>) =>
    set(what, ({ sash }) => ({ sash: sash === null ? null : { ...sash, ...change } }))
  return (
    <>
      {sashes.length === 0 ? null : (
        <>
          <Choice
            label="Sash works as"
            options={optionsOf(sashOperations, sashWords)}
            chosen={common(sashes, ({ operation }) => operation)}
            unchosen={differs}
            onChoose={(operation) => setSash('sash', { operation })}
          />
          {(['lightsAcross', 'lightsDown'] as const).map((way) => (
            <EntryField
              key={way}
              label={way === 'lightsAcross' ? 'Lights across, each sash' : 'Lights down, each sash'}
              shown={String(common(sashes, (sash) => sash[way]) ?? '')}
              read={wholeNumber(1, 20)}
              onCommit={(count) => setSash('lights', { [way]: count })}
              width="short"
            />
          ))}
        </>
      )}
      {slabs.length === 0 ? null : (
        <Choice
          label="Door leaf"
          options={optionsOf(slabKinds, slabWords)}
          chosen={common(slabs, ({ kind }) => kind)}
          unchosen={differs}
          onChoose={(kind) =>
            set('door leaf', ({ slab }) => ({ slab: slab === null ? null : { ...slab, kind } }))
          }
        />
      )}
    </>
  )
}

function WallsBehind({ picked }: { readonly picked: Picked }) {
  const kinds: readonly Corner['behind'][] = ['heated', 'outside', 'unheated']
  return (
    <section className="block" aria-label="Walls">
      <Choice
        label="Behind these walls"
        options={optionsOf(kinds, behindWords)}
        chosen={common(picked.walls, ({ behind }) => behind)}
        unchosen={differs}
        onChoose={(behind) => together(actionName('space behind', picked), behindMany(picked.walls, behind))}
      />
    </section>
  )
}
