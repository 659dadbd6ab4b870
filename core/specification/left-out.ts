import { type Job, records } from '../project/job.ts'
import type { LeftOut } from '../project/shop-records.ts'
import type { RoomView } from './rule.ts'
import type { RuleFacts } from './rule-facts.ts'
import { ruleById } from './rule-list.ts'
import { isSuspect } from './rules/asbestos.ts'
import type { Notice } from './types.ts'

/** For the cover: every safety rule that this job leaves out, with its written reason. */
export function leftOutInHouse(job: Job): readonly Notice[] {
  return leftOutRules(job).map(({ rule, reason }) => leftOutNotice(rule, reason, null))
}

/** For the sheet of a room in which a safety rule would have something to say and is left out. */
export function leftOutInRoom(view: RoomView): readonly Notice[] {
  return leftOutRules(view.job)
    .filter(({ rule }) => concerns(rule, view))
    .map(({ rule, reason }) => leftOutNotice(rule, reason, view))
}

interface LeftOutRule {
  readonly rule: RuleFacts
  readonly reason: LeftOut
}

function leftOutRules(job: Job): readonly LeftOutRule[] {
  return records(job.rules).flatMap(({ id, leftOut }) => {
    const rule = ruleById.get(id)
    return rule === undefined || leftOut === undefined ? [] : [{ rule, reason: leftOut }]
  })
}

/** Lead where old paint is cut into, asbestos where there is texture or old compound. */
function concerns(rule: RuleFacts, view: RoomView): boolean {
  return rule.theme === 'asbestos' ? view.groups.some(isSuspect) : view.disturbedSquareFeet > 0
}

function leftOutNotice(rule: RuleFacts, reason: LeftOut, view: RoomView | null): Notice {
  const where = view === null ? 'on this job' : `in ${view.room.name}`
  const sentence = `“${rule.title}” is left out ${where}. Tested by ${reason.testedBy} on ${reason.testedOn}, report ${reason.reportNumber}: ${reason.found}`
  return {
    kind: 'leftOut',
    roomId: view?.room.id ?? null,
    surfaceKeys: [],
    sentence,
    source: rule.source,
    hold: false,
  }
}
