/**
 * Operators of the keystroke-level model in seconds: Card, Moran and Newell, "The Keystroke-Level Model for User Performance Time with
 * Interactive Systems", Communications of the ACM 23 (1980), figure 1. A press of a mouse button is a `key`. The system's answers are not counted.
 */
const seconds = { key: 0.28, point: 1.1, home: 0.4, think: 1.35 } as const

/** A typist who writes codes like `12-6 x 10` as slowly as the same figure gives for complex codes. */
const slowKey = 0.75

/** What a hand did, as the model counts it. */
export interface Tally {
  /** Clicks, drags, aims at a direction, and keys that are no text. */
  readonly inputs: number
  /** Signs of typed text. */
  readonly typed: number
  /** Keys and mouse buttons pressed, typed signs apart. */
  readonly keys: number
  readonly points: number
  /** How often the hand went between keyboard and mouse. */
  readonly homes: number
  /** Once before each command, and before each line or each fact between two commas of a text. */
  readonly thinks: number
}

export const nothingDone: Tally = { inputs: 0, typed: 0, keys: 0, points: 0, homes: 0, thinks: 0 }

/** By who knows the program, an average typist without errors, which is what the model is made for. */
export function practicedSeconds(tally: Tally): number {
  return (
    seconds.key * (tally.keys + tally.typed) +
    seconds.point * tally.points +
    seconds.home * tally.homes +
    seconds.think * tally.thinks
  )
}

/**
 * By a newcomer. The model has none: our own extension types slowly and thinks four times where the practiced think once (look, choose,
 * do, and see whether it was right).
 */
export function newcomerSeconds(tally: Tally): number {
  return practicedSeconds(tally) + (slowKey - seconds.key) * tally.typed + 3 * seconds.think * tally.thinks
}
