import { gatherPasses } from '../passes/gather.ts'
import type { MinutesByStep, Passes } from '../passes/pass-types.ts'
import type { Job } from '../project/job.ts'
import { type Outcome, type Problem, problem, succeed } from '../project/problem.ts'
import type { Specification } from '../specification/types.ts'
import { boundOf, type PlanBound } from './bound/bound.ts'
import { findImpossible } from './explain-clashes.ts'
import { nothingHappened, type PlanningFacts, type ProblemOfJob, problemOfJob } from './job/problem-of-job.ts'
import { type JobPlan, jobPlanOf } from './job-plan.ts'
import { createKeepingSearch } from './keeping-search.ts'
import { validateProblem } from './validate.ts'
import { clashSentence } from './words/clash-words.ts'
import { faultSentence } from './words/fault-words.ts'
import { wordsOfJob } from './words/job-words.ts'

interface PlanOptions {
  readonly seed: number
  /** Tries of the search; the plan gets better with more of them, never worse. */
  readonly iterations: number
  readonly planning?: PlanningFacts
}

/** A search for a plan that can be stopped and gone on with at will, for a worker that shows what it has so far. */
interface JobPlanning {
  /** Tries so many times more; true when the plan got better. */
  step(iterations: number): boolean
  /** The best plan so far, judged; a problem in words when there is none. Needs at least one step. */
  current(): Outcome<JobPlan>
  /** Works out what no plan can beat; `current` says it from then on. Takes longer than a first plan. */
  prove(): void
  isFinished(): boolean
}

/** Plans a job whole, by as many tries as asked for. Whoever has the passes already gives them along. */
export function planJob(
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
  options: PlanOptions,
  passes: Passes = gatherPasses(job, specification, minutes),
): Outcome<JobPlan> {
  const started = startPlanning(job, specification, passes, minutes, options.seed, options.planning)
  if (!started.ok) return started
  started.value.step(Math.max(1, options.iterations))
  started.value.prove()
  return started.value.current()
}

/** Begins the search for a plan of the job; nothing is searched until it is stepped. The same seed gives the same plan. */
export function startPlanning(
  job: Job,
  specification: Specification,
  passes: Passes,
  minutes: MinutesByStep,
  seed: number,
  planning: PlanningFacts = nothingHappened,
): Outcome<JobPlanning> {
  const asked = problemOfJob(job, specification, passes, minutes, planning)
  const refusal = refusalOf(job, asked)
  if (refusal !== null) return { ok: false, problem: refusal }
  const search = createKeepingSearch(asked, planning.keeps, seed)
  let bound: PlanBound | undefined
  return succeed({
    step: (iterations) => search.step(iterations),
    isFinished: () => search.isFinished(),
    prove: () => {
      bound = boundOf(asked.problem)
    },
    current: () => {
      const plan = search.best()
      if (plan !== undefined) return succeed(jobPlanOf(asked, plan, bound))
      const clash = search.clash()
      if (clash === undefined) throw new Error('a plan is asked for before the first step of the search')
      const { sentence, ids } = clashSentence(clash, wordsOfJob(job, asked))
      return { ok: false, problem: problem('noPlan', `No plan was found yet: ${sentence}`, ids) }
    },
  })
}

/** Why a job cannot be handed to a search at all, in words; null where it can. */
export function refusalOf(job: Job, asked: ProblemOfJob): Problem | null {
  const { problem: given } = asked
  if (given.tasks.length === 0) return problem('noPlan', 'There is nothing to plan: no step is left to do.')
  if (given.people.length === 0)
    return problem('noPlan', 'Nobody is on the crew. Add somebody before planning.')
  const words = wordsOfJob(job, asked)
  const fault = validateProblem(given)[0]
  if (fault !== undefined) {
    const { sentence, ids } = faultSentence(fault, words)
    return problem('noPlan', `The plan cannot be made: ${sentence}`, ids)
  }
  const clash = findImpossible(given)
  if (clash === undefined) return null
  const { sentence, ids } = clashSentence(clash, words)
  return problem('noPlan', `No plan can hold: ${sentence}`, ids)
}
