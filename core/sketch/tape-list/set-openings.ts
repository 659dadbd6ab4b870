import { present } from '../../lists/lists.ts'
import type { DrawnBefore } from './arrange-rooms.ts'
import { type EarlierWay, leadsInto } from './earlier-ways.ts'
import { type Contact, contactOf, type Facing, opposite, type RoomRectangle } from './rectangles.ts'

/** An opening to be set in a wall of a room; `key` tells what can be one and the same between two rooms. */
export interface OpeningToSet {
  readonly key: string
  readonly kind: EarlierWay['kind']
  readonly width: number
  /** A way through, which two rooms can share. */
  readonly isWay: boolean
  /** Belongs into a wall with no room behind. */
  readonly isOuter: boolean
}

export interface SetOpening {
  readonly room: number
  /** The place among the openings of the room. */
  readonly opening: number
  readonly side: Facing
  /** Least coordinate along the wall, in plan coordinates. */
  readonly at: number
  readonly far: number | null
}

/** A way of an earlier room that leads into a room of the list from now on, which has one of its own less for it. */
export interface Joined {
  readonly way: EarlierWay
  readonly room: number
  readonly side: Facing
}

interface SettingResult {
  readonly set: readonly SetOpening[]
  readonly joined: readonly Joined[]
  /** Rooms whose walls do not have the length for their openings. */
  readonly crowded: readonly number[]
}

interface Stretch {
  readonly from: number
  readonly to: number
}

interface RoomToFill {
  readonly place: RoomRectangle
  /** Stretches of its sides that are no walls of the room. */
  readonly missing: readonly (Stretch & { readonly side: Facing })[]
  readonly openings: readonly OpeningToSet[]
}

/**
 * Sets every opening of every room. Ways are shared between rooms that back on each other, as long as both have one of the same sort left, `pairs` of
 * rooms first; windows and outer doors go into walls with nothing behind where these are long enough. Each room gets exactly its openings.
 * Rooms `drawn` before share the ways they have, and get none.
 */
export function setOpenings(
  rooms: readonly RoomToFill[],
  pairs: readonly (readonly [number, number])[],
  gap: number,
  drawn: DrawnBefore,
): SettingResult {
  const taken = rooms.map(({ missing }) => {
    const map = new Map<Facing, Stretch[]>()
    for (const { side, from, to } of missing) take(map, side, { from, to })
    return map
  })
  const left = rooms.map(({ openings }) => new Set(openings.keys()))
  const joined = drawn.ways.flatMap((way) => joinOne(rooms, taken, left, way, gap) ?? [])
  const shared: SetOpening[] = []
  for (const [one, other] of pairs) {
    const found = shareOne(rooms, taken, left, one, other, gap)
    if (found !== null) shared.push(found)
  }
  const crowded: number[] = []
  const own = rooms.flatMap((room, index) => {
    const others = rooms.flatMap(({ place }, at) => (at === index ? [] : [place]))
    const backs = [...others, ...drawn.rooms].flatMap((other) => contactOf(room.place, other, gap) ?? [])
    const set = setOwn(room, index, present(left[index]), present(taken[index]), backs)
    if (set === null) crowded.push(index)
    return set ?? []
  })
  return { set: [...shared, ...own], joined, crowded }
}

/** The first room that a way leads into and that has one of the kind left, of whatever size: the earlier room's stands already. */
function joinOne(
  rooms: readonly RoomToFill[],
  taken: readonly Map<Facing, Stretch[]>[],
  left: readonly Set<number>[],
  way: EarlierWay,
  gap: number,
): Joined | null {
  for (const [index, { place, openings }] of rooms.entries()) {
    if (!leadsInto(way, place, gap)) continue
    const [own] = [...present(left[index])].filter((each) => {
      const { kind, isOuter } = present(openings[each])
      return kind === way.kind && !isOuter
    })
    const side = opposite[way.side]
    const isFree = (taken[index]?.get(side) ?? []).every(({ from, to }) => to <= way.from || from >= way.to)
    if (own === undefined || !isFree) continue
    left[index]?.delete(own)
    take(present(taken[index]), side, way)
    return { way, room: index, side }
  }
  return null
}

function shareOne(
  rooms: readonly RoomToFill[],
  taken: readonly Map<Facing, Stretch[]>[],
  left: readonly Set<number>[],
  one: number,
  other: number,
  gap: number,
): SetOpening | null {
  const [near, far] = [rooms[one], rooms[other]]
  const contact = near && far ? contactOf(near.place, far.place, gap) : null
  if (near === undefined || far === undefined || contact === null) return null
  const pair = commonWay(near, far, present(left[one]), present(left[other]))
  if (pair === null) return null
  const farSide = opposite[contact.side]
  const blocked = [...(taken[one]?.get(contact.side) ?? []), ...(taken[other]?.get(farSide) ?? [])]
  const free = longest(freeStretches(contact, blocked))
  if (free === null || free.to - free.from < pair.width) return null
  const at = middleOf(free, pair.width)
  take(present(taken[one]), contact.side, { from: at, to: at + pair.width })
  take(present(taken[other]), farSide, { from: at, to: at + pair.width })
  left[one]?.delete(pair.near)
  left[other]?.delete(pair.far)
  return { room: one, opening: pair.near, side: contact.side, at, far: other }
}

