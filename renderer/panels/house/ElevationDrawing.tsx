import { useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import type { HeightPoint } from '../../../core/geometry/height-line.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { type OpeningPart, openingParts, surfaceKey } from '../../../core/project/surface-ref.ts'
import {
  type ElevationOpening,
  roomElevations,
  type WallElevation as WallSeen,
} from '../../../core/quantities/elevation.ts'
import { bandOutline, holeOutline, lightOutline } from '../../../core/quantities/elevation-outlines.ts'
import { formatLength, type LengthUnitSystem } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { useJob, viewStore } from '../../state/app.ts'

type WallLine = readonly HeightPoint[]

const paper = { width: 340, height: 210, left: 40, right: 12, top: 10, bottom: 24 }

/** One wall of the room drawn square on and to scale: zones, trim, openings, and in the acting colour every edge that is cut in. */
export function ElevationDrawing(props: { readonly room: Room; readonly pickedKey: string | null }) {
  const job = useJob()
  const { room, pickedKey } = props
  const walls = useMemo(() => roomElevations(job, room.id), [job, room.id])
  const [chosen, setChosen] = useState(0)
  const shows = (wall: WallSeen | undefined) => wall !== undefined && keysOn(wall).includes(pickedKey ?? '')
  const found = walls.findIndex(shows)
  const index = found >= 0 && !shows(walls[chosen]) ? found : chosen
  const wall = walls[index]
  if (wall === undefined) return null
  return (
    <figure className="elevation">
      <figcaption>
        <span className="segmented" role="toolbar" aria-label="Wall to look at">
          {walls.map((one, at) => (
            <Button
              key={one.wallId}
              className="segment"
              aria-pressed={at === index}
              aria-label={capital(one.name)}
              onPress={() => {
                setChosen(at)
                viewStore.setState({ surfaceKey: one.zones[0]?.key ?? null })
              }}
            >
              {one.name.replace('wall ', '')}
            </Button>
          ))}
        </span>
        <span className="quiet cut-in-sign">cut in</span>
      </figcaption>
      <Drawing wall={wall} system={job.header.unitSystem} pickedKey={pickedKey} />
    </figure>
  )
}

/** Keys of the surfaces that show on a wall. */
function keysOn(wall: WallSeen): readonly string[] {
  return [
    ...wall.zones.map((zone) => zone.key),
    ...wall.trim.map((run) => run.key),
    ...wall.openings.flatMap((opening) => openingParts.map((part) => partKey(opening, part))),
  ]
}

function partKey({ openingId, side }: ElevationOpening, part: OpeningPart): string {
  return surfaceKey({ kind: 'opening', openingId, side, part })
}

function Drawing(props: {
  readonly wall: WallSeen
  readonly system: LengthUnitSystem
  readonly pickedKey: string | null
}) {
  const { wall, system, pickedKey } = props
  const top = Math.max(...wall.ceiling.map((point) => point.height))
  const floor = Math.min(...wall.floor.map((point) => point.height))
  const scale = Math.min(
    (paper.width - paper.left - paper.right) / wall.length,
    (paper.height - paper.top - paper.bottom) / Math.max(top - floor, 1),
  )
  const x = (at: number) => paper.left + (wall.startsAt === 'right' ? wall.length - at : at) * scale
  const y = (height: number) => paper.top + (top - height) * scale
  const points = (line: WallLine) => line.map((point) => `${x(point.at)},${y(point.height)}`).join(' ')
  const place = { x, y, points }
  return (
    <svg
      viewBox={`0 0 ${paper.width} ${Math.ceil(paper.top + (top - floor) * scale + paper.bottom)}`}
      role="img"
      aria-label={`${capital(wall.name)} drawn to scale, ${formatLength(Math.round(wall.length), system)} long`}
    >
      {wall.zones.map((zone) => (
        <Shape
          key={zone.key}
          name="elevation-zone"
          points={points(bandOutline(zone.lower, zone.upper, { from: 0, to: wall.length }))}
          surface={zone.key}
          pickedKey={pickedKey}
        />
      ))}
      {wall.trim.flatMap((run) =>
        run.stretches.map((stretch) => (
          <Shape
            key={`${run.key} ${stretch.from}`}
            name="elevation-trim"
            points={points(bandOutline(run.lower, run.upper, stretch))}
            surface={run.key}
            pickedKey={pickedKey}
          />
        )),
      )}
      {wall.openings.map((opening) => (
        <OpeningDrawing key={opening.openingId} opening={opening} place={place} pickedKey={pickedKey} />
      ))}
      {wall.edges
        .filter((edge) => edge.kind === 'cutIn')
        .map(({ line }) => (
          <polyline key={points(line)} points={points(line)} className="elevation-cut" />
        ))}
      <Dimensions wall={wall} place={place} top={top} floor={floor} system={system} />
    </svg>
  )
}

interface PlaceOnPaper {
  readonly x: (at: number) => number
  readonly y: (height: number) => number
  readonly points: (line: WallLine) => string
}

/** A part that is a surface of its own; a click picks it, as in the list below, which is there for the keyboard. */
function Shape(props: {
  readonly name: string
  readonly points: string
  readonly surface: string | null
  readonly pickedKey: string | null
}) {
  const isPicked = props.surface !== null && props.surface === props.pickedKey
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the list of surfaces offers the same picks to keys
    <polygon
      points={props.points}
      className={`${props.name}${isPicked ? ' is-picked' : ''}`}
      onClick={() => props.surface !== null && viewStore.setState({ surfaceKey: props.surface })}
    />
  )
}

