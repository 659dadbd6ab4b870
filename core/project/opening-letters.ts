import { type Job, records } from './job.ts'
import { type RoomSet, roomSetsOf } from './room-sets.ts'
import type { Opening, OpeningId, RoomId } from './sketch-records.ts'
import { openingNouns } from './sketch-words.ts'
import { wallLetter } from './walls.ts'

type Letters = ReadonlyMap<OpeningId, string>

/** Jobs never change in place, so each is lettered once. */
const lettersOfJob = new WeakMap<Job, ReadonlyMap<RoomId, Letters>>()

/**
 * The letters of the openings of a room set, on the plan, in lists and on paper: they go on from the walls of its room with the most of
 * them, in the order of the file, so that no letter stands for two things on a sheet.
 */
export function lettersOfSet(job: Job, set: Pick<RoomSet, 'roomIds'>): Letters {
  const walls = Math.max(...set.roomIds.map((id) => job.rooms[id]?.corners.length ?? 0))
  const here = new Set<RoomId>(set.roomIds)
  const touching = records(job.openings).filter(
    ({ roomId, far }) => here.has(roomId) || (far !== null && here.has(far.roomId)),
  )
  return new Map(touching.map((opening, index) => [opening.id, wallLetter(walls + index)]))
}

/** The letter that an opening has in a room; empty where the room does not have the opening. One between two rooms has one in each. */
export function openingLetter(job: Job, openingId: OpeningId, roomId: RoomId): string {
  return lettersByRoom(job).get(roomId)?.get(openingId) ?? ''
}

/**
 * What an opening is called in one of its rooms: its name, or what it is; with its letter where another opening there is called the
 * same: `window E`.
 */
export function openingNameIn(job: Job, opening: Opening, roomId: RoomId): string {
  const name = ownName(opening)
  const isCalledAlike = [...(lettersByRoom(job).get(roomId)?.keys() ?? [])].some((id) => {
    const other = job.openings[id]
    return id !== opening.id && other !== undefined && ownName(other) === name
  })
  return isCalledAlike ? `${name} ${openingLetter(job, opening.id, roomId)}` : name
}

function ownName({ name, kind }: Opening): string {
  return name === '' ? openingNouns[kind] : name
}

function lettersByRoom(job: Job): ReadonlyMap<RoomId, Letters> {
  const known = lettersOfJob.get(job)
  if (known !== undefined) return known
  const letters = new Map(
    roomSetsOf(job).flatMap((set) => {
      const ofSet = lettersOfSet(job, set)
      return set.roomIds.map((id) => [id, ofSet] as const)
    }),
  )
  lettersOfJob.set(job, letters)
  return letters
}
