import type { Casing, Opening } from '../../core/project/sketch-records.ts'
import { casing, drawOpening, type OpeningInches, sash, slab } from '../drawing.ts'
import { rooms } from './rooms.ts'

/** Front rooms have the good casing with corner blocks, the back of the house and the closets a plain one. */
const good = casing(5, 7.25, 'plinthAndCornerBlocks')
const bedroom = casing(4.5, 6.25, 'mitred')
const plain = casing(3.5, 4.5, 'mitred', false)

type Between = readonly [room: string, wall: string]

function door(
  id: string,
  near: Between,
  far: Between,
  at: number,
  width: number,
  trim: readonly [near: Casing, far: Casing],
  changes: Partial<OpeningInches> = {},
): OpeningInches {
  return {
    id,
    kind: 'door',
    room: near[0],
    wall: near[1],
    far,
    at,
    width,
    height: 80,
    jamb: 5,
    casing: trim[0],
    casingFar: trim[1],
    slab: slab('panelled'),
    ...changes,
  }
}

function casedOpening(
  id: string,
  near: Between,
  far: Between,
  at: number,
  width: number,
  height: number,
  trim: readonly [near: Casing, far: Casing | null],
): OpeningInches {
  const [room, wall] = near
  return {
    id,
    kind: 'casedOpening',
    room,
    wall,
    far,
    at,
    width,
    height,
    jamb: 5,
    casing: trim[0],
    casingFar: trim[1],
  }
}

function window(
  id: string,
  room: string,
  wall: string,
  at: number,
  size: readonly [width: number, height: number, sill: number],
  trim: Casing,
  light = sash('doubleHung', 3, 2),
): OpeningInches {
  const [width, height, sill] = size
  return {
    id,
    kind: 'window',
    room,
    wall,
    at,
    width,
    height,
    sill,
    jamb: 4,
    casing: trim,
    sash: light,
    stool: true,
  }
}

const tall = [34, 66, 24] as const
const bed = [34, 58, 28] as const
const small = [24, 30, 48] as const

