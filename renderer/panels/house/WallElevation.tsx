import { useMemo, useState } from 'react'
import type { Job } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import { wallName } from '../../../core/project/sketch-words.ts'
import { surfaceKey } from '../../../core/project/surface-ref.ts'
import { wallLetter } from '../../../core/project/walls.ts'
import { finishMarks } from '../../../core/quantities/finish-marks.ts'
import { hasPart, partRef } from '../../../core/quantities/opening-parts.ts'
import type { HoleView, WallView } from '../../../core/quantities/wall-view.ts'
import { formatLength, type LengthUnitSystem } from '../../../core/units/length.ts'
import { useJob, viewStore } from '../../state/app.ts'
import { capital } from '../parts/words.ts'
import { bandOutline, cutInLines, type WallLine, wallViewsOf } from './elevation-lines.ts'

const paper = { width: 340, height: 210, left: 40, right: 12, top: 10, bottom: 24 }

/** One wall of the room drawn square on and to scale: zones, trim, openings, and in the acting colour every edge that is cut in. */
export function WallElevation(props: { readonly room: Room; readonly pickedKey: string | null }) {
  const job = useJob()
  const { room, pickedKey } = props
  const views = useMemo(() => wallViewsOf(job, room.id), [job, room.id])
  const [chosen, setChosen] = useState(0)
  const found = views.findIndex((view) => keysOn(job, view).includes(pickedKey ?? ''))
  const index = found >= 0 && !keysOn(job, views[chosen]).includes(pickedKey ?? '') ? found : chosen
  const view = views[index]
  if (view === undefined) return null
  return (
    <figure className="elevation">
      <figcaption>
        <span className="segmented" role="toolbar" aria-label="Wall to look at">
          {views.map((one, at) => (
            <button
              key={one.wall.id}
              type="button"
              className="segment"
              aria-pressed={at === index}
              onClick={() => {
                setChosen(at)
                viewStore.setState({ surfaceKey: one.zones[0]?.key ?? null })
              }}
            >
              <span className="unseen">Wall </span>
              {wallLetter(one.wall.index)}
            </button>
          ))}
        </span>
        <span className="quiet cut-in-sign">cut in</span>
      </figcaption>
      <Drawing job={job} views={views} index={index} view={view} pickedKey={pickedKey} />
    </figure>
  )
}

/** Keys of the surfaces that show on a wall. */
function keysOn(job: Job, view: WallView | undefined): readonly string[] {
  if (view === undefined) return []
  const markOf = finishMarks(job.finishes)
  return [
    ...view.zones.map((zone) => zone.key),
    ...view.bands.map((band) => bandKey(view, band.run.id)),
    ...view.holes.flatMap((hole) =>
      (['casing', 'jamb', 'slab', 'sash', 'stool'] as const)
        .filter((part) => hasPart(hole.placed.opening, hole.placed.side, part, markOf))
        .map((part) => surfaceKey(partRef(hole.placed.opening, hole.placed.side, part))),
    ),
  ]
}

function bandKey(view: WallView, trimRunId: WallView['bands'][number]['run']['id']): string {
  return surfaceKey({ kind: 'trim', roomId: view.room.id, trimRunId })
}

interface DrawingProps {
  readonly job: Job
  readonly views: readonly WallView[]
  readonly index: number
  readonly view: WallView
  readonly pickedKey: string | null
}

function Drawing(props: DrawingProps) {
  const { job, view, pickedKey } = props
  const system = job.header.unitSystem
  const top = Math.max(...view.ceiling.map((point) => point.height))
  const floor = Math.min(...view.floor.map((point) => point.height))
  const scale = Math.min(
    (paper.width - paper.left - paper.right) / view.wall.length,
    (paper.height - paper.top - paper.bottom) / Math.max(top - floor, 1),
  )
  // Seen from inside the room: where the room lies to the left of the wall, its start is on the right.
  const isMirrored = view.wall.inside !== 'right'
  const x = (at: number) => paper.left + (isMirrored ? view.wall.length - at : at) * scale
  const y = (height: number) => paper.top + (top - height) * scale
  const points = (line: WallLine) => line.map((point) => `${x(point.at)},${y(point.height)}`).join(' ')
  const place = { x, y, points, scale }
  return (
    <svg
      viewBox={`0 0 ${paper.width} ${Math.ceil(paper.top + (top - floor) * scale + paper.bottom)}`}
      role="img"
      aria-label={`${capital(wallName(view.wall))} drawn to scale, ${formatLength(Math.round(view.wall.length), system)} long`}
    >
      {view.zones.map((zone) => (
        <Shape
          key={zone.key}
          name="elevation-zone"
          points={points(bandOutline(zone.lower, zone.upper, 0, view.wall.length))}
          surface={zone.key}
          pickedKey={pickedKey}
        />
      ))}
      {view.bands.flatMap((band) =>
        band.stretches.map(({ from, to }) => (
          <Shape
            key={`${band.run.id} ${from}`}
            name="elevation-trim"
            points={points(bandOutline(band.lower, band.upper, from, to))}
            surface={bandKey(view, band.run.id)}
            pickedKey={pickedKey}
          />
        )),
      )}
      {view.holes.map((hole) => (
        <HoleDrawing key={hole.placed.opening.id} hole={hole} place={place} pickedKey={pickedKey} />
      ))}
      {cutInLines(job, props.views, props.index).map((line) => (
        <polyline key={points(line)} points={points(line)} className="elevation-cut" />
      ))}
      <Dimensions view={view} place={place} top={top} floor={floor} system={system} />
    </svg>
  )
}

