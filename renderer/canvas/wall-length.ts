import type { Job } from '../../core/project/job.ts'
import type { Outcome } from '../../core/project/problem.ts'
import type { RoomId, WallId } from '../../core/project/sketch-records.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import type { Length } from '../../core/units/length.ts'

/**
 * A wall with an exact length: its far end moves; where that cannot be (a door there is shared with the room behind), its start does.
 * When neither can, the problem at the far end is answered.
 */
export function withWallLength(job: Job, roomId: RoomId, wallId: WallId, length: Length): Outcome<Job> {
  const wall = { kind: 'setWallLength' as const, roomId, wallId, length }
  const farEnd = applyCommand(job, { ...wall, fixed: 'start' })
  if (farEnd.ok) return farEnd
  const start = applyCommand(job, { ...wall, fixed: 'end' })
  return start.ok ? start : farEnd
}
