import { keysOf, present } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import type { OwnRoomKind } from '../project/shop-records.ts'
import type { Room } from '../project/sketch-records.ts'
import type { KeptItem } from '../project/survey-records.ts'
import type { RoomUse, TrimKind } from '../project/vocabulary.ts'
import { feet, type Length } from '../units/length.ts'

/** What a room of one use usually has. */
interface RoomKind {
  readonly use: RoomUse
  readonly name: string
  /** Null: as high as the rooms around it. */
  readonly height: Length | null
  readonly above: Room['above'] | null
  readonly trim: readonly TrimKind[]
  readonly doors: number
  readonly windows: number
  /** Switch and outlet plates, and lights on the ceiling or a wall. */
  readonly plates: number
  readonly lights: number
}

const room = (
  use: RoomUse,
  name: string,
  [doors, windows, plates, lights]: readonly [number, number, number, number],
  more: Partial<RoomKind> = {},
): RoomKind => ({
  use,
  name,
  height: null,
  above: null,
  trim: ['baseboard'],
  doors,
  windows,
  plates,
  lights,
  ...more,
})

/** Shop assumption: what such rooms of older houses usually have, to be changed to what is there. */
export const roomKinds: Readonly<Record<RoomUse, RoomKind>> = {
  entry: room('entry', 'Entry', [2, 0, 2, 1]),
  hall: room('hall', 'Hall', [4, 0, 3, 1]),
  stairHall: room('stairHall', 'Stair hall', [3, 1, 3, 1]),
  living: room('living', 'Living room', [1, 3, 7, 1]),
  dining: room('dining', 'Dining room', [2, 2, 6, 1]),
  kitchen: room('kitchen', 'Kitchen', [2, 1, 8, 2]),
  bath: room('bath', 'Bath', [1, 1, 3, 2]),
  bedroom: room('bedroom', 'Bedroom', [1, 2, 5, 1]),
  study: room('study', 'Study', [1, 1, 5, 1]),
  closet: room('closet', 'Closet', [1, 0, 0, 1]),
  atticStair: room('atticStair', 'Attic stair', [1, 0, 1, 1]),
  attic: room('attic', 'Attic room', [1, 1, 4, 1], { height: feet(7), above: 'unheated' }),
  utility: room('utility', 'Utility room', [1, 0, 3, 1]),
  other: room('other', 'Room', [1, 1, 4, 1]),
}

const nameWords: Readonly<Record<RoomUse, string>> = {
  entry: 'entry entryway foyer vestibule entrance',
  hall: 'hall halls hallway corridor passage landing',
  stairHall: 'stairhall stair stairs stairway stairwell staircase',
  living: 'living livingroom lr family great parlor parlour sitting lounge',
  dining: 'dining diningroom dr breakfast nook',
  kitchen: 'kitchen kit kitchenette',
  bath: 'bath bathroom bthrm ba powder lav lavatory wc toilet restroom washroom',
  bedroom: 'bedroom bed bedrm bdrm bdr br mbr bd guest nursery master',
  study: 'study den office library',
  closet: 'closet clo clos cl wic pantry wardrobe linen',
  atticStair: 'atticstair atticstairs',
  attic: 'attic loft',
  utility: 'utility util laundry mud mudroom storage boiler workshop',
  other: '',
}

const useByWord: ReadonlyMap<string, RoomUse> = new Map(
  keysOf(nameWords).flatMap((use) => nameWords[use].split(' ').map((word) => [word, use] as const)),
)

/** The kind of a room: the shop's own by a word in the room's name or by its use, else what is usual. */
export function roomKindOf(
  job: HasRoomKinds,
  { name, use }: { readonly name: string; readonly use: RoomUse },
): RoomKind {
  const own = ownKindNamed(job, name)
  const found =
    own?.use === use
      ? own
      : job.houseRules.roomKinds.find((kind) => kind.use === use && sameWords(kind.name, roomKinds[use].name))
  return found === undefined ? roomKinds[use] : { ...roomKinds[use], ...found }
}

/** The use that the name of a room says, by the shop's own kinds first. */
export function roomUseByName(job: HasRoomKinds, name: string): RoomUse {
  return ownKindNamed(job, name)?.use ?? roomUseOf(name)
}

type HasRoomKinds = Pick<Job, 'houseRules'>

/** The own kind whose whole name is in a room's name; the longest of several. */
function ownKindNamed({ houseRules }: HasRoomKinds, name: string): OwnRoomKind | undefined {
  const words = ` ${wordsOf(name).join(' ')} `
  return houseRules.roomKinds
    .filter((kind) => words.includes(` ${wordsOf(kind.name).join(' ')} `))
    .toSorted((a, b) => b.name.length - a.name.length)[0]
}

function sameWords(one: string, other: string): boolean {
  return wordsOf(one).join(' ') === wordsOf(other).join(' ')
}

function wordsOf(name: string): readonly string[] {
  return name
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter((word) => word !== '')
}

/** Others get out through it. */
export function isPassage(use: RoomUse): boolean {
  return use === 'hall' || use === 'stairHall' || use === 'entry'
}

/** The use that the name of a room says. The last word that says one counts: a hall bath is a bath. `other` where none does. */
export function roomUseOf(name: string): RoomUse {
  const words = wordsOf(name)
  for (let at = words.length - 1; at >= 0; at--) {
    const word = present(words[at])
    const two = useByWord.get(`${words[at - 1] ?? ''}${word}`)
    const use = two ?? useByWord.get(word) ?? useByWord.get(word.replace(/s$/, ''))
    if (use !== undefined) return use
  }
  return 'other'
}

type KeptDraft = Pick<KeptItem, 'kind' | 'name' | 'count' | 'handling'>

/** Hardware that stays, by what the kind of room has and by its doors. A cased opening and a window have none of it. */
export function usualHardware(kind: RoomKind, doors: number): readonly KeptDraft[] {
  const items: readonly KeptDraft[] = [
    { kind: 'plate', name: 'Plates', count: kind.plates, handling: 'takeOff' },
    { kind: 'lightFixture', name: 'Light fixture', count: kind.lights, handling: 'loosen' },
    { kind: 'lockset', name: 'Lock set', count: doors, handling: 'takeOff' },
  ]
  return items.filter((item) => item.count > 0)
}
