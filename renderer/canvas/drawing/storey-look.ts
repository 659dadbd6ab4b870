import type { Job } from '../../../core/project/job.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import type { DrawingColors } from '../drawing-colors.ts'
import type { Size, View } from '../view.ts'

/** What one storey on the sheet is drawn from. */
export interface StoreyLook {
  /** As the gesture drafts it. */
  readonly job: Job
  readonly storeyId: string
  readonly system: LengthUnitSystem
  readonly view: View
  readonly size: Size
  readonly colors: DrawingColors
  readonly showsGrid: boolean
  /** The picture under the storey, once it can be drawn. */
  readonly underlayImage: CanvasImageSource | null
  /** Rooms, openings and walls (`room/wall`). */
  readonly selected: ReadonlySet<string>
  /** The same, because a figure comes from them. */
  readonly lit: ReadonlySet<string>
  /** Rooms as they cannot be. */
  readonly refused: ReadonlySet<string>
}
