/** A seeded stream of numbers in [0, 1); the same seed gives the same stream on every machine (mulberry32). */
export type RandomStream = () => number

/** Numbers from 0 up to but not 1, the same ones for the same seed. A 32-bit mixing generator; not for secrets. */
export function randomStream(seed: number): RandomStream {
  let state = seed | 0
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** A whole number in 0..limit-1. */
export function randomBelow(random: RandomStream, limit: number): number {
  return (random() * limit) | 0
}
