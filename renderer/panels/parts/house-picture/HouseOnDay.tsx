import type { Job } from '../../../../core/project/job.ts'
import type { RoomId } from '../../../../core/project/sketch-records.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import { capital } from '../../../../core/words/text.ts'
import {
  roomDayKinds,
  roomDayLines,
  roomDayWords,
  roomsInState,
} from '../../../../core/work-order/house-day.ts'
import { housePicture, type PictureRoom } from '../../../../core/work-order/house-picture.ts'
import type { RoomDay } from '../../../../core/work-order/room-day.ts'
import { lastAnswer } from '../../../state/last-answer.ts'
import { HouseDrawing, type RoomLook } from './HouseDrawing.tsx'
import { useBox } from './use-box.ts'

const wide = { size: 13, head: 22 }
const narrow = { size: 10.5, head: 16 }

const pictureOf = lastAnswer(housePicture)

/** The house as it stands on one day, as large as its frame allows; a press picks a room set. */
export function HouseOnDay(props: {
  readonly job: Job
  readonly date: string
  readonly rooms: ReadonlyMap<RoomId, RoomDay>
  /** Style of the frame, which gives the size. */
  readonly className: string
  readonly onPick: (setId: RoomId) => void
}) {
  const { job, rooms } = props
  const { frame, width, height } = useBox<HTMLDivElement>()
  const system = job.header.unitSystem
  const { size, head } = width < 620 ? narrow : wide
  const picture = width === 0 ? null : pictureOf(job, width, height, head)
  function lookOf({ setId, roomId, name }: PictureRoom): RoomLook {
    const day = rooms.get(setId)
    if (day === undefined) return { className: 'house-noWork', over: null, lines: [], title: name }
    const lines = roomDayLines(day, system)
    const isWet = day.dryUntil !== null && day.kind === 'inWork'
    return {
      className: `house-${day.kind}`,
      over: isWet ? 'house-wet' : null,
      lines: setId === roomId ? lines : [],
      title: `${name}: ${lines.join(', ')}`,
    }
  }
  return (
    <div ref={frame} className={props.className}>
      {picture === null ? null : (
        <HouseDrawing
          picture={picture}
          label={`${dateWords(props.date, system)}. ${statesText(job, rooms)}`}
          size={size}
          lookOf={lookOf}
          onPick={props.onPick}
        >
          <DayPatterns />
        </HouseDrawing>
      )}
    </div>
  )
}

/** `In work: Kitchen, Bath. Ready: Study.` */
function statesText(job: Job, rooms: ReadonlyMap<RoomId, RoomDay>): string {
  return roomDayKinds
    .flatMap((kind) => {
      const names = roomsInState(job, rooms, kind)
      return names.length === 0 ? [] : [`${capital(roomDayWords[kind])}: ${names.join(', ')}.`]
    })
    .join(' ')
}

/** What the patterns mean, and how many rooms are so. */
export function DayLegend({ rooms }: { readonly rooms: ReadonlyMap<RoomId, RoomDay> }) {
  return (
    <div className="house-legend">
      {roomDayKinds.map((kind) => {
        const count = [...rooms.values()].filter((each) => each.kind === kind).length
        return (
          <span key={kind} className={count === 0 ? 'quiet' : undefined}>
            <svg width="26" height="16" aria-hidden="true">
              <rect x="1" y="1" width="24" height="14" className={`house-room house-${kind}`} />
            </svg>
            {roomDayWords[kind]} <strong className="figure">{count}</strong>
          </span>
        )
      })}
    </div>
  )
}

/** Told apart by their lines in black and white too. */
function DayPatterns() {
  return (
    <defs>
      <pattern id="house-work-lines" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" fill="var(--act-soft)" />
        <path d="M2 0 V8" stroke="var(--act)" strokeWidth="1.2" opacity="0.55" />
      </pattern>
      <pattern id="house-dry-hatch" width="9" height="9" patternUnits="userSpaceOnUse">
        <rect width="9" height="9" fill="var(--wait-soft)" />
        <path d="M-1 1 L1 -1 M0 9 L9 0 M8 10 L10 8" stroke="var(--wait)" strokeWidth="1.3" />
      </pattern>
      <pattern id="house-wet-hatch" width="12" height="12" patternUnits="userSpaceOnUse">
        <path d="M-1 1 L1 -1 M0 12 L12 0 M11 13 L13 11" stroke="var(--wait)" strokeWidth="1.5" />
      </pattern>
      <pattern id="house-closed-dots" width="7" height="7" patternUnits="userSpaceOnUse">
        <rect width="7" height="7" fill="var(--paper-sunk)" />
        <circle cx="2" cy="2" r="0.9" fill="var(--dark-soft)" />
      </pattern>
    </defs>
  )
}
