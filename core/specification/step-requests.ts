import { type Condition, mostMoreCoats } from '../project/survey-records.ts'
import type { ConditionKind, ProductClass } from '../project/vocabulary.ts'
import { sumAreas } from '../units/area.ts'
import type { Finding } from './findings.ts'
import type { PrimerNeed } from './primers.ts'
import type { GroupView, PrimerRequest, StepRequest } from './rule.ts'
import type { OrderStatement, RuleNumber, Selector } from './rule-facts.ts'
import type { Notice, Operation } from './types.ts'

/** Findings of these kinds on the group, noted or counted on. */
export function findingsOf(view: GroupView, ...kinds: readonly ConditionKind[]): readonly Finding[] {
  return view.group.findings.filter((finding) => kinds.includes(finding.condition.kind))
}

/** There is a finding of one of these kinds on the group. */
export function hasFinding(view: GroupView, ...kinds: readonly ConditionKind[]): boolean {
  return findingsOf(view, ...kinds).length > 0
}

/** A step over the whole group. */
export function wholeStep(operation: Operation, changes: Partial<StepRequest> = {}): StepRequest {
  return {
    operation,
    ordinal: '1',
    extent: 'whole',
    findings: [],
    productClass: null,
    coloured: false,
    dryMinutes: null,
    ...changes,
  }
}

/** A step at the places found, by what was measured there. */
export function stepAt(
  findings: readonly Finding[],
  operation: Operation,
  changes: Partial<StepRequest> = {},
): StepRequest {
  return wholeStep(operation, { extent: 'measured', findings, ...changes })
}

/** Asks for a primer that meets a need; which product that is, is decided when all requests are there. */
export function primer(
  need: PrimerNeed,
  extent: PrimerRequest['extent'],
  findings: readonly Finding[] = [],
  changes: Partial<PrimerRequest> = {},
): PrimerRequest {
  return { need, extent, findings, layer: 'prime', tinted: false, ...changes }
}

/** All of the group is primed, not spots, once what was found covers this share of it (rule `spot-or-full`) or is severe. */
export function primerExtent(view: GroupView, findings: readonly Finding[]): PrimerRequest['extent'] {
  const spots = sumAreas(findings.map((finding) => finding.spotArea))
  const percent = view.book.number('spot-or-full', 'percent')
  const severe = findings.some(
    ({ condition }) => condition.kind === 'loosePaint' && condition.severity === 'severe',
  )
  return severe || spots * 100 >= view.group.amounts.area * percent ? 'whole' : 'spots'
}

/** Everything that is not oil or shellac. */
export function isWaterborne(productClass: ProductClass): boolean {
  return !oilClasses.includes(productClass)
}
const oilClasses: readonly ProductClass[] = ['alkydEnamel', 'radiatorEnamel', 'clearVarnish']

/** No rule asks for more finish coats than this. */
const mostCoats = 4

/** All finish coats there can be by their ordinals, with those asked for beyond the rules: `1`, `2`... */
export const coatOrdinals: readonly string[] = Array.from(
  { length: mostCoats + mostMoreCoats },
  (_, index) => `${index + 1}`,
)

const mostByUnit: Readonly<Record<string, number>> = { coats: mostCoats, layers: 3 }

/** A number of a rule with its default. Coats and layers are whole, at least one; everything else is zero or more. */
export function number(value: number, unit: string, meaning: string, source = 'shop assumption'): RuleNumber {
  const counted = unit in mostByUnit
  return {
    value,
    unit,
    meaning,
    source,
    least: counted ? 1 : 0,
    most: mostByUnit[unit] ?? 1e6,
    whole: counted,
  }
}

/** How long a hold of its kind usually takes to clear. */
export const holdDays = (days: number, source = 'shop assumption') => ({
  holdDays: number(days, 'days', 'Until it is usually cleared, where no day is known', source),
})

/** Findings whose cause was not put right when they were written down. */
export function uncured(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(({ condition }) => !condition.causeCured)
}

/** An order that gives its own reason where a more general rule says the same. */
export function orderBecause(
  before: readonly Selector[],
  after: readonly Selector[],
  reason: string,
): OrderStatement {
  return { before, after, reason, special: true }
}

/** Something to be said of a group: of the surfaces that were found so, or of all of them. */
export function noticeOn(
  view: GroupView,
  kind: Notice['kind'],
  sentence: string,
  source: string,
  findings: readonly Finding[] = [],
  hold = false,
): Notice {
  const keys =
    findings.length > 0
      ? findings.flatMap((finding) => finding.surfaceKeys)
      : view.group.quantities.map((quantity) => quantity.key)
  return { kind, roomId: view.room.id, surfaceKeys: [...new Set(keys)], sentence, source, hold }
}

/** ` (suspected: leaking gutter)` or nothing. */
export function suspected(condition: Condition): string {
  return condition.suspectedCause === '' ? '' : ` (suspected: ${condition.suspectedCause})`
}
