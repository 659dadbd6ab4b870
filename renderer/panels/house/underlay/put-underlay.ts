import { polygonBounds } from '../../../../core/geometry/polygon.ts'
import { planSide } from '../../../../core/pictures/picture-bounds.ts'
import { isPdf } from '../../../../core/pictures/picture-look.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import { type Outcome, type Problem, problem } from '../../../../core/project/problem.ts'
import type { Storey, Underlay } from '../../../../core/project/sketch-records.ts'
import { firstUnderlay } from '../../../../core/sketch/underlay.ts'
import { jobStore } from '../../../state/app.ts'
import { openPdf, type PdfFile } from '../../../state/pdf-pages.ts'
import { type DrawnPicture, keepDrawn, takePicture } from '../../../state/pictures.ts'
import { putRecord } from '../../parts/edits.ts'

/** A floor and the picture that lies under it. */
export interface UnderlayOf {
  readonly storey: Storey
  readonly underlay: Underlay
}

/** Changes the picture under a floor; null takes it away. */
export function setUnderlay(action: string, storey: Storey, underlay: Underlay | null): boolean {
  const { id, name, level } = storey
  return putRecord(action, 'storeys', { id, name, level, ...(underlay === null ? {} : { underlay }) })
}

/**
 * Takes a file as the picture under a floor: true where it lies there, false where it cannot be read, which is said. A PDF of several pages
 * comes back open, for one to be chosen.
 */
export async function putUnder(job: Job, storey: Storey, file: File): Promise<boolean | PdfFile> {
  if (!isPdf(new Uint8Array(await file.slice(0, 8).arrayBuffer()))) {
    return lay(job, storey, file.name, await takePicture(file, [planSide]))
  }
  const opened = await openPdf(file)
  if (!opened.ok) return refuse(file.name, opened.problem)
  const pdf = opened.value
  if (pdf.pages > 1) return pdf
  const isLaid = await putPage(job, storey, file.name, pdf, 1)
  pdf.close()
  return isLaid
}

/** Takes a page of a PDF as the picture under a floor; false where it cannot be drawn, which is said. */
export async function putPage(
  job: Job,
  storey: Storey,
  fileName: string,
  pdf: PdfFile,
  page: number,
): Promise<boolean> {
  const drawn = await pdf.draw(page, planSide)
  return drawn.ok
    ? lay(job, storey, fileName, await keepDrawn(drawn.value, [planSide]))
    : refuse(fileName, drawn.problem)
}

function lay(job: Job, storey: Storey, fileName: string, taken: Outcome<readonly DrawnPicture[]>): boolean {
  if (!taken.ok) return refuse(fileName, taken.problem)
  const [picture] = taken.value
  if (picture === undefined) return false
  return setUnderlay('Put a picture under the sketch', storey, firstUnderlay(picture, cornerOf(job, storey)))
}

function refuse(fileName: string, { sentence }: Problem): false {
  jobStore.refuse(problem('notValid', `${fileName}: ${sentence}`))
  return false
}

/** The upper left corner of what is drawn on a floor; of the sheet where nothing is. */
function cornerOf(job: Job, storey: Storey) {
  const corners = records(job.rooms)
    .filter(({ storeyId }) => storeyId === storey.id)
    .flatMap((room) => room.corners)
  return corners.length === 0 ? { x: 0, y: 0 } : polygonBounds(corners).min
}
