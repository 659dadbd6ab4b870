import { useMemo } from 'react'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { SurfaceRef } from '../../../core/project/surface-ref.ts'
import {
  type ElevationOpening,
  roomElevations,
  type WallElevation,
} from '../../../core/quantities/elevation.ts'
import { bandOutline, holeOutline, lightOutline } from '../../../core/quantities/elevation-outlines.ts'
import { capital } from '../../../core/words/text.ts'
import type { HouseColors } from '../../../core/work-order/house-colors.ts'
import { LeftPattern, type PickSurface } from './HouseInColors.tsx'

type WallLine = ReturnType<typeof lightOutline>

interface Drawn {
  readonly key: string
  readonly surface: SurfaceRef
  readonly line: WallLine
}

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
  const top = Math.max(...wall.ceiling.map(({ height }) => height))
  const floor = Math.min(...wall.floor.map(({ height }) => height))
  const x = (at: number) => 1 + (wall.startsAt === 'right' ? wall.length - at : at) * scale
  const y = (height: number) => 1 + (top - height) * scale
  const points = (line: WallLine) =>
    line.map(({ at, height }) => `${x(at).toFixed(1)},${y(height).toFixed(1)}`).join(' ')
  return (
    <figure>
      <svg
        width={Math.ceil(wall.length * scale) + 2}
        height={Math.ceil((top - floor) * scale) + 2}
        role="img"
        aria-label={`${capital(wall.name)} in its colors`}
      >
        <LeftPattern />
        {shapesOf(roomId, wall).map(({ key, surface, line }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: the table does the same by keyboard
          <polygon
            key={key}
            points={points(line)}
            fill={colors.on(surface)?.shown ?? 'url(#house-left)'}
            className="color-shape"
            onClick={() => props.onPick(roomId, surface)}
          />
        ))}
        {wall.openings.flatMap(({ lights }) =>
          lights.map((light) => (
            <polygon
              key={`${light.from} ${light.to} ${light.bottom} ${light.top}`}
              points={points(lightOutline(light))}
              className="color-glass"
            />
          )),
        )}
      </svg>
      <figcaption>{lettersOn(wall, colors)}</figcaption>
    </figure>
  )
}

/** From the back to the front. */
function shapesOf(roomId: RoomId, wall: WallElevation): readonly Drawn[] {
  return [
    ...wall.zones.map(({ key, surface, lower, upper }) => ({
      key,
      surface,
      line: bandOutline(lower, upper, { from: 0, to: wall.length }),
    })),
    ...wall.trim.flatMap(({ key, trimRunId, lower, upper, stretches }) =>
      stretches.map((stretch) => ({
        key: `${key} ${stretch.from}`,
        surface: { kind: 'trim', roomId, trimRunId } as const,
        line: bandOutline(lower, upper, stretch),
      })),
    ),
    ...wall.openings.flatMap(openingShapes),
  ]
}

function openingShapes(opening: ElevationOpening): readonly Drawn[] {
  const { openingId, side, casing, stool, slab, sash } = opening
  const part = (name: 'casing' | 'stool' | 'slab' | 'sash' | 'jamb', line: WallLine): Drawn => ({
    key: `${openingId} ${name}`,
    surface: { kind: 'opening', openingId, side, part: name },
    line,
  })
  const within = slab !== null ? 'slab' : sash.length > 0 ? 'sash' : 'jamb'
  return [
    ...(casing === null ? [] : [part('casing', lightOutline(casing))]),
    ...(stool === null ? [] : [part('stool', lightOutline(stool))]),
    part(within, holeOutline(opening)),
  ]
}

/** `Wall A: b`, with the letters of its zones from the top. */
function lettersOn(wall: WallElevation, colors: HouseColors): string {
  const letters = wall.zones.toReversed().flatMap(({ surface }) => colors.on(surface)?.letter ?? [])
  return letters.length === 0 ? capital(wall.name) : `${capital(wall.name)}: ${letters.join(', ')}`
}
