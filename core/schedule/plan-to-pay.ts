import type { MinutesByStep } from '../passes/pass-types.ts'
import type { PaidPlan } from '../price/paid-plan.ts'
import { lastAcceptedPlan } from '../project/accepted-plan.ts'
import type { Job } from '../project/job.ts'
import type { Specification } from '../specification/types.ts'
import { planJob } from './plan-job.ts'

/** The first complete plan of the search, so that the same job always has the same price. */
const firstPlan = { seed: 1, iterations: 300 } as const

/** The plan that labor is priced by: the accepted one, else a first plan as if nothing had happened; null where no plan can be made. */
export function planToPay(job: Job, specification: Specification, minutes: MinutesByStep): PaidPlan | null {
  return acceptedPlanToPay(job) ?? firstPlanToPay(job, specification, minutes)
}

/** The pay of the plan accepted last. Plans accepted before attendance was kept with them have none. */
export function acceptedPlanToPay(job: Job): PaidPlan | null {
  const body = lastAcceptedPlan(job)?.body
  if (body === undefined || body.version === null) return null
  const { days, tasks } = body.plan
  return days === undefined ? null : { from: 'accepted', days, tasks }
}

/** A first plan of the job as if nothing had happened, the same one each time; null where there is none. */
export function firstPlanToPay(
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
): PaidPlan | null {
  const plan = planJob({ ...job, pins: {} }, specification, minutes, firstPlan)
  return plan.ok ? { from: 'first', days: plan.value.days, tasks: plan.value.tasks } : null
}
