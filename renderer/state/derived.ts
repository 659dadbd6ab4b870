import { useMemo } from 'react'
import { createGatherPasses } from '../../core/passes/gather.ts'
import type { Passes } from '../../core/passes/pass-types.ts'
import { estimate } from '../../core/price/estimate.ts'
import type { Estimate } from '../../core/price/estimate-types.ts'
import { isAlikeBut, saidOfTheWork } from '../../core/project/alike.ts'
import type { Job } from '../../core/project/job.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import type { Takeoff } from '../../core/quantities/takeoff-types.ts'
import { createSpecify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import { useJob } from './app.ts'

/** Remembers the answer for the last job value, so that every part of the screen shares one computation per edit. */
function perJob<Value>(compute: (job: Job) => Value): (job: Job) => Value {
  let last: { readonly job: Job; readonly value: Value } | null = null
  return (job) => {
    const value = last !== null && isAlikeBut(job, last.job, saidOfTheWork) ? last.value : compute(job)
    last = { job, value }
    return value
  }
}

export const takeoffOf = perJob<Takeoff>(createTakeOff())
const specify = createSpecify()
export const specificationOf = perJob<Specification>((job) => specify(job, takeoffOf(job)))
export const estimateOf = perJob<Estimate>((job) => estimate(job, takeoffOf(job), specificationOf(job)))

const gatherPasses = createGatherPasses()
export const passesOf = perJob<Passes>((job) => {
  const minutes = new Map(estimateOf(job).labour.steps.map((line) => [line.stepKey, line.minutes]))
  return gatherPasses(job, specificationOf(job), minutes)
})

export function usePasses(): Passes {
  const job = useJob()
  return useMemo(() => passesOf(job), [job])
}

export function useTakeoff(): Takeoff {
  const job = useJob()
  return useMemo(() => takeoffOf(job), [job])
}

export function useSpecification(): Specification {
  const job = useJob()
  return useMemo(() => specificationOf(job), [job])
}

export function useEstimate(): Estimate {
  const job = useJob()
  return useMemo(() => estimateOf(job), [job])
}
