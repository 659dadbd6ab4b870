import type { Job, RecordOf } from '../../project/job.ts'
import { ruleIdSchema } from '../../project/shop-records.ts'
import { isSiteRuleOn, type SiteRule } from './site-rules.ts'

/** The job's setting of a rule of the schedule with one number changed; numbers nobody changed stay at their defaults. */
export function changedSiteRule(job: Job, rule: SiteRule, name: string, value: number): RecordOf<'rules'> {
  const now = job.rules[rule.id]
  return {
    ...now,
    id: ruleIdSchema.parse(rule.id),
    on: isSiteRuleOn(job, rule),
    numbers: { ...now?.numbers, [name]: value },
  }
}
