import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'

/** Why a floor cannot be removed; undefined where it can. */
export function whyItStays(props: {
  readonly isOnly: boolean
  readonly roomCount: number
}): string | undefined {
  if (props.isOnly) return 'A job has at least one floor'
  return props.roomCount > 0 ? 'Remove or move its rooms first' : undefined
}

/** Its openings are listed while it or one of them is picked, so that more of them can be picked. */
export function isOpenedUp(job: Job, roomId: RoomId, selectedIds: readonly string[]): boolean {
  return selectedIds.some((id) => {
    const opening = job.openings[id]
    return id === roomId || opening?.roomId === roomId || opening?.far?.roomId === roomId
  })
}
