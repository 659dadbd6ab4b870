import { type Job, records } from '../project/job.ts'
import type { Opening, OpeningId, RoomId } from '../project/sketch-records.ts'
import { openingNouns } from '../project/sketch-words.ts'
import { openingSides } from '../project/walls.ts'
import { applyCommands } from './apply-command.ts'
import type { SketchCommand } from './commands.ts'
import { moveRooms } from './room-edits.ts'

type Move = Extract<SketchCommand, { kind: 'moveRooms' }>

/** One way to move rooms that share openings with rooms that would stay. */
export interface WayToMove {
  readonly label: string
  readonly commands: readonly SketchCommand[]
  /** All rooms that move. */
  readonly roomIds: readonly RoomId[]
}

export interface MoveChoice {
  readonly sentence: string
  readonly ways: readonly WayToMove[]
}

/**
 * What can be chosen where a move would pull apart an opening that two rooms share: each room gets one of its own, or the other rooms come along. Null
 * where the move pulls none apart, or where neither way can be gone. `newId` names an opening that is new.
 */
export function choiceOfMove(job: Job, move: Move, newId: () => OpeningId): MoveChoice | null {
  const parted = partedBy(job, move)
  if (parted.length === 0) return null
  const all = roomsAlong(job, move)
  const along = all.filter((id) => !move.roomIds.includes(id))
  const noun = parted.length === 1 ? openingNouns[parted[0]?.kind ?? 'other'] : 'openings'
  const ways: readonly WayToMove[] = [
    {
      label: parted.length === 1 ? `Give each room its own ${noun}` : 'Give each room its own openings',
      commands: [
        ...parted.map(({ id }) => ({ kind: 'partOpening', openingId: id, newId: newId() }) as const),
        move,
      ],
      roomIds: move.roomIds,
    },
    { label: `Take ${namesOf(job, along)} along`, commands: [{ ...move, roomIds: all }], roomIds: all },
  ]
  const open = ways.filter(({ commands }) => applyCommands(job, commands).ok)
  if (open.length === 0) return null
  const shared = parted.length === 1 ? `one ${noun}` : `${parted.length} ${noun}`
  const [verb, what] = [move.roomIds.length === 1 ? 'shares' : 'share', parted.length === 1 ? 'it' : 'them']
  const others = partners(parted, new Set(move.roomIds))
  const sentence = `${namesOf(job, move.roomIds)} ${verb} ${shared} with ${namesOf(job, others)}. This move would pull ${what} apart.`
  return { sentence, ways: open }
}

/** Openings between a room that moves and one that stays, which would not lead from one to the other afterwards. */
function partedBy(job: Job, move: Move): readonly Opening[] {
  const moved = moveRooms(job, move)
  if (!moved.ok) return []
  const going = new Set<string>(move.roomIds)
  return records(job.openings).filter((opening) => {
    if (opening.far === null || going.has(opening.roomId) === going.has(opening.far.roomId)) return false
    const { far } = openingSides(moved.value, opening)
    return far === null || far.place.from < 0 || far.place.to > Math.round(far.wall.length)
  })
}

/** The rooms with those that have to come along so that no opening is pulled apart. */
function roomsAlong(job: Job, move: Move): readonly RoomId[] {
  const others = partners(partedBy(job, move), new Set(move.roomIds))
  return others.length === 0
    ? move.roomIds
    : roomsAlong(job, { ...move, roomIds: [...move.roomIds, ...others] })
}

/** The rooms at the other ends of openings, each once. */
function partners(openings: readonly Opening[], going: ReadonlySet<string>): readonly RoomId[] {
  const ends = openings.flatMap(({ roomId, far }) => [roomId, ...(far === null ? [] : [far.roomId])])
  return [...new Set(ends)].filter((id) => !going.has(id))
}

function namesOf(job: Job, ids: readonly RoomId[]): string {
  if (ids.length > 3) return `${ids.length} rooms`
  return ids.map((id) => job.rooms[id]?.name ?? '').join(' and ')
}
