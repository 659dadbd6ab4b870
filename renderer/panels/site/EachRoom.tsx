import { type ReactNode, useState } from 'react'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { Choice } from '../parts/Choice.tsx'

/** A page for one room of a set; where a set has several, the room is chosen first. */
export function EachRoom(props: {
  readonly job: Job
  readonly roomIds: readonly RoomId[]
  readonly children: (roomId: RoomId) => ReactNode
}) {
  const { job, roomIds } = props
  const [chosen, setChosen] = useState<RoomId | null>(null)
  const roomId = roomIds.find((id) => id === chosen) ?? roomIds[0]
  if (roomId === undefined) return null
  return (
    <>
      {roomIds.length < 2 ? null : (
        <div className="tab-pad">
          <Choice
            label="Room"
            options={roomIds.map((id) => ({ id, label: job.rooms[id]?.name ?? id }))}
            chosen={roomId}
            onChoose={setChosen}
          />
        </div>
      )}
      {props.children(roomId)}
    </>
  )
}
