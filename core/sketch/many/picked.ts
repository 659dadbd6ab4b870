import { type Job, records } from '../../project/job.ts'
import type { Opening, Room, RoomId, StoreyId } from '../../project/sketch-records.ts'
import type { SurfaceRef } from '../../project/surface-ref.ts'
import type { Scope } from '../../project/survey-records.ts'
import type { OpeningKind, RoomUse, SurfaceClass } from '../../project/vocabulary.ts'
import { findWall, roomWalls, type Wall } from '../../project/walls.ts'
import { behindByPlan } from '../behind-walls.ts'

/** Things of the sketch that were picked together. */
export interface Picked {
  readonly rooms: readonly Room[]
  readonly openings: readonly Opening[]
  readonly walls: readonly Wall[]
}

/** A wall is picked as `room/wall`. */
function wallPick(wall: Pick<Wall, 'roomId' | 'id'>): string {
  return `${wall.roomId}/${wall.id}`
}

/** The records behind picked ids. A wall that is picked with its room is only the place where the room was pointed at. */
export function pickedOf(job: Job, ids: readonly string[]): Picked {
  const rooms = ids.flatMap((id) => job.rooms[id] ?? [])
  const openings = ids.flatMap((id) => job.openings[id] ?? [])
  const whole = new Set<string>(rooms.map((room) => room.id))
  const walls = ids.flatMap((id) => {
    const [roomId = '', wallId] = id.split('/')
    const room = wallId === undefined || whole.has(roomId) ? undefined : job.rooms[roomId]
    const corner = room?.corners.find((one) => one.wallId === wallId)
    return room === undefined || corner === undefined ? [] : (findWall(room, corner.wallId) ?? [])
  })
  return { rooms, openings, walls }
}

export type PickKind = 'rooms' | 'walls' | 'outerWalls' | 'openings' | OpeningKind

/** Where things are picked; null is the whole house. */
export type PickPlace =
  | { readonly storeyId: StoreyId }
  | { readonly use: RoomUse }
  | { readonly roomIds: readonly RoomId[] }
  | null

/** The ids of all things of a kind at a place: every window upstairs. An opening between two rooms is at the place where either is. */
export function pickMany(job: Job, kind: PickKind, place: PickPlace): readonly string[] {
  const rooms = records(job.rooms).filter((room) => isAt(room, place))
  if (kind === 'rooms') return rooms.map((room) => room.id)
  if (kind === 'walls') return rooms.flatMap(roomWalls).map(wallPick)
  if (kind === 'outerWalls') {
    const isOuter = (room: Room) => (wall: Wall) => behindByPlan(job, room, wall) !== 'heated'
    return rooms.flatMap((room) => roomWalls(room).filter(isOuter(room))).map(wallPick)
  }
  const here = new Set<RoomId>(rooms.map((room) => room.id))
  return records(job.openings)
    .filter((opening) => kind === 'openings' || opening.kind === kind)
    .filter(({ roomId, far }) => here.has(roomId) || (far !== null && here.has(far.roomId)))
    .map((opening) => opening.id)
}

function isAt(room: Room, place: PickPlace): boolean {
  if (place === null) return true
  if ('storeyId' in place) return room.storeyId === place.storeyId
  return 'use' in place ? room.use === place.use : place.roomIds.includes(room.id)
}

/** A surface as the takeoff lists it. */
interface ListedSurface {
  readonly surface: SurfaceRef
  readonly surfaceClass: SurfaceClass
  readonly roomId: RoomId
}

/** Where something is said of one class of what is picked: once for each room, and for each surface of openings and walls. */
export interface PickedScope {
  readonly scope: Scope
  readonly roomId: RoomId
  readonly surfaceClass: SurfaceClass
}

/** The scopes of a class in what is picked, in the order of the takeoff. Rooms without such a surface have none. */
export function scopesOfPicked(
  picked: Picked,
  surfaces: readonly ListedSurface[],
  surfaceClass: SurfaceClass,
): readonly PickedScope[] {
  const members = surfaces.filter((each) => each.surfaceClass === surfaceClass)
  const withMembers = new Set<string>(members.map(({ roomId }) => roomId))
  const isPicked = isPickedOf(picked)
  const ofRooms = picked.rooms
    .filter((room) => withMembers.has(room.id))
    .map(
      ({ id }): PickedScope => ({
        scope: { level: 'room', roomId: id, surfaceClass },
        roomId: id,
        surfaceClass,
      }),
    )
  const ofPieces = members
    .filter(({ surface }) => isPicked(surface))
    .map(
      ({ surface, roomId }): PickedScope => ({
        scope: { level: 'surface', surface },
        roomId,
        surfaceClass,
      }),
    )
  return [...ofRooms, ...ofPieces]
}

/** The classes that what is picked has surfaces of. */
export function classesOfPicked(
  picked: Picked,
  surfaces: readonly ListedSurface[],
): ReadonlySet<SurfaceClass> {
  const rooms = new Set<string>(picked.rooms.map((room) => room.id))
  const isPicked = isPickedOf(picked)
  return new Set(
    surfaces
      .filter(({ roomId, surface }) => rooms.has(roomId) || isPicked(surface))
      .map((each) => each.surfaceClass),
  )
}

/** Whether a surface is one of an opening or a wall that was picked; looked up, for a house has hundreds of surfaces. */
function isPickedOf({ openings, walls }: Picked): (surface: SurfaceRef) => boolean {
  const openingIds = new Set<string>(openings.map(({ id }) => id))
  const wallPicks = new Set(walls.map(wallPick))
  return (surface) => {
    if (surface.kind === 'opening') return openingIds.has(surface.openingId)
    return surface.kind === 'wall' && wallPicks.has(wallPick({ roomId: surface.roomId, id: surface.wallId }))
  }
}
