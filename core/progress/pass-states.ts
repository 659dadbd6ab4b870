import type { Pass } from '../passes/pass-types.ts'
import type { Job } from '../project/job.ts'
import type { Specification, StepOrder } from '../specification/types.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import { ordersByAfter, type Readiness, readinessFor } from './readiness.ts'
import { isSettled, type StepProgress } from './step-states.ts'

/** How a pass stands, by its steps. Daily steps come and go and do not count, but where there is nothing else. */
type PassState =
  | { readonly kind: 'todo' }
  | { readonly kind: 'underWay'; readonly settled: number; readonly total: number }
  | { readonly kind: 'redo' }
  | { readonly kind: 'skipped' }
  | { readonly kind: 'done'; readonly at: SiteMoment }

export interface PassProgress {
  readonly pass: Pass
  /** In the order they are worked. */
  readonly steps: readonly StepProgress[]
  readonly state: PassState
  readonly ready: Readiness
}

type States = ReadonlyMap<string, StepProgress>

/** Passes as they stand at `now`, in the order given. */
export function passStates(
  job: Job,
  passes: readonly Pass[],
  specification: Specification,
  states: States,
  now: SiteMoment,
): readonly PassProgress[] {
  return passes.map((pass) => {
    const steps = pass.stepKeys.flatMap((key) => states.get(key) ?? [])
    const state = stateOf(counted(steps))
    const open = steps.filter((step) => !isSettled(step.state)).map(({ step }) => step.key)
    const isStarted = state.kind === 'underWay'
    const orders = ordersInto(specification, open, new Set(pass.stepKeys))
    const isOver = state.kind === 'done' || state.kind === 'skipped'
    const ready: Readiness = isOver
      ? { kind: 'settled' }
      : readinessFor(job.header.timeZone, states, isStarted, orders, now)
    return { pass, steps, state, ready }
  })
}

/** The steps by which a pass, or a line of one, is judged and ticked. */
export function counted(steps: readonly StepProgress[]): readonly StepProgress[] {
  const once = steps.filter(({ step }) => !step.daily)
  return once.length > 0 ? once : steps
}

function stateOf(steps: readonly StepProgress[]): PassState {
  if (steps.some(({ state }) => state.kind === 'redo')) return { kind: 'redo' }
  const settled = steps.filter(({ state }) => isSettled(state))
  if (settled.length < steps.length) {
    const isTouched = steps.some(({ state }) => state.kind !== 'todo')
    return isTouched ? { kind: 'underWay', settled: settled.length, total: steps.length } : { kind: 'todo' }
  }
  const done = steps.flatMap(({ state }) => (state.kind === 'done' ? [state.at] : []))
  const at = done.toSorted().at(-1)
  return at === undefined ? { kind: 'skipped' } : { kind: 'done', at }
}

/** What has to come before steps, from outside of what is done together with them. */
function ordersInto(
  { order }: Specification,
  stepKeys: readonly string[],
  together: ReadonlySet<string>,
): readonly StepOrder[] {
  const byAfter = ordersByAfter(order)
  return stepKeys.flatMap((key) => (byAfter.get(key) ?? []).filter(({ before }) => !together.has(before)))
}

/** Why steps would be ticked out of their order: what is not done before them, or what still dries. `ready` where nothing speaks against it. */
export function tickedTogether(
  job: Job,
  specification: Specification,
  states: States,
  stepKeys: readonly string[],
  now: SiteMoment,
): Readiness {
  const orders = ordersInto(specification, stepKeys, new Set(stepKeys))
  return readinessFor(job.header.timeZone, states, false, orders, now)
}
