import { useMemo } from 'react'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { roomElevations, type WallElevation } from '../../../core/quantities/elevation.ts'
import { capital } from '../../../core/words/text.ts'
import type { HouseColors } from '../../../core/work-order/house-colors.ts'
import { wallGlass, wallLetters, wallOnDrawing, wallShapes } from '../../../core/work-order/wall-colors.ts'
import { LeftPattern, type PickSurface } from './HouseInColors.tsx'

/** Of the words below a wall, with the gap to the next one, in pixels. */
const captionHeight = 32

/** The walls of a room square on in their colors, all to one scale; a click picks what it hits. */
export function WallsInColors(props: {
  readonly job: Job
  readonly colors: HouseColors
  readonly roomId: RoomId
  readonly width: number
  readonly height: number
  readonly onPick: PickSurface
}) {
  const { job, roomId, width, height } = props
  const walls = useMemo(() => roomElevations(job, roomId), [job, roomId])
  const scale = scaleOf(walls, width, height)
  return (
    <div className="color-walls">
      {walls.map((wall) => (
        <WallInColors key={wall.wallId} {...props} wall={wall} scale={scale} />
      ))}
    </div>
  )
}

/** Two beside one another, all of them in sight unless they would be too small to pick from. */
function scaleOf(walls: readonly WallElevation[], width: number, height: number): number {
  const longest = Math.max(1, ...walls.map(({ length }) => length))
  const tallest = Math.max(1, ...walls.map((wall) => wallOnDrawing(wall, 1, 0, 0).height))
  const row = height / Math.ceil(walls.length / 2) - captionHeight
  return Math.max(64 / longest, Math.min((width - 24) / 2 / longest, row / tallest))
}

function WallInColors(props: {
  readonly job: Job
  readonly colors: HouseColors
  readonly roomId: RoomId
  readonly wall: WallElevation
  readonly scale: number
  readonly onPick: PickSurface
}) {
  const { wall, scale, colors, roomId } = props
  const { width, height, points } = wallOnDrawing(wall, scale, 1, 1)
  return (
    <figure>
      <svg
        width={Math.ceil(width)}
        height={Math.ceil(height)}
        role="img"
        aria-label={`${capital(wall.name)} in its colors`}
      >
        <LeftPattern />
        {wallShapes(roomId, wall).map(({ key, surface, line }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the table does the same by keyboard
          <polygon
            key={key}
            points={points(line)}
            fill={colors.on(surface)?.shown ?? 'url(#house-left)'}
            className="color-shape"
            onClick={() => props.onPick(roomId, surface)}
          />
        ))}
        {wallGlass(wall).map((line) => (
          <polygon key={points(line)} points={points(line)} className="color-glass" />
        ))}
      </svg>
      <figcaption>{wallLetters(wall, colors)}</figcaption>
    </figure>
  )
}
