import type { BuiltItemId } from '../../core/project/built-records.ts'
import type { OpeningId, RoomId, TrimRunId, WallId } from '../../core/project/sketch-records.ts'
import type { OpeningPart, SurfaceRef, WallZone } from '../../core/project/surface-ref.ts'
import type {
  Condition,
  ConditionId,
  Existing,
  ExistingId,
  KeptItem,
  KeptItemId,
} from '../../core/project/survey-records.ts'
import type {
  ConditionKind,
  ExistingCoat,
  KeptItemHandling,
  KeptItemKind,
  Severity,
  SurfaceClass,
} from '../../core/project/vocabulary.ts'
import { feet } from '../../core/units/length.ts'

function wall(room: string, wallId: string, zone: WallZone = 'whole'): SurfaceRef {
  return { kind: 'wall', roomId: room as RoomId, wallId: wallId as WallId, zone }
}
function ceiling(room: string): SurfaceRef {
  return { kind: 'ceiling', roomId: room as RoomId }
}
function trim(room: string, run: string): SurfaceRef {
  return { kind: 'trim', roomId: room as RoomId, trimRunId: `${room}-${run}` as TrimRunId }
}
function part(opening: string, name: OpeningPart, side: 'near' | 'far' = 'near'): SurfaceRef {
  return { kind: 'opening', openingId: opening as OpeningId, side, part: name }
}
function built(room: string, item: string): SurfaceRef {
  return { kind: 'built', roomId: room as RoomId, builtItemId: item as BuiltItemId }
}

/** How much: feet of length, square feet of area, or a count. */
type Amount = { readonly length?: number; readonly area?: number; readonly count?: number }

/** 1 sq ft is 144 x 645.16 mm2 exactly. */
const squareFootMm2 = 92_903.04

function found(
  on: SurfaceRef | { readonly room: string; readonly only: SurfaceClass | null },
  kind: ConditionKind,
  severity: Severity,
  amount: Amount,
  more: Partial<Pick<Condition, 'suspectedCause' | 'causeCured' | 'note'>> = {},
): Omit<Condition, 'id'> {
  return {
    on:
      'room' in on
        ? { level: 'room', roomId: on.room as RoomId, surfaceClass: on.only }
        : { level: 'surface', surface: on },
    kind,
    severity,
    length: amount.length === undefined ? null : feet(amount.length),
    areaMm2: amount.area === undefined ? null : amount.area * squareFootMm2,
    count: amount.count ?? null,
    suspectedCause: '',
    causeCured: false,
    note: '',
    photo: null,
    foundOn: '2027-03-12',
    ...more,
  }
}

