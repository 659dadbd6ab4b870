import { type Job, records } from '../project/job.ts'
import type { Room } from '../project/sketch-records.ts'
import type { KeptItem } from '../project/survey-records.ts'
import type { RoomUse } from '../project/vocabulary.ts'
import { roomKindOf, usualHardware } from './room-kinds.ts'

export type KeptProposal = Pick<KeptItem, 'kind' | 'name' | 'count' | 'handling'>

/** Rooms whose windows usually have curtains or blinds. Shop assumption. */
const curtained: ReadonlySet<RoomUse> = new Set(['living', 'dining', 'bedroom', 'study'])
/** Where a smoke alarm usually hangs: where people sleep and in the halls before it. Common practice, from memory. */
const alarmed: ReadonlySet<RoomUse> = new Set(['bedroom', 'hall', 'stairHall'])

/**
 * What usually stays in a room of this use with these openings and is not written down there yet: plates, lights, a lock set for each
 * door, curtain hardware for each window, a smoke alarm. A door between two rooms has its lock set in the room that it was drawn in.
 */
export function keptProposals(job: Job, room: Room): readonly KeptProposal[] {
  const openings = records(job.openings).filter(({ roomId }) => roomId === room.id)
  const count = (kind: string) => openings.filter((opening) => opening.kind === kind).length
  const proposals: readonly KeptProposal[] = [
    ...usualHardware(roomKindOf(job, room), count('door')),
    {
      kind: 'curtainHardware',
      name: 'Curtain hardware',
      count: curtained.has(room.use) ? count('window') : 0,
      handling: 'takeOff',
    },
    { kind: 'smokeAlarm', name: 'Smoke alarm', count: alarmed.has(room.use) ? 1 : 0, handling: 'takeOff' },
  ]
  const there = new Set(
    records(job.keptItems).flatMap((item) => (item.roomId === room.id ? [item.kind] : [])),
  )
  return proposals.filter((proposal) => proposal.count > 0 && !there.has(proposal.kind))
}
