import { gatherPasses } from '../../core/passes/gather.ts'
import type { Passes } from '../../core/passes/pass-types.ts'
import { labour } from '../../core/price/labour.ts'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { Takeoff } from '../../core/quantities/takeoff-types.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'

export interface Gathered {
  readonly passes: Passes
  readonly specification: Specification
  readonly minutes: ReadonlyMap<string, ReturnType<typeof labour>['minutes']>
}

/** The passes of a job, with what they are gathered from. */
export function gathered(job: Job, takeoff: Takeoff = takeOff(job)): Gathered {
  const specification = specify(job, takeoff)
  const minutes = new Map(labour(job, specification).steps.map((line) => [line.stepKey, line.minutes]))
  return { passes: gatherPasses(job, specification, minutes), specification, minutes }
}
