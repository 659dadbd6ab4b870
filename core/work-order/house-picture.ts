import { pointBetween } from '../geometry/point.ts'
import { type Job, records } from '../project/job.ts'
import { mainRoomOf } from '../project/room-sets.ts'
import type { Opening, OpeningId, Room, RoomId, WallId } from '../project/sketch-records.ts'
import { storeysUpwards } from '../project/storeys.ts'
import { openingSides, roomWalls } from '../project/walls.ts'
import { toMillimetres } from '../units/length.ts'
import type { PlanPoint } from './room-plan.ts'

/** All floors of a house side by side at one scale, in the unit of the drawing: pixels on a screen, millimeters on paper. */
export interface HousePicture {
  readonly width: number
  readonly height: number
  readonly floors: readonly { readonly name: string; readonly left: number; readonly top: number }[]
  readonly rooms: readonly PictureRoom[]
  readonly openings: readonly PictureOpening[]
}

export interface PictureRoom {
  readonly roomId: RoomId
  /** Main room of its set. */
  readonly setId: RoomId
  readonly name: string
  readonly outline: readonly PlanPoint[]
  readonly walls: readonly { readonly wallId: WallId; readonly from: PlanPoint; readonly to: PlanPoint }[]
  readonly label: RoomLabel
}

/** Middle of the widest stretch inside, how wide it is, and how deep the room is; `upright` is the stretch through it from top to bottom. */
interface RoomLabel extends PlanPoint {
  readonly width: number
  readonly height: number
  readonly upright: { readonly y: number; readonly length: number }
}

/** An opening as it lies in the wall of one of its rooms. */
export interface PictureOpening {
  readonly openingId: OpeningId
  readonly roomId: RoomId
  readonly side: 'near' | 'far'
  readonly kind: Opening['kind']
  readonly from: PlanPoint
  readonly to: PlanPoint
}

interface Floor {
  readonly name: string
  readonly rooms: readonly Room[]
  readonly left: number
  readonly top: number
  readonly wide: number
  readonly deep: number
}

/** Part of the width or height of a floor that is left free around it. */
const around = 0.02

/** The house as large as a place of `width` by `height` allows, with a line of `head` above each floor for its name. */
export function housePicture(job: Job, width: number, height: number, head: number): HousePicture {
  const floors = floorsOf(job)
  const rows = floors
    .map((_, index) => arranged(floors, index + 1, width, height, head))
    .toSorted((one, other) => other.scale - one.scale)[0]
  if (rows === undefined) return { width, height: 0, floors: [], rooms: [], openings: [] }
  const { scale, places } = rows
  const placed = floors.map((floor, index) => ({ floor, ...(places[index] ?? { left: 0, top: 0 }) }))
  const drawn = placed.map(({ floor, left, top }) => {
    const at = ({ x, y }: PlanPoint): PlanPoint => ({
      x: (toMillimetres(x) - floor.left) * scale + left,
      y: (toMillimetres(y) - floor.top) * scale + top + head,
    })
    return {
      rooms: floor.rooms.map((room) => pictureRoom(job, room, at)),
      openings: openingsOf(job, new Set(floor.rooms.map(({ id }) => id)), at),
    }
  })
  return {
    width,
    height: rows.height,
    floors: placed.map(({ floor, left, top }) => ({ name: floor.name, left, top })),
    rooms: drawn.flatMap(({ rooms }) => rooms),
    openings: drawn.flatMap(({ openings }) => openings),
  }
}

function floorsOf(job: Job): readonly Floor[] {
  return storeysUpwards(job).flatMap(({ id, name }) => {
    const rooms = records(job.rooms).filter(({ storeyId }) => storeyId === id)
    if (rooms.length === 0) return []
    const xs = rooms.flatMap(({ corners }) => corners.map(({ x }) => toMillimetres(x)))
    const ys = rooms.flatMap(({ corners }) => corners.map(({ y }) => toMillimetres(y)))
    const [left, top] = [Math.min(...xs), Math.min(...ys)]
    return [{ name, rooms, left, top, wide: Math.max(...xs) - left, deep: Math.max(...ys) - top }]
  })
}

/** So many floors in a row, one row below another. */
function arranged(floors: readonly Floor[], inRow: number, width: number, height: number, head: number) {
  const rows = Array.from({ length: Math.ceil(floors.length / inRow) }, (_, row) =>
    floors.slice(row * inRow, (row + 1) * inRow),
  )
  const gap = width * around
  const scale = Math.min(
    ...rows.map((row) => (width - gap * (row.length + 1)) / row.reduce((sum, { wide }) => sum + wide, 0)),
    (height - rows.length * (head + gap)) / rows.reduce((sum, row) => sum + deepest(row), 0),
  )
  const places: { readonly left: number; readonly top: number }[] = []
  let top = 0
  for (const row of rows) {
    let left = gap
    for (const { wide } of row) {
      places.push({ left, top })
      left += wide * scale + gap
    }
    top += head + gap + deepest(row) * scale
  }
  return { scale, places, height: top }
}

