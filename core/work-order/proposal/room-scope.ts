import { groupedBy } from '../../lists/lists.ts'
import type { Job } from '../../project/job.ts'
import { type SurfaceClass, surfaceClasses } from '../../project/vocabulary.ts'
import { amountsSum } from '../../specification/amounts.ts'
import { productClassWords, sheenWords, surfaceNoun } from '../../specification/trade-words.ts'
import type { Operation, Step, StepAmounts } from '../../specification/types.ts'
import { partsSum } from '../../specification/woodwork.ts'
import { type LengthUnitSystem, toFeet, toMetres } from '../../units/length.ts'
import { capital } from '../../words/text.ts'
import { shortArea } from '../room-sheet/sheet-words.ts'

/**
 * What is done in some rooms, as a client reads it: first the repairs with what was measured, then each paint with what it goes on. `Before
 * painting: 14 ft of cracks opened and filled. Ceiling 196 sq ft: two coats of latex ceiling paint, White, flat.`
 */
export function roomScope(job: Job, steps: readonly Step[]): readonly string[] {
  const { unitSystem } = job.header
  const repairs = repairLine(steps, unitSystem)
  return [...(repairs === '' ? [] : [repairs]), ...coatLines(job, steps)]
}

/** To the nearest foot, or meter under ten to a tenth. */
function wholeLength(length: number, system: LengthUnitSystem): string {
  if (system === 'imperial') return `${Math.max(1, Math.round(toFeet(length)))} ft`
  const metres = toMetres(length)
  return `${metres < 10 ? metres.toFixed(1) : Math.round(metres)} m`
}

type Counted = (amounts: StepAmounts, system: LengthUnitSystem) => string

const byArea =
  (words: string): Counted =>
  ({ area }, system) =>
    area > 0 ? `${shortArea(area, system)} of ${words}` : words
const byLength =
  (words: string): Counted =>
  ({ length, area }, system) =>
    length > 0
      ? `${wholeLength(length, system)} of ${words}`
      : area > 0
        ? `${shortArea(area, system)} of ${words}`
        : words
const byCount =
  (one: string, many: string): Counted =>
  ({ count, length }, system) =>
    count > 0
      ? `${count} ${count === 1 ? one : many}`
      : length > 0
        ? `${wholeLength(length, system)} of ${many}`
        : many

/** Work that a client knows by what was wrong, in the order it is done. What serves other work is not named. */
const repairs: readonly (readonly [Operation, Counted])[] = [
  ['washMildew', byArea('mildew washed off')],
  ['stripWallpaper', byArea('wallpaper stripped')],
  ['washOffCalcimine', byArea('calcimine washed off')],
  ['sealChalk', byArea('chalky surface sealed')],
  ['scrape', byArea('loose paint scraped and feathered')],
  ['reattachPlaster', byArea('loose plaster fastened back')],
  ['openCrack', byLength('cracks opened and filled')],
  ['driveFastener', byCount('popped fastener driven home', 'popped fasteners driven home')],
  ['skim', byArea('surface skimmed')],
  ['sandPatch', byArea('old patches sanded flat')],
  ['fillSmall', byCount('hole or dent filled', 'nail holes and dents filled')],
  ['puttySash', byLength('sash putty repaired')],
  ['freeSash', byCount('sash cut free', 'sash cut free')],
  ['caulk', byLength('open joints caulked')],
  ['treatRust', byArea('rust treated')],
  ['blockStain', byArea('stains blocked')],
  ['sealBare', byArea('bare surface sealed')],
]

/** Small damage that is counted on and was not pointed out is named without a figure. */
function repairLine(steps: readonly Step[], system: LengthUnitSystem): string {
  const done = repairs.flatMap(([operation, words]) => {
    const here = steps.filter((step) => step.operation === operation)
    const found = here.filter(({ because }) => because.some(({ conditionIds }) => conditionIds.length > 0))
    return here.length === 0 ? [] : [words(amountsSum(found.map(({ amounts }) => amounts)), system)]
  })
  return done.length === 0 ? '' : `Before painting: ${done.join(', ')}.`
}

const numberWords = ['no', 'one', 'two', 'three', 'four', 'five', 'six'] as const

/** One line for each paint and number of coats, with all it goes on. */
function coatLines(job: Job, steps: readonly Step[]): readonly string[] {
  const coats = steps.filter(({ operation }) => operation === 'coat')
  const groups = groupedBy(coats, ({ roomId, groupKey }) => `${roomId}/${groupKey}`)
  const paints = groupedBy([...groups.values()], (group) => paintWords(job, group))
  const lines = [...paints].map(([paint, list]) => {
    const first = list.flatMap((group) => {
      const lowest = Math.min(...group.map(({ coat }) => coat))
      return group.filter(({ coat }) => coat === lowest)
    })
    const isPrimed = first.some(({ roomId, groupKey }) =>
      steps.some(
        (step) => step.operation === 'prime' && step.roomId === roomId && step.groupKey === groupKey,
      ),
    )
    const place = Math.min(...first.map(({ surfaceClass }) => placeOf(surfaceClass)))
    const text = `${capital(surfacesOf(first, job.header.unitSystem))}: ${isPrimed ? 'primed, ' : ''}${paint}.`
    return { place, text }
  })
  return lines.toSorted((one, other) => one.place - other.place).map(({ text }) => text)
}

function placeOf(surfaceClass: SurfaceClass | null): number {
  return surfaceClass === null ? surfaceClasses.length : surfaceClasses.indexOf(surfaceClass)
}

/** `two coats of latex wall paint, Oat, eggshell`. */
function paintWords(job: Job, coats: readonly Step[]): string {
  const [first] = coats
  if (first === undefined) return ''
  const number = new Set(coats.map(({ coat }) => coat)).size
  const colour = first.colourId === null ? 'color to be chosen' : (job.colours[first.colourId]?.name ?? '')
  return [
    `${numberWords[number] ?? number} ${number === 1 ? 'coat' : 'coats'} of ${first.productClass === null ? 'paint' : productClassWords[first.productClass]}`,
    colour,
    ...(first.sheen === null ? [] : [sheenWords[first.sheen]]),
  ].join(', ')
}

/** `ceiling 196 sq ft, walls 412 sq ft, trim 148 ft, 3 door sides, 4 windows`. */
function surfacesOf(steps: readonly Step[], system: LengthUnitSystem): string {
  return surfaceClasses
    .flatMap((surfaceClass) => {
      const here = steps.filter((step) => step.surfaceClass === surfaceClass)
      return here.length === 0 ? [] : [surfaceAmount(surfaceClass, here, system)]
    })
    .join(', ')
}

function surfaceAmount(surfaceClass: SurfaceClass, steps: readonly Step[], system: LengthUnitSystem): string {
  const { area, count } = amountsSum(steps.map(({ amounts }) => amounts))
  const noun = surfaceNoun(surfaceClass)
  switch (surfaceClass) {
    case 'doors':
      return count > 0 ? `${count} ${count === 1 ? 'door side' : 'door sides'}` : noun
    case 'sash':
      return count > 0 ? `${count} sash` : noun
    case 'radiators':
      return count > 0 ? `${count} ${count === 1 ? 'radiator' : 'radiators'}` : noun
    case 'trim': {
      const length = partsSum(steps.flatMap(({ parts }) => parts)).reduce(
        (sum, part) => sum + part.amounts.length,
        0,
      )
      return length > 0 ? `trim ${wholeLength(length, system)}` : noun
    }
    default:
      return area > 0 ? `${noun} ${shortArea(area, system)}` : noun
  }
}
