import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import type { Operation, Step } from '../../../core/specification/types.ts'

/** One word for a bar of the plan; the full words stand in the task's paper and at the pointer. */
const operationShort: Readonly<Record<Operation, string>> = {
  protectRoom: 'Cover',
  postSigns: 'Signs',
  sheetFloor: 'Sheet',
  sealOpenings: 'Close off',
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
  dampCrack: 'Dampen',
  fill: 'Fill',
  tapeCrack: 'Tape',
  fillSmall: 'Fill',
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
  easeSash: 'Free',
  scrapeGlass: 'Glass',
  cleanDaily: 'Clean',
  bagSheeting: 'Bag',
  cleanFinal: 'Clean',
  wipeCheck: 'Wipe check',
  touchUp: 'Touch up',
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
  return choices.find((words) => textWidth(words) <= width) ?? null
}

/** A name cut to so many pixels with an ellipsis; empty where less than its first letters would be left. */
export function shortened(name: string, width: number): string {
  if (textWidth(name) <= width) return name
  for (let letters = name.length - 1; letters >= fewestLetters; letters--) {
    const cut = `${name.slice(0, letters).trimEnd()}…`
    if (textWidth(cut) <= width) return cut
  }
  return ''
}

const fewestLetters = 3
/** Pixels of one letter at 11 px, generously; where there is no page to measure on. */
const widthOfLetter = 6.1
const known = new Map<string, number>()
let pen: CanvasRenderingContext2D | null | undefined

/** Width of words in the plan's small type, which differs from machine to machine. */
function textWidth(words: string): number {
  const width = known.get(words) ?? measured(words)
  known.set(words, width)
  return width
}

function measured(words: string): number {
  if (pen === undefined) pen = penOfPage()
  return pen === null ? words.length * widthOfLetter : pen.measureText(words).width
}

function penOfPage(): CanvasRenderingContext2D | null {
  if (typeof document === 'undefined') return null
  const context = document.createElement('canvas').getContext('2d')
  const face = getComputedStyle(document.documentElement).getPropertyValue('--face')
  if (context !== null) context.font = `11px ${face}`
  return context
}
