import type { Job } from '../project/job.ts'
import type { StepFact } from '../schedule/job/step-facts.ts'
import type { Specification } from '../specification/types.ts'
import { momentAfter, type SiteMoment } from '../time/site-moment.ts'
import { workingMinutes } from '../units/duration.ts'
import { leftMinutesOf } from './room-progress.ts'
import { type StepProgress, stepStates } from './step-states.ts'

/** How every step stands by its marks, for a new plan. */
export function forecastInputs(job: Job, specification: Specification): readonly StepFact[] {
  return [...stepStates(job, specification).values()].map((progress) => factOf(job, progress))
}

function factOf(job: Job, progress: StepProgress): StepFact {
  const { state, step } = progress
  const stepKey = step.key
  switch (state.kind) {
    case 'todo':
    case 'redo':
      return { kind: 'open', stepKey, leftMinutes: leftMinutesOf(job, progress) }
    case 'skipped':
      return { kind: 'dropped', stepKey }
    case 'started':
      return {
        kind: 'started',
        stepKey,
        startedAt: state.at,
        crewMemberIds: state.crewMemberIds,
        leftMinutes: workingMinutes(leftMinutesOf(job, progress)),
      }
    case 'done':
      return { ...doneFact(job, progress, state.at), stepKey }
  }
}

/** Where nobody marked the start, it is reckoned back from the end by the minutes written down, shared by those who worked. */
function doneFact(job: Job, { history }: StepProgress, endedAt: SiteMoment) {
  const done = history.at(-1)
  const previous = history.at(-2)
  const people = done?.crewMemberIds ?? []
  const minutes = (done?.actualMinutes ?? 0) / Math.max(1, people.length)
  const startedAt =
    previous?.mark === 'started' ? previous.at : momentAfter(endedAt, -minutes, job.header.timeZone)
  return { kind: 'done', startedAt, endedAt, crewMemberIds: people } as const
}
