import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import { bookOf } from './book.ts'
import { type SurfaceDegree, surfaceDegree } from './degradation.ts'
import { groupsOfRoom } from './groups.ts'
import { factsOfRooms } from './room-facts.ts'
import { allRules } from './rule-list.ts'

export interface GroupDegree {
  readonly roomId: RoomId
  readonly groupKey: string
  readonly surfaceKeys: readonly string[]
  readonly degree: SurfaceDegree
}

/** The published degree of degradation of every group of like surfaces that is to be painted, from what was found on it. */
export function surfaceDegrees(job: Job, takeoff: Takeoff): readonly GroupDegree[] {
  const book = bookOf(job, allRules)
  const percent = book.number('spot-or-full', 'percent')
  return factsOfRooms(job, takeoff).flatMap((facts) =>
    groupsOfRoom(job, facts, book).map((group) => ({
      roomId: facts.room.id,
      groupKey: group.key,
      surfaceKeys: group.quantities.map((quantity) => quantity.key),
      degree: surfaceDegree(group.findings, group.amounts.area, percent),
    })),
  )
}
