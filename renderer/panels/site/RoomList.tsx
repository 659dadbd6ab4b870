import { memo } from 'react'
import { ListBox, ListBoxItem } from 'react-aria-components'
import type { RoomProgress } from '../../../core/progress/room-progress.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { useDrawnCount } from '../parts/use-drawn-count.ts'

const stateWords: Readonly<Record<RoomProgress['state'], string>> = {
  untouched: 'not begun',
  underWay: 'under way',
  drying: 'drying',
  finished: 'finished',
}

/** Height of a line, in pixels, where it is lowest. */
const leastLine = 36

/** The rooms in the order of the work, each with what is left; a room that stays the same is not put together again. */
export const RoomList = memo(function RoomList(props: {
  readonly rooms: readonly RoomProgress[]
  readonly system: LengthUnitSystem
  readonly roomId: string | null
  readonly onPick: (roomId: RoomId) => void
}) {
  const drawn = useDrawnCount(props.rooms.length, Math.ceil(window.innerHeight / leastLine))
  return (
    <ListBox
      aria-label="Rooms"
      className="room-list"
      selectionMode="single"
      disallowEmptySelection
      items={props.rooms.slice(0, drawn)}
      dependencies={[props.system]}
      selectedKeys={props.roomId === null ? [] : [props.roomId]}
      onSelectionChange={(keys) => {
        const [key] = keys === 'all' ? [] : [...keys]
        const picked = props.rooms.find((room) => room.roomId === key)
        if (picked !== undefined) props.onPick(picked.roomId)
      }}
    >
      {(room) => (
        <ListBoxItem id={room.roomId} textValue={room.name} className="room-line">
          <span className="room-line-name">{room.name}</span>
          <span className={`room-state room-state-${room.state}`}>{stateWords[room.state]}</span>
          <ProgressBar share={room.share} />
          <span className="room-line-left">
            {room.state === 'drying' && room.dryAt !== null
              ? `dry ${momentWords(room.dryAt, props.system)}`
              : `${room.steps.settled} of ${room.steps.total} steps, ${formatMinutes(room.leftMinutes)} left`}
          </span>
        </ListBoxItem>
      )}
    </ListBox>
  )
})

/** Filled by minutes of work settled; the text beside it says the same. */
function ProgressBar({ share }: { readonly share: number }) {
  return (
    <span className="progress-bar" aria-hidden="true">
      <span style={{ width: `${Math.round(share * 100)}%` }} />
    </span>
  )
}
