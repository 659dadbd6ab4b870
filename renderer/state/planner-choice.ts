import { useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Job } from '../../core/project/job.ts'
import type { PlanAim } from '../../core/project/vocabulary.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'
import { acceptedPlan } from './planner-accepted.ts'
import { busyNow } from './planner-busy.ts'
import { listen, newsOfJob, send } from './planner-link.ts'
import type { FoundPlan } from './planner-messages.ts'
import { siteNow } from './planner-now.ts'

/** The plans to choose from, of one job value. */
export interface ChoiceState {
  readonly job: Job | null
  readonly status: 'idle' | 'comparing' | 'over'
  /** Of the time there is, 0 to 1. */
  readonly share: number
  readonly plans: ReadonlyMap<PlanAim, FoundPlan>
  readonly broken: string | null
}

const idle: ChoiceState = { job: null, status: 'idle', share: 0, plans: new Map(), broken: null }
const store = createStore<ChoiceState>(() => idle)
let turn = 0

/** Each plan is looked for so long. */
const secondsForEach = 6

listen({
  hear: (tell) => {
    if (tell.kind !== 'compared' || tell.turn !== turn) return
    const { share, plans, isOver, broken } = tell
    store.setState({ share, plans, broken, status: isOver ? 'over' : 'comparing' })
  },
  fail: (sentence) => store.setState({ status: 'over', broken: sentence }),
})

/** Looks for a plan of each aim; all go on from the plan on screen. */
export function comparePlans(job: Job, shown: WorkPlan | null): void {
  turn++
  store.setState({ ...idle, job, status: 'comparing' })
  const about = { turn, now: siteNow(job), shown, busy: busyNow(job), seconds: secondsForEach }
  send({ kind: 'compare', news: newsOfJob(job), ...about })
}

/** What was found by then stays to be chosen from. */
export function stopComparing(): void {
  send({ kind: 'stopComparing' })
}

export function closeComparison(): void {
  turn++
  stopComparing()
  store.setState(idle)
}

/** The comparison while it is of this job, and the end of one that is not; choosing one of its plans does not make it another job. */
export function useChoice(job: Job): ChoiceState {
  const state = useStore(store)
  const isOther = state.job !== null && !offersAlike(state.job, job)
  useEffect(() => {
    if (isOther) closeComparison()
  }, [isOther])
  return isOther ? idle : state
}

/** Whether both would be offered the same plans: they differ at most in which plan is wanted and in papers given out. */
function offersAlike(one: Job, other: Job): boolean {
  const [first, second] = [partsOf(one), partsOf(other)]
  const isSame = [...first].every(([name, part]) => second.get(name) === part)
  return isSame && first.size === second.size && acceptedPlan(one)?.id === acceptedPlan(other)?.id
}

function partsOf({ header, issued: _issued, ...rest }: Job): ReadonlyMap<string, unknown> {
  const { planFor: _planFor, ...facts } = header
  return new Map<string, unknown>([...Object.entries(rest), ...Object.entries(facts)])
}
