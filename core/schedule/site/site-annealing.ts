import type { SiteNet } from '../net/site-net.ts'
import type { RandomStream } from '../random.ts'
import type { RoomHolds } from './room-holds.ts'
import type { SiteAttempts } from './site-attempts.ts'
import { copyChoices, emptyChoices } from './site-choices.ts'
import type { SiteTries } from './site-tries.ts'
import { guideTerm } from './site-value.ts'

/** Closes rooms for fewer days in a plan, one decoding a step. */
export interface SiteAnnealing {
  /** `progress`: 0 at the begin of a wave to 1 at its end. True when a new best plan was found. */
  step(progress: number): boolean
  /** The choices to go on from. */
  readonly current: ReturnType<typeof emptyChoices>
}

/**
 * Annealing: early in a wave somewhat worse plans are taken too, at its end only better ones. A changed plan is now and then
 * justified: decoded backwards with every room's last day held, then forwards with its first day held, so that rooms are put out of use
 * later and given back sooner. Keys of each pass are the starts (mirrored: the ends) of the one before.
 */
export function createSiteAnnealing(
  net: SiteNet,
  attempts: SiteAttempts,
  tries: SiteTries,
  holds: RoomHolds,
  random: RandomStream,
): SiteAnnealing {
  const { trial, found, bestValue } = attempts
  const current = emptyChoices(net.tasks.length)
  let pass: 'change' | 'back' | 'forth' = 'change'

  function accept(progress: number): void {
    if (!attempts.isComplete()) return
    const warmth = 100 * (1 - progress) ** 2
    const worse = (trial.value[guideTerm] as number) - (current.value[guideTerm] as number)
    if (!(worse > 0) || random() < Math.exp(-worse / Math.max(0.01, warmth))) copyChoices(trial, current)
  }

  function change(): boolean {
    copyChoices(current, trial)
    tries.change(trial)
    const isNewBest = attempts.forward()
    if (attempts.isComplete() && (isNewBest || random() < 0.2)) pass = 'back'
    return isNewBest
  }

  function back(): boolean {
    if ((trial.value[2] as number) <= (bestValue[2] as number)) holds.lastDays(found, trial.delays)
    else trial.delays.fill(0)
    for (let task = 0; task < net.tasks.length; task++) trial.keys[task] = -(found.end[task] as number)
    tries.nudge(trial)
    const isNewBest = attempts.backward()
    pass = attempts.isComplete() ? 'forth' : 'change'
    if (!attempts.isComplete()) return false
    for (let task = 0; task < net.tasks.length; task++) trial.keys[task] = found.start[task] as number
    holds.firstDays(found, trial.delays)
    return isNewBest
  }

  function forth(): boolean {
    pass = 'change'
    return attempts.forward()
  }

  return {
    current,
    step(progress) {
      const isNewBest = pass === 'change' ? change() : pass === 'back' ? back() : forth()
      accept(progress)
      return isNewBest
    },
  }
}
