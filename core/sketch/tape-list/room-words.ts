import { type Job, records } from '../../project/job.ts'
import type { RoomId } from '../../project/sketch-records.ts'
import { openingNouns } from '../../project/sketch-words.ts'
import type { OpeningKind } from '../../project/vocabulary.ts'
import { enumerated } from '../../words/text.ts'

/** `2 doors and 3 windows`; `no openings` where there are none. */
export function countsOf(
  openings: readonly { readonly kind: OpeningKind; readonly count: number }[],
): string {
  const counts = openings.map(({ kind, count }) => `${count} ${openingNouns[kind]}${count === 1 ? '' : 's'}`)
  return counts.length === 0 ? 'no openings' : enumerated(counts)
}

/** Names of the rooms that a room shares doors or other ways with, each once. */
export function sharedWith(job: Job, roomId: RoomId): readonly string[] {
  const ids = records(job.openings).flatMap(({ roomId: near, far }): readonly RoomId[] => {
    if (far === null) return []
    if (near === roomId) return [far.roomId]
    return far.roomId === roomId ? [near] : []
  })
  return [...new Set(ids)].flatMap((id) => job.rooms[id]?.name ?? [])
}
