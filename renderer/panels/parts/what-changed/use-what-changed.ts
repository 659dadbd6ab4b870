import { useEffect, useState } from 'react'
import { type WhatChanged, type WorkedOut, whatChanged } from '../../../../core/progress/what-changed.ts'
import type { Job } from '../../../../core/project/job.ts'
import { useJob } from '../../../state/app.ts'
import { estimateOf, specificationOf } from '../../../state/derived.ts'
import { useLastChange } from '../../../state/last-change.ts'
import { useAnsweringPlan } from '../../../state/planner.ts'
import { chainOf } from '../chain.ts'

type WithoutPlan = Omit<WorkedOut, 'plan'>
const known = new WeakMap<Job, WithoutPlan>()

/** The job on screen shares what its station worked out; one before it is worked out by itself, unless it was on screen. */
function workedOut(job: Job, isShown: boolean): WithoutPlan {
  const made = known.get(job) ?? (isShown ? ofShown(job) : chainOf(job))
  known.set(job, made)
  return made
}

function ofShown(job: Job): WithoutPlan {
  return { job, specification: specificationOf(job), estimate: estimateOf(job) }
}

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
  useEffect(
    () =>
      whenIdle(() => {
        const after = { ...workedOut(job, true), plan }
        if (last === null) return setShown(null)
        const what = whatChanged({ ...workedOut(last.before, false), plan: last.planBefore }, after)
        const lacksPlan = last.planBefore !== null && plan === null
        setShown(what === null ? null : { name: last.name, what, lacksPlan })
      }),
    [job, last, plan],
  )
  return last === null ? null : shown
}

/** Not every browser tells when it is idle; there it is a moment later. */
function whenIdle(work: () => void): () => void {
  if (window.requestIdleCallback === undefined) {
    const timer = window.setTimeout(work, 200)
    return () => window.clearTimeout(timer)
  }
  const wish = window.requestIdleCallback(work, { timeout: 1500 })
  return () => window.cancelIdleCallback(wish)
}
