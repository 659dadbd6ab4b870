import type { Job } from '../project/job.ts'
import { isSafetyRule, type SafetyLimit, safetyLimit } from '../project/safety-limits.ts'
import type { LeftOut, RuleSetting } from '../project/shop-records.ts'
import { ruleIdSchema } from '../project/shop-records.ts'
import { withinLimits } from './rule-book.ts'
import type { RuleFacts, RuleNumber } from './rule-facts.ts'
import { allRules, ruleById } from './rule-list.ts'

interface RuleNumberState extends RuleNumber {
  readonly name: string
  /** As this job keeps it. */
  readonly current: number
  readonly changed: boolean
  /** What is published of it and may not be weakened; null where nothing is. */
  readonly limit: SafetyLimit | null
}

/** One rule of the book as a job keeps it, beside what the book says by default. */
export interface RuleState {
  readonly facts: RuleFacts
  readonly on: boolean
  readonly numbers: readonly RuleNumberState[]
  /** Switched or with other numbers than the book's. */
  readonly changed: boolean
  /** Protects people from lead or asbestos: left out only with a written reason. */
  readonly safety: boolean
  readonly leftOut: LeftOut | null
  /** What was put right in an older setting, in words; empty where nothing was. */
  readonly raised: string
}

/** The whole book in its own order, with what this job changed in it. */
export function ruleBook(job: Job): readonly RuleState[] {
  return allRules.map((rule) => ruleState(job, rule))
}

function ruleState(job: Job, rule: RuleFacts): RuleState {
  const setting = job.rules[rule.id]
  const on = setting?.on ?? rule.on
  const numbers = Object.entries(rule.numbers).map(([name, facts]) => {
    const limit = safetyLimit(rule.id, name)
    const current = withinLimits(facts, setting?.numbers[name] ?? facts.value, limit)
    return { ...facts, name, current, changed: current !== facts.value, limit: limit ?? null }
  })
  return {
    facts: rule,
    on,
    numbers,
    changed: on !== rule.on || numbers.some((each) => each.changed),
    safety: isSafetyRule(rule.id),
    leftOut: setting?.leftOut ?? null,
    raised: setting?.raised ?? '',
  }
}

/**
 * The record to store for a rule that the owner switches or gives other numbers. Null where nothing differs from the book any more:
 * then the record is removed. A safety rule is switched off by `leftOut`, its written reason. Unknown rules and numbers, and a safety
 * rule switched off without a reason, are a mistake of the caller.
 */
export function changedRule(
  job: Job,
  ruleId: string,
  change: {
    readonly on?: boolean
    readonly numbers?: Readonly<Record<string, number>>
    readonly leftOut?: LeftOut
  },
): RuleSetting | null {
  const rule = ruleById.get(ruleId)
  if (rule === undefined) throw new RangeError(`No rule of the book is called "${ruleId}".`)
  const kept = job.rules[ruleId]
  const leftOut = change.leftOut ?? (change.on === true ? undefined : kept?.leftOut)
  const on = leftOut === undefined && (change.on ?? kept?.on ?? rule.on)
  if (isSafetyRule(ruleId) && !on && leftOut === undefined) {
    throw new RangeError(`The rule "${ruleId}" is left out only with a written reason.`)
  }
  const numbers = Object.entries({ ...kept?.numbers, ...change.numbers }).flatMap(([name, value]) => {
    const facts = rule.numbers[name]
    if (facts === undefined) throw new RangeError(`The rule "${ruleId}" has no number called "${name}".`)
    const within = withinLimits(facts, value, safetyLimit(ruleId, name))
    return within === facts.value ? [] : [[name, within] as const]
  })
  if (on === rule.on && numbers.length === 0) return null
  const reason = leftOut === undefined ? {} : { leftOut }
  return { id: ruleIdSchema.parse(ruleId), on, numbers: Object.fromEntries(numbers), ...reason }
}
