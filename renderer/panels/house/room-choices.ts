import type { Corner, Room } from '../../../core/project/sketch-records.ts'
import type { RoomUse } from '../../../core/project/vocabulary.ts'

export const useWords: Readonly<Record<RoomUse, string>> = {
  entry: 'Entry',
  hall: 'Hall',
  stairHall: 'Stair hall',
  living: 'Living room',
  dining: 'Dining room',
  kitchen: 'Kitchen',
  bath: 'Bath',
  bedroom: 'Bedroom',
  study: 'Study',
  closet: 'Closet',
  atticStair: 'Attic stair',
  attic: 'Attic',
  utility: 'Utility room',
  other: 'Other',
}

export const behindWords: Readonly<Record<Corner['behind'], string>> = {
  heated: 'Heated space',
  outside: 'Outdoors',
  unheated: 'Unheated space',
}

export const aboveWords: Readonly<Record<Room['above'], string>> = {
  heated: 'Heated space',
  unheated: 'Unheated space',
  open: 'Open to the room above',
}
