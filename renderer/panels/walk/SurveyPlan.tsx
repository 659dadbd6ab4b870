import { type Job, records } from '../../../core/project/job.ts'
import type { Opening, Room, RoomId } from '../../../core/project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../../../core/project/surface-ref.ts'
import { roomWalls, type Wall, wallLetter } from '../../../core/project/walls.ts'
import { toMillimetres } from '../../../core/units/length.ts'
import { roomMarks } from './mark-places.ts'
import { CountMark, PhotoMark } from './SurveyMarks.tsx'
import {
  alongWall,
  boxOf,
  type DrawnSide,
  firstPart,
  inwardOf,
  openingCount,
  openingKeys,
  openingMark,
  sidesOf,
  wallCount,
  wallKeys,
} from './survey-places.ts'

/** Picks are broad: a hand on a touch pad hits a wall within so many millimetres inside its line. */
const wallBand = 320

interface SurveyPlanProps {
  readonly job: Job
  readonly rooms: readonly Room[]
  /** Only this room is drawn, as large as the paper allows. */
  readonly only: Room | null
  readonly roomId: string | null
  readonly pickedKey: string | null
  readonly counts: ReadonlyMap<string, number>
  /** Photos by room. */
  readonly photos: ReadonlyMap<string, number>
  readonly onPick: (roomId: RoomId, surface: SurfaceRef) => void
}

/** The plan of a storey for pointing at what was looked at: rooms (their ceiling), walls and openings. */
export function SurveyPlan(props: SurveyPlanProps) {
  const { job, rooms, only } = props
  const drawn = only === null ? rooms : [only]
  const box = boxOf(drawn)
  const pixel = Math.max(box.width, box.height) / 520
  const sides = records(job.openings).flatMap((opening) =>
    sidesOf(job, opening).map((side) => ({ opening, side })),
  )
  return (
    <svg
      className="survey-plan"
      viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
      role="img"
      aria-label="Plan for picking a wall, a ceiling or an opening with the pointer. The list beside it does the same by keyboard."
    >
      <defs>
        <pattern id="picked-hatch" width={14 * pixel} height={14 * pixel} patternUnits="userSpaceOnUse">
          <path
            d={`M0 ${14 * pixel} L${14 * pixel} 0`}
            stroke="var(--act)"
            strokeWidth={1.4 * pixel}
            opacity="0.55"
          />
        </pattern>
      </defs>
      {drawn.map((room) => (
        <RoomShape
          key={room.id}
          {...props}
          room={room}
          pixel={pixel}
          openings={sides
            .filter(
              ({ opening, side }) =>
                side.room.id === room.id && openingCount(props.counts, opening, side) > 0,
            )
            .map(({ side }) => openingMark(side, pixel))}
        />
      ))}
      {sides.map(({ opening, side }) =>
        drawn.some((room) => room.id === side.room.id) ? (
          <OpeningMark
            key={`${opening.id}-${side.side}`}
            {...props}
            opening={opening}
            side={side}
            pixel={pixel}
          />
        ) : null,
      )}
    </svg>
  )
}

