import { pointBetween } from '../../../../core/geometry/point.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import type { Opening, Room } from '../../../../core/project/sketch-records.ts'
import { openingSides } from '../../../../core/project/walls.ts'
import { toMillimetres } from '../../../../core/units/length.ts'

interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Around rooms with a margin, in millimeters. */
function boxOf(rooms: readonly Room[], margin: number): Box {
  const xs = rooms.flatMap(({ corners }) => corners.map(({ x }) => toMillimetres(x)))
  const ys = rooms.flatMap(({ corners }) => corners.map(({ y }) => toMillimetres(y)))
  const [x, y] = [Math.min(...xs) - margin, Math.min(...ys) - margin]
  return { x, y, width: Math.max(...xs) + margin - x, height: Math.max(...ys) + margin - y }
}

/** One room as large as its place; what it shares is open in its wall like its own. */
export function RoomPicture({ job, room }: { readonly job: Job; readonly room: Room }) {
  const box = boxOf([room], 200)
  const pixel = Math.max(box.width, box.height) / 84
  return (
    <svg className="tape-picture" viewBox={viewBox(box)} aria-hidden="true">
      <RoomShape job={job} room={room} pixel={pixel} />
    </svg>
  )
}

/** Rooms of a storey as they are set against each other. */
export function StoreyPicture(props: {
  readonly job: Job
  readonly name: string
  readonly rooms: readonly Room[]
}) {
  const { job, name, rooms } = props
  const box = boxOf(rooms, 300)
  const pixel = Math.max(box.width / 330, box.height / 240)
  return (
    <figure className="tape-plan">
      <figcaption className="label">{name}</figcaption>
      <svg
        viewBox={viewBox(box)}
        role="img"
        aria-label={`${name}: ${rooms.map((room) => room.name).join(', ')}`}
      >
        {rooms.map((room) => (
          <g key={room.id}>
            <RoomShape job={job} room={room} pixel={pixel} />
            <RoomName room={room} pixel={pixel} />
          </g>
        ))}
      </svg>
    </figure>
  )
}

function viewBox({ x, y, width, height }: Box): string {
  return `${x} ${y} ${width} ${height}`
}

/** Name in the middle, as large as the room allows, and never too small to read. */
function RoomName({ room, pixel }: { readonly room: Room; readonly pixel: number }) {
  const box = boxOf([room], 0)
  const fitting = Math.min((box.width * 1.6) / Math.max(4, room.name.length), box.height * 0.5)
  const size = Math.max(9 * pixel, Math.min(13 * pixel, fitting))
  return (
    <text x={box.x + box.width / 2} y={box.y + box.height / 2} fontSize={size} className="tape-room-name">
      {room.name}
    </text>
  )
}

function RoomShape(props: { readonly job: Job; readonly room: Room; readonly pixel: number }) {
  const { job, room, pixel } = props
  const points = room.corners.map(({ x, y }) => `${toMillimetres(x)},${toMillimetres(y)}`).join(' ')
  const openings = records(job.openings).filter(
    (opening) => opening.roomId === room.id || opening.far?.roomId === room.id,
  )
  return (
    <g>
      <polygon points={points} className="tape-room" strokeWidth={1.75 * pixel} />
      {openings.map((opening) => (
        <OpeningMark key={opening.id} job={job} room={room} opening={opening} pixel={pixel} />
      ))}
    </g>
  )
}

/** The wall cut away; a window has its glass line, a fireplace and the like a heavy one. */
function OpeningMark(props: {
  readonly job: Job
  readonly room: Room
  readonly opening: Opening
  readonly pixel: number
}) {
  const { job, room, opening, pixel } = props
  const { near, far } = openingSides(job, opening)
  const side = near?.room.id === room.id ? near : far
  if (side === null) return null
  const [a, b] = [side.place.from, side.place.to].map((at) => {
    const point = pointBetween(side.wall.start, side.wall.end, at / side.wall.length)
    return { x: toMillimetres(point.x), y: toMillimetres(point.y) }
  })
  if (a === undefined || b === undefined) return null
  const ends = { x1: a.x, y1: a.y, x2: b.x, y2: b.y }
  const isWay = opening.kind === 'door' || opening.kind === 'casedOpening'
  return (
    <g>
      <line {...ends} className="tape-gap" strokeWidth={4 * pixel} />
      {isWay ? null : <line {...ends} className={`tape-mark tape-${opening.kind}`} strokeWidth={2 * pixel} />}
    </g>
  )
}
