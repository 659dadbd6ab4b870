import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { Room, RoomId } from '../../../core/project/sketch-records.ts'
import type { WalkPiece } from '../../../core/specification/looked-at.ts'
import { enterRoom, setSound } from './walk-actions.ts'

type Pieces = ReadonlyMap<RoomId, readonly WalkPiece[]>

/** What nobody has looked at yet: so much of this room, and the other rooms one press away. */
export function RoomCheck(props: { readonly job: Job; readonly room: Room; readonly pieces: Pieces }) {
  const { job, room, pieces } = props
  const here = pieces.get(room.id) ?? []
  const open = openOf(here)
  const sound = here.flatMap(({ key, state }) => (state === 'sound' ? [key] : []))
  const others = records(job.rooms).flatMap((each) => {
    const count = openOf(pieces.get(each.id) ?? []).length
    return each.id === room.id || count === 0 ? [] : [{ room: each, count }]
  })
  return (
    <section className="block room-check" aria-label="Not looked at yet">
      <p>
        <strong>{open.length === 0 ? 'All looked at' : `${open.length} of ${here.length}`}</strong>
        {open.length === 0 ? ` in ${room.name}.` : ` in ${room.name} not looked at yet.`}
      </p>
      <div className="button-row">
        {open.length === 0 ? null : (
          <Button className="plain-button" onPress={() => setSound(room, open, true)}>
            Nothing wrong with the rest
          </Button>
        )}
        {sound.length === 0 ? null : (
          <Button className="plain-button" onPress={() => setSound(room, sound, false)}>
            Look again
          </Button>
        )}
      </div>
      <details>
        <summary>
          {others.length === 0 ? 'Every other room is done' : `${others.length} other rooms are not done`}
        </summary>
        <ul className="room-check-list">
          {others.map((other) => (
            <li key={other.room.id}>
              <Button className="link-button" onPress={() => enterRoom(job, other.room.id)}>
                {other.room.name}
              </Button>
              <span className="quiet">{other.count} left</span>
            </li>
          ))}
        </ul>
      </details>
    </section>
  )
}

function openOf(pieces: readonly WalkPiece[]): readonly string[] {
  return pieces.flatMap(({ key, state }) => (state === 'open' ? [key] : []))
}
