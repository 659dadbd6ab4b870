import { useEffect, useMemo, useState } from 'react'
import { createGatherPasses } from '../../core/passes/gather.ts'
import type { Passes } from '../../core/passes/pass-types.ts'
import { estimate } from '../../core/price/estimate.ts'
import type { Estimate } from '../../core/price/estimate-types.ts'
import { isAlikeBut, saidOfTheWork } from '../../core/project/alike.ts'
import type { Job } from '../../core/project/job.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import type { Takeoff } from '../../core/quantities/takeoff-types.ts'
import { createSpecifyByRooms, toTheEnd } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import { useJob } from './app.ts'
import { whenIdle } from './idle.ts'

interface PerJob<Value> {
  (job: Job): Value
  /** What is worked out already; null where nothing is. */
  readonly known: (job: Job) => Value | null
}

/**
 * Remembers the answers for the last two job values: every part of the screen shares one computation per edit, and what a change did is
 * said beside what was there before it.
 */
function perJob<Value>(compute: (job: Job) => Value): PerJob<Value> {
  let kept: readonly { readonly job: Job; readonly value: Value }[] = []
  const known = (job: Job) => kept.find((each) => isAlikeBut(job, each.job, saidOfTheWork))?.value ?? null
  const ask = (job: Job) => {
    const value = known(job) ?? compute(job)
    kept = [{ job, value }, ...kept.filter((each) => each.value !== value)].slice(0, 2)
    return value
  }
  return Object.assign(ask, { known })
}

export const takeoffOf = perJob<Takeoff>(createTakeOff())
const specifyByRooms = createSpecifyByRooms()
export const specificationOf = perJob<Specification>((job) => toTheEnd(specifyByRooms(job, takeoffOf(job))))
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

/** Steps of a whole house take longer than a press may: with a stop behind each room, for idle time. */
export function* specifiedByRooms(job: Job): Generator<void, Specification> {
  if (specificationOf.known(job) === null) yield* specifyByRooms(job, takeoffOf(job))
  return specificationOf(job)
}

/** Follows the job in idle time; null until there are any steps. */
export function useSpecificationWhenIdle(): Specification | null {
  const job = useJob()
  const [shown, setShown] = useState(() => specificationOf.known(job))
  useEffect(() => whenIdle(specifiedByRooms(job), setShown), [job])
  return shown
}

export function useEstimate(): Estimate {
  const job = useJob()
  return useMemo(() => estimateOf(job), [job])
}