const foundOnTheWalk = [
  found(
    ceiling('attic-stair'),
    'chalking',
    'severe',
    {},
    { note: 'Comes off white on a damp thumb: calcimine.' },
  ),
  found(ceiling('attic-stair'), 'stressCrack', 'moderate', { length: 9 }),
  found({ room: 'attic-stair', only: null }, 'dustAndCobwebs', 'severe', {}),
  found(
    wall('attic-stair', 'north'),
    'loosePaint',
    'severe',
    { area: 14 },
    { suspectedCause: 'damp from the roof space' },
  ),
  found(ceiling('living'), 'stressCrack', 'moderate', { length: 11 }),
  found(
    wall('living', 'west'),
    'movingCrack',
    'moderate',
    { length: 4 },
    { suspectedCause: 'chimney settles against the wall' },
  ),
  found(
    wall('living', 'west'),
    'sootOrSmoke',
    'slight',
    { area: 10 },
    { suspectedCause: 'fireplace', causeCured: true },
  ),
  found(part('living-hearth-left', 'sash'), 'missingPutty', 'moderate', { length: 3 }),
  found(part('living-front-left', 'sash'), 'paintedShut', 'moderate', { count: 1 }),
  found({ room: 'living', only: 'trim' }, 'glossyOldPaint', 'moderate', {}),
  found(trim('living', 'crown'), 'caulkGap', 'slight', { length: 16 }),
  found(built('living', 'living-radiator'), 'rust', 'moderate', { area: 2 }),
  found(
    ceiling('dining'),
    'waterStain',
    'moderate',
    { area: 6, count: 1 },
    { suspectedCause: 'old leak at the bath', causeCured: true },
  ),
  found(wall('dining', 'north', 'upper'), 'unsandedPatch', 'moderate', { count: 3, area: 2 }),
  found(wall('dining', 'west', 'upper'), 'stressCrack', 'slight', { length: 6 }),
  found({ room: 'dining', only: 'wainscot' }, 'glossyOldPaint', 'moderate', {}),
  found({ room: 'entry', only: 'trim' }, 'glossyOldPaint', 'moderate', {}),
  found(part('front-door', 'slab'), 'bareWood', 'slight', { area: 1.5 }, { note: 'Worn around the lock.' }),
  found(wall('stair-hall', 'west'), 'stressCrack', 'moderate', { length: 12 }),
  found(
    wall('stair-hall', 'east'),
    'loosePlasterKeys',
    'moderate',
    { area: 5 },
    { note: 'Sounds hollow under the knuckles.' },
  ),
  found(built('stair-hall', 'main-stair'), 'glossyOldPaint', 'moderate', {}),
  found(
    { room: 'passage', only: 'walls' },
    'oldWallpaper',
    'moderate',
    {},
    { note: 'Two layers, painted over once.' },
  ),
  found(wall('broom-closet', 'north'), 'nicotine', 'moderate', { area: 20 }),
  found({ room: 'kitchen', only: 'walls' }, 'grease', 'moderate', {}),
  found(ceiling('kitchen'), 'poppedFastener', 'moderate', { count: 14 }),
  found(
    ceiling('kitchen'),
    'bareJointCompound',
    'slight',
    { area: 8 },
    { note: 'New seam where a light was moved.' },
  ),
  found(part('back-door', 'casing'), 'knots', 'slight', { count: 3 }),
  found(wall('pantry', 'south'), 'hole', 'slight', { count: 2 }),
  found(ceiling('bath'), 'mildew', 'moderate', { area: 12 }, { suspectedCause: 'no fan' }),
  found(ceiling('bath'), 'loosePaint', 'moderate', { area: 7 }, { suspectedCause: 'steam' }),
  found(part('bath-window', 'stool'), 'loosePaint', 'moderate', { area: 1 }),
  found(ceiling('front-bedroom'), 'stressCrack', 'moderate', { length: 14 }),
  found(wall('front-bedroom', 'north'), 'unsandedPatch', 'slight', { count: 2, area: 1 }),
  found({ room: 'front-bedroom', only: 'trim' }, 'glossyOldPaint', 'moderate', {}),
  found(part('front-bedroom-left', 'sash'), 'paintedShut', 'slight', { count: 1 }),
  found(
    wall('rear-bedroom', 'east'),
    'newPlaster',
    'slight',
    { area: 16 },
    { note: 'Patched after the wiring, six weeks ago.' },
  ),
  found({ room: 'rear-bedroom', only: 'trim' }, 'glossyOldPaint', 'moderate', {}),
  found(part('rear-bedroom-left', 'sash'), 'missingPutty', 'moderate', { length: 5 }),
  found(
    ceiling('east-bedroom'),
    'unwantedTexture',
    'moderate',
    {},
    { note: 'Sand texture over the old plaster.' },
  ),
  found(wall('east-bedroom', 'north'), 'newSkimCoat', 'slight', { area: 30 }),
  found({ room: 'upper-hall', only: null }, 'dustAndCobwebs', 'moderate', {}),
  found(
    ceiling('upper-hall'),
    'waterStain',
    'slight',
    { area: 2, count: 1 },
    { suspectedCause: 'flashing at the chimney' },
  ),
  found(wall('upper-hall', 'west'), 'stressCrack', 'slight', { length: 8 }),
]

