import { pointsDistance } from '../core/geometry/point.ts'
import type { BuiltItem } from '../core/project/built-records.ts'
import type {
  Casing,
  CeilingShape,
  Corner,
  FloorShape,
  Opening,
  OpeningId,
  Room,
  RoomId,
  Sash,
  Slab,
  StoreyId,
  TrimRun,
  TrimRunId,
  WallId,
} from '../core/project/sketch-records.ts'
import type { OpeningKind, RoomUse, TrimKind } from '../core/project/vocabulary.ts'
import { roomWalls } from '../core/project/walls.ts'
import { inches, lengthFromUnits, zeroLength } from '../core/units/length.ts'

/** Everything in this folder is drawn in inches; these few words turn it into records. */
export type WallInches = readonly [wall: string, x: number, y: number, behind?: Corner['behind']]

export interface RoomInches {
  readonly id: string
  readonly storey: string
  readonly name: string
  readonly use: RoomUse
  /** Each corner with the wall that starts there, clockwise on the plan. */
  readonly walls: readonly WallInches[]
  readonly ceiling: CeilingShape
  readonly floor?: FloorShape
  readonly above?: Room['above']
  readonly wayOut?: boolean
  readonly order?: Room['order']
  readonly backBy?: string
  readonly note?: string
}

export function drawRoom(drawn: RoomInches): Room {
  return {
    id: drawn.id as RoomId,
    storeyId: drawn.storey as StoreyId,
    name: drawn.name,
    use: drawn.use,
    corners: drawn.walls.map(([wallId, x, y, behind = 'heated']) => ({
      wallId: wallId as WallId,
      x: inches(x),
      y: inches(y),
      behind,
    })),
    ceiling: drawn.ceiling,
    floor: drawn.floor ?? { kind: 'level' },
    above: drawn.above ?? 'heated',
    order: drawn.order ?? 'houseRule',
    workedWith: null,
    wayOut: drawn.wayOut ?? false,
    backBy: drawn.backBy ?? null,
    allowances: null,
    lookedAt: [],
    note: drawn.note ?? '',
  }
}

export function flat(height: number): CeilingShape {
  return { kind: 'flat', height: inches(height) }
}

/** Heights along y, from the room's least y. */
export function raked(points: readonly (readonly [at: number, height: number])[]) {
  const line = points.map(([at, height]) => ({ at: inches(at), height: inches(height) }))
  return { kind: 'stair', along: 'y', line } as const
}

export interface OpeningInches {
  readonly id: string
  readonly kind: OpeningKind
  readonly name?: string
  readonly room: string
  readonly wall: string
  /** Least coordinate on the plan along the wall: x where the wall runs across, y where it runs down. */
  readonly at: number
  readonly width: number
  readonly height: number
  readonly sill?: number
  readonly far?: readonly [room: string, wall: string]
  readonly jamb?: number
  readonly casing?: Casing | null
  readonly casingFar?: Casing | null
  readonly slab?: Slab | null
  readonly sash?: Sash | null
  readonly stool?: boolean
  readonly transom?: number
  readonly sidelights?: number
}

/** Sets an opening into the wall of a room already drawn. */
export function drawOpening(rooms: readonly Room[], drawn: OpeningInches): Opening {
  const casing = drawn.casing ?? null
  return {
    id: drawn.id as OpeningId,
    kind: drawn.kind,
    name: drawn.name ?? '',
    roomId: drawn.room as RoomId,
    wallId: drawn.wall as WallId,
    offset: offsetOf(rooms, drawn),
    width: inches(drawn.width),
    height: inches(drawn.height),
    sill: inches(drawn.sill ?? 0),
    head: { kind: 'square' },
    far: drawn.far ? { roomId: drawn.far[0] as RoomId, wallId: drawn.far[1] as WallId } : null,
    jambDepth: inches(drawn.jamb ?? 0),
    jambOf: 'wood',
    casingNear: casing,
    casingFar: drawn.far ? (drawn.casingFar ?? null) : null,
    slab: drawn.slab ?? null,
    sash: drawn.sash ?? null,
    stool: drawn.stool ? { depth: inches(4), thickness: inches(1.125), apron: inches(4) } : null,
    transom: drawn.transom ? { height: inches(drawn.transom), lightsAcross: 3, lightsDown: 1 } : null,
    sidelights: drawn.sidelights
      ? { count: 2, width: inches(drawn.sidelights), lightsAcross: 1, lightsDown: 4 }
      : null,
  }
}

