import type { RandomStream } from '../../schedule/random.ts'
import { exponential, naturalLog } from './arithmetic.ts'
import { normalDraw } from './draws.ts'

/** The deviation of the logarithm of a factor with mean 1 and relative deviation `spread` (0.2 for 20 percent). */
export function logSpread(spread: number): number {
  return Math.sqrt(naturalLog(1 + spread * spread))
}

/** A factor above 0 with mean 1: lognormal, from the deviation of its logarithm. */
export function factorDraw(random: RandomStream, ofLog: number): number {
  return ofLog === 0 ? 1 : exponential(ofLog * normalDraw(random) - (ofLog * ofLog) / 2)
}
