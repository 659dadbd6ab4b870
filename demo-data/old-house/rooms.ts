import type { Room } from '../../core/project/sketch-records.ts'
import { drawRoom, flat, type RoomInches, raked, type WallInches } from '../drawing.ts'

/**
 * The plan in inches, x to the right, y towards the street. Faces of neighbouring rooms stand 5 in apart. Three bays: parlour rooms
 * on the left, hall, stair and small rooms in the middle, and a wing on the right at the back. The stair to the attic lies over the
 * main stair and climbs the same way, so the main stair has a raked ceiling, the underside of the other.
 */
const groundHeight = 108
const upperHeight = 102
/** Floor to floor: the ground storey's 9 ft and a foot of joists. */
const rise = 120

function box(
  left: number,
  top: number,
  right: number,
  bottom: number,
  behind: Partial<Record<'north' | 'east' | 'south' | 'west', WallInches[3]>> = {},
): readonly WallInches[] {
  return [
    ['north', left, top, behind.north ?? 'heated'],
    ['east', right, top, behind.east ?? 'heated'],
    ['south', right, bottom, behind.south ?? 'heated'],
    ['west', left, bottom, behind.west ?? 'heated'],
  ]
}

const ground: readonly RoomInches[] = [
  {
    id: 'entry',
    storey: 'ground',
    name: 'Entry',
    use: 'entry',
    walls: box(173, 281, 257, 365, { east: 'outside', south: 'outside' }),
    ceiling: flat(groundHeight),
    wayOut: true,
  },
  {
    id: 'stair-hall',
    storey: 'ground',
    name: 'Stair hall',
    use: 'stairHall',
    walls: box(215, 122, 257, 276, { east: 'outside' }),
    // 16 risers of 7 1/2 in and 15 treads of 10 in, from the foot at y 276 up to the head at y 122.
    floor: raked([
      [0, rise],
      [4, rise],
      [154, 0],
    ]),
    ceiling: raked([
      [0, rise + upperHeight],
      [5, rise + upperHeight],
      [145, groundHeight],
      [154, groundHeight],
    ]),
    wayOut: true,
    note: 'Plank on the stair for the high wall; nobody works under it.',
  },
  {
    id: 'passage',
    storey: 'ground',
    name: 'Passage',
    use: 'hall',
    walls: box(173, 77, 210, 276),
    ceiling: flat(groundHeight),
    wayOut: true,
  },
  {
    id: 'broom-closet',
    storey: 'ground',
    name: 'Broom closet',
    use: 'closet',
    walls: box(215, 77, 257, 117),
    ceiling: flat(groundHeight),
  },
  {
    id: 'living',
    storey: 'ground',
    name: 'Living room',
    use: 'living',
    walls: box(0, 173, 168, 365, { south: 'outside', west: 'outside' }),
    ceiling: flat(groundHeight),
  },
  {
    id: 'dining',
    storey: 'ground',
    name: 'Dining room',
    use: 'dining',
    walls: box(0, 0, 168, 168, { north: 'outside', west: 'outside' }),
    ceiling: flat(groundHeight),
    backBy: '2027-05-04T17:00',
    note: 'The family has guests on May 5.',
  },
  {
    id: 'pantry',
    storey: 'ground',
    name: 'Pantry',
    use: 'utility',
    walls: box(173, 0, 257, 72, { north: 'outside' }),
    ceiling: flat(groundHeight),
  },
  {
    id: 'kitchen',
    storey: 'ground',
    name: 'Kitchen',
    use: 'kitchen',
    walls: box(262, 0, 406, 168, { north: 'outside', east: 'outside', south: 'outside' }),
    ceiling: flat(groundHeight),
    order: 'ceilingFirst',
  },
]

const upper: readonly RoomInches[] = [
  {
    id: 'upper-hall',
    storey: 'upper',
    name: 'Upper hall',
    use: 'hall',
    walls: [
      ['bath-side', 173, 77],
      ['east-end', 257, 77],
      ['stair-head', 257, 117],
      ['stair-side', 210, 117],
      ['attic-side', 210, 281],
      ['front-east', 257, 281, 'outside'],
      ['front', 257, 365, 'outside'],
      ['west', 173, 365],
    ],
    ceiling: flat(upperHeight),
    above: 'unheated',
    wayOut: true,
  },
  {
    id: 'bath',
    storey: 'upper',
    name: 'Bath',
    use: 'bath',
    walls: box(173, 0, 257, 72, { north: 'outside' }),
    ceiling: flat(upperHeight),
    above: 'unheated',
    order: 'ceilingFirst',
    note: 'The only bath: usable every evening.',
  },
  {
    id: 'front-bedroom',
    storey: 'upper',
    name: 'Front bedroom',
    use: 'bedroom',
    walls: box(0, 173, 168, 365, { south: 'outside', west: 'outside' }),
    ceiling: flat(upperHeight),
    above: 'unheated',
  },
  {
    id: 'rear-bedroom',
    storey: 'upper',
    name: 'Rear bedroom',
    use: 'bedroom',
    walls: [
      ['north', 0, 0, 'outside'],
      ['east', 168, 0],
      ['south', 168, 168],
      ['closet-side', 65, 168],
      ['closet-back', 65, 126],
      ['west', 0, 126, 'outside'],
    ],
    ceiling: flat(upperHeight),
    above: 'unheated',
  },
  {
    id: 'rear-closet',
    storey: 'upper',
    name: 'Rear bedroom closet',
    use: 'closet',
    walls: box(0, 131, 60, 168, { west: 'outside' }),
    ceiling: flat(upperHeight),
    above: 'unheated',
  },
  {
    id: 'east-bedroom',
    storey: 'upper',
    name: 'East bedroom',
    use: 'bedroom',
    walls: [
      ['north', 262, 0, 'outside'],
      ['east', 406, 0, 'outside'],
      ['closet-back', 406, 126],
      ['closet-side', 341, 126],
      ['south', 341, 168, 'outside'],
      ['west', 262, 168],
    ],
    ceiling: flat(upperHeight),
    above: 'unheated',
  },
  {
    id: 'east-closet',
    storey: 'upper',
    name: 'East bedroom closet',
    use: 'closet',
    walls: box(346, 131, 406, 168, { east: 'outside', south: 'outside' }),
    ceiling: flat(upperHeight),
    above: 'unheated',
  },
  {
    id: 'attic-stair',
    storey: 'upper',
    name: 'Attic stair',
    use: 'atticStair',
    walls: box(215, 127, 257, 276, { north: 'unheated', east: 'outside' }),
    // 15 risers of 7.6 in and 14 treads of 10 in, up to the attic floor; the ceiling follows the roof.
    floor: raked([
      [0, 114],
      [140, 0],
      [149, 0],
    ]),
    ceiling: raked([
      [0, 192],
      [149, upperHeight],
    ]),
    above: 'unheated',
  },
]

export const rooms: readonly Room[] = [...ground, ...upper].map(drawRoom)
