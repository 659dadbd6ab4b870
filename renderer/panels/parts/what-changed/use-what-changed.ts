import { useEffect, useState } from 'react'
import { type WhatChanged, type WorkedOut, whatChanged } from '../../../../core/progress/what-changed.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { WorkPlan } from '../../../../core/work-order/work-plan.ts'
import { useJob } from '../../../state/app.ts'
import { estimateOf, specificationOf, specifiedByRooms } from '../../../state/derived.ts'
import { whenIdle } from '../../../state/idle.ts'
import { lastAnswer } from '../../../state/last-answer.ts'
import { type LastChange, useLastChange } from '../../../state/last-change.ts'
import { useAnsweringPlan } from '../../../state/planner.ts'
import { chainOf } from '../chain.ts'

interface Shown {
  readonly name: string
  readonly what: WhatChanged
  /** Nothing can be said of days until a plan of the job as it is now is looked for. */
  readonly lacksPlan: boolean
}

/** What the last change did, worked out when the page has time for it; null where nothing is otherwise. */
export function useWhatChanged(): Shown | null {
  const job = useJob()
  const last = useLastChange()
  const plan = useAnsweringPlan(job)
  const [shown, setShown] = useState<Shown | null>(null)
  useEffect(() => {
    if (last === null) return setShown(null)
    return whenIdle(compared(last, job, plan), setShown)
  }, [job, last, plan])
  return last === null ? null : shown
}

/** With stops at which the page can answer. */
function* compared(last: LastChange, job: Job, plan: WorkPlan | null): Generator<void, Shown | null> {
  const before = { ...workedOut(last.before), plan: last.planBefore }
  yield
  const specification = yield* specifiedByRooms(job)
  yield
  const after = { job, specification, estimate: estimateOf(job), plan }
  yield
  const what = whatChanged(before, after)
  return what === null ? null : { name: last.name, what, lacksPlan: before.plan !== null && plan === null }
}

/** What was on screen is known; else a job before is worked out by itself. */
function workedOut(job: Job): Omit<WorkedOut, 'plan'> {
  const specification = specificationOf.known(job)
  return specification === null ? chainBefore(job) : { job, specification, estimate: estimateOf(job) }
}

const chainBefore = lastAnswer((job: Job) => chainOf(job))
