import { useState } from 'react'
import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import { openingLetter } from '../../../core/project/opening-letters.ts'
import type { RoomId, Storey } from '../../../core/project/sketch-records.ts'
import { openingNouns } from '../../../core/project/sketch-words.ts'
import { storeysUpwards } from '../../../core/project/storeys.ts'
import { jobStore, useJob, useView, viewStore } from '../../state/app.ts'
import { useDraft } from '../../state/drafts.ts'
import { newId } from '../../state/new-id.ts'
import { command } from '../parts/edits.ts'
import { HintButton } from '../parts/HintButton.tsx'
import { addRoomOfSize } from './by-keys.ts'
import { isOpenedUp, whyItStays } from './floor-list.ts'
import { openingTitle } from './opening-title.ts'
import { showStorey } from './storey-view.ts'
import { UnderlayPart } from './underlay/UnderlayPart.tsx'

/** Storeys and their rooms: everything on the drawing, by name and by keyboard. */
export function SheetList() {
  const job = useJob()
  const storeyId = useView((state) => state.storeyId)
  const storeys = storeysUpwards(job).toReversed()
  return (
    <aside className="sheet-list" aria-label="Floors and rooms">
      {storeys.map((storey) => (
        <StoreyPart
          key={storey.id}
          storey={storey}
          isShown={storey.id === storeyId}
          isOnly={storeys.length === 1}
        />
      ))}
      <RoomBySize />
      <Button className="plain-button" onPress={() => addStorey(storeys)}>
        Add a floor
      </Button>
    </aside>
  )
}

/** A room without the mouse. */
function RoomBySize() {
  const job = useJob()
  const [text, setText] = useState('')
  const [sentence, setSentence] = useState<string | null>(null)
  useDraft(text.trim() === '' ? null : { label: 'A room by its size', text, take: () => false })
  return (
    <form
      className="storey-fields"
      onSubmit={(event) => {
        event.preventDefault()
        const wrong = addRoomOfSize(job, text)
        setSentence(wrong)
        if (wrong === null) setText('')
      }}
    >
      <label className="entry">
        <span className="label">A room by its size</span>
        <input
          value={text}
          aria-invalid={sentence !== null}
          placeholder={job.header.unitSystem === 'imperial' ? "12' x 10' 6\"" : '3.60 x 3.20 m'}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      {sentence === null ? null : (
        <span className="field-error" role="alert">
          {sentence}
        </span>
      )}
      <Button type="submit" className="plain-button" isDisabled={text.trim() === ''}>
        Add this room
      </Button>
    </form>
  )
}

function addStorey(storeys: readonly Storey[]): void {
  const level = Math.max(-1, ...storeys.map((storey) => storey.level)) + 1
  const storey: Storey = { id: newId('storey'), name: `Floor ${level + 1}`, level }
  if (command(`add ${storey.name}`, { kind: 'addStorey', storey })) showStorey(storey.id)
}

function StoreyPart(props: { readonly storey: Storey; readonly isShown: boolean; readonly isOnly: boolean }) {
  const job = useJob()
  const { storey, isShown } = props
  const [isRenaming, setRenaming] = useState(false)
  const rooms = records(job.rooms).filter((room) => room.storeyId === storey.id)
  return (
    <section className="storey-part">
      <div className="storey-head">
        <Button className="storey-name" aria-pressed={isShown} onPress={() => showStorey(storey.id)}>
          {storey.name}
          <span className="quiet"> {rooms.length}</span>
        </Button>
        {isShown ? (
          <Button
            className="plain-button small"
            aria-expanded={isRenaming}
            onPress={() => setRenaming(!isRenaming)}
          >
            Edit
          </Button>
        ) : null}
      </div>
      {isShown && isRenaming ? (
        <StoreyFields {...props} roomCount={rooms.length} onDone={() => setRenaming(false)} />
      ) : null}
      {isShown ? <RoomNames storeyId={storey.id} /> : null}
      {isShown ? <UnderlayPart storey={storey} /> : null}
    </section>
  )
}

