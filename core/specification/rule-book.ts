import type { Job } from '../project/job.ts'
import { heldToLimit, type SafetyLimit, safetyLimit } from '../project/safety-limits.ts'
import type { RuleFacts, RuleNumber } from './rule-facts.ts'

/** The rules as one job keeps them: switched and with its own numbers. */
export interface RuleBook {
  readonly isOn: (ruleId: string) => boolean
  readonly title: (ruleId: string) => string
  /** A number of a rule: the job's own, else the default. Unknown names are a mistake of the caller. */
  readonly number: (ruleId: string, name: string) => number
}

/** The rules as the job has them: its own settings, held within the safety limits, over the defaults. */
export function bookOf(job: Job, rules: readonly RuleFacts[]): RuleBook {
  const byId = new Map(rules.map((rule) => [rule.id, rule]))
  return {
    isOn: (ruleId) => job.rules[ruleId]?.on ?? known(byId, ruleId).on,
    title: (ruleId) => known(byId, ruleId).title,
    number: (ruleId, name) => {
      const facts = numberFacts(known(byId, ruleId), name)
      return withinLimits(facts, job.rules[ruleId]?.numbers[name] ?? facts.value, safetyLimit(ruleId, name))
    },
  }
}

/** The nearest value the rule can work with, and no weaker than a published limit. */
export function withinLimits(facts: RuleNumber, value: number, limit?: SafetyLimit): number {
  const limited = Math.min(facts.most, Math.max(facts.least, value))
  const held = limit === undefined ? limited : heldToLimit(limit, limited)
  return facts.whole ? Math.round(held) : held
}

function known(byId: ReadonlyMap<string, RuleFacts>, ruleId: string): RuleFacts {
  const rule = byId.get(ruleId)
  if (rule === undefined) throw new RangeError(`No rule of the book is called "${ruleId}".`)
  return rule
}

function numberFacts(rule: RuleFacts, name: string): RuleNumber {
  const found = rule.numbers[name]
  if (found === undefined) throw new RangeError(`The rule "${rule.id}" has no number called "${name}".`)
  return found
}
