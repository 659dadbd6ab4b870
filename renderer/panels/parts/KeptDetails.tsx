import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import { openingNameIn } from '../../../core/project/opening-letters.ts'
import { openingIdSchema, type Room, wallIdSchema } from '../../../core/project/sketch-records.ts'
import type { KeptItem } from '../../../core/project/survey-records.ts'
import { type KeptItemHandling, keptItemKinds } from '../../../core/project/vocabulary.ts'
import { roomWalls, wallLetter } from '../../../core/project/walls.ts'
import { handlingWords } from '../../../core/specification/trade-words.ts'
import { Choice, optionsOf } from './Choice.tsx'
import { EntryField } from './EntryField.tsx'
import { putRecord, removeRecord } from './edits.ts'
import { words } from './entries.ts'
import { alarms, handlingsFor, usualHandling } from './kept-handling.ts'
import { Tick } from './Tick.tsx'
import { keptItemWords } from './words.ts'

/** Everything that is said of one thing that stays. */
export function KeptDetails(props: { readonly job: Job; readonly room: Room; readonly item: KeptItem }) {
  const { job, room, item } = props
  const change = (changes: Partial<KeptItem>) =>
    putRecord('Change what stays', 'keptItems', { ...item, ...changes })
  return (
    <div className="kept-line">
      <Choice
        label="Kind"
        isBare
        options={optionsOf(keptItemKinds, keptItemWords)}
        chosen={item.kind}
        onChoose={(kind) => change({ ...usualHandling(kind, item.wired), kind, name: keptItemWords[kind] })}
      />
      <EntryField
        label="Name on the label"
        isBare
        shown={item.name}
        read={words(200)}
        onCommit={(name) => change({ name })}
      />
      <Choice
        label={`Where: ${item.name}`}
        isBare
        options={placesIn(job, room)}
        chosen={placeId(item.on)}
        onChoose={(id) => change({ on: placeOf(id) })}
      />
      <Choice
        label={`Handling: ${item.name}`}
        isBare
        options={optionsOf<KeptItemHandling>(handlingsFor(item), handlingWords)}
        chosen={item.handling}
        onChoose={(handling) => change({ handling })}
      />
      <Button
        className="plain-button remove"
        aria-label={`Remove ${item.name}`}
        onPress={() => removeRecord('Remove what stays', 'keptItems', item.id)}
      >
        Remove
      </Button>
      {alarms.has(item.kind) ? (
        <Tick isOn={item.wired} onChange={(wired) => change({ ...usualHandling(item.kind, wired), wired })}>
          Wired: covered for the working hours only, tested and restored the same day
        </Tick>
      ) : null}
    </div>
  )
}

function placesIn(job: Job, room: Room) {
  const walls = roomWalls(room).map((wall) => ({
    id: `wall/${wall.id}`,
    label: `wall ${wallLetter(wall.index)}`,
  }))
  const openings = records(job.openings)
    .filter((opening) => opening.roomId === room.id || opening.far?.roomId === room.id)
    .map((opening) => ({ id: `opening/${opening.id}`, label: openingNameIn(job, opening, room.id) }))
  return [{ id: 'room', label: 'room' }, { id: 'ceiling', label: 'ceiling' }, ...walls, ...openings]
}

function placeId(on: KeptItem['on']): string {
  switch (on.kind) {
    case 'wall':
      return `wall/${on.wallId}`
    case 'opening':
      return `opening/${on.openingId}`
    default:
      return on.kind
  }
}

function placeOf(id: string): KeptItem['on'] {
  const [kind, target = ''] = id.split('/')
  if (kind === 'wall') return { kind: 'wall', wallId: wallIdSchema.parse(target) }
  if (kind === 'opening') return { kind: 'opening', openingId: openingIdSchema.parse(target) }
  return kind === 'ceiling' ? { kind: 'ceiling' } : { kind: 'room' }
}
