import { boundOf, type PlanBound } from './bounds/bounds.ts'
import { type Clash, explainHeads, explainStuck, findShortage } from './explain.ts'
import type { Plan, PlanValue, ScheduleProblem } from './model.ts'
import { epochMinutes } from './model.ts'
import { buildSiteNet } from './net/build-site-net.ts'
import { propagateHeads } from './net/heads.ts'
import type { SiteNet } from './net/site-net.ts'
import { plainBound } from './plain/plain-bounds.ts'
import { buildPlainNet, isPlain, type PlainNet } from './plain/plain-net.ts'
import { createPlainSearch } from './plain/plain-search.ts'
import { allWaits } from './plain/plain-waits.ts'
import { planFromPlacements, planValue } from './site/site-plan.ts'
import { createSiteSearch } from './site/site-search.ts'

export interface Improvement {
  /** Decodings done when it was found; the same for the same problem and seed on every machine. */
  readonly iteration: number
  readonly value: PlanValue
}

/**
 * A search that can be stopped and resumed at will: nothing happens outside `step`. The sequence of improvements depends only on
 * the problem, the seed and the number of iterations, not on how they are sliced.
 */
export interface ScheduleSearch {
  /** Does so many decodings more, fewer when the plan is proved best or there can be none. */
  step(iterations: number): readonly Improvement[]
  best(): Plan | undefined
  /** What no plan can beat, worked out when it is first asked for, so that a first plan need not wait; undefined when there can be none. */
  bound(): PlanBound | undefined
  /** Nothing better can be found: proved best in all terms bounded, or proved impossible. */
  isFinished(): boolean
  /** Why there is no plan; `isProved` only with a proof. Undefined as soon as there is one. */
  clash(): { readonly isProved: boolean; readonly clash: Clash } | undefined
}

/**
 * Needs a problem without faults (`validateProblem`). `expected` is about how many decodings the caller means to ask for; it
 * forbids no other number.
 */
export function createSearch(problem: ScheduleProblem, seed: number, expected = 5000): ScheduleSearch {
  const shortage = findShortage(problem)
  if (shortage !== undefined) return impossibleSearch(shortage)
  if (isPlain(problem)) return plainSearch(problem, seed, expected)
  const net = buildSiteNet(problem)
  const heads = propagateHeads(net)
  if (heads.kind !== 'heads') return impossibleSearch(explainHeads(net, heads))
  return siteSearch(net, seed, heads)
}

function impossibleSearch(clash: Clash): ScheduleSearch {
  return {
    step: () => [],
    best: () => undefined,
    bound: () => undefined,
    isFinished: () => true,
    clash: () => ({ isProved: true, clash }),
  }
}

function siteSearch(net: SiteNet, seed: number, heads: Parameters<typeof boundOf>[1]): ScheduleSearch {
  const search = createSiteSearch(net, seed, heads.end, (finish) => finish <= bound().finish)
  let known: PlanBound | undefined
  function bound(): PlanBound {
    known ??= boundOf(net, heads, search.hasPlan() ? search.bestValue[2] : undefined)
    return known
  }
  let iteration = 0
  let plan: Plan | undefined
  const isFinished = (): boolean => {
    if (net.tasks.every((task) => task.fixed === 1) && search.hasPlan()) return true
    return (
      net.problem.clock.kind === 'unbroken' &&
      search.hasPlan() &&
      (search.bestValue[2] as number) <= bound().finish
    )
  }
  function step(iterations: number): readonly Improvement[] {
    const found: Improvement[] = []
    for (let count = 0; count < iterations && !isFinished(); count++) {
      iteration++
      if (!search.step()) continue
      plan = undefined
      found.push({ iteration, value: planValue(net, search.bestValue) })
    }
    return found
  }
  function best(): Plan | undefined {
    if (plan === undefined && search.hasPlan()) plan = planFromPlacements(net, search.best, search.bestValue)
    return plan
  }
  return {
    step,
    best,
    bound,
    isFinished,
    clash: () => {
      if (search.hasPlan() || search.stuck.size === 0) return undefined
      return { isProved: false, clash: explainStuck(net, search.stuck) }
    },
  }
}

function plainSearch(problem: ScheduleProblem, seed: number, expected: number): ScheduleSearch {
  const net = buildPlainNet(problem)
  const search = createPlainSearch(net, seed, expected)
  if (search === undefined) {
    const found = allWaits(net)
    const circle = 'circle' in found ? found.circle : []
    return impossibleSearch({
      kind: 'waitsContradict',
      tasks: circle.map((task) => problem.tasks[task]?.id ?? ''),
    })
  }
  const { best } = search
  const bound = { finish: plainBound(net), roomDaysOutOfUse: 0 }
  let iteration = 0
  const hasPlan = (): boolean => best.end < Number.POSITIVE_INFINITY
  const isFinished = (): boolean => best.end <= bound.finish
  return {
    bound: () => bound,
    isFinished,
    step(iterations) {
      const found: Improvement[] = []
      for (let count = 0; count < iterations && !isFinished(); count++) {
        iteration++
        if (search.step()) found.push({ iteration, value: plainValue(best.end) })
      }
      return found
    },
    best: () => (hasPlan() ? planFromStarts(net, best.starts, best.end) : undefined),
    clash: () => {
      const most = Math.max(0, ...search.failures)
      if (hasPlan() || most === 0) return undefined
      const task = problem.tasks[search.failures.indexOf(most)]?.id ?? ''
      return { isProved: false, clash: { kind: 'stuckMost', task, because: 'waitTooLong' } }
    },
  }
}

function plainValue(finish: number): PlanValue {
  return { finish, roomDaysOutOfUse: 0, idleMinutes: 0, productChanges: 0, movedPromises: 0 }
}

function planFromStarts(net: PlainNet, starts: Int32Array, end: number): Plan {
  const { problem } = net
  const instant = (tick: number) => epochMinutes(problem.clock.start + tick * problem.gridMinutes)
  const tasks = problem.tasks.map((task, index) => {
    const start = instant(starts[index] as number)
    const finish = instant((starts[index] as number) + (net.durations[index] as number))
    const segments = start < finish ? [{ start, end: finish }] : []
    return { task: task.id, segments, start, end: finish, people: [] }
  })
  return { tasks, value: plainValue(end), finishInstant: instant(end) }
}
