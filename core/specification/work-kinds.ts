import type { Operation } from './types.ts'

/** The kinds of work that hours and money are put together by, in the order in which they are done. */
export const workKinds = ['protect', 'prepare', 'prime', 'paint', 'putBack'] as const
export type WorkKind = (typeof workKinds)[number]

export const workKindWords: Readonly<Record<WorkKind, string>> = {
  protect: 'Cover and protect',
  prepare: 'Prepare and repair',
  prime: 'Prime',
  paint: 'Paint',
  putBack: 'Clean up and put back',
}

const kindByOperation: Readonly<Record<Operation, WorkKind>> = {
  protectRoom: 'protect',
  postSigns: 'protect',
  sheetFloor: 'protect',
  sealOpenings: 'protect',
  takeOff: 'protect',
  loosenHanging: 'protect',
  coverAlarm: 'protect',
  maskOff: 'protect',
  unmask: 'protect',
  dustDown: 'prepare',
  wash: 'prepare',
  washMildew: 'prepare',
  scrape: 'prepare',
  stripWallpaper: 'prepare',
  washOffSize: 'prepare',
  washOffCalcimine: 'prepare',
  openCrack: 'prepare',
  driveFastener: 'prepare',
  reattachPlaster: 'prepare',
  dampCrack: 'prepare',
  fill: 'prepare',
  tapeCrack: 'prepare',
  fillSmall: 'prepare',
  skim: 'prepare',
  puttySash: 'prepare',
  freeSash: 'prepare',
  caulk: 'prepare',
  treatRust: 'prepare',
  sandPatch: 'prepare',
  sandFill: 'prepare',
  sand: 'prepare',
  vacuum: 'prepare',
  dustOff: 'prepare',
  degloss: 'prepare',
  sealChalk: 'prime',
  sealBare: 'prime',
  blockStain: 'prime',
  spotPrime: 'prime',
  prime: 'prime',
  coat: 'paint',
  easeSash: 'paint',
  scrapeGlass: 'paint',
  touchUp: 'paint',
  cleanDaily: 'putBack',
  bagSheeting: 'putBack',
  cleanFinal: 'putBack',
  wipeCheck: 'putBack',
  restoreAlarm: 'putBack',
  refitHanging: 'putBack',
  putBack: 'putBack',
  cleanUp: 'putBack',
  inspect: 'putBack',
}

/** What kind of work an operation is. */
export function workKindOf(operation: Operation): WorkKind {
  return kindByOperation[operation]
}
