import type { RandomStream } from '../../schedule/random.ts'
import { naturalLog } from './arithmetic.ts'

/** A normal draw with mean 0 and deviation 1 (polar method of Marsaglia and Bray, 1964). */
export function normalDraw(random: RandomStream): number {
  for (;;) {
    const [one, other] = [2 * random() - 1, 2 * random() - 1]
    const square = one * one + other * other
    if (square > 0 && square < 1) return one * Math.sqrt((-2 * naturalLog(square)) / square)
  }
}

/** A draw of an exponential with mean 1. */
export function exponentialDraw(random: RandomStream): number {
  return -naturalLog(1 - random())
}
