import { estimate } from '../../core/price/estimate.ts'
import type { Job } from '../../core/project/job.ts'
import type { HeadlessInput } from '../../core/work-order/outputs.ts'
import { workOrder } from '../../core/work-order/work-order.ts'
import { furnishedJob, furnishedSpecification } from '../fixtures/furnished-room.ts'
import { plainPlan } from '../fixtures/plain-plan.ts'
import { plainTakeoff } from '../fixtures/plain-room.ts'

/** The furnished room planned by hand, as every document is made from it. */
export function sampleInput(changes: Partial<Job> = {}): HeadlessInput {
  const job = furnishedJob(changes)
  return {
    job,
    takeoff: plainTakeoff,
    specification: furnishedSpecification,
    estimate: estimate(job, plainTakeoff, furnishedSpecification),
    plan: plainPlan,
    madeAt: '2027-03-26T18:00',
  }
}

export function sampleOrder(changes: Partial<Job> = {}) {
  const input = sampleInput(changes)
  return workOrder(input.job, input.takeoff, input.specification, input.estimate, input.plan)
}
