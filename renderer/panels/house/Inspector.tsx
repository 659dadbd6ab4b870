import { type Job, records } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { useJob, useView } from '../../state/app.ts'
import { showTapeList } from '../../state/tape-list.ts'
import { KeptItems } from '../parts/KeptItems.tsx'
import { PageTabs } from '../parts/PageTabs.tsx'
import { BuiltFields } from './BuiltFields.tsx'
import { OpeningFields } from './OpeningFields.tsx'
import { RoomFields } from './RoomFields.tsx'
import { ShapeFields } from './ShapeFields.tsx'
import { SurfaceTab } from './SurfaceTab.tsx'
import { duplicateSelected, removeSelected } from './selection-actions.ts'
import { TrimFields } from './TrimFields.tsx'

/** Everything about what is selected, in fields: the same as by the pointer on the sheet, exactly. */
export function Inspector() {
  const job = useJob()
  const selectedIds = useView((state) => state.selectedIds)
  const rooms = selectedIds.flatMap((id) => job.rooms[id] ?? [])
  const openings = selectedIds.flatMap((id) => job.openings[id] ?? [])
  const [room] = rooms
  const [opening] = openings
  return (
    <aside className="inspector" aria-label="What is selected">
      {rooms.length + openings.length > 1 ? (
        <Several count={rooms.length + openings.length} hasRooms={rooms.length > 0} />
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

function Several(props: { readonly count: number; readonly hasRooms: boolean }) {
  return (
    <div className="tab-pad">
      <h2>{props.count} things selected</h2>
      <p className="quiet">Drag them together, or shift them with the arrow keys.</p>
      <span className="button-row">
        {props.hasRooms ? (
          <button type="button" className="plain-button" onClick={duplicateSelected}>
            Copy them
          </button>
        ) : null}
        <button type="button" className="stop-button" onClick={removeSelected}>
          Remove them
        </button>
      </span>
    </div>
  )
}

function NothingSelected(props: { readonly isEmpty: boolean }) {
  if (props.isEmpty) {
    return (
      <div className="tab-pad">
        <h2>An empty sheet</h2>
        <p>Have you measured the rooms already? Write them down one a line, as on a pad.</p>
        <p>
          <button type="button" className="act-button" onClick={() => showTapeList(true)}>
            Write a list of rooms
          </button>
        </p>
        <p>
          Or draw the first room: take “Square room”, drag from corner to corner, and read its length as you
          go.
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
        Shift-click adds to what is selected; dragging on empty paper sweeps up whatever lies inside.
      </p>
    </div>
  )
}
