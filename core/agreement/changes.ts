import type { JobChange } from '../project/agreement-records.ts'
import type { Job, Table } from '../project/job.ts'
import { jobProblems } from '../project/job-problems.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import { ownAt, resolveFinish, surfaceClassOf } from '../project/scopes.ts'
import { type Finish, type FinishId, finishIdSchema, type Scope } from '../project/survey-records.ts'
import { usualFinishes } from '../project/usual-finishes.ts'

type FinishChange = Extract<JobChange, { readonly kind: 'finish' }>

/**
 * The job with a list of changes made, one after the other. Refused whole, with a sentence, where a room, surface or color of a change is
 * no longer in the job.
 */
export function applyChanges(job: Job, changes: readonly JobChange[]): Outcome<Job> {
  const next = changes.reduce(applyChange, job)
  const wrong = jobProblems(next)[0]
  if (wrong === undefined) return succeed(next)
  return fail(
    'notFound',
    'This no longer fits the job: a room, surface or color it names is gone.',
    wrong.ids,
  )
}

function applyChange(job: Job, change: JobChange): Job {
  switch (change.kind) {
    case 'finish': {
      const finish = finishWith(job, change)
      return { ...job, finishes: { ...job.finishes, [finish.id]: finish } }
    }
    case 'inherit': {
      const own = ownAt(job.finishes, change.scope)
      if (own === undefined) return job
      const { [own.id]: _taken, ...finishes } = job.finishes
      return { ...job, finishes }
    }
    case 'finding':
      return { ...job, conditions: { ...job.conditions, [change.condition.id]: change.condition } }
  }
}

/** The changes that lead back from the job with `changes` to the job as it is. What was found is not taken back. */
export function changesBack(job: Job, changes: readonly JobChange[]): readonly JobChange[] {
  const back: JobChange[] = []
  let state = job
  for (const change of changes) {
    if (change.kind !== 'finding') back.unshift(changeBack(state, change.scope))
    state = applyChange(state, change)
  }
  return back
}

function changeBack(job: Job, scope: Scope): JobChange {
  const own = ownAt(job.finishes, scope)
  if (own === undefined) return { kind: 'inherit', scope }
  const { paint, colourId, sheen, productClass, moreCoats = 0 } = own
  return { kind: 'finish', scope, set: { paint, colourId, sheen, productClass, moreCoats } }
}

function finishWith(job: Job, { scope, set }: FinishChange): Finish {
  const own = ownAt(job.finishes, scope)
  const base = own ?? inherited(job, scope)
  const moreCoats = set.moreCoats ?? base.moreCoats ?? 0
  const { moreCoats: _before, ...rest } = base
  return {
    ...rest,
    id: own?.id ?? freeId(job.finishes),
    scope,
    paint: set.paint ?? base.paint,
    colourId: set.colourId === undefined ? base.colourId : set.colourId,
    sheen: set.sheen ?? base.sheen,
    productClass: set.productClass ?? base.productClass,
    ...(moreCoats === 0 ? {} : { moreCoats }),
  }
}

/** What holds at a scope that says nothing itself; where nobody has said anything the usual, not painted. */
function inherited(job: Job, scope: Scope): Omit<Finish, 'id' | 'scope'> {
  const wider = scope.level === 'surface' ? resolveFinish(job, scope.surface) : wideFinish(job, scope)
  if (wider !== null) return wider
  const surfaceClass =
    scope.level === 'surface' ? (surfaceClassOf(job, scope.surface) ?? 'walls') : scope.surfaceClass
  return { paint: false, colourId: null, ...usualFinishes[surfaceClass] }
}

function wideFinish(
  job: Job,
  { surfaceClass }: Exclude<Scope, { readonly level: 'surface' }>,
): Finish | null {
  return ownAt(job.finishes, { level: 'house', surfaceClass }) ?? null
}

function freeId(finishes: Table<Finish>): FinishId {
  let number = 1
  while (Object.hasOwn(finishes, `finish-agreed-${number}`)) number++
  return finishIdSchema.parse(`finish-agreed-${number}`)
}
