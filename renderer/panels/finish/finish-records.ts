import type { Job } from '../../../core/project/job.ts'
import type { Finish, Scope } from '../../../core/project/survey-records.ts'
import { usualFinishes } from '../../../core/project/usual-finishes.ts'
import { newId } from '../../state/new-id.ts'
import { putRecord, removeRecord } from '../parts/edits.ts'
import { recordAt, recordFor, type ScopeTarget } from '../parts/scope-choices.ts'

interface ShownFinish {
  readonly finish: Omit<Finish, 'id' | 'scope'>
  /** Where it was said; null where nobody said anything yet. */
  readonly from: Scope | null
}

/** What a surface gets; until somebody says it the usual is only offered, not painted. */
export function finishFor(job: Job, place: ScopeTarget): ShownFinish {
  const record = recordFor(job.finishes, place)
  if (record !== null) return { finish: record, from: record.scope }
  return { finish: { paint: false, colourId: null, ...usualFinishes[place.surfaceClass] }, from: null }
}

/** Says it at this scope; what is not changed stays as it was inherited. */
export function chooseFinish(
  job: Job,
  scope: Scope,
  place: ScopeTarget,
  changes: Partial<Omit<Finish, 'id' | 'scope'>>,
): boolean {
  const own = recordAt(job.finishes, scope)
  const { paint, colourId, sheen, productClass } = finishFor(job, place).finish
  const said = { paint, colourId, sheen, productClass, ...changes }
  // Choosing a colour or a product means that it shall be painted.
  const isMeant =
    changes.paint ?? (said.paint || changes.colourId != null || changes.productClass !== undefined)
  return putRecord('Choose a finish', 'finishes', {
    id: own?.id ?? newId('finish'),
    scope,
    ...said,
    paint: isMeant,
  })
}

export function inheritFinish(job: Job, scope: Scope): boolean {
  const own = recordAt(job.finishes, scope)
  return own === null ? true : removeRecord('Reset a finish to the default', 'finishes', own.id)
}
