import type { RuleSetting } from '../project/shop-records.ts'
import { ruleIdSchema } from '../project/shop-records.ts'
import type { RuleFacts } from './rule-facts.ts'
import { allRules } from './rule-list.ts'

/** How a rule stands before anybody changes it. */
function defaultSetting(rule: RuleFacts): RuleSetting {
  const numbers = Object.entries(rule.numbers).map(([name, { value }]) => [name, value] as const)
  return { id: ruleIdSchema.parse(rule.id), on: rule.on, numbers: Object.fromEntries(numbers) }
}

/** Every rule at its default; a job without a record for a rule uses the same. */
export const defaultRuleSettings: readonly RuleSetting[] = allRules.map(defaultSetting)
