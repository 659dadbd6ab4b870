import type { CeilingShape, FloorShape, Opening, Room } from '../../core/project/sketch-records.ts'
import { type Length, metres, millimetres } from '../../core/units/length.ts'
import { opening, room, type Spot } from './sketched.ts'

/** Numbers between 0 and 1, the same for the same seed. */
export type Random = () => number

export function randomFrom(seed: number): Random {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}

export const between = (random: Random, least: number, most: number) =>
  Math.round(least + random() * (most - least))

export const oneOf = <Item>(random: Random, items: readonly Item[]): Item =>
  items[Math.floor(random() * items.length)] as Item

export const ceilingKinds = ['flat', 'shed', 'gable', 'vault', 'stair', 'stairBoth'] as const
export type CeilingKind = (typeof ceilingKinds)[number]

/** A room of any outline under a ceiling of the given kind; either winding. */
export function randomRoom(random: Random, id: string, kind: CeilingKind): Room {
  const corners = oneOf(random, [starOutline, stepOutline, boxOutline])(random)
  const turned = random() < 0.5 ? corners : [...corners].reverse()
  const along = oneOf(random, ['x', 'y'] as const)
  const places = corners.map((corner) => (along === 'x' ? corner[0] : corner[1]))
  const span = Math.max(...places) - Math.min(...places)
  return room(id, turned, {
    ceiling: randomCeiling(random, kind, along, span),
    floor: kind === 'stairBoth' ? stairFloor(random, along, span) : { kind: 'level' },
  })
}

/** Corners at random distances around a point, so that the outline cannot cross itself. */
function starOutline(random: Random): readonly Spot[] {
  const count = between(random, 3, 9)
  const [x, y] = [between(random, -metres(20), metres(20)), between(random, -metres(20), metres(20))]
  return Array.from({ length: count }, (_, index) => {
    const angle = ((index + 0.8 * random()) / count) * 2 * Math.PI
    const away = metres(1.2) + random() * metres(4)
    return [Math.round(x + away * Math.cos(angle)), Math.round(y + away * Math.sin(angle))] as const
  })
}

function boxOutline(random: Random): readonly Spot[] {
  const [width, depth] = [between(random, metres(1.5), metres(9)), between(random, metres(1.5), metres(9))]
  return [
    [0, 0],
    [width, 0],
    [width, depth],
    [0, depth],
  ]
}

/** An L. */
function stepOutline(random: Random): readonly Spot[] {
  const [width, depth] = [between(random, metres(3), metres(9)), between(random, metres(3), metres(9))]
  const [x, y] = [
    between(random, metres(1), width - metres(1)),
    between(random, metres(1), depth - metres(1)),
  ]
  return [
    [0, 0],
    [width, 0],
    [width, y],
    [x, y],
    [x, depth],
    [0, depth],
  ]
}

function randomCeiling(random: Random, kind: CeilingKind, along: 'x' | 'y', span: number): CeilingShape {
  const height = (least: number, most: number) => between(random, metres(least), metres(most)) as Length
  const place = (least: number, most: number) => between(random, span * least, span * most) as Length
  switch (kind) {
    case 'flat':
      return { kind: 'flat', height: height(2.2, 4) }
    case 'shed':
      return { kind: 'shed', along, startHeight: height(0.5, 4), endHeight: height(0.5, 4) }
    case 'gable':
      return {
        kind: 'gable',
        along,
        startHeight: height(0, 3),
        endHeight: height(0, 3),
        ridgeAt: place(0.1, 0.9),
        ridgeHeight: height(2.2, 5),
      }
    case 'vault':
      return {
        kind: 'vault',
        along,
        startHeight: height(0.4, 3),
        endHeight: height(0.4, 3),
        flatFrom: place(0.1, 0.4),
        flatTo: place(0.5, 0.9),
        flatHeight: height(2.2, 4),
      }
    case 'stair':
    case 'stairBoth':
      return {
        kind: 'stair',
        along,
        line: [
          { at: place(0, 0.2), height: height(4, 4.5) },
          { at: place(0.3, 0.6), height: height(4.5, 6) },
          { at: place(0.7, 1), height: height(4.5, 6) },
        ],
      }
  }
}

function stairFloor(random: Random, along: 'x' | 'y', span: number): FloorShape {
  return {
    kind: 'stair',
    along,
    line: [
      { at: between(random, 0, span * 0.3) as Length, height: 0 as Length },
      {
        at: between(random, span * 0.5, span) as Length,
        height: between(random, metres(1), metres(3)) as Length,
      },
    ],
  }
}

/** An opening anywhere on a wall of this length; whether it fits is for the caller to find out. */
export function randomOpening(random: Random, id: string, wallId: string, wallLength: number): Opening {
  const width = between(random, millimetres(300), Math.max(millimetres(400), wallLength * 0.5))
  const onFloor = random() < 0.4
  return opening(
    id,
    wallId,
    between(random, 0, Math.max(0, wallLength - width)),
    width,
    between(random, millimetres(300), metres(2.2)),
    onFloor ? { kind: 'casedOpening' } : { sill: between(random, millimetres(10), metres(1.5)) as Length },
  )
}