function StoreyFields(props: {
  readonly storey: Storey
  readonly isOnly: boolean
  readonly roomCount: number
  readonly onDone: () => void
}) {
  const { storey } = props
  const [name, setName] = useState(storey.name)
  const release = useDraft(name === storey.name ? null : { label: 'Name', text: name, take: rename })

  function rename(): boolean {
    const to = name.trim() || storey.name
    return command(`rename ${storey.name}`, { kind: 'renameStorey', storeyId: storey.id, name: to })
  }

  return (
    <form
      className="storey-fields"
      onSubmit={(event) => {
        event.preventDefault()
        if (!rename()) return
        release()
        props.onDone()
      }}
    >
      <label className="entry">
        <span className="label">Name</span>
        <input value={name} maxLength={200} onChange={(event) => setName(event.target.value)} />
      </label>
      <span className="button-row">
        <Button type="submit" className="act-button">
          Keep name
        </Button>
        <HintButton
          className="stop-button"
          isDisabled={props.isOnly || props.roomCount > 0}
          hint={whyItStays(props)}
          onPress={() => removeStorey(storey)}
        >
          Remove
        </HintButton>
      </span>
    </form>
  )
}

function removeStorey(storey: Storey): void {
  if (!command(`remove ${storey.name}`, { kind: 'removeStorey', storeyId: storey.id })) return
  const { job } = jobStore.store.getState()
  const next = job === null ? undefined : records(job.storeys)[0]
  if (next !== undefined) showStorey(next.id)
}

/** Plain buttons, because there are as many as rooms: those of the library took a fifth of the time in which 60 rooms appear. */
function RoomNames(props: { readonly storeyId: string }) {
  const job = useJob()
  const selectedIds = useView((state) => state.selectedIds)
  const rooms = records(job.rooms).filter((room) => room.storeyId === props.storeyId)
  if (rooms.length === 0)
    return <p className="quiet">Nothing drawn yet. Take “Rectangle” and drag on the sheet.</p>
  return (
    <ul className="room-names">
      {rooms.map((room) => (
        <li key={room.id}>
          <button
            type="button"
            className="room-name"
            aria-pressed={selectedIds.includes(room.id)}
            onClick={(event) => select(job, room.id, isAdding(event) ? selectedIds : [])}
          >
            {room.name}
          </button>
          {isOpenedUp(job, room.id, selectedIds) ? <OpeningNames roomId={room.id} /> : null}
        </li>
      ))}
    </ul>
  )
}

function OpeningNames(props: { readonly roomId: RoomId }) {
  const job = useJob()
  const selectedIds = useView((state) => state.selectedIds)
  const openings = records(job.openings).filter(
    (opening) => opening.roomId === props.roomId || opening.far?.roomId === props.roomId,
  )
  return (
    <ul className="room-names">
      {openings.map((opening) => (
        <li key={opening.id}>
          <button
            type="button"
            className="room-name"
            aria-pressed={selectedIds.includes(opening.id)}
            onClick={(event) =>
              selectOpening(job, opening.id, props.roomId, isAdding(event) ? selectedIds : [])
            }
          >
            {openingTitle(job, opening, props.roomId, (_, { name, kind }) => name || openingNouns[kind])}{' '}
            <span className="opening-letter">{openingLetter(job, opening.id, props.roomId)}</span>
            {opening.far === null ? null : <span className="quiet"> shared</span>}
          </button>
        </li>
      ))}
    </ul>
  )
}

/** Enter or Space with Shift or Ctrl held counts as a click with it. */
function isAdding(event: React.MouseEvent): boolean {
  return event.shiftKey || event.ctrlKey || event.metaKey
}

function selectOpening(job: Job, openingId: string, roomId: RoomId, others: readonly string[]): void {
  const kept = others.filter((id) => id !== openingId && job.openings[id] !== undefined)
  const selectedIds = others.includes(openingId) ? kept : [...kept, openingId]
  viewStore.setState({ selectedIds, roomId })
}

function select(job: Job, roomId: RoomId, others: readonly string[]): void {
  const selectedIds = others.includes(roomId) ? others.filter((id) => id !== roomId) : [...others, roomId]
  viewStore.setState({ selectedIds, roomId: job.rooms[selectedIds[0] ?? '']?.id ?? null, surfaceKey: null })
}
