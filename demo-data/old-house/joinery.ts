import type { BuiltItem, BuiltItemId } from '../../core/project/built-records.ts'
import type { RoomId, TrimRun } from '../../core/project/sketch-records.ts'
import { inches } from '../../core/units/length.ts'
import { cabinet, nothing, radiator, shelf, trimRun } from '../drawing.ts'

const frontRooms = ['entry', 'living', 'dining'] as const
const bedrooms = ['front-bedroom', 'rear-bedroom', 'east-bedroom', 'upper-hall'] as const
const plainRooms = [
  'passage',
  'broom-closet',
  'pantry',
  'kitchen',
  'bath',
  'rear-closet',
  'east-closet',
  'attic-stair',
] as const

export const trimRuns: readonly TrimRun[] = [
  ...frontRooms.map((room) => trimRun(room, 'baseboard', 9, 11.5)),
  trimRun('stair-hall', 'baseboard', 9, 11.5),
  ...bedrooms.map((room) => trimRun(room, 'baseboard', 7, 9)),
  ...plainRooms.map((room) => trimRun(room, 'baseboard', 5.5, 6.75)),
  ...frontRooms.map((room) => trimRun(room, 'crown', 4.5, 6.5)),
  trimRun('entry', 'chairRail', 3, 4.25, 32),
  trimRun('dining', 'wainscotCap', 3, 4.5, 34),
  trimRun('bath', 'wainscotCap', 2.5, 4, 48),
  trimRun('front-bedroom', 'pictureRail', 2.25, 3.5, 86),
]

const mainStair: BuiltItem = {
  kind: 'stair',
  id: 'main-stair' as BuiltItemId,
  roomId: 'stair-hall' as RoomId,
  name: 'Main stair',
  treads: 15,
  risers: 16,
  stepLength: inches(39),
  treadDepth: inches(11),
  riserHeight: inches(7.5),
  paintTreads: false,
  paintRisers: true,
  stringers: 2,
  stringerLength: inches(194),
  stringerGirth: inches(12),
  balusters: 14,
  balusterHeight: inches(30),
  balusterGirth: inches(5.5),
  newels: 2,
  newelHeight: inches(46),
  newelGirth: inches(16),
  handrailLength: inches(200),
  handrailGirth: inches(7),
}

const atticStair: BuiltItem = {
  ...mainStair,
  id: 'attic-flight' as BuiltItemId,
  roomId: 'attic-stair' as RoomId,
  name: 'Attic stair',
  treads: 14,
  risers: 15,
  stepLength: inches(40),
  treadDepth: inches(10.5),
  riserHeight: inches(7.625),
  paintTreads: true,
  stringerLength: inches(181),
  stringerGirth: inches(10),
  balusters: 0,
  balusterHeight: nothing,
  balusterGirth: nothing,
  newels: 0,
  newelHeight: nothing,
  newelGirth: nothing,
  handrailLength: inches(180),
  handrailGirth: inches(5),
}

const mantel: BuiltItem = {
  kind: 'mantel',
  id: 'mantel' as BuiltItemId,
  roomId: 'living' as RoomId,
  name: 'Mantel',
  width: inches(60),
  height: inches(50),
  legWidth: inches(9),
  friezeHeight: inches(12),
  shelfDepth: inches(8),
}

export const builtItems: readonly BuiltItem[] = [
  mainStair,
  atticStair,
  mantel,
  radiator('living', 26, 3, 12),
  radiator('dining', 26, 3, 10),
  radiator('kitchen', 38, 2, 6),
  radiator('front-bedroom', 26, 2, 10),
  radiator('rear-bedroom', 26, 2, 9),
  radiator('east-bedroom', 26, 2, 8),
  radiator('bath', 20, 2, 6),
  cabinet('kitchen', 'Base cabinets', [120, 34.5, 24], 6, 4),
  cabinet('kitchen', 'Wall cabinets', [96, 30, 12], 8, 0),
  cabinet('pantry', 'Pantry dresser', [60, 84, 14], 4, 6),
  shelf('pantry', 48, 12, 4),
  shelf('broom-closet', 38, 12, 2),
  shelf('rear-closet', 58, 14, 2),
  shelf('east-closet', 58, 14, 2),
]
