import { present } from '../../lists/lists.ts'
import type { BuiltItem } from '../../project/built-records.ts'
import { builtItemIdSchema } from '../../project/built-records.ts'
import { type Job, records } from '../../project/job.ts'
import type { Corner, Opening, Room, RoomId, Storey, TrimRun, WallId } from '../../project/sketch-records.ts'
import { openingIdSchema, roomIdSchema, trimRunIdSchema, wallIdSchema } from '../../project/sketch-records.ts'
import type { KeptItem } from '../../project/survey-records.ts'
import { keptItemIdSchema } from '../../project/survey-records.ts'
import { type Length, lengthFromUnits } from '../../units/length.ts'
import type { JoinedWay } from '../commands.ts'
import { firstRadiator } from '../first-radiator.ts'
import { openingTemplateFor } from '../opening-templates.ts'
import { roomDefaultsFor } from '../room-defaults.ts'
import { newRoomRecord } from '../room-edits.ts'
import { roomKindOf, usualHardware } from '../room-kinds.ts'
import { firstTrimSizes } from '../trim-sizes.ts'
import { type Facing, opposite, type RoomRectangle } from './rectangles.ts'
import type { Joined, OpeningToSet, SetOpening } from './set-openings.ts'
import type { TapeOpening, TapeRoom } from './tape-records.ts'

/** A room of the list with what its line, its kind and the headings above it give it. */
export interface Listed {
  readonly line: number
  readonly room: TapeRoom
  readonly height: Length | null
  readonly storey: Storey
  readonly openings: readonly TapeOpening[]
}

export interface MadeRoom {
  readonly line: number
  readonly slope: TapeRoom['slope']
  readonly room: Room
  readonly openings: readonly Opening[]
  readonly trimRuns: readonly TrimRun[]
  readonly keptItems: readonly KeptItem[]
  readonly builtItems: readonly BuiltItem[]
}

type Template = Omit<Opening, 'id' | 'name' | 'roomId' | 'wallId' | 'offset' | 'far' | 'casingFar'> & {
  readonly isOutside: boolean
}

/** The job's usual opening of the kind, as far as the line does not say otherwise; as many as the line counts. */
export function templatesOf(job: Job, said: TapeOpening): readonly Template[] {
  const usual = openingTemplateFor(job, said.kind)
  const width = said.width ?? lengthFromUnits(usual.width * said.parts)
  const slab = usual.slab && {
    ...usual.slab,
    kind: said.slab ?? usual.slab.kind,
    leaves: said.parts > 1 ? said.parts : usual.slab.leaves,
  }
  const sash = usual.sash && {
    ...usual.sash,
    units: said.parts > 1 ? said.parts : usual.sash.units,
    operation: said.isFixed ? ('fixed' as const) : usual.sash.operation,
  }
  const template = {
    ...usual,
    width,
    height: said.height ?? usual.height,
    slab,
    sash,
    isOutside: said.isOutside,
  }
  return Array.from({ length: said.count }, () => template)
}

/** An opening of the list as it is set into walls. Two rooms share one only where its kind, size and door are the same (`key`). */
export function toSet(template: Template): OpeningToSet & { readonly isOutdoors: boolean } {
  const { kind, width, height, slab, isOutside } = template
  return {
    kind,
    key: [kind, width, height, slab?.kind, slab?.leaves, isOutside].join(),
    width,
    isWay: kind === 'door' || kind === 'casedOpening',
    isOuter: isOutside || kind === 'window' || kind === 'fireplace',
    isOutdoors: isOutside || kind === 'window',
  }
}

/** Sides of a room by its corners in order; the walls of a missing corner look inward and have no openings. */
function wallNames(corners: number): readonly (Facing | null)[] {
  return corners === 4 ? ['north', 'east', 'south', 'west'] : ['north', 'east', null, null, 'south', 'west']
}

/** Clockwise on the plan from the least corner; a missing corner is the one at most x and most y. */
function outlineOf(
  { less }: TapeRoom,
  { x, y, width, depth }: RoomRectangle,
): readonly (readonly [number, number])[] {
  const [right, bottom] = [x + width, y + depth]
  if (less === null)
    return [
      [x, y],
      [right, y],
      [right, bottom],
      [x, bottom],
    ]
  const [inX, inY] = [right - less.width, bottom - less.depth]
  return [
    [x, y],
    [right, y],
    [right, inY],
    [inX, inY],
    [inX, bottom],
    [x, bottom],
  ]
}

/** What a missing corner takes from the sides of the rectangle around a room, in plan coordinates. */
export function missingWalls({ less }: TapeRoom, { x, y, width, depth }: RoomRectangle) {
  if (less === null) return []
  return [
    { side: 'east' as const, from: y + depth - less.depth, to: y + depth },
    { side: 'south' as const, from: x + width - less.width, to: x + width },
  ]
}