function RoomShape(
  props: SurveyPlanProps & {
    readonly room: Room
    readonly pixel: number
    /** Where openings of the room have counts. */
    readonly openings: readonly { readonly x: number; readonly y: number }[]
  },
) {
  const { room, roomId, pickedKey, onPick, pixel, counts } = props
  const ceiling: SurfaceRef = { kind: 'ceiling', roomId: room.id }
  const points = room.corners
    .map((corner) => `${toMillimetres(corner.x)},${toMillimetres(corner.y)}`)
    .join(' ')
  const isPicked = pickedKey === surfaceKey(ceiling)
  const found = counts.get(surfaceKey(ceiling)) ?? 0
  const marks = roomMarks(room, (wall) => wallCount(counts, room.id, wall), found > 0, props.openings, pixel)
  const { name } = marks
  return (
    <g>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the list beside the plan does the same by keyboard */}
      <polygon
        points={points}
        className={room.id === roomId ? 'plan-room plan-room-open' : 'plan-room'}
        strokeWidth={(room.id === roomId ? 3 : 1.5) * pixel}
        onClick={() => onPick(room.id, ceiling)}
      />
      {isPicked ? <polygon points={points} fill="url(#picked-hatch)" pointerEvents="none" /> : null}
      {roomWalls(room).map((wall) => (
        <WallBand key={wall.id} {...props} wall={wall} />
      ))}
      {name.lines.map((line, index) => (
        <text
          key={line}
          x={name.x}
          y={name.y + (index - (name.lines.length - 1) / 2) * name.size * 1.15}
          fontSize={name.size}
          className="plan-room-name"
        >
          {line}
        </text>
      ))}
      <CountMark count={found} {...marks.ceiling} pixel={pixel} />
      {roomWalls(room).map((wall) => {
        const at = marks.walls.get(wall.id)
        return at === undefined ? null : (
          <CountMark key={wall.id} count={wallCount(counts, room.id, wall)} {...at} pixel={pixel} />
        )
      })}
      <PhotoMark count={props.photos.get(room.id) ?? 0} x={name.x} y={name.y - 20 * pixel} pixel={pixel} />
    </g>
  )
}

function WallBand(
  props: SurveyPlanProps & { readonly room: Room; readonly wall: Wall; readonly pixel: number },
) {
  const { room, wall, pickedKey, onPick, pixel, roomId } = props
  const inward = inwardOf(wall)
  const [start, end] = [wall.start, wall.end].map((point) => ({
    x: toMillimetres(point.x) + (inward.x * wallBand) / 2,
    y: toMillimetres(point.y) + (inward.y * wallBand) / 2,
  }))
  if (start === undefined || end === undefined) return null
  const isPicked = wallKeys(room.id, wall).includes(pickedKey ?? '')
  const middle = { x: (start.x + end.x) / 2, y: (start.y + end.y) / 2 }
  return (
    <g>
      {isPicked ? (
        <line
          x1={toMillimetres(wall.start.x)}
          y1={toMillimetres(wall.start.y)}
          x2={toMillimetres(wall.end.x)}
          y2={toMillimetres(wall.end.y)}
          className="plan-wall-picked"
          strokeWidth={7 * pixel}
        />
      ) : null}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the list beside the plan does the same by keyboard */}
      <line
        x1={start.x}
        y1={start.y}
        x2={end.x}
        y2={end.y}
        className="plan-wall"
        strokeWidth={wallBand}
        onClick={() => onPick(room.id, { kind: 'wall', roomId: room.id, wallId: wall.id, zone: 'whole' })}
      />
      {room.id === roomId ? (
        <text
          x={middle.x + inward.x * 4 * pixel}
          y={middle.y + inward.y * 4 * pixel}
          fontSize={11 * pixel}
          className="plan-wall-letter"
        >
          {wallLetter(wall.index)}
        </text>
      ) : null}
    </g>
  )
}

function OpeningMark(
  props: SurveyPlanProps & { readonly opening: Opening; readonly side: DrawnSide; readonly pixel: number },
) {
  const { opening, side, pickedKey, onPick, pixel, counts } = props
  const [from, to] = [side.from, side.to].map((at) => alongWall(side.wall, at))
  if (from === undefined || to === undefined) return null
  const isPicked = openingKeys(opening, side.side).includes(pickedKey ?? '')
  const first = firstPart(opening, side.side)
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the list beside the plan does the same by keyboard
    <g
      onClick={() =>
        onPick(side.room.id, { kind: 'opening', openingId: opening.id, side: side.side, part: first })
      }
      className="plan-opening"
    >
      <line
        x1={from.x}
        y1={from.y}
        x2={to.x}
        y2={to.y}
        className={`plan-opening-line plan-opening-${opening.kind}${isPicked ? ' plan-opening-picked' : ''}`}
        strokeWidth={(isPicked ? 9 : 6) * pixel}
      />
      <line x1={from.x} y1={from.y} x2={to.x} y2={to.y} stroke="transparent" strokeWidth={16 * pixel} />
      <CountMark count={openingCount(counts, opening, side)} {...openingMark(side, pixel)} pixel={pixel} />
    </g>
  )
}