const drawn: readonly OpeningInches[] = [
  {
    id: 'front-door',
    kind: 'door',
    name: 'Front door with sidelights',
    room: 'entry',
    wall: 'south',
    at: 185,
    width: 60,
    height: 98,
    jamb: 5,
    casing: good,
    slab: slab('partGlazed', { paintFar: false }),
    transom: 14,
    sidelights: 10,
  },
  casedOpening('entry-living', ['entry', 'west'], ['living', 'east'], 293, 60, 84, [good, good]),
  casedOpening('stair-foot', ['entry', 'north'], ['stair-hall', 'south'], 220, 32, 84, [good, good]),
  door(
    'entry-passage',
    ['entry', 'north'],
    ['passage', 'south'],
    178,
    27,
    [casing(4, 5.5, 'mitred'), plain],
    {
      slab: slab('glazed'),
    },
  ),
  casedOpening('living-dining', ['living', 'north'], ['dining', 'south'], 48, 72, 84, [good, good]),
  {
    id: 'hearth',
    kind: 'fireplace',
    name: 'Fireplace',
    room: 'living',
    wall: 'west',
    at: 251,
    width: 36,
    height: 30,
  },
  window('living-front-left', 'living', 'south', 30, tall, good),
  window('living-front-right', 'living', 'south', 104, tall, good),
  window('living-hearth-left', 'living', 'west', 315, small, good, sash('fixed', 2, 3)),
  window('living-hearth-right', 'living', 'west', 199, small, good, sash('fixed', 2, 3)),
  window('dining-rear-left', 'dining', 'north', 24, tall, good),
  window('dining-rear-right', 'dining', 'north', 110, tall, good),
  window('dining-side', 'dining', 'west', 60, tall, good),
  {
    id: 'china-cupboard',
    kind: 'builtIn',
    name: 'China cupboard',
    room: 'dining',
    wall: 'east',
    at: 102,
    width: 48,
    height: 84,
    casing: good,
  },
  door('dining-pantry', ['dining', 'east'], ['pantry', 'west'], 20, 30, [good, plain]),
  door('pantry-kitchen', ['pantry', 'east'], ['kitchen', 'west'], 20, 32, [plain, plain]),
  window('pantry-window', 'pantry', 'north', 203, [24, 30, 42], plain, sash('fixed', 2, 2)),
  door('passage-pantry', ['passage', 'north'], ['pantry', 'south'], 178, 27, [plain, plain]),
  door('passage-closet', ['passage', 'east'], ['broom-closet', 'west'], 84, 26, [plain, plain]),
  {
    id: 'back-door',
    kind: 'door',
    name: 'Back door',
    room: 'kitchen',
    wall: 'south',
    at: 275,
    width: 32,
    height: 80,
    jamb: 5,
    casing: plain,
    slab: slab('partGlazed', { paintFar: false }),
  },
  window('kitchen-rear', 'kitchen', 'north', 314, [40, 40, 42], plain, sash('doubleHung', 2, 2)),
  window('kitchen-side', 'kitchen', 'east', 50, [60, 40, 42], plain, sash('doubleHung', 2, 2, 2)),
  // The stair comes up ten feet; the sill counts from the floor at the head of the stair.
  casedOpening('stair-head', ['stair-hall', 'north'], ['upper-hall', 'stair-head'], 220, 32, 80, [
    bedroom,
    bedroom,
  ]),
  door('hall-front-bedroom', ['upper-hall', 'west'], ['front-bedroom', 'east'], 200, 30, [bedroom, bedroom]),
  door('hall-rear-bedroom', ['upper-hall', 'west'], ['rear-bedroom', 'east'], 100, 30, [bedroom, bedroom]),
  door('hall-bath', ['upper-hall', 'bath-side'], ['bath', 'south'], 180, 28, [bedroom, plain]),
  door('hall-east-bedroom', ['upper-hall', 'east-end'], ['east-bedroom', 'west'], 82, 30, [bedroom, bedroom]),
  door('hall-attic', ['upper-hall', 'attic-side'], ['attic-stair', 'south'], 222, 28, [bedroom, plain], {
    height: 78,
    slab: slab('panelled', { edgesShow: 'far' }),
  }),
  window('hall-window', 'upper-hall', 'front', 198, [34, 54, 30], bedroom),
  window('bath-window', 'bath', 'north', 203, [24, 36, 48], plain, sash('doubleHung', 1, 1)),
  window('front-bedroom-left', 'front-bedroom', 'south', 30, bed, bedroom),
  window('front-bedroom-right', 'front-bedroom', 'south', 104, bed, bedroom),
  window('front-bedroom-side', 'front-bedroom', 'west', 250, bed, bedroom),
  window('rear-bedroom-left', 'rear-bedroom', 'north', 40, bed, bedroom),
  window('rear-bedroom-right', 'rear-bedroom', 'north', 100, bed, bedroom),
  window('rear-bedroom-side', 'rear-bedroom', 'west', 40, bed, bedroom),
  door('rear-bedroom-closet', ['rear-bedroom', 'closet-side'], ['rear-closet', 'east'], 136, 26, [
    plain,
    plain,
  ]),
  window('east-bedroom-rear', 'east-bedroom', 'north', 317, bed, bedroom),
  window('east-bedroom-side', 'east-bedroom', 'east', 40, bed, bedroom),
  door(
    'east-bedroom-closet',
    ['east-bedroom', 'closet-back'],
    ['east-closet', 'north'],
    352,
    48,
    [plain, plain],
    {
      slab: slab('louvred', { leaves: 2 }),
    },
  ),
  window('attic-window', 'attic-stair', 'east', 200, [20, 20, 30], plain, sash('fixed', 2, 2)),
]

export const openings: readonly Opening[] = drawn.map((opening) => drawOpening(rooms, opening))
