import type { Job } from '../../../core/project/job.ts'
import type { Finish, FinishId, Scope } from '../../../core/project/survey-records.ts'
import type { ProductClass, Sheen, SurfaceClass } from '../../../core/project/vocabulary.ts'
import { newId } from '../../state/app.ts'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { type Place, recordAt, recordFor } from '../parts/scopes.ts'

/** What a surface gets until somebody says otherwise; only offered, never stored by itself. */
const usual: Readonly<Record<SurfaceClass, { readonly sheen: Sheen; readonly productClass: ProductClass }>> =
  {
    ceiling: { sheen: 'flat', productClass: 'latexCeiling' },
    walls: { sheen: 'eggshell', productClass: 'latexWall' },
    wainscot: { sheen: 'satin', productClass: 'waterborneEnamel' },
    trim: { sheen: 'satin', productClass: 'waterborneEnamel' },
    doors: { sheen: 'satin', productClass: 'waterborneEnamel' },
    sash: { sheen: 'semiGloss', productClass: 'waterborneEnamel' },
    stairs: { sheen: 'satin', productClass: 'floorEnamel' },
    radiators: { sheen: 'satin', productClass: 'radiatorEnamel' },
    builtWork: { sheen: 'satin', productClass: 'waterborneEnamel' },
  }

export interface ShownFinish {
  readonly finish: Omit<Finish, 'id' | 'scope'>
  /** Where it was said; null where nobody said anything yet. */
  readonly from: Scope | null
}

export function finishFor(job: Job, place: Place): ShownFinish {
  const record = recordFor(job.finishes, place)
  if (record !== null) return { finish: record, from: record.scope }
  return { finish: { paint: false, colourId: null, ...usual[place.surfaceClass] }, from: null }
}

/** Says it at this scope; what is not changed stays as it was inherited. */
export function chooseFinish(
  job: Job,
  scope: Scope,
  place: Place,
  changes: Partial<Omit<Finish, 'id' | 'scope'>>,
): boolean {
  const own = recordAt(job.finishes, scope)
  const { paint, colourId, sheen, productClass } = finishFor(job, place).finish
  const said = { paint, colourId, sheen, productClass, ...changes }
  // Choosing a colour or a product means that it shall be painted.
  const isMeant =
    changes.paint ?? (said.paint || changes.colourId != null || changes.productClass !== undefined)
  return putRecord('Choose a finish', 'finishes', {
    id: own?.id ?? (newId('finish') as FinishId),
    scope,
    ...said,
    paint: isMeant,
  })
}

export function inheritFinish(job: Job, scope: Scope): boolean {
  const own = recordAt(job.finishes, scope)
  return own === null ? true : removeRecord('Put a finish back to the default', 'finishes', own.id)
}
