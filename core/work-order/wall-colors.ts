import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import { type ElevationOpening, roomElevations, type WallElevation } from '../quantities/elevation.ts'
import { bandOutline, holeOutline, lightOutline } from '../quantities/elevation-outlines.ts'
import { capital } from '../words/text.ts'
import type { HouseColors } from './house-colors.ts'

type WallLine = ReturnType<typeof lightOutline>

/** A part of a wall seen square on that has a color of its own. */
interface WallShape {
  readonly key: string
  readonly surface: SurfaceRef
  readonly line: WallLine
}

/** The walls of a room that has any, by its name. */
export interface RoomWalls {
  readonly roomId: RoomId
  readonly name: string
  readonly walls: readonly WallElevation[]
}

/** Every room of the house with its walls square on, in the order of the list. */
export function houseWalls(job: Job, roomIds: readonly RoomId[]): readonly RoomWalls[] {
  return roomIds
    .map((roomId) => ({
      roomId,
      name: job.rooms[roomId]?.name ?? roomId,
      walls: roomElevations(job, roomId),
    }))
    .filter(({ walls }) => walls.length > 0)
}

/** What is drawn of a wall, from the back to the front. */
export function wallShapes(roomId: RoomId, wall: WallElevation): readonly WallShape[] {
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

function openingShapes(opening: ElevationOpening): readonly WallShape[] {
  const { openingId, side, casing, stool, slab, sash } = opening
  const part = (name: 'casing' | 'stool' | 'slab' | 'sash' | 'jamb', line: WallLine): WallShape => ({
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

/** The panes of glass in a wall. */
export function wallGlass(wall: WallElevation): readonly WallLine[] {
  return wall.openings.flatMap(({ lights }) => lights.map(lightOutline))
}

/** `Wall A: b`, with the letters of its zones from the top. */
export function wallLetters(wall: WallElevation, colors: HouseColors): string {
  const letters = wall.zones.toReversed().flatMap(({ surface }) => colors.on(surface)?.letter ?? [])
  return letters.length === 0 ? capital(wall.name) : `${capital(wall.name)}: ${letters.join(', ')}`
}

/** Where a wall lies on a drawing of `scale` units of the drawing to a unit of length, with `margin` around it. */
export function wallOnDrawing(wall: WallElevation, scale: number, margin: number, decimals: number) {
  const top = Math.max(...wall.ceiling.map(({ height }) => height))
  const floor = Math.min(...wall.floor.map(({ height }) => height))
  const x = (at: number) => margin + (wall.startsAt === 'right' ? wall.length - at : at) * scale
  const y = (height: number) => margin + (top - height) * scale
  return {
    width: wall.length * scale + 2 * margin,
    height: (top - floor) * scale + 2 * margin,
    points: (line: WallLine) =>
      line.map(({ at, height }) => `${x(at).toFixed(decimals)},${y(height).toFixed(decimals)}`).join(' '),
  }
}