/** The room that a line of the list becomes at its place. */
export function roomRecord(
  job: Job,
  listed: Listed,
  place: RoomRectangle,
  newId: (prefix: string) => string,
): Room {
  const { room, storey, height } = listed
  const kind = roomKindOf(job, room)
  const defaults = roomDefaultsFor(job, storey.id, () => newId('trim'))
  const points = outlineOf(listed.room, place)
  const known = newRoomRecord({
    id: roomIdSchema.parse(newId('room')),
    storeyId: storey.id,
    name: room.name,
    use: room.use,
    corners: points.map(
      ([cx, cy]): Corner => ({
        wallId: wallIdSchema.parse(newId('wall')),
        x: lengthFromUnits(cx),
        y: lengthFromUnits(cy),
        behind: 'heated',
      }),
    ),
    ceiling: height === null ? defaults.ceiling : { kind: 'flat', height },
    above: kind.above ?? defaults.above,
  })
  return { ...known, note: room.note }
}

function wallOf(room: Room, side: Facing): WallId {
  return present(room.corners[wallNames(room.corners.length).indexOf(side)]).wallId
}

/** The opening that was set into a wall, shared where rooms stand back to back. */
export function openingRecord(
  set: SetOpening,
  rooms: readonly Room[],
  places: readonly RoomRectangle[],
  templates: readonly Template[],
  newId: (prefix: string) => string,
): Opening {
  const { isOutside: _outside, ...template } = present(templates[set.opening])
  const [room, place] = [present(rooms[set.room]), present(places[set.room])]
  const far = set.far === null ? null : present(rooms[set.far])
  return {
    ...template,
    id: openingIdSchema.parse(newId(template.kind)),
    name: '',
    roomId: room.id,
    wallId: wallOf(room, set.side),
    offset: lengthFromUnits(offsetOf(room, place, set, template.width)),
    far: far && { roomId: far.id, wallId: wallOf(far, opposite[set.side]) },
    casingFar: far === null ? null : template.casingNear,
  }
}

/** Where a way of an earlier room leads from now on. */
export function joinedWay({ way, room, side }: Joined, rooms: readonly Room[]): JoinedWay {
  const far = present(rooms[room])
  return { openingId: way.openingId, far: { roomId: far.id, wallId: wallOf(far, side) } }
}

/** Walls run clockwise on the plan from the corner at least x and least y. */
function offsetOf(room: Room, place: RoomRectangle, { side, at }: SetOpening, width: number): number {
  switch (side) {
    case 'north':
      return at - place.x
    case 'east':
      return at - place.y
    case 'south':
      return southEnd(room) - at - width
    case 'west':
      return place.y + place.depth - at - width
  }
}

/** Where the south wall of a room begins, which is its greatest x unless that corner is missing. */
function southEnd(room: Room): number {
  const at = wallNames(room.corners.length).indexOf('south')
  return present(room.corners[at]).x
}

/** Trim, hardware and radiators of a room with so many doors on its own account. */
export function furnished(
  job: Job,
  said: TapeRoom,
  room: Room,
  doors: number,
  newId: (prefix: string) => string,
): Pick<MadeRoom, 'trimRuns' | 'keptItems' | 'builtItems'> {
  const kind = roomKindOf(job, said)
  const keptItems = usualHardware({ ...kind, lights: said.lights ?? kind.lights }, doors).map(
    (item): KeptItem => ({
      ...item,
      id: keptItemIdSchema.parse(newId('kept')),
      roomId: room.id,
      on: { kind: 'room' },
      wired: false,
      note: '',
    }),
  )
  const builtItems = Array.from(
    { length: said.radiators },
    (): BuiltItem => ({
      ...firstRadiator,
      id: builtItemIdSchema.parse(newId('radiator')),
      roomId: room.id,
      name: 'Radiator',
    }),
  )
  return { trimRuns: trimOf(job, said, room.id, newId), keptItems, builtItems }
}

/** A wall with a window or an outer door in it is an outside wall. */
export function withOutsideWalls(room: Room, sides: ReadonlySet<Facing>): Room {
  const names = wallNames(room.corners.length)
  const corners = room.corners.map((corner, index) => {
    const side = names[index] ?? null
    return side !== null && sides.has(side) ? { ...corner, behind: 'outside' as const } : corner
  })
  return { ...room, corners }
}

function trimOf(
  job: Job,
  said: TapeRoom,
  roomId: RoomId,
  newId: (prefix: string) => string,
): readonly TrimRun[] {
  const usual = roomKindOf(job, said).trim.map((kind) => ({ kind, height: null }))
  const extra = usual.filter(({ kind }) => !said.trim.some((run) => run.kind === kind))
  const wanted = [...extra, ...said.trim].filter(
    ({ kind }, index, all) =>
      !said.without.includes(kind) && all.findIndex((run) => run.kind === kind) === index,
  )
  return wanted.map(({ kind, height }): TrimRun => {
    const model = records(job.trimRuns).findLast((run) => run.kind === kind && run.walls === null)
    const size = model ?? { ...firstTrimSizes[kind], profiled: true }
    const girth = height === null ? size.girth : lengthFromUnits((size.girth * height) / size.height)
    return {
      id: trimRunIdSchema.parse(newId('trim')),
      roomId,
      kind,
      walls: null,
      height: height ?? size.height,
      girth,
      level: size.level,
      profiled: size.profiled,
    }
  })
}