function commonWay(near: RoomToFill, far: RoomToFill, nearLeft: Set<number>, farLeft: Set<number>) {
  for (const one of nearLeft) {
    const opening = present(near.openings[one])
    if (!opening.isWay || opening.isOuter) continue
    for (const other of farLeft) {
      if (far.openings[other]?.key === opening.key) return { near: one, far: other, width: opening.width }
    }
  }
  return null
}

function take(taken: Map<Facing, Stretch[]>, side: Facing, stretch: Stretch): void {
  taken.set(side, [...(taken.get(side) ?? []), stretch])
}

function middleOf(free: Stretch, width: number): number {
  return Math.round(free.from + (free.to - free.from - width) / 2)
}

function freeStretches(whole: Stretch, blocked: readonly Stretch[]): readonly Stretch[] {
  return blocked.reduce<readonly Stretch[]>(
    (free, block) =>
      free.flatMap(({ from, to }) =>
        block.to <= from || block.from >= to
          ? [{ from, to }]
          : [
              { from, to: block.from },
              { from: block.to, to },
            ].filter((part) => part.to > part.from),
      ),
    [{ from: whole.from, to: whole.to }],
  )
}

function longest(stretches: readonly Stretch[]): Stretch | null {
  return stretches.reduce<Stretch | null>(
    (best, one) => (best === null || one.to - one.from > best.to - best.from ? one : best),
    null,
  )
}

interface Slot extends Stretch {
  readonly side: Facing
  readonly isOuter: boolean
  readonly openings: { readonly index: number; readonly width: number }[]
}

const sides: readonly Facing[] = ['north', 'east', 'south', 'west']

function wallStretch(place: RoomRectangle, side: Facing): Stretch {
  return side === 'north' || side === 'south'
    ? { from: place.x, to: place.x + place.width }
    : { from: place.y, to: place.y + place.depth }
}

/** The openings of one room that it shares with nobody, evenly along its walls; null where they do not fit. */
function setOwn(
  room: RoomToFill,
  index: number,
  left: ReadonlySet<number>,
  taken: ReadonlyMap<Facing, readonly Stretch[]>,
  backs: readonly Contact[],
): readonly SetOpening[] | null {
  const slots = sides.flatMap((side) => slotsOf(room.place, side, taken.get(side) ?? [], backs))
  const byWidth = [...left].sort((a, b) => widthOf(room, b) - widthOf(room, a) || a - b)
  for (const opening of byWidth) {
    const { width, isWay, isOuter } = present(room.openings[opening])
    const slot = slotFor(slots, width, isOuter || !isWay)
    if (slot === null) return null
    slot.openings.push({ index: opening, width })
  }
  return slots.flatMap((slot) => spread(slot, index))
}

function widthOf(room: RoomToFill, opening: number): number {
  return room.openings[opening]?.width ?? 0
}

/** Free stretches of a wall, parted where a room behind it begins or ends. */
function slotsOf(
  place: RoomRectangle,
  side: Facing,
  taken: readonly Stretch[],
  backs: readonly Contact[],
): readonly Slot[] {
  const behind = backs.filter((contact) => contact.side === side)
  const wall = wallStretch(place, side)
  const outer = freeStretches(wall, [...taken, ...behind])
  const inner = behind.flatMap((contact) => freeStretches(contact, taken))
  return [
    ...outer.map((stretch) => ({ ...stretch, side, isOuter: true, openings: [] })),
    ...inner.map((stretch) => ({ ...stretch, side, isOuter: false, openings: [] })),
  ]
}

function roomIn(slot: Slot): number {
  return slot.openings.reduce((total, { width }) => total - width, slot.to - slot.from)
}

/** The slot with the most room for each of its openings, outer ones first where that is wanted and inner ones first where not. */
function slotFor(slots: readonly Slot[], width: number, wantsOuter: boolean): Slot | null {
  const fitting = slots.filter((slot) => roomIn(slot) >= width)
  const wanted = fitting.filter((slot) => slot.isOuter === wantsOuter)
  const share = (slot: Slot) => (roomIn(slot) - width) / (slot.openings.length + 1)
  return (wanted.length > 0 ? wanted : fitting).reduce<Slot | null>(
    (best, slot) => (best === null || share(slot) > share(best) ? slot : best),
    null,
  )
}

function spread(slot: Slot, roomIndex: number): readonly SetOpening[] {
  const space = roomIn(slot) / (slot.openings.length + 1)
  let at = slot.from
  return slot.openings.map(({ index, width }) => {
    at += space
    const set: SetOpening = {
      room: roomIndex,
      opening: index,
      side: slot.side,
      at: Math.round(at),
      far: null,
    }
    at += width
    return set
  })
}