function deepest(row: readonly Floor[]): number {
  return Math.max(...row.map(({ deep }) => deep))
}

type Place = (point: PlanPoint) => PlanPoint

function pictureRoom(job: Job, room: Room, at: Place): PictureRoom {
  const outline = room.corners.map(at)
  return {
    roomId: room.id,
    setId: mainRoomOf(job, room.id),
    name: room.name,
    outline,
    walls: roomWalls(room).map(({ id, start, end }) => ({ wallId: id, from: at(start), to: at(end) })),
    label: labelPlace(outline),
  }
}

/** Inside a room even where it is L-shaped: the middle of the widest stretch across it, the middle of the room before others. */
export function labelPlace(outline: readonly PlanPoint[]): RoomLabel {
  const ys = outline.map(({ y }) => y)
  const [top, height] = [Math.min(...ys), Math.max(...ys) - Math.min(...ys)]
  const stretches = [0.5, 0.3, 0.7, 0.15, 0.85].flatMap((share) => stretchesAt(outline, top + height * share))
  const widest = Math.max(0, ...stretches.map(({ width }) => width))
  const best = stretches.find(({ width }) => width > widest * 0.9)
  const place = best ?? { x: outline[0]?.x ?? 0, y: top, width: 0 }
  const turned = stretchesAt(
    outline.map(({ x, y }) => ({ x: y, y: x })),
    place.x,
  ).find(({ x, width }) => Math.abs(place.y - x) <= width / 2)
  return { ...place, height, upright: { y: turned?.x ?? place.y, length: turned?.width ?? 0 } }
}

function stretchesAt(outline: readonly PlanPoint[], y: number) {
  const cuts = outline
    .flatMap((point, index) => {
      const next = outline[(index + 1) % outline.length] ?? point
      if (point.y > y === next.y > y) return []
      return [point.x + ((y - point.y) / (next.y - point.y)) * (next.x - point.x)]
    })
    .toSorted((one, other) => one - other)
  return cuts.flatMap((from, index) => {
    const to = cuts[index + 1]
    return index % 2 === 0 && to !== undefined ? [{ x: (from + to) / 2, y, width: to - from }] : []
  })
}

function openingsOf(job: Job, roomIds: ReadonlySet<RoomId>, at: Place): readonly PictureOpening[] {
  return records(job.openings).flatMap((opening) => {
    const { near, far } = openingSides(job, opening)
    return (
      [
        ['near', near],
        ['far', far],
      ] as const
    ).flatMap(([side, found]) => {
      if (found === null || !roomIds.has(found.room.id)) return []
      const { wall, place, room } = found
      const [from, to] = [place.from, place.to].map((along) =>
        at(pointBetween(wall.start, wall.end, along / wall.length)),
      )
      if (from === undefined || to === undefined) return []
      return [{ openingId: opening.id, roomId: room.id, side, kind: opening.kind, from, to }]
    })
  })
}

/** A letter of the faces in use is on average about so much of its size wide. */
const letterShare = 0.58
const lineShare = 1.2

interface FittedLines {
  readonly size: number
  readonly lines: readonly string[]
  /** Written upwards, in a room that is narrow and deep. */
  readonly isTurned: boolean
}

/** What can be written in a room: its name and as many of the lines below it as fit, at `size` or a little smaller; nothing where nothing fits. */
export function fittedLines(
  { label, name }: Pick<PictureRoom, 'label' | 'name'>,
  lines: readonly string[],
  size: number,
): FittedLines {
  const across = linesIn(label, name, lines, size)
  if (across.lines[0] === name || label.upright.length <= 1.4 * label.width)
    return { ...across, isTurned: false }
  const upwards = linesIn({ width: label.upright.length, height: label.width }, name, lines, size)
  return upwards.lines[0] === name ? { ...upwards, isTurned: true } : { ...across, isTurned: false }
}

function linesIn(
  room: { readonly width: number; readonly height: number },
  name: string,
  lines: readonly string[],
  size: number,
): Omit<FittedLines, 'isTurned'> {
  const fits = (text: string, at: number) => text.length * at * letterShare <= room.width * 0.94
  const most = (at: number) => Math.floor((room.height * 0.92) / (at * lineShare))
  const named = [1, 0.88, 0.76].map((share) => size * share).find((at) => fits(name, at) && most(at) >= 1)
  const small = size * 0.76
  if (named === undefined) {
    const [first] = lines.filter((text) => fits(text, small))
    return { size: small, lines: first === undefined || most(small) < 1 ? [] : [first] }
  }
  const fitsAll = lines.every((text) => fits(text, named)) && most(named) > lines.length
  const at = fitsAll ? named : Math.min(named, small)
  const below = lines.filter((text) => fits(text, at)).slice(0, Math.max(0, most(at) - 1))
  return { size: at, lines: [name, ...below] }
}

/** How deep the band of a wall is drawn inside its line: `most`, less in a small room, so that its middle is still seen. */
export function wallBand({ label }: Pick<PictureRoom, 'label'>, most: number): number {
  return Math.min(most, 0.12 * Math.min(label.width, label.height))
}
