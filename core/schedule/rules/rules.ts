import type { Plan, ScheduleProblem } from '../model.ts'
import { pooledResourceRule, roomCapacityRule } from './capacity-rules.ts'
import {
  alarmsRestoredRule,
  crewCalendarRule,
  crewCapacityRule,
  dailyChoresRule,
  onePlaceAtATimeRule,
} from './crew-rules.ts'
import { doneRule, heldRule, pinnedRule } from './fact-rules.ts'
import {
  dustNearWetRule,
  fumesWhileSleepingRule,
  hallsLastRule,
  roomBackRule,
  roomsOutOfUseRule,
  wayOutRule,
} from './room-rules.ts'
import type { Rule, RuleBreak } from './rule-parts.ts'
import { dryingRule, openTimeRule } from './wait-rules.ts'

const rules: readonly Rule[] = [
  crewCapacityRule,
  crewCalendarRule,
  dailyChoresRule,
  alarmsRestoredRule,
  onePlaceAtATimeRule,
  dryingRule,
  openTimeRule,
  pooledResourceRule,
  roomCapacityRule,
  dustNearWetRule,
  fumesWhileSleepingRule,
  roomsOutOfUseRule,
  roomBackRule,
  wayOutRule,
  hallsLastRule,
  heldRule,
  pinnedRule,
  doneRule,
]

/**
 * Everything that breaks, rule by rule, for the verdict while a task is moved; partial plans are judged by what they hold.
 * Whether a plan may be kept is `verifyPlan`'s to say.
 */
export function brokenRules(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return rules.flatMap((rule) => rule(problem, plan))
}
