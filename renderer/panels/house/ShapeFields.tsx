import type { FloorShape, Room } from '../../../core/project/sketch-records.ts'
import { Choice } from '../parts/Choice.tsx'
import { command } from '../parts/edits.ts'
import { CeilingForm } from './heights/CeilingForm.tsx'
import { CeilingOpenings } from './heights/CeilingOpenings.tsx'
import { LineFields } from './heights/LineFields.tsx'
import { StairForm } from './heights/StairForm.tsx'

/** How high a room is and how its floor runs. */
export function ShapeFields(props: { readonly room: Room }) {
  const { room } = props
  const setFloor = (floor: FloorShape) =>
    command(`shape the floor of ${room.name}`, { kind: 'setFloor', roomId: room.id, floor })
  return (
    <div className="tab-pad">
      <CeilingForm key={JSON.stringify(room.ceiling)} room={room} />
      <section className="block">
        <h3>Floor</h3>
        {room.floor.kind === 'level' ? (
          <StairForm room={room} />
        ) : (
          <>
            <Choice
              label="Shape"
              options={[
                { id: 'level', label: 'Level' },
                { id: 'stair', label: 'Stair slope' },
              ]}
              chosen={room.floor.kind}
              onChoose={() => setFloor({ kind: 'level' })}
            />
            <LineFields
              room={room}
              along={room.floor.along}
              line={room.floor.line}
              onSet={(along, line) => setFloor({ kind: 'stair', along, line })}
            />
            <StairForm room={room} />
          </>
        )}
      </section>
      <CeilingOpenings room={room} />
    </div>
  )
}
