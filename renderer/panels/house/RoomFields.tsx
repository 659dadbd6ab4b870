import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { openingNouns } from '../../../core/project/sketch-words.ts'
import { type OpeningKind, openingKinds, roomOrders, roomUses } from '../../../core/project/vocabulary.ts'
import { roomWalls, type Wall, wallLetter } from '../../../core/project/walls.ts'
import { isPassage, roomUseByName } from '../../../core/sketch/room-kinds.ts'
import { lengthFromUnits } from '../../../core/units/length.ts'
import { sketchStore, useSketch } from '../../canvas/sketch-store.ts'
import { withWallLength } from '../../canvas/wall-length.ts'
import { jobStore, useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { Choice, optionsOf } from '../parts/Choice.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { command } from '../parts/edits.ts'
import { orNothing, words } from '../parts/entries.ts'
import { HintButton } from '../parts/HintButton.tsx'
import { Tick } from '../parts/Tick.tsx'
import { roomOrderWords } from '../parts/words.ts'
import { setOpeningInWall } from './by-keys.ts'
import { LengthField } from './LengthField.tsx'
import { MoveRoom } from './MoveRoom.tsx'
import { aboveWords, behindWords, useWords } from './room-choices.ts'
import { duplicateSelected, removeSelected } from './selection-actions.ts'
import { giveUsual, usualWords } from './usual-room.ts'
import { WorkedWith } from './WorkedWith.tsx'

export function RoomFields(props: { readonly room: Room }) {
  const { room } = props
  const job = useJob()
  const isNaming = useSketch((state) => state.namingId === room.id)
  // Once its fields were left, its name takes the keyboard no more.
  useEffect(() => () => endNaming(room.id), [room.id])
  const set = (change: Partial<Omit<Room, 'id' | 'corners'>>) =>
    command(`change ${room.name}`, { kind: 'setRoom', roomId: room.id, change })
  return (
    <div className="tab-pad">
      <div className="field-grid block">
        <EntryField
          label="Name"
          shown={room.name}
          read={words(200, true)}
          onCommit={(name) => nameRoom(job, room, name)}
          isFocused={isNaming}
          width="wide"
        />
        <Choice
          label="Used as"
          options={optionsOf(roomUses, useWords)}
          chosen={room.use}
          onChoose={(use) => set({ use })}
        />
        <Choice
          label="Over the ceiling"
          options={optionsOf(['heated', 'unheated', 'open'] as const, aboveWords)}
          chosen={room.above}
          onChoose={(above) => set({ above })}
        />
        <Choice
          label="Order of work"
          options={[
            { id: 'houseRule', label: 'As the house rule says' },
            ...optionsOf(roomOrders, roomOrderWords),
          ]}
          chosen={room.order}
          onChoose={(order) => set({ order })}
        />
        <WorkedWith room={room} onChoose={(workedWith) => set({ workedWith })} />
        <EntryField
          label="Must be given back by"
          kind="datetime-local"
          shown={room.backBy ?? ''}
          read={orNothing<string>((text) => ({ ok: true, value: text.slice(0, 16) }))}
          onCommit={(backBy) => set({ backBy })}
        />
        <div className="entry-wide">
          <Tick isOn={room.wayOut} onChange={(wayOut) => set({ wayOut })}>
            Others get out through here; keep it passable and paint it last
          </Tick>
        </div>
      </div>
      <UsualParts room={room} />
      <Walls room={room} />
      <OpeningSetter room={room} />
      <MoveRoom />
      <div className="block">
        <EntryField
          label="Note"
          shown={room.note}
          read={words(4000)}
          onCommit={(note) => set({ note })}
          lines={2}
          width="wide"
        />
      </div>
      <span className="button-row">
        <Button className="plain-button" onPress={duplicateSelected}>
          Copy this room
        </Button>
        <Button className="stop-button" onPress={removeSelected}>
          Remove this room
        </Button>
      </span>
    </div>
  )
}

function endNaming(roomId: string): void {
  if (sketchStore.getState().namingId === roomId) sketchStore.setState({ namingId: null })
}

/** A name that says what the room is used as says it of a room nobody has said it of. */
function nameRoom(job: Job, room: Room, name: string): boolean {
  const use = room.use === 'other' ? roomUseByName(job, name) : room.use
  const change = use === room.use ? { name } : { name, use, wayOut: isPassage(use) }
  return command(`rename ${room.name}`, { kind: 'setRoom', roomId: room.id, change })
}

/** What such a room usually has, for one in which nothing is set yet. */
function UsualParts({ room }: { readonly room: Room }) {
  const usual = usualWords(useJob(), room)
  if (usual === '') return null
  return (
    <p className="block">
      <span className="quiet">
        Usual in a room like this ({useWords[room.use].toLowerCase()}): {usual}.
      </span>{' '}
      <Button className="plain-button small" onPress={() => giveUsual(room)}>
        Set these
      </Button>
    </p>
  )
}

/** Walls by letter, as the takeoff names them; pointing at a line lights the wall on the sheet. */
function Walls(props: { readonly room: Room }) {
  const { room } = props
  // A line that goes away under the pointer never hears it leave.
  useEffect(() => () => sketchStore.setState({ litIds: [] }), [])
  return (
    <table className="wall-table block">
      <thead>
        <tr>
          <th scope="col">Wall</th>
          <th scope="col">Exact length</th>
          <th scope="col">Behind it</th>
          <th scope="col">
            <span className="unseen">Corners</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {roomWalls(room).map((wall) => (
          <WallRow key={wall.id} room={room} wall={wall} />
        ))}
      </tbody>
    </table>
  )
}

function WallRow({ room, wall }: { readonly room: Room; readonly wall: Wall }) {
  const job = useJob()
  const unit = job.header.unitSystem === 'imperial' ? 'ft' : 'm'
  const light = () => sketchStore.setState({ litIds: [`${room.id}/${wall.id}`] })
  const unlight = () => sketchStore.setState({ litIds: [] })
  return (
    <tr onPointerEnter={light} onPointerLeave={unlight} onFocus={light} onBlur={unlight}>
      <th scope="row">{wallLetter(wall.index)}</th>
      <td>
        <BareLength
          label={`Exact length of wall ${wallLetter(wall.index)} (${unit})`}
          length={lengthFromUnits(wall.length)}
          onCommit={(length) =>
            jobStore.perform('set a wall length', withWallLength(job, room.id, wall.id, length))
          }
        />
      </td>
      <td>
        <Choice
          isBare
          label={`Behind wall ${wallLetter(wall.index)}`}
          options={optionsOf(['heated', 'outside', 'unheated'] as const, behindWords)}
          chosen={wall.behind}
          onChoose={(behind) =>
            command('say what is behind a wall', {
              kind: 'setWallBehind',
              roomId: room.id,
              wallId: wall.id,
              behind,
            })
          }
        />
      </td>
      <td>
        <HintButton
          className="plain-button small"
          hint="Put a corner in the middle of this wall"
          onPress={() =>
            command('add a corner', {
              kind: 'insertCorner',
              roomId: room.id,
              wallId: wall.id,
              at: lengthFromUnits(wall.length / 2),
              newWallId: newId('wall'),
            })
          }
        >
          Split
        </HintButton>
        <HintButton
          className="plain-button small"
          isDisabled={room.corners.length <= 3}
          hint="Take away the corner at the start of this wall"
          onPress={() =>
            command('take a corner away', { kind: 'removeCorner', roomId: room.id, wallId: wall.id })
          }
        >
          Join
        </HintButton>
      </td>
    </tr>
  )
}

/** An opening without the mouse. */
function OpeningSetter(props: { readonly room: Room }) {
  const { room } = props
  const job = useJob()
  const walls = roomWalls(room)
  const [wallId, setWallId] = useState<string>(walls[0]?.id ?? '')
  const [kind, setKind] = useState<OpeningKind>('door')
  const wall = walls.find((one) => one.id === wallId) ?? walls[0]
  return (
    <div className="wall-setter block">
      <Choice
        label="In wall"
        options={walls.map((one) => ({ id: one.id, label: wallLetter(one.index) }))}
        chosen={wall?.id ?? null}
        onChoose={setWallId}
      />
      <Choice
        label="set a"
        options={openingKinds.map((id) => ({ id, label: openingNouns[id] }))}
        chosen={kind}
        onChoose={setKind}
      />
      <Button
        className="plain-button"
        onPress={() => wall !== undefined && setOpeningInWall(job, room.id, wall.id, kind)}
      >
        Set it
      </Button>
    </div>
  )
}

function BareLength(props: React.ComponentProps<typeof LengthField>) {
  return (
    <div className="bare">
      <LengthField {...props} />
    </div>
  )
}