export const conditions: readonly Condition[] = foundOnTheWalk.map((condition, index) => ({
  id: numbered('found', index) as ConditionId,
  ...condition,
}))

function numbered(word: string, index: number): string {
  return `${word}-${String(index + 1).padStart(2, '0')}`
}

function existing(
  id: string,
  scope: Existing['scope'],
  substrate: Existing['substrate'],
  coat: ExistingCoat,
  sheen: Existing['sheen'],
  depth: Existing['depth'],
  textured = false,
): Existing {
  return { id: id as ExistingId, scope, substrate, coat, sheen, depth, textured }
}

function house(surfaceClass: SurfaceClass): Existing['scope'] {
  return { level: 'house', surfaceClass }
}
function inRoom(room: string, surfaceClass: SurfaceClass): Existing['scope'] {
  return { level: 'room', roomId: room as RoomId, surfaceClass }
}

export const existingCoatsFound: readonly Existing[] = [
  existing('now-ceilings', house('ceiling'), 'plaster', 'latexFlat', 'flat', 'white'),
  existing('now-walls', house('walls'), 'plaster', 'latexFlat', 'matte', 'light'),
  existing('now-wainscot', house('wainscot'), 'wood', 'oilPaint', 'gloss', 'white'),
  existing('now-trim', house('trim'), 'wood', 'oilPaint', 'gloss', 'white'),
  existing('now-doors', house('doors'), 'wood', 'oilPaint', 'gloss', 'white'),
  existing('now-sash', house('sash'), 'wood', 'oilPaint', 'gloss', 'white'),
  existing('now-stairs', house('stairs'), 'wood', 'oilPaint', 'semiGloss', 'offWhite'),
  existing('now-radiators', house('radiators'), 'metal', 'oilPaint', 'gloss', 'white'),
  existing('now-built', house('builtWork'), 'wood', 'oilPaint', 'semiGloss', 'white'),
  existing('now-attic-ceiling', inRoom('attic-stair', 'ceiling'), 'plaster', 'calcimine', 'flat', 'white'),
  existing('now-kitchen-ceiling', inRoom('kitchen', 'ceiling'), 'gypsumBoard', 'latexFlat', 'flat', 'white'),
  existing('now-kitchen-walls', inRoom('kitchen', 'walls'), 'plaster', 'latexGlossy', 'semiGloss', 'light'),
  existing('now-bath-walls', inRoom('bath', 'walls'), 'plaster', 'latexGlossy', 'semiGloss', 'white'),
  existing('now-hall-walls', inRoom('upper-hall', 'walls'), 'plaster', 'latexFlat', 'flat', 'white'),
  existing('now-passage-walls', inRoom('passage', 'walls'), 'plaster', 'wallpaper', 'flat', 'medium'),
  existing('now-closet-walls', inRoom('broom-closet', 'walls'), 'plaster', 'unknown', 'flat', 'medium'),
  existing(
    'now-east-ceiling',
    inRoom('east-bedroom', 'ceiling'),
    'plaster',
    'latexFlat',
    'flat',
    'white',
    true,
  ),
]

function kept(
  room: string,
  kind: KeptItemKind,
  name: string,
  on: 'ceiling' | 'room' | { readonly wall: string } | { readonly opening: string },
  count: number,
  handling: KeptItemHandling,
  more: { readonly wired?: boolean; readonly note?: string } = {},
): Omit<KeptItem, 'id'> {
  return {
    roomId: room as RoomId,
    kind,
    name,
    on: placeOf(on),
    count,
    handling,
    wired: more.wired ?? false,
    note: more.note ?? '',
  }
}

function placeOf(on: Parameters<typeof kept>[3]): KeptItem['on'] {
  if (on === 'ceiling' || on === 'room') return { kind: on }
  return 'wall' in on
    ? { kind: 'wall', wallId: on.wall as WallId }
    : { kind: 'opening', openingId: on.opening as OpeningId }
}

