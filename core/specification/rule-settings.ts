import type { Job } from '../project/job.ts'
import type { RuleId, RuleSetting } from '../project/shop-records.ts'
import { withinLimits } from './book.ts'
import type { RuleFacts, RuleNumber } from './rule.ts'
import { allRules, ruleById } from './rule-list.ts'

export interface RuleNumberState extends RuleNumber {
  readonly name: string
  /** As this job keeps it. */
  readonly current: number
  readonly changed: boolean
}

/** One rule of the book as a job keeps it, beside what the book says by default. */
export interface RuleState {
  readonly facts: RuleFacts
  readonly on: boolean
  readonly numbers: readonly RuleNumberState[]
  /** Switched or with other numbers than the book's. */
  readonly changed: boolean
}

/** The whole book in its own order, with what this job changed in it. */
export function ruleBook(job: Job): readonly RuleState[] {
  return allRules.map((rule) => ruleState(job, rule))
}

function ruleState(job: Job, rule: RuleFacts): RuleState {
  const setting = job.rules[rule.id]
  const on = setting?.on ?? rule.on
  const numbers = Object.entries(rule.numbers).map(([name, facts]) => {
    const current = withinLimits(facts, setting?.numbers[name] ?? facts.value)
    return { ...facts, name, current, changed: current !== facts.value }
  })
  return { facts: rule, on, numbers, changed: on !== rule.on || numbers.some((each) => each.changed) }
}

/**
 * The record to store for a rule that the owner switches or gives other numbers. Null where nothing differs from the book any more:
 * then the record is removed. Unknown rules and numbers are a mistake of the caller.
 */
export function changedRule(
  job: Job,
  ruleId: string,
  change: { readonly on?: boolean; readonly numbers?: Readonly<Record<string, number>> },
): RuleSetting | null {
  const rule = ruleById.get(ruleId)
  if (rule === undefined) throw new RangeError(`No rule of the book is called "${ruleId}".`)
  const kept = job.rules[ruleId]
  const on = change.on ?? kept?.on ?? rule.on
  const numbers = Object.entries({ ...kept?.numbers, ...change.numbers }).flatMap(([name, value]) => {
    const facts = rule.numbers[name]
    if (facts === undefined) throw new RangeError(`The rule "${ruleId}" has no number called "${name}".`)
    const within = withinLimits(facts, value)
    return within === facts.value ? [] : [[name, within] as const]
  })
  if (on === rule.on && numbers.length === 0) return null
  return { id: ruleId as RuleId, on, numbers: Object.fromEntries(numbers) }
}
