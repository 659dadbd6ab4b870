import type { Operation, Step } from '../../../core/specification/types.ts'
import { surfaceClassWords } from '../../../core/work-order/trade-words.ts'

/** One word for a bar of the plan; the full words stand in the task's paper and under the hand. */
const operationShort: Readonly<Record<Operation, string>> = {
  protectRoom: 'Cover',
  takeOff: 'Take off',
  loosenHanging: 'Loosen',
  coverAlarm: 'Alarm',
  dustDown: 'Dust',
  wash: 'Wash',
  washMildew: 'Wash',
  scrape: 'Scrape',
  stripWallpaper: 'Strip',
  washOffSize: 'Wash',
  washOffCalcimine: 'Wash',
  openCrack: 'Cracks',
  driveFastener: 'Drive',
  reattachPlaster: 'Fasten',
  sealChalk: 'Seal',
  sealBare: 'Seal',
  blockStain: 'Block',
  spotPrime: 'Spot',
  fill: 'Fill',
  skim: 'Skim',
  puttySash: 'Putty',
  freeSash: 'Free',
  caulk: 'Caulk',
  treatRust: 'Rust',
  sandPatch: 'Sand',
  sandFill: 'Sand',
  sand: 'Sand',
  vacuum: 'Vacuum',
  dustOff: 'Dust',
  degloss: 'Degloss',
  prime: 'Prime',
  coat: 'Coat',
  maskOff: 'Mask',
  unmask: 'Unmask',
  restoreAlarm: 'Alarm',
  refitHanging: 'Refit',
  putBack: 'Put back',
  cleanUp: 'Clear',
  inspect: 'Look over',
}

/** Words for a bar, the longest first: `Coat 2 walls`, `Coat 2`. The first step stands for those done with it. */
export function shortWords(steps: readonly Step[]): readonly string[] {
  const [step] = steps
  if (step === undefined) return []
  const work =
    step.coat > 0 ? `${operationShort[step.operation]} ${step.coat}` : operationShort[step.operation]
  return step.surfaceClass === null
    ? [work]
    : [`${work} ${surfaceClassWords[step.surfaceClass].toLowerCase()}`, work]
}

/** The first of some words that fits into so many pixels of the plan's small type, or nothing. */
export function wordsThatFit(choices: readonly string[], width: number): string | null {
  return choices.find((words) => words.length * widthOfLetter <= width) ?? null
}

/** Of the small type at 11 px, generously. */
const widthOfLetter = 6.1

/** A name cut to so many pixels with an ellipsis; empty where nothing to go by would be left. */
export function shortened(name: string, width: number): string {
  const letters = Math.floor(width / widthOfLetter)
  if (name.length <= letters) return name
  return letters < 5 ? '' : `${name.slice(0, letters - 1).trimEnd()}…`
}