function OpeningDrawing(props: {
  readonly opening: ElevationOpening
  readonly place: PlaceOnPaper
  readonly pickedKey: string | null
}) {
  const { opening, place, pickedKey } = props
  const within = opening.slab !== null ? 'slab' : opening.sash.length > 0 ? 'sash' : null
  const frames = [
    { part: 'casing' as const, outline: opening.casing },
    { part: 'stool' as const, outline: opening.stool },
  ]
  return (
    <>
      {frames.map(({ part, outline }) =>
        outline === null ? null : (
          <Shape
            key={part}
            name="elevation-trim"
            points={place.points(lightOutline(outline))}
            surface={partKey(opening, part)}
            pickedKey={pickedKey}
          />
        ),
      )}
      <Shape
        name="elevation-hole"
        points={place.points(holeOutline(opening))}
        surface={within === null ? null : partKey(opening, within)}
        pickedKey={pickedKey}
      />
      <g className="elevation-lights">
        {[...opening.sash, ...opening.lights].map((light) => (
          <path
            key={`${light.from} ${light.to} ${light.bottom} ${light.top}`}
            d={`M${place.points(lightOutline(light))}Z`}
          />
        ))}
      </g>
    </>
  )
}

function Dimensions(props: {
  readonly wall: WallSeen
  readonly place: PlaceOnPaper
  readonly top: number
  readonly floor: number
  readonly system: LengthUnitSystem
}) {
  const { wall, place, top, floor, system } = props
  const ends = [place.x(0), place.x(wall.length)]
  const [left, right] = [Math.min(...ends), Math.max(...ends)]
  const low = place.y(floor) + 9
  const aside = left - 8
  return (
    <g className="elevation-size">
      <path d={`M${left} ${low}H${right}M${left - 3} ${low + 3}l6 -6M${right - 3} ${low + 3}l6 -6`} />
      <text x={(left + right) / 2} y={low + 12} textAnchor="middle">
        {formatLength(Math.round(wall.length), system)}
      </text>
      <path
        d={`M${aside} ${place.y(top)}V${place.y(floor)}M${aside - 3} ${place.y(top) + 3}l6 -6M${aside - 3} ${place.y(floor) + 3}l6 -6`}
      />
      <text
        x={aside - 6}
        y={(place.y(top) + place.y(floor)) / 2}
        textAnchor="middle"
        transform={`rotate(-90 ${aside - 6} ${(place.y(top) + place.y(floor)) / 2})`}
      >
        {formatLength(Math.round(top - floor), system)}
      </text>
    </g>
  )
}
