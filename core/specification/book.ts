import type { Job } from '../project/job.ts'
import type { Rule, RuleFacts } from './rule.ts'

/** The rules as one job keeps them: switched and with its own numbers. */
export interface RuleBook {
  readonly isOn: (ruleId: string) => boolean
  /** A number of a rule: the job's own, else the default. Unknown names are a mistake of the caller. */
  readonly number: (ruleId: string, name: string) => number
}

export function bookOf(job: Job, rules: readonly Rule[]): RuleBook {
  const byId = new Map(rules.map((rule) => [rule.id, rule]))
  return {
    isOn: (ruleId) => job.rules[ruleId]?.on ?? known(byId, ruleId).on,
    number: (ruleId, name) => job.rules[ruleId]?.numbers[name] ?? defaultNumber(known(byId, ruleId), name),
  }
}

function known(byId: ReadonlyMap<string, Rule>, ruleId: string): Rule {
  const rule = byId.get(ruleId)
  if (rule === undefined) throw new RangeError(`No rule of the book is called "${ruleId}".`)
  return rule
}

function defaultNumber(rule: RuleFacts, name: string): number {
  const found = rule.numbers[name]
  if (found === undefined) throw new RangeError(`The rule "${rule.id}" has no number called "${name}".`)
  return found.value
}
