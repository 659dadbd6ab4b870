import { useMemo } from 'react'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { roomElevations, type WallElevation } from '../../../core/quantities/elevation.ts'
import { capital } from '../../../core/words/text.ts'
import type { HouseColors } from '../../../core/work-order/house-colors.ts'
import { wallGlass, wallLetters, wallOnDrawing, wallShapes } from '../../../core/work-order/wall-colors.ts'
import { LeftPattern, type PickSurface } from './HouseInColors.tsx'

/** The walls of a room square on in their colors, all to one scale; a click picks what it hits. */
export function WallsInColors(props: {
  readonly job: Job
  readonly colors: HouseColors
  readonly roomId: RoomId
  readonly width: number
  readonly onPick: PickSurface
}) {
  const { job, roomId, width } = props
  const walls = useMemo(() => roomElevations(job, roomId), [job, roomId])
  const longest = Math.max(1, ...walls.map(({ length }) => length))
  const across = Math.max(90, (width - 24) / 2)
  return (
    <div className="color-walls">
      {walls.map((wall) => (
        <WallInColors key={wall.wallId} {...props} wall={wall} scale={across / longest} />
      ))}
    </div>
  )
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
