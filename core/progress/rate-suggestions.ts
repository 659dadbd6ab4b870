import { labourParts, stepMinutes } from '../price/labour.ts'
import type { Job } from '../project/job.ts'
import type { Rate } from '../project/shop-records.ts'
import type { Specification } from '../specification/types.ts'
import { type StepProgress, stepStates } from './step-states.ts'

/** What the shop's own hours say about a rate. `actualMinutes` of marks are person-minutes, everybody's together. */
export interface RateSuggestion {
  readonly rate: Rate
  readonly plannedMinutes: number
  readonly actualMinutes: number
  readonly steps: number
  /** The rate that would have given exactly the minutes worked. */
  readonly observedPerHour: number
  /** Between the present rate and the observed one, nearer to the observed the more was worked. */
  readonly suggestedPerHour: number
  /** To be written beside the new figure. */
  readonly source: string
}

/** At so many planned minutes the suggestion stands halfway between present and observed; shop assumption. */
const halfTrust = 240

/** What finished steps with written minutes say of one rate, in person-minutes. */
interface RateEvidence {
  readonly rate: Rate
  readonly planned: number
  readonly actual: number
  readonly steps: number
}

/** One suggestion per rate that finished steps with written minutes have used. */
export function rateSuggestions(job: Job, specification: Specification): readonly RateSuggestion[] {
  return rateEvidence(job, specification).map(suggestionOf)
}

/**
 * What finished steps with written minutes say of each rate; a step's minutes are shared over its rates as planned. Steps that had to be redone
 * are left out: they say something about quality, not pace.
 */
export function rateEvidence(job: Job, specification: Specification): readonly RateEvidence[] {
  const evidence = new Map<string, RateEvidence>()
  for (const progress of stepStates(job, specification).values()) {
    const actual = minutesWorked(progress)
    const planned = stepMinutes(job, progress.step)
    if (actual === null || planned === 0) continue
    for (const part of labourParts(job, progress.step)) {
      const partPlanned = part.minutes * progress.step.difficulty
      if (partPlanned === 0) continue
      const sum = evidence.get(part.rate.id) ?? { rate: part.rate, planned: 0, actual: 0, steps: 0 }
      evidence.set(part.rate.id, {
        rate: part.rate,
        planned: sum.planned + partPlanned,
        actual: sum.actual + (actual * partPlanned) / planned,
        steps: sum.steps + 1,
      })
    }
  }
  return [...evidence.values()]
}

function minutesWorked({ state, history }: StepProgress): number | null {
  if (state.kind !== 'done' || history.some((mark) => mark.mark === 'redo')) return null
  const written = history.at(-1)?.actualMinutes ?? null
  return written === 0 ? null : written
}

/** Between the present rate and what was observed, nearer to the observed the more was worked; three digits. */
export function towardsObserved(perHour: number, plannedMinutes: number, workedMinutes: number): number {
  const trust = plannedMinutes / (plannedMinutes + halfTrust)
  const observed = perHour / (1 + trust * (workedMinutes / plannedMinutes - 1))
  return Number(observed.toPrecision(3))
}

function suggestionOf(sum: RateEvidence): RateSuggestion {
  return {
    rate: sum.rate,
    plannedMinutes: sum.planned,
    actualMinutes: sum.actual,
    steps: sum.steps,
    observedPerHour: (sum.rate.perHour * sum.planned) / sum.actual,
    suggestedPerHour: towardsObserved(sum.rate.perHour, sum.planned, sum.actual),
    source: `shop's own hours: ${sum.steps} ${sum.steps === 1 ? 'step' : 'steps'}, ${Math.round(sum.actual)} min worked where ${Math.round(sum.planned)} min were planned`,
  }
}
