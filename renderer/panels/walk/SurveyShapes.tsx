import { Fragment, memo } from 'react'
import type { Room } from '../../../core/project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../../../core/project/surface-ref.ts'
import { openingKinds } from '../../../core/project/vocabulary.ts'
import { roomWalls, type Wall, wallLetter } from '../../../core/project/walls.ts'
import { toMillimetres } from '../../../core/units/length.ts'
import { roomMarks } from './mark-places.ts'
import { type OpeningSide, type Pointed, pickBand } from './pointed.ts'
import { CountMark, PhotoMark } from './SurveyMarks.tsx'
import {
  alongWall,
  type DrawnSide,
  inwardOf,
  openingCount,
  openingKeys,
  openingMark,
  wallCount,
  wallKeys,
} from './survey-places.ts'

interface ShapesProps {
  readonly rooms: readonly Room[]
  readonly sides: readonly OpeningSide[]
  readonly roomId: string | null
  readonly pickedKey: string | null
  readonly counts: ReadonlyMap<string, number>
  /** Photos by room. */
  readonly photos: ReadonlyMap<string, number>
  /** Length on the plan of a point of the screen. */
  readonly pixel: number
}

/** All that is drawn of the storey: one path for all openings of a kind, because an element for each takes longer than the rest of the page. */
export const SurveyShapes = memo(function SurveyShapes(props: ShapesProps) {
  const { sides, counts, pickedKey, pixel } = props
  const counted = sides.filter(({ opening, side }) => openingCount(counts, opening, side) > 0)
  const picked = sides.find(({ opening, side }) => openingKeys(opening, side.side).includes(pickedKey ?? ''))
  return (
    <>
      {props.rooms.map((room) => (
        <RoomShape
          key={room.id}
          {...props}
          room={room}
          openings={counted
            .filter(({ side }) => side.room.id === room.id)
            .map(({ side }) => openingMark(side, pixel))}
        />
      ))}
      {openingKinds.map((kind) => (
        <path
          key={kind}
          d={sides
            .filter(({ opening }) => opening.kind === kind)
            .map(({ side }) => lineOf(side))
            .join('')}
          className={`plan-opening-line plan-opening-${kind}`}
          strokeWidth={6 * pixel}
        />
      ))}
      {picked === undefined ? null : (
        <path
          d={lineOf(picked.side)}
          className="plan-opening-line plan-opening-picked"
          strokeWidth={9 * pixel}
        />
      )}
      {counted.map(({ opening, side }) => (
        <CountMark
          key={`${opening.id}-${side.side}`}
          count={openingCount(counts, opening, side)}
          {...openingMark(side, pixel)}
          pixel={pixel}
        />
      ))}
    </>
  )
})

function lineOf({ wall, from, to }: DrawnSide): string {
  const [start, end] = [alongWall(wall, from), alongWall(wall, to)]
  return `M${start.x} ${start.y}L${end.x} ${end.y}`
}

function RoomShape(
  props: ShapesProps & {
    readonly room: Room
    /** Where openings of the room have counts. */
    readonly openings: readonly { readonly x: number; readonly y: number }[]
  },
) {
  const { room, roomId, pickedKey, pixel, counts } = props
  const ceiling: SurfaceRef = { kind: 'ceiling', roomId: room.id }
  const points = room.corners
    .map((corner) => `${toMillimetres(corner.x)},${toMillimetres(corner.y)}`)
    .join(' ')
  const found = counts.get(surfaceKey(ceiling)) ?? 0
  const marks = roomMarks(room, (wall) => wallCount(counts, room.id, wall), found > 0, props.openings, pixel)
  const { name } = marks
  return (
    <g>
      <polygon
        points={points}
        className={room.id === roomId ? 'plan-room plan-room-open' : 'plan-room'}
        strokeWidth={(room.id === roomId ? 3 : 1.5) * pixel}
      />
      {pickedKey === surfaceKey(ceiling) ? (
        <polygon points={points} fill="url(#picked-hatch)" pointerEvents="none" />
      ) : null}
      {room.id === roomId ? <OpenWalls room={room} pickedKey={pickedKey} pixel={pixel} /> : null}
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

/** The walls of the room that is walked: their letters, and the picked one. */
function OpenWalls(props: {
  readonly room: Room
  readonly pickedKey: string | null
  readonly pixel: number
}) {
  const { room, pickedKey, pixel } = props
  return roomWalls(room).map((wall) => {
    const middle = alongWall(wall, wall.length / 2)
    const inward = inwardOf(wall)
    const inset = pickBand / 2 + 4 * pixel
    return (
      <Fragment key={wall.id}>
        {wallKeys(room.id, wall).includes(pickedKey ?? '') ? (
          <path d={wallLine(wall, 0)} className="plan-wall-picked" strokeWidth={7 * pixel} />
        ) : null}
        <text
          x={middle.x + inward.x * inset}
          y={middle.y + inward.y * inset}
          fontSize={11 * pixel}
          className="plan-wall-letter"
        >
          {wallLetter(wall.index)}
        </text>
      </Fragment>
    )
  })
}

/** What the pointer is on and a press would pick; a room shows that itself. */
export function PointedShape({ pointed, pixel }: { readonly pointed: Pointed; readonly pixel: number }) {
  switch (pointed.kind) {
    case 'ceiling':
      return null
    case 'wall':
      return (
        <path d={wallLine(pointed.wall, pickBand / 2)} className="plan-wall-pointed" strokeWidth={pickBand} />
      )
    case 'opening':
      return (
        <path
          d={lineOf(pointed.side)}
          className="plan-opening-line plan-opening-picked"
          strokeWidth={6 * pixel}
        />
      )
  }
}

/** Along a wall, so many millimetres inside it. */
function wallLine(wall: Wall, inside: number): string {
  const inward = inwardOf(wall)
  const [start, end] = [0, wall.length].map((at) => {
    const { x, y } = alongWall(wall, at)
    return `${x + inward.x * inside} ${y + inward.y * inside}`
  })
  return `M${start}L${end}`
}
