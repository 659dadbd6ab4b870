import type { PassKind } from '../passes/pass-types.ts'

/** What a block of the whole-job picture says is going on in a room. */
export const phases = ['prepare', 'prime', 'ceiling', 'woodwork', 'walls', 'putBack'] as const
export type Phase = (typeof phases)[number]

export const phaseWords: Readonly<Record<Phase, string>> = {
  prepare: 'prepare',
  prime: 'prime',
  ceiling: 'ceiling',
  woodwork: 'woodwork',
  walls: 'walls',
  putBack: 'put back',
}

const phaseOfKind: Readonly<Record<PassKind, Phase>> = {
  setUp: 'prepare',
  slow: 'prepare',
  repair: 'prepare',
  sand: 'prepare',
  prime: 'prime',
  ceiling: 'ceiling',
  woodwork: 'woodwork',
  walls: 'walls',
  stairs: 'woodwork',
  putBack: 'putBack',
}

/** The phase that a pass is drawn and named by. */
export function phaseOf(kind: PassKind): Phase {
  return phaseOfKind[kind]
}