interface PlaceOnPaper {
  readonly x: (at: number) => number
  readonly y: (height: number) => number
  readonly points: (line: WallLine) => string
  readonly scale: number
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

function corners(from: number, to: number, bottom: number, top: number): WallLine {
  return [
    { at: from, height: bottom },
    { at: to, height: bottom },
    { at: to, height: top },
    { at: from, height: top },
  ]
}

function HoleDrawing(props: {
  readonly hole: HoleView
  readonly place: PlaceOnPaper
  readonly pickedKey: string | null
}) {
  const { hole, place, pickedKey } = props
  const { opening, side } = hole.placed
  const key = (part: 'casing' | 'slab' | 'sash') => surfaceKey(partRef(opening, side, part))
  const within =
    opening.sash !== null && opening.slab === null ? 'sash' : opening.slab === null ? null : 'slab'
  return (
    <>
      {hole.casing === null ? null : (
        <Shape
          name="elevation-trim"
          points={place.points(corners(hole.outer.from, hole.outer.to, hole.outer.bottom, hole.outer.top))}
          surface={key('casing')}
          pickedKey={pickedKey}
        />
      )}
      <Shape
        name="elevation-hole"
        points={place.points(holeOutline(hole))}
        surface={within === null ? null : key(within)}
        pickedKey={pickedKey}
      />
      {within === 'sash' ? <Lights hole={hole} place={place} /> : null}
    </>
  )
}

/** The hole with its head, an arc drawn in sixteen chords. */
function holeOutline(hole: HoleView): WallLine {
  const { from, to, bottom, head } = hole.hole
  const feet = [
    { at: to, height: bottom },
    { at: from, height: bottom },
  ]
  if (head.kind === 'level') {
    return [...feet, { at: from, height: head.height }, { at: to, height: head.height }]
  }
  const arc = Array.from({ length: 17 }, (_, step) => {
    const at = from + ((to - from) * step) / 16
    const reach = Math.sqrt(Math.max(0, head.radius ** 2 - (at - head.centreAt) ** 2))
    return { at, height: head.centreHeight + reach }
  })
  return [...feet, ...arc]
}

/** Units, sash and lights as thin lines: how often the brush goes round glass. */
function Lights(props: { readonly hole: HoleView; readonly place: PlaceOnPaper }) {
  const { hole, place } = props
  const { sash } = hole.placed.opening
  const { from, to, bottom, top } = hole.placed.place
  if (sash === null) return null
  const rows = sash.lightsDown * (sash.operation === 'doubleHung' ? 2 : 1)
  const columns = sash.lightsAcross * sash.units
  const upright = Array.from(
    { length: columns - 1 },
    (_, step) => from + ((to - from) * (step + 1)) / columns,
  )
  const level = Array.from({ length: rows - 1 }, (_, step) => bottom + ((top - bottom) * (step + 1)) / rows)
  return (
    <g className="elevation-lights">
      {upright.map((at) => (
        <line key={at} x1={place.x(at)} x2={place.x(at)} y1={place.y(bottom)} y2={place.y(top)} />
      ))}
      {level.map((height) => (
        <line key={height} x1={place.x(from)} x2={place.x(to)} y1={place.y(height)} y2={place.y(height)} />
      ))}
    </g>
  )
}

function Dimensions(props: {
  readonly view: WallView
  readonly place: PlaceOnPaper
  readonly top: number
  readonly floor: number
  readonly system: LengthUnitSystem
}) {
  const { view, place, top, floor, system } = props
  const [left, right] = [place.x(0), place.x(view.wall.length)].sort((a, b) => a - b) as [number, number]
  const low = place.y(floor) + 9
  const aside = left - 8
  return (
    <g className="elevation-size">
      <path d={`M${left} ${low}H${right}M${left - 3} ${low + 3}l6 -6M${right - 3} ${low + 3}l6 -6`} />
      <text x={(left + right) / 2} y={low + 12} textAnchor="middle">
        {formatLength(Math.round(view.wall.length), system)}
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
