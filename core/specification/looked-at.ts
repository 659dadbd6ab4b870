import { groupedBy } from '../lists/lists.ts'
import { type Job, records } from '../project/job.ts'
import type { Room, RoomId } from '../project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../project/surface-ref.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { foundOnClass } from './findings.ts'

/** What is looked at in one go on a walk: a wall with its zones, a ceiling, a door or window with its parts, a run of trim. */
export interface WalkPiece {
  readonly key: string
  readonly surfaces: readonly SurfaceQuantity[]
  /** `open` while nobody found anything on it or said that it is sound. */
  readonly state: 'open' | 'found' | 'sound'
}

/** Names the piece a surface belongs to, within its room: `wall:<id>`, `opening:<id>`. */
export function pieceKey(ref: SurfaceRef): string {
  switch (ref.kind) {
    case 'wall':
      return `wall:${ref.wallId}`
    case 'ceiling':
    case 'floor':
      return ref.kind
    case 'trim':
      return `trim:${ref.trimRunId}`
    case 'opening':
      return `opening:${ref.openingId}`
    case 'built':
      return `built:${ref.builtItemId}`
  }
}

/** The pieces of every room in the order of its surfaces, and whether each was looked at. */
export function walkPieces(
  job: Job,
  surfaces: readonly SurfaceQuantity[],
): ReadonlyMap<RoomId, readonly WalkPiece[]> {
  const conditions = records(job.conditions)
  const onRooms = groupedBy(conditions, ({ on }) => (on.level === 'room' ? on.roomId : null))
  const onSurfaces = new Set(
    conditions.flatMap(({ on }) => (on.level === 'surface' ? [surfaceKey(on.surface)] : [])),
  )
  const isFound = (surface: SurfaceQuantity) =>
    onSurfaces.has(surface.key) ||
    (onRooms.get(surface.roomId) ?? []).some((each) => foundOnClass(each, surface.surfaceClass))
  const rooms = groupedBy(surfaces, ({ roomId }) => roomId)
  return new Map(
    [...rooms].map(([roomId, members]) => {
      const sound = new Set(job.rooms[roomId]?.lookedAt ?? [])
      const pieces = [...groupedBy(members, ({ surface }) => pieceKey(surface))]
      return [
        roomId,
        pieces.map(([key, parts]): WalkPiece => {
          const state = parts.some(isFound) ? 'found' : sound.has(key) ? 'sound' : 'open'
          return { key, surfaces: parts, state }
        }),
      ]
    }),
  )
}

/** The marks of a room after somebody looked at these pieces and found them sound, or took that back. */
export function lookedAtWith(room: Room, keys: readonly string[], isSound: boolean): readonly string[] {
  const others = room.lookedAt.filter((key) => !keys.includes(key))
  return isSound ? [...others, ...keys] : others
}
