import { useMemo } from 'react'
import { pinsOnPasses } from '../../../core/passes/pins.ts'
import { type Job, records } from '../../../core/project/job.ts'
import { localTimeIn } from '../../../core/time/local-time.ts'
import { momentsIn } from '../../../core/time/site-moment.ts'
import { passesOf, specificationOf } from '../../state/derived.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { drawingOf, planLook, type Scale, triedStarts } from './plan-look.ts'
import { taskWords } from './task-words.ts'
import type { Trial } from './trial.ts'

interface PlanPictureOf {
  readonly job: Job
  readonly shownJob: Job
  readonly found: FoundPlan | null
  readonly comparedTo: FoundPlan | null
  readonly trial: Trial
  readonly pickedId: string | null
  readonly scale: Scale
}

/** All that is drawn of a plan, each worked out again only when what it follows from has changed. */
export function usePlanPicture({ job, shownJob, found, comparedTo, trial, pickedId, scale }: PlanPictureOf) {
  const specification = specificationOf(job)
  const passes = passesOf(job)
  const { timeZone } = job.header
  const local = useMemo(() => localTimeIn(timeZone), [timeZone])
  const momentOf = useMemo(() => momentsIn(timeZone), [timeZone])
  const words = useMemo(
    () => taskWords(job, specification, found?.workPlan ?? null),
    [job, specification, found],
  )
  const pins = useMemo(() => pinsOnPasses(passes, records(trial.job.pins)), [passes, trial.job.pins])
  const drawing = useMemo(
    () =>
      found === null || typeof scale !== 'number'
        ? null
        : drawingOf({ job: shownJob, found, local, pixelsPerHour: scale }),
    [found, local, scale, shownJob],
  )
  const tried = useMemo(
    () => (found === null ? new Map<string, number>() : triedStarts(found, pins, timeZone)),
    [found, pins, timeZone],
  )
  const look = useMemo(
    () =>
      found === null ? null : planLook({ job: shownJob, found, comparedTo, words, pins, pickedId, momentOf }),
    [shownJob, found, comparedTo, words, pins, pickedId, momentOf],
  )
  return { specification, passes, local, momentOf, words, pins, drawing, tried, look }
}

export type PlanPicture = ReturnType<typeof usePlanPicture>
