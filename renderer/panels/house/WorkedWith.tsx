import { type Job, records } from '../../../core/project/job.ts'
import { mainRoomOf, suggestedMainRoom } from '../../../core/project/room-sets.ts'
import type { Room, RoomId } from '../../../core/project/sketch-records.ts'
import { useJob } from '../../state/app.ts'
import { Choice } from '../parts/Choice.tsx'

/** The room a small one is worked with: one sheet, one row of the calendar, and it follows the order of that room. */
export function WorkedWith(props: {
  readonly room: Room
  readonly onChoose: (roomId: RoomId | null) => void
}) {
  const { room, onChoose } = props
  const job = useJob()
  return (
    <Choice
      label="Worked with"
      options={roomSetOptions(job, room)}
      chosen={room.workedWith ?? 'suggested'}
      onChoose={(chosen) => onChoose(chosen === 'suggested' ? null : chosen)}
    />
  )
}

interface RoomSetOption {
  readonly id: RoomId | 'suggested'
  readonly label: string
}

/** As suggested, alone, or with a room of the same storey that is not itself worked with this one. */
function roomSetOptions(job: Job, room: Room): readonly RoomSetOption[] {
  const suggested = suggestedMainRoom(job, room)
  const name = suggested === null ? null : (job.rooms[suggested]?.name ?? suggested)
  const others = records(job.rooms).filter(
    (other) =>
      other.id === room.workedWith ||
      (other.id !== room.id && other.storeyId === room.storeyId && mainRoomOf(job, other.id) === other.id),
  )
  return [
    { id: 'suggested', label: name === null ? 'No other room' : `${name} (by its door)` },
    ...(name === null ? [] : [{ id: room.id, label: 'No other room' }]),
    ...others
      .filter(({ id }) => id !== room.id && id !== suggested)
      .map(({ id, name: label }) => ({ id, label })),
  ]
}
