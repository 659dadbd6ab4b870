import type { Heads } from './heads.ts'
import type { SiteNet } from './site-net.ts'

/** What no plan can beat, in the units of `PlanValue`. */
export interface PlanBound {
  readonly finish: number
  readonly roomDaysOutOfUse: number
}

/** The finish (in units of `PlanValue.finish`) that follows from a finish tick. */
export function finishOfTick(net: SiteNet, tick: number): number {
  if (net.problem.clock.kind === 'unbroken') return tick
  return net.axis.dayOfTick[Math.max(0, Math.min(net.axis.horizon, tick - 1))] ?? 0
}

/** Calendar-aware critical path. */
export function criticalPathTick(net: SiteNet, heads: Extract<Heads, { kind: 'heads' }>): number {
  return net.tasks.reduce((latest, task) => {
    return task.fixed === 1 ? latest : Math.max(latest, heads.end[task.index] ?? 0)
  }, net.firstTick)
}

export function boundOf(net: SiteNet, heads: Extract<Heads, { kind: 'heads' }>): PlanBound {
  return { finish: finishOfTick(net, criticalPathTick(net, heads)), roomDaysOutOfUse: 0 }
}