function offsetOf(rooms: readonly Room[], drawn: OpeningInches) {
  const room = rooms.find((one) => one.id === drawn.room)
  const wall = room && roomWalls(room).find((one) => one.id === drawn.wall)
  if (!wall) throw new Error(`there is no wall ${drawn.wall} in ${drawn.room}`)
  const level = wall.start.y === wall.end.y
  const edges = [drawn.at, drawn.at + drawn.width].map((at) => {
    const edge = level ? { x: inches(at), y: wall.start.y } : { x: wall.start.x, y: inches(at) }
    return pointsDistance(wall.start, edge)
  })
  return lengthFromUnits(Math.min(...edges))
}

export function casing(width: number, girth: number, style: Casing['style'], profiled = true): Casing {
  return { width: inches(width), girth: inches(girth), style, profiled }
}

export function slab(kind: Slab['kind'], changes: Partial<Slab> = {}): Slab {
  const sides = { paintNear: true, paintFar: true, edgesShow: 'near' } as const
  return { kind, thickness: inches(1.375), leaves: 1, ...sides, ...changes }
}

/** Members of an old wooden sash; lights of one sash, across and down. */
export function sash(
  operation: Sash['operation'],
  lightsAcross: number,
  lightsDown: number,
  units = 1,
): Sash {
  return {
    operation,
    units,
    lightsAcross,
    lightsDown,
    stile: inches(2),
    topRail: inches(2),
    meetingRail: inches(1.25),
    bottomRail: inches(3),
    muntin: inches(0.875),
    thickness: inches(1.375),
  }
}

export function trimRun(
  room: string,
  kind: TrimKind,
  height: number,
  girth: number,
  level = 0,
  walls: readonly string[] | null = null,
): TrimRun {
  return {
    id: `${room}-${kind}` as TrimRunId,
    roomId: room as RoomId,
    kind,
    walls: walls as readonly WallId[] | null,
    height: inches(height),
    girth: inches(girth),
    level: inches(level),
    profiled: true,
  }
}

type BuiltOf<Kind extends BuiltItem['kind']> = Extract<BuiltItem, { readonly kind: Kind }>

export function radiator(
  room: string,
  heightInches: BuiltOf<'radiator'>['heightInches'],
  columns: number,
  sections: number,
): BuiltItem {
  const id = `${room}-radiator` as BuiltItem['id']
  return {
    kind: 'radiator',
    id,
    roomId: room as RoomId,
    name: 'Radiator',
    pattern: 'column',
    columns,
    heightInches,
    sections,
  }
}

export function shelf(room: string, length: number, depth: number, count: number): BuiltItem {
  return {
    kind: 'shelf',
    id: `${room}-shelves` as BuiltItem['id'],
    roomId: room as RoomId,
    name: 'Shelves',
    length: inches(length),
    depth: inches(depth),
    thickness: inches(0.75),
    count,
  }
}

export function cabinet(
  room: string,
  name: string,
  size: readonly [width: number, height: number, depth: number],
  doors: number,
  drawers: number,
): BuiltItem {
  const id = `${room}-${name.toLowerCase().replaceAll(' ', '-')}` as BuiltItem['id']
  const [width, height, depth] = [inches(size[0]), inches(size[1]), inches(size[2])]
  return {
    kind: 'cabinet',
    id,
    roomId: room as RoomId,
    name,
    width,
    height,
    depth,
    doors,
    drawers,
    paintInside: false,
  }
}

export const nothing = zeroLength
