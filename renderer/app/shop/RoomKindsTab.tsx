import { Button } from 'react-aria-components'
import type { OwnRoomKind } from '../../../core/project/shop-records.ts'
import { trimNouns } from '../../../core/project/sketch-words.ts'
import { roomUses, trimKinds } from '../../../core/project/vocabulary.ts'
import { formatLength, type Length, type LengthUnitSystem } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { useWords } from '../../panels/house/room-choices.ts'
import { Choice, optionsOf } from '../../panels/parts/Choice.tsx'
import { EntryField } from '../../panels/parts/EntryField.tsx'
import { changeHouseRules } from '../../panels/parts/edits.ts'
import { lengthEntry, orNothing, type ReadEntry, wholeNumber, words } from '../../panels/parts/entries.ts'
import { Tick } from '../../panels/parts/Tick.tsx'
import { useJob } from '../../state/app.ts'
import {
  isFreeKindName,
  type RoomKindRow,
  roomKindRows,
  withKind,
  withNewKind,
  withoutKind,
} from './room-kind-rows.ts'

const counts = [
  { name: 'doors', label: 'Doors', most: 20 },
  { name: 'windows', label: 'Windows', most: 40 },
  { name: 'plates', label: 'Plates', most: 99 },
  { name: 'lights', label: 'Lights', most: 99 },
] as const

/** What each kind of room has when nobody says otherwise: in a list of rooms, and for "what is usual" in the House. */
export function RoomKindsTab() {
  const { houseRules, header } = useJob()
  const own = houseRules.roomKinds
  const save = (action: string, next: readonly OwnRoomKind[]) => changeHouseRules(action, { roomKinds: next })
  return (
    <div className="scroll tab-pad shop-kinds">
      <p className="quiet">
        A room gets these when a list says only its name and size, or by “Give it what is usual”. The kind
        follows from the name of the room. What is here until you change it is a shop assumption.
      </p>
      <table className="pick-table">
        <thead>
          <tr>
            <th>Kind</th>
            <th>Counts as</th>
            <th>Height</th>
            <th>Trim</th>
            {counts.map(({ name, label }) => (
              <th key={name}>{label}</th>
            ))}
            <th>
              <span className="unseen">Put back or delete</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {roomKindRows(own).map((row) => (
            <KindRow
              key={row.key}
              row={row}
              system={header.unitSystem}
              readName={nameEntry(own, row)}
              change={(change) => save(`Change the kind ${row.kind.name}`, withKind(own, row, change))}
              drop={() => save(`Drop the shop’s own ${row.kind.name}`, withoutKind(own, row))}
            />
          ))}
        </tbody>
      </table>
      <Button className="plain-button" onPress={() => save('Add a kind of room', withNewKind(own))}>
        Add a kind of room
      </Button>
    </div>
  )
}

function nameEntry(own: readonly OwnRoomKind[], row: RoomKindRow): ReadEntry<string> {
  return (text) =>
    isFreeKindName(own, row, text)
      ? words(200, true)(text)
      : { ok: false, sentence: 'Another kind has this name.' }
}

function KindRow(props: {
  readonly row: RoomKindRow
  readonly system: LengthUnitSystem
  readonly readName: ReadEntry<string>
  readonly change: (change: Partial<OwnRoomKind>) => boolean
  readonly drop: () => void
}) {
  const { row, system, change } = props
  const { kind } = row
  const label = (field: string) => `${kind.name}: ${field}`
  return (
    <tr className={row.own === null ? undefined : 'changed-row'}>
      <th scope="row">
        {row.isUsual ? (
          kind.name
        ) : (
          <EntryField
            isBare
            label={label('name')}
            shown={kind.name}
            read={props.readName}
            onCommit={(name) => change({ name })}
          />
        )}
      </th>
      <td>
        {row.isUsual ? (
          useWords[kind.use]
        ) : (
          <Choice
            isBare
            label={label('counts as')}
            options={optionsOf(roomUses, useWords)}
            chosen={kind.use}
            onChoose={(use) => change({ use })}
          />
        )}
      </td>
      <td>
        <EntryField
          isBare
          label={label('height')}
          width="short"
          shown={kind.height === null ? '' : formatLength(kind.height, system)}
          read={orNothing<Length>(lengthEntry(system))}
          onCommit={(height) => change({ height })}
        />
      </td>
      <td>
        <div className="shop-kind-trim">
          {trimKinds.map((trim) => (
            <Tick
              key={trim}
              isOn={kind.trim.includes(trim)}
              onChange={(isOn) =>
                change({
                  trim: trimKinds.filter((each) => (each === trim ? isOn : kind.trim.includes(each))),
                })
              }
            >
              {capital(trimNouns[trim])}
            </Tick>
          ))}
        </div>
      </td>
      {counts.map(({ name, label: noun, most }) => (
        <td key={name}>
          <EntryField
            isBare
            label={label(noun.toLowerCase())}
            width="short"
            shown={String(kind[name])}
            read={wholeNumber(0, most)}
            onCommit={(count) => change({ [name]: count })}
          />
        </td>
      ))}
      <td>
        {row.own === null ? (
          <span className="quiet">usual</span>
        ) : (
          <Button className="plain-button" onPress={props.drop}>
            {row.isUsual ? 'Back to the usual' : 'Delete'}
          </Button>
        )}
      </td>
    </tr>
  )
}
