import { isBegun, type Plan, type ScheduleProblem } from '../model.ts'
import { placedTasks, type RuleBreak } from './rule-parts.ts'

/** Drying and mere order: at least the link's elapsed minutes, nights included. */
export function dryingRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return waits(problem, plan).flatMap(({ link, wait }): readonly RuleBreak[] => {
    if (link.atLeast === null || wait >= link.atLeast) return []
    return [{ rule: 'drying', from: link.from, to: link.to, missing: link.atLeast - wait }]
  })
}

/** Open time: at most the link's elapsed minutes until the next coat is begun. */
export function openTimeRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return waits(problem, plan).flatMap(({ link, wait }): readonly RuleBreak[] => {
    if (link.atMost === null || wait <= link.atMost) return []
    return [{ rule: 'openTime', from: link.from, to: link.to, late: wait - link.atMost }]
  })
}

function waits(problem: ScheduleProblem, plan: Plan) {
  const byId = new Map(placedTasks(problem, plan).map((placed) => [placed.task.id, placed]))
  return problem.links.flatMap((link) => {
    const from = byId.get(link.from)
    const to = byId.get(link.to)
    if (from === undefined || to === undefined) return []
    if (isBegun(to.task)) return []
    const since = link.measuredFrom === 'end' ? from.planned.end : from.planned.start
    return [{ link, wait: to.planned.start - since }]
  })
}
