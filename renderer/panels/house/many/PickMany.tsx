import { useState } from 'react'
import { Button } from 'react-aria-components'
import type { Job } from '../../../../core/project/job.ts'
import { openingNouns } from '../../../../core/project/sketch-words.ts'
import { openingKinds } from '../../../../core/project/vocabulary.ts'
import { type PickKind, pickedOf, pickMany } from '../../../../core/sketch/many/picked.ts'
import { useJob, useView, viewStore } from '../../../state/app.ts'
import { Choice, type ChoiceOption } from '../../parts/Choice.tsx'
import { pickPlaceOf, pickPlaces } from './pick-places.ts'

const kinds: readonly ChoiceOption<PickKind>[] = [
  { id: 'rooms', label: 'All rooms' },
  { id: 'walls', label: 'All walls' },
  { id: 'outerWalls', label: 'Walls with no room behind' },
  ...openingKinds.map((id) => ({ id, label: `All ${openingNouns[id]}s` })),
  { id: 'openings', label: 'All openings' },
]

const fieldsId = 'pick-many'

/** Brings the keyboard to the choice of what is picked; one thing that is picked lets go of its fields for it. */
export function goToPickMany(): void {
  const focus = () => {
    const button = document.querySelector<HTMLElement>(`#${fieldsId} button`)
    button?.focus()
    return button !== null
  }
  if (focus()) return
  viewStore.setState({ selectedIds: [], roomId: null, surfaceKey: null })
  requestAnimationFrame(focus)
}

/** Picks everything of a kind at a place, as all windows upstairs; on the sheet it is then as if it were clicked one by one. */
export function PickMany() {
  const job = useJob()
  const selectedIds = useView((state) => state.selectedIds)
  const [kind, setKind] = useState<PickKind>('window')
  const [placeId, setPlaceId] = useState('house')
  const { rooms } = pickedOf(job, selectedIds)
  const places = pickPlaces(job, rooms.length)
  const isThere = places.some(({ id }) => id === placeId)
  const place = pickPlaceOf(job, isThere ? placeId : 'house', rooms)
  const found = pickMany(job, kind, place)
  return (
    <section id={fieldsId} className="block" aria-label="Pick many at once">
      <h3>Pick many at once</h3>
      <div className="field-grid">
        <Choice label="Pick" options={kinds} chosen={kind} onChoose={setKind} />
        <Choice label="Where" options={places} chosen={isThere ? placeId : 'house'} onChoose={setPlaceId} />
      </div>
      <Button className="plain-button" isDisabled={found.length === 0} onPress={() => pickThem(job, found)}>
        {found.length === 0 ? 'None there' : `Pick ${found.length}`}
      </Button>
    </section>
  )
}

/** Shows a floor on which something of it is, so that what is picked is seen. */
function pickThem(job: Job, ids: readonly string[]): void {
  const { rooms, openings, walls } = pickedOf(job, ids)
  const roomIds = [...rooms.map(({ id }) => id), ...[...openings, ...walls].map(({ roomId }) => roomId)]
  const storeys = roomIds.flatMap((id) => job.rooms[id]?.storeyId ?? [])
  const { storeyId } = viewStore.getState()
  const shown = storeys.find((id) => id === storeyId) ?? storeys[0] ?? storeyId
  viewStore.setState({ selectedIds: ids, roomId: roomIds[0] ?? null, surfaceKey: null, storeyId: shown })
}
