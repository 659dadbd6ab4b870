import { lastAcceptedPlan } from '../../core/project/accepted-plan.ts'
import type { PlanBody } from '../../core/project/issued-records.ts'
import type { Job } from '../../core/project/job.ts'
import type { JobPlan } from '../../core/schedule/job-plan.ts'

interface AcceptedPlan {
  readonly id: string
  readonly acceptedAt: string
  readonly plan: PlanBody['plan']
}

/** The plan accepted last, frozen as it was then; null where none was, or where this version cannot open it. */
export function acceptedPlan(job: Job): AcceptedPlan | null {
  const accepted = lastAcceptedPlan(job)
  if (accepted === undefined || accepted.body.version === null) return null
  return { id: accepted.id, acceptedAt: accepted.issuedAt, plan: accepted.body.plan }
}

/** The moment at which a plan was accepted that is kept and cannot be opened; null where the last one can, or there is none. */
export function sealedPlanAt(job: Job): string | null {
  const accepted = lastAcceptedPlan(job)
  return accepted?.body.version === null ? accepted.issuedAt : null
}

/** What is kept of a plan when it is accepted. `gapDays` says how far from best it can be at most; null where that is not known. */
export function planBody(plan: JobPlan, gapDays: number | null): PlanBody {
  return {
    version: 1,
    plan: {
      tasks: plan.tasks.map(({ state: _state, ...task }) => task),
      days: plan.days.map(
        ({ crewMemberId, date, paidMinutes, setUpMinutes, leavingMinutes, betweenMinutes }) => ({
          crewMemberId,
          date,
          paidMinutes,
          setUpMinutes,
          leavingMinutes,
          betweenMinutes,
        }),
      ),
      startsOn: plan.startsOn,
      finishesOn: plan.finishesOn,
      roomsOutOfUse: plan.roomsOutOfUse,
      bound: plan.bound && { finishesOn: plan.bound.finishesOn, gapDays: plan.bound.gapDays },
    },
    judged: { ...plan.cost, ...(gapDays === null ? {} : { gapDays }) },
  }
}
