import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { type Picked, pickedOf } from '../../../core/sketch/many/picked.ts'
import { useJob, useView } from '../../state/app.ts'
import { showTapeList } from '../../state/tape-list.ts'
import { KeptItems } from '../parts/KeptItems.tsx'
import { PageTabs } from '../parts/PageTabs.tsx'
import { BuiltFields } from './BuiltFields.tsx'
import { ManyThings } from './many/ManyThings.tsx'
import { PickMany } from './many/PickMany.tsx'
import { OpeningFields } from './OpeningFields.tsx'
import { RoomFields } from './RoomFields.tsx'
import { ShapeFields } from './ShapeFields.tsx'
import { SurfaceTab } from './SurfaceTab.tsx'
import { TrimFields } from './TrimFields.tsx'

/** Everything about what is selected, in fields: the same as by the pointer on the sheet, exactly. */
export function Inspector() {
  const job = useJob()
  const selectedIds = useView((state) => state.selectedIds)
  const picked = pickedOf(job, selectedIds)
  const [room] = picked.rooms
  const [opening] = picked.openings
  const count = picked.rooms.length + picked.openings.length + picked.walls.length
  return (
    <aside className="inspector" aria-label="What is selected">
      {count > 1 || picked.walls.length > 0 ? (
        <ManyThings key={kindsOf(picked)} picked={picked} />
      ) : room !== undefined ? (
        <PageTabs
          key={room.id}
          label={room.name}
          tabs={[
            { id: 'room', title: 'Room', page: () => <RoomFields room={room} /> },
            { id: 'shape', title: 'Height', page: () => <ShapeFields room={room} /> },
            { id: 'trim', title: 'Trim', page: () => <TrimFields room={room} /> },
            { id: 'built', title: 'Built', page: () => <BuiltFields room={room} /> },
            { id: 'kept', title: 'Stays', page: () => <KeptTab job={job} room={room} /> },
            { id: 'surfaces', title: 'Surfaces', page: () => <SurfaceTab room={room} /> },
          ]}
        />
      ) : opening !== undefined ? (
        <OpeningFields key={opening.id} opening={opening} />
      ) : (
        <NothingSelected isEmpty={records(job.rooms).length === 0} />
      )}
    </aside>
  )
}

/** The same list as at the Walk station. */
function KeptTab(props: { readonly job: Job; readonly room: Room }) {
  return (
    <div className="tab-pad">
      <KeptItems {...props} />
    </div>
  )
}

/** Tabs stay open while more of the same is picked. */
function kindsOf({ rooms, openings, walls }: Picked): string {
  return `${rooms.length > 0} ${openings.length > 0} ${walls.length > 0}`
}

function NothingSelected(props: { readonly isEmpty: boolean }) {
  if (props.isEmpty) {
    return (
      <div className="tab-pad">
        <h2>An empty sheet</h2>
        <p>Have you measured the rooms already? Write them down one a line, as on a pad.</p>
        <p>
          <Button className="act-button" onPress={() => showTapeList(true)}>
            Write a list of rooms
          </Button>
        </p>
        <p>
          Or draw the first room: take “Rectangle”, drag from corner to corner, and read its length as you go.
        </p>
        <p>Or click one corner, type the two sides like 12' x 10' 6", and press Enter.</p>
        <p className="quiet">
          Then hang doors and windows on its walls. What a room measures stands under the sheet while you
          draw.
        </p>
      </div>
    )
  }
  return (
    <div className="tab-pad">
      <h2>Nothing selected</h2>
      <p>
        Click a room, a wall or an opening on the sheet, or a name in the list on the left. Its exact sizes
        come up here.
      </p>
      <p className="quiet">
        Shift-click or Ctrl-click adds to what is selected, walls too; dragging on empty paper sweeps up
        whatever lies inside.
      </p>
      <PickMany />
    </div>
  )
}
