import { estimate } from '../../../core/price/estimate.ts'
import type { Estimate } from '../../../core/price/estimate-types.ts'
import { isAlikeBut } from '../../../core/project/alike.ts'
import type { Job } from '../../../core/project/job.ts'
import { createTakeOff } from '../../../core/quantities/take-off.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { createSpecify } from '../../../core/specification/specify.ts'
import type { Specification } from '../../../core/specification/types.ts'

/** A job with everything that follows from it up to the price. */
export interface Chain {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly estimate: Estimate
}

const measuresNothing = ['conditions', 'marks', 'pins', 'issued'] as const
const takeOff = createTakeOff()
const specify = createSpecify()

/** The whole chain for a job that is only being thought about. Conditions measure nothing: `like` lends its takeoff. */
export function chainOf(job: Job, like?: Chain): Chain {
  const takeoff =
    like !== undefined && isAlikeBut(job, like.job, measuresNothing) ? like.takeoff : takeOff(job)
  const specification = specify(job, takeoff)
  return { job, takeoff, specification, estimate: estimate(job, takeoff, specification) }
}
