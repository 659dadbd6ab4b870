import { polygonBounds } from '../../../../core/geometry/polygon.ts'
import { planSide } from '../../../../core/pictures/picture-bounds.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import { problem } from '../../../../core/project/problem.ts'
import type { Storey, Underlay } from '../../../../core/project/sketch-records.ts'
import { firstUnderlay } from '../../../../core/sketch/underlay.ts'
import { jobStore } from '../../../state/app.ts'
import { takePicture } from '../../../state/pictures.ts'
import { putRecord } from '../../parts/edits.ts'

/** Changes the picture under a floor; null takes it away. */
export function setUnderlay(action: string, storey: Storey, underlay: Underlay | null): boolean {
  const { id, name, level } = storey
  return putRecord(action, 'storeys', { id, name, level, ...(underlay === null ? {} : { underlay }) })
}

/** Takes a file as the picture under a floor; false where it cannot be read, which is said. */
export async function putUnder(job: Job, storey: Storey, file: File): Promise<boolean> {
  const taken = await takePicture(file, [planSide])
  if (!taken.ok) {
    jobStore.refuse(problem('notValid', `${file.name}: ${taken.problem.sentence}`))
    return false
  }
  const [picture] = taken.value
  if (picture === undefined) return false
  return setUnderlay('Put a picture under the sketch', storey, firstUnderlay(picture, cornerOf(job, storey)))
}

/** The upper left corner of what is drawn on a floor; of the sheet where nothing is. */
function cornerOf(job: Job, storey: Storey) {
  const corners = records(job.rooms)
    .filter(({ storeyId }) => storeyId === storey.id)
    .flatMap((room) => room.corners)
  return corners.length === 0 ? { x: 0, y: 0 } : polygonBounds(corners).min
}