const platedRooms = [
  ['entry', 3],
  ['stair-hall', 2],
  ['passage', 2],
  ['living', 7],
  ['dining', 5],
  ['pantry', 2],
  ['kitchen', 9],
  ['upper-hall', 4],
  ['bath', 3],
  ['front-bedroom', 6],
  ['rear-bedroom', 5],
  ['east-bedroom', 5],
] as const

const lockedDoors = [
  ['entry', 'front-door'],
  ['entry', 'entry-passage'],
  ['dining', 'dining-pantry'],
  ['passage', 'passage-pantry'],
  ['passage', 'passage-closet'],
  ['kitchen', 'back-door'],
  ['front-bedroom', 'hall-front-bedroom'],
  ['rear-bedroom', 'hall-rear-bedroom'],
  ['rear-bedroom', 'rear-bedroom-closet'],
  ['east-bedroom', 'hall-east-bedroom'],
  ['bath', 'hall-bath'],
  ['upper-hall', 'hall-attic'],
] as const

const curtained = [
  ['living', 2],
  ['dining', 3],
  ['front-bedroom', 3],
  ['rear-bedroom', 3],
  ['east-bedroom', 2],
] as const

const keptInTheHouse = [
  ...platedRooms.map(([room, count]) =>
    kept(room, 'plate', 'Switch and outlet plates', 'room', count, 'takeOff'),
  ),
  ...lockedDoors.map(([room, opening]) =>
    kept(room, 'lockset', 'Mortise lock and knobs', { opening }, 1, 'takeOff'),
  ),
  ...curtained.map(([room, count]) =>
    kept(room, 'curtainHardware', 'Curtain rods', 'room', count, 'takeOff'),
  ),
  kept('pantry', 'hinges', 'Swing door hinge', { opening: 'dining-pantry' }, 1, 'maskInPlace'),
  kept('entry', 'lightFixture', 'Lantern', 'ceiling', 1, 'loosen', { note: 'Power off at the panel first.' }),
  kept('dining', 'lightFixture', 'Chandelier', 'ceiling', 1, 'maskInPlace', {
    note: 'Too heavy to take down; bag it.',
  }),
  kept('kitchen', 'lightFixture', 'Two pendants', 'ceiling', 2, 'loosen', {
    note: 'Power off at the panel first.',
  }),
  kept('passage', 'smokeAlarm', 'Smoke alarm', 'ceiling', 1, 'coverDaily', { wired: true }),
  kept('upper-hall', 'smokeAlarm', 'Smoke alarm', 'ceiling', 1, 'coverDaily', { wired: true }),
  kept('upper-hall', 'carbonMonoxideAlarm', 'Carbon monoxide alarm', { wall: 'west' }, 1, 'takeOff'),
  kept('front-bedroom', 'smokeAlarm', 'Smoke alarm, battery', 'ceiling', 1, 'takeOff'),
  kept('rear-bedroom', 'smokeAlarm', 'Smoke alarm, battery', 'ceiling', 1, 'takeOff'),
  kept('entry', 'sensor', 'Door contact', { opening: 'front-door' }, 1, 'coverDaily', { wired: true }),
  kept('living', 'hanging', 'Tall mirror', { wall: 'north' }, 1, 'loosen', {
    note: 'Two people; it stays in the room.',
  }),
  kept('stair-hall', 'hanging', 'Wall clock', { wall: 'west' }, 1, 'loosen'),
  kept('front-bedroom', 'hanging', 'Quilt on a rail', { wall: 'north' }, 1, 'loosen'),
  kept('bath', 'other', 'Medicine cabinet', { wall: 'east' }, 1, 'maskInPlace'),
]

export const keptItems: readonly KeptItem[] = keptInTheHouse.map((item, index) => ({
  id: numbered('kept', index) as KeptItemId,
  ...item,
}))
