import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { Room, RoomId } from '../../../core/project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../../../core/project/surface-ref.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { photoCounts } from '../../../core/work-order/room-photos.ts'
import { viewStore } from '../../state/app.ts'
import { Choice } from '../parts/Choice.tsx'
import { Tick } from '../parts/Tick.tsx'
import { SurveyPlan } from './SurveyPlan.tsx'
import { enterRoom, goToRoom } from './walk-actions.ts'

/** The plan to pick from, and the way from room to room. */
export function WalkMap(props: {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly room: Room
  readonly pickedKey: string | null
  readonly counts: ReadonlyMap<string, number>
  readonly onPicked: () => void
  /** Nothing is left to look at in the room, so that the next one is what comes now. */
  readonly isDone: boolean
}) {
  const { job, takeoff, room, pickedKey, counts, onPicked } = props
  const [isClose, setClose] = useState(false)
  const photos = useMemo(() => photoCounts(job), [job])
  const rooms = records(job.rooms)
  const onStorey = rooms.filter((each) => each.storeyId === room.storeyId)

  function pick(roomId: RoomId, ref: SurfaceRef) {
    viewStore.setState({ roomId, surfaceKey: nearestKey(takeoff, roomId, ref) })
    onPicked()
  }

  return (
    <div className="walk-map">
      <div className="walk-map-head">
        <Choice
          label="Floor"
          options={records(job.storeys).map((each) => ({ id: each.id, label: each.name }))}
          chosen={room.storeyId}
          onChoose={(storeyId) => {
            const first = rooms.find((each) => each.storeyId === storeyId)
            if (first !== undefined) enterRoom(job, first.id)
          }}
        />
        <Choice
          label="Room"
          options={onStorey.map((each) => ({ id: each.id, label: each.name }))}
          chosen={room.id}
          onChoose={(roomId) => enterRoom(job, roomId)}
        />
        <span className="button-row">
          <Button className="plain-button" aria-label="Previous room (P)" onPress={() => goToRoom(-1)}>
            ‹
          </Button>
          <Button className={props.isDone ? 'act-button' : 'plain-button'} onPress={() => goToRoom(1)}>
            Next room <span className="key-hint">N</span>
          </Button>
        </span>
      </div>
      <SurveyPlan
        job={job}
        rooms={onStorey}
        only={isClose ? room : null}
        roomId={room.id}
        pickedKey={pickedKey}
        counts={counts}
        photos={photos}
        onPick={pick}
      />
      <div className="walk-map-foot">
        <Tick isOn={isClose} onChange={setClose}>
          Only {room.name}, closer
        </Tick>
      </div>
    </div>
  )
}

/** A pick in the plan means a wall as a whole; where a rail parts it, its upper part. An opening means a part it has. */
function nearestKey(takeoff: Takeoff, roomId: string, ref: SurfaceRef): string | null {
  const key = surfaceKey(ref)
  if (takeoff.byKey.has(key)) return key
  const like = takeoff.surfaces.find((each) => {
    if (each.roomId !== roomId) return false
    const { surface } = each
    if (ref.kind === 'wall' && surface.kind === 'wall') {
      return surface.wallId === ref.wallId && surface.zone !== 'lower'
    }
    return ref.kind === 'opening' && surface.kind === 'opening' && surface.openingId === ref.openingId
  })
  return like?.key ?? null
}
