import { polygonBounds } from '../../../../core/geometry/polygon.ts'
import { records } from '../../../../core/project/job.ts'
import type { Room } from '../../../../core/project/sketch-records.ts'
import { trimNouns } from '../../../../core/project/sketch-words.ts'
import { countsOf, sharedWith } from '../../../../core/sketch/tape-list/room-words.ts'
import { formatLength } from '../../../../core/units/length.ts'
import { keptItemWords } from '../../parts/words.ts'
import type { SeenLine, TapeReading } from './make-rooms.ts'
import { RoomPicture, StoreyPicture } from './RoomPicture.tsx'

/** What was understood, line by line, and how the rooms are set against each other. */
export function TapeRooms({ reading }: { readonly reading: TapeReading }) {
  const { plan, lines } = reading
  if (lines.length === 0) {
    return <p className="quiet tape-seen">The rooms come up here as you write, before anything is made.</p>
  }
  const storeys = records(plan.job.storeys).filter(({ id }) =>
    plan.drawn.rooms.some((room) => room.storeyId === id),
  )
  return (
    <div className="tape-seen">
      <ul className="tape-lines" aria-label="What was understood" aria-live="polite">
        {lines.map((seen) => (
          <SeenRow key={seen.line.number} reading={reading} seen={seen} />
        ))}
      </ul>
      {storeys.length === 0 ? null : (
        <div className="tape-plans">
          {storeys.map((storey) => (
            <StoreyPicture
              key={storey.id}
              job={plan.job}
              name={storey.name}
              rooms={plan.drawn.rooms.filter((room) => room.storeyId === storey.id)}
            />
          ))}
          <p className="quiet">
            Rooms are set against each other so that they share doors; move them later, or never. Walls with a
            window are taken as outside walls. Sizes of doors, windows and trim are the job's usual ones.
          </p>
        </div>
      )}
    </div>
  )
}

function SeenRow({ reading, seen }: { readonly reading: TapeReading; readonly seen: SeenLine }) {
  const { line, sentences, isStopped } = seen
  const roomId = reading.plan.roomIds.get(line.number)
  const room = roomId === undefined ? undefined : reading.plan.job.rooms[roomId]
  return (
    <li className={isStopped ? 'tape-line tape-line-stopped' : 'tape-line'}>
      {room === undefined ? null : <RoomPicture job={reading.plan.job} room={room} />}
      <div>
        {room === undefined ? (
          <Heading seen={seen} reading={reading} />
        ) : (
          <RoomWords reading={reading} room={room} />
        )}
        {sentences.map(({ sentence, weight }) => (
          <p key={sentence} className={weight === 'stop' ? 'tape-stop' : 'tape-say'}>
            {sentence}
          </p>
        ))}
      </div>
    </li>
  )
}

function Heading({ seen, reading }: { readonly seen: SeenLine; readonly reading: TapeReading }) {
  const { storey, ceilings, text } = seen.line
  if (storey !== null) return <h3 className="tape-heading">{storey.name}</h3>
  if (ceilings !== null) {
    return <h3 className="tape-heading">Ceilings {formatLength(ceilings, reading.job.header.unitSystem)}</h3>
  }
  return <p className="tape-typed">{text.trim()}</p>
}

function heightWords({ ceiling }: Room, show: (length: number) => string): string {
  if (ceiling.kind === 'flat') return `, ${show(ceiling.height)} high`
  if (ceiling.kind !== 'shed') return ''
  const [low, high] = [ceiling.startHeight, ceiling.endHeight].sort((a, b) => a - b).map(show)
  return `, sloping from ${low} to ${high}`
}

function RoomWords({ reading, room }: { readonly reading: TapeReading; readonly room: Room }) {
  const { job, drawn } = reading.plan
  const show = (length: number) => formatLength(length, job.header.unitSystem)
  const { min, max } = polygonBounds(room.corners)
  const [, , inner, corner] = room.corners
  const isLess = room.corners.length === 6 && inner !== undefined && corner !== undefined
  const less = isLess ? ` less ${show(inner.x - corner.x)} × ${show(max.y - inner.y)}` : ''
  const openings = records(job.openings).filter(
    (one) => one.roomId === room.id || one.far?.roomId === room.id,
  )
  const counted = [...new Set(openings.map(({ kind }) => kind))].map((kind) => ({
    kind,
    count: openings.filter((one) => one.kind === kind).length,
  }))
  const trim = drawn.trimRuns.filter((run) => run.roomId === room.id).map(({ kind }) => trimNouns[kind])
  const kept = drawn.keptItems
    .filter((item) => item.roomId === room.id)
    .map(({ kind, count }) => `${count} ${keptItemWords[kind]}${count === 1 ? '' : 's'}`)
  const radiators = drawn.builtItems.filter((item) => item.roomId === room.id).length
  const built = radiators === 0 ? [] : [`${radiators} ${radiators === 1 ? 'radiator' : 'radiators'}`]
  const beside = sharedWith(job, room.id)
  return (
    <>
      <p>
        <strong className="tape-name">{room.name}</strong>{' '}
        <span className="figure">
          {show(max.x - min.x)} × {show(max.y - min.y)}
          {less}
          {heightWords(room, show)}
        </span>
      </p>
      <p className="quiet">
        {[countsOf(counted), ...trim, ...built].join(', ')}
        {beside.length === 0 ? '' : `; shared with ${beside.join(', ')}`}
        {kept.length === 0 ? '' : `; stays: ${kept.join(', ')}`}
      </p>
    </>
  )
}
