import { Button } from 'react-aria-components'
import { keysOf } from '../../../core/lists/lists.ts'
import type { BuiltItem } from '../../../core/project/built-records.ts'
import { records } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { firstRadiator } from '../../../core/sketch/first-radiator.ts'
import { feet, inches, lengthFromUnits } from '../../../core/units/length.ts'
import { useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { Choice } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { wholeNumber, words } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { firstStair } from './heights/first-stair.ts'
import { LengthField } from './LengthField.tsx'

type Kind = BuiltItem['kind']

const builtWords: Readonly<Record<Kind, string>> = {
  stair: 'Stair',
  radiator: 'Radiator',
  cabinet: 'Cabinet',
  shelf: 'Shelves',
  mantel: 'Mantel',
}

/** Sizes a new piece starts with; shop assumption, change them to what is there. */
function firstItem(kind: Kind, room: Room): BuiltItem {
  const own = { id: newId(kind), roomId: room.id, name: builtWords[kind] }
  switch (kind) {
    case 'stair':
      return {
        ...own,
        kind,
        ...firstStair,
      }
    case 'radiator':
      return { ...own, ...firstRadiator }
    case 'cabinet':
      return {
        ...own,
        kind,
        width: feet(3),
        height: feet(3),
        depth: feet(2),
        doors: 2,
        drawers: 0,
        paintInside: false,
      }
    case 'shelf':
      return { ...own, kind, length: feet(3), depth: inches(12), thickness: inches(1), count: 4 }
    case 'mantel':
      return {
        ...own,
        kind,
        width: feet(5),
        height: feet(4, 4),
        legWidth: inches(9),
        friezeHeight: inches(12),
        shelfDepth: inches(8),
      }
  }
}

export function BuiltFields(props: { readonly room: Room }) {
  const { room } = props
  const items = records(useJob().builtItems).filter((item) => item.roomId === room.id)
  return (
    <div className="tab-pad">
      {items.length === 0 ? (
        <p className="quiet">
          Stairs, radiators, cabinets, shelves and mantels that are painted belong here.
        </p>
      ) : null}
      {items.map((item) => (
        <section key={item.id} className="block">
          <div className="run-head">
            <h3>{builtWords[item.kind]}</h3>
            <Button
              className="plain-button small"
              onPress={() => removeRecord(`remove ${item.name}`, 'builtItems', item.id)}
            >
              Remove
            </Button>
          </div>
          <ItemFields item={item} />
        </section>
      ))}
      <h3>Add</h3>
      <span className="button-row">
        {/* The table of words has every kind and nothing else. */}
        {keysOf(builtWords).map((kind) => (
          <Button
            key={kind}
            className="plain-button"
            onPress={() => putRecord(`add a ${kind}`, 'builtItems', firstItem(kind, room))}
          >
            {builtWords[kind]}
          </Button>
        ))}
      </span>
    </div>
  )
}

/** What each field of a piece is called, in the order it is asked. */
const fieldWords: Readonly<Record<Kind, Readonly<Record<string, string>>>> = {
  stair: {
    treads: 'Treads',
    risers: 'Risers',
    stepLength: 'Length of a step',
    treadDepth: 'Tread depth',
    riserHeight: 'Riser height',
    paintTreads: 'Treads are painted',
    paintRisers: 'Risers are painted',
    stringers: 'Stringers',
    stringerLength: 'Stringer length',
    stringerGirth: 'Stringer girth',
    balusters: 'Balusters',
    balusterHeight: 'Baluster height',
    balusterGirth: 'Baluster girth',
    newels: 'Newels',
    newelHeight: 'Newel height',
    newelGirth: 'Newel girth',
    handrailLength: 'Handrail length',
    handrailGirth: 'Handrail girth',
  },
  radiator: { columns: 'Columns or tubes', sections: 'Sections' },
  cabinet: {
    width: 'Width',
    height: 'Height',
    depth: 'Depth',
    doors: 'Doors',
    drawers: 'Drawers',
    paintInside: 'Inside is painted',
  },
  shelf: { length: 'Length', depth: 'Depth', thickness: 'Thickness', count: 'How many' },
  mantel: {
    width: 'Width',
    height: 'Height',
    legWidth: 'Leg width',
    friezeHeight: 'Frieze height',
    shelfDepth: 'Shelf depth',
  },
}

const counts = [
  'treads',
  'risers',
  'stringers',
  'balusters',
  'newels',
  'columns',
  'sections',
  'doors',
  'drawers',
  'count',
]
const small = [
  'treadDepth',
  'riserHeight',
  'stringerGirth',
  'balusterHeight',
  'balusterGirth',
  'newelHeight',
  'newelGirth',
  'handrailGirth',
  'thickness',
  'legWidth',
  'friezeHeight',
  'shelfDepth',
]

function ItemFields(props: { readonly item: BuiltItem }) {
  const { item } = props
  // Fields are named by the words of the item's kind: switches, counts, and else lengths. The core checks what is put back.
  const values: Readonly<Record<string, unknown>> = { ...item }
  const put = (change: object) =>
    putRecord(`change ${item.name}`, 'builtItems', { ...item, ...change } as BuiltItem)
  return (
    <div className="field-grid">
      <EntryField
        label="Name"
        shown={item.name}
        read={words(200)}
        onCommit={(name) => put({ name })}
        width="wide"
      />
      {item.kind === 'radiator' ? <RadiatorChoices item={item} put={put} /> : null}
      {Object.entries(fieldWords[item.kind]).map(([field, label]) => {
        const value = values[field]
        if (typeof value === 'boolean') {
          return (
            <Tick key={field} isOn={value} onChange={(isOn) => put({ [field]: isOn })}>
              {label}
            </Tick>
          )
        }
        if (counts.includes(field)) {
          return (
            <EntryField
              key={field}
              label={label}
              shown={String(value)}
              read={wholeNumber(0, 1000)}
              onCommit={(count) => put({ [field]: count })}
              width="short"
            />
          )
        }
        const length = lengthFromUnits(Number(value ?? 0))
        return (
          <LengthField
            key={field}
            label={label}
            length={length}
            onCommit={(next) => put({ [field]: next })}
            isSmall={small.includes(field)}
          />
        )
      })}
    </div>
  )
}

function RadiatorChoices(props: {
  readonly item: Extract<BuiltItem, { kind: 'radiator' }>
  readonly put: (change: object) => void
}) {
  const { item, put } = props
  const heights = ['20', '23', '26', '32', '38'] as const
  return (
    <>
      <Choice
        label="Pattern"
        options={[
          { id: 'column', label: 'Column' },
          { id: 'tube', label: 'Tube' },
        ]}
        chosen={item.pattern}
        onChoose={(pattern) => put({ pattern })}
      />
      <Choice
        label="Height"
        options={heights.map((id) => ({ id, label: `${id} in` }))}
        chosen={heights.find((id) => Number(id) === item.heightInches) ?? null}
        onChoose={(height) => put({ heightInches: Number(height) })}
      />
    </>
  )
}
