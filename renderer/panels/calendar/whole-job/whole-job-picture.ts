import { kindOfPass } from '../../../../core/passes/pass-types.ts'
import type { JobPlan } from '../../../../core/schedule/job-plan.ts'
import { phaseOf } from '../../../../core/work-order/phases.ts'
import { type Picture, type PictureElsewhere, pictureOf } from './picture.ts'

/** The whole-job picture of a plan, with a row for everybody of the crew. */
export function pictureOfPlan(
  plan: JobPlan,
  crew: readonly string[],
  elsewhere: readonly PictureElsewhere[] = [],
): Picture {
  const tasks = plan.tasks.map((task) => ({
    key: task.key,
    phase: phaseOf(kindOfPass(task.passKey) ?? 'repair'),
    roomSetId: task.roomSetId,
    segments: task.segments,
    crewMemberIds: task.crewMemberIds,
    dryUntil: task.dryUntil,
  }))
  return pictureOf(tasks, plan.roomsOutOfUse, crew, elsewhere)
}
