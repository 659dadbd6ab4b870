import type { Job } from '../../../core/project/job.ts'
import { type ExistingFacts, factsOf } from '../../../core/project/scopes.ts'
import type { Existing, ExistingId, Scope } from '../../../core/project/survey-records.ts'
import { takenUntilSaid } from '../../../core/specification/taken-until-said.ts'
import { recordAt, type ScopeTarget, scopesOf } from '../parts/scope-choices.ts'

/** One fact as it holds at a scope: said there, said at a wider one, taken by class, or open. */
export interface HoldingFact<Value> {
  readonly own: Value | null
  /** What holds while nothing is said at this scope; null while it is open. */
  readonly otherwise: { readonly value: Value; readonly from: 'room' | 'house' | 'taken' } | null
}

type HoldingFacts = {
  readonly [Name in keyof ExistingFacts]: HoldingFact<NonNullable<ExistingFacts[Name]>>
}

export const nothingSaid: ExistingFacts = {
  substrate: null,
  coat: null,
  sheen: null,
  depth: null,
  textured: null,
}

/** The facts of a place at one of its scopes. */
export function holdingFacts(job: Job, place: ScopeTarget, scope: Scope): HoldingFacts {
  const scopes = scopesOf(place)
  const wider = scopes.slice(scopes.findIndex((each) => each.level === scope.level) + 1)
  const own = recordAt(job.existing, scope) ?? nothingSaid
  const taken: ExistingFacts = { ...takenUntilSaid(job.header, place.surfaceClass), depth: null }
  function holding<Value>(pick: (facts: ExistingFacts) => Value | null): HoldingFact<Value> {
    for (const each of wider) {
      const record = recordAt(job.existing, each)
      const said = record === null ? null : pick(record)
      if (said !== null) return { own: pick(own), otherwise: { value: said, from: levelOf(each) } }
    }
    const usual = pick(taken)
    return { own: pick(own), otherwise: usual === null ? null : { value: usual, from: 'taken' } }
  }
  return {
    substrate: holding((facts) => facts.substrate),
    coat: holding((facts) => facts.coat),
    sheen: holding((facts) => facts.sheen),
    depth: holding((facts) => facts.depth),
    textured: holding((facts) => facts.textured),
  }
}

/** A wider scope is never a single surface. */
function levelOf(scope: Scope): 'room' | 'house' {
  return scope.level === 'house' ? 'house' : 'room'
}

/** The record of a scope after something was said or taken back there; null where nothing is left to say. */
export function withFacts(
  own: Existing | null,
  scope: Scope,
  newRecordId: () => ExistingId,
  changes: Partial<ExistingFacts>,
): Existing | null {
  const facts = { ...factsOf(own === null ? [] : [own]), ...changes }
  if (Object.values(facts).every((fact) => fact === null)) return null
  return { id: own?.id ?? newRecordId(), scope, ...facts }
}
