import type { Pass, PassLine, PassOrder } from '../../passes/pass-types.ts'
import { operationWords, productClassWords, sheenWords, stepTitle } from '../../specification/trade-words.ts'
import type { Step } from '../../specification/types.ts'
import type { SetContext } from './set-context.ts'
import type { PassEntry, PassLineEntry, PassWait } from './sheet-types.ts'
import { serving } from './sheet-words.ts'
import { surfaceList } from './surface-list.ts'

/**
 * The passes of a room set as they stand on its sheet, in the order of work.
 *
 * @param waits what each pass waits for, by its key
 */
export function sheetPasses(
  context: SetContext,
  passes: readonly Pass[],
  waits: ReadonlyMap<string, readonly PassOrder[]>,
  holdKeys: readonly string[],
): readonly PassEntry[] {
  const numbers = new Map(passes.map(({ key }, index) => [key, index + 1]))
  const names = new Map(passes.map(({ key, name }) => [key, name]))
  return passes.map((pass) => ({
    passKey: pass.key,
    stepKeys: pass.stepKeys,
    number: numbers.get(pass.key) ?? 0,
    kind: pass.kind,
    name: pass.name,
    lines: pass.lines.map((line) => lineEntry(context, pass, line)),
    personMinutes: pass.personMinutes,
    waits: waitsOf(waits.get(pass.key) ?? [], numbers, names),
    holds: pass.holdKeys.map((key) => holdKeys.indexOf(key) + 1).filter((number) => number > 0),
  }))
}

/** The longest wait first; what only has to be over is said by the order of the lines. */
function waitsOf(
  order: readonly PassOrder[],
  numbers: ReadonlyMap<string, number>,
  names: ReadonlyMap<string, string>,
): readonly PassWait[] {
  return order
    .filter(({ before, atLeast, atMost }) => numbers.has(before) && (atLeast > 0 || atMost !== null))
    .map(({ before, atLeast, atMost }) => ({
      after: numbers.get(before) ?? 0,
      afterName: names.get(before) ?? '',
      atLeast,
      atMost,
    }))
    .toSorted((one, other) => other.atLeast - one.atLeast)
}

function lineEntry(context: SetContext, pass: Pass, line: PassLine): PassLineEntry {
  const steps = line.stepKeys.flatMap((key) => context.stepOf.get(key) ?? [])
  const isWholeRoom = steps.every(({ surfaceClass }) => surfaceClass === null)
  return {
    what: whatWords(context, pass, line, steps),
    where: isWholeRoom ? '' : surfaceList(context, steps, true),
    place: isWholeRoom ? '' : surfaceList(context, steps, false),
    serves: serving.has(line.operation),
    finish: finishWords(context, line),
    personMinutes: line.personMinutes,
  }
}

const coating: ReadonlySet<Pass['kind']> = new Set(['ceiling', 'woodwork', 'walls', 'stairs', 'putBack'])

function whatWords({ job }: SetContext, pass: Pass, line: PassLine, steps: readonly Step[]): string {
  const [first] = steps
  if (line.operation === 'sand' && coating.has(pass.kind)) return 'scuff'
  const title =
    shortTitles[line.operation] ?? (first === undefined ? operationWords[line.operation] : stepTitle(first))
  if (line.operation === 'coat' || first === undefined || first.productClass === null) return title
  const tint = line.colourId === null ? '' : ` tinted ${job.colours[line.colourId]?.name ?? line.colourId}`
  return `${title} with ${productClassWords[first.productClass]}${tint}`
}

/** Shorter than the step's own title where the pass says the rest. */
const shortTitles: Readonly<Partial<Record<PassLine['operation'], string>>> = {
  protectRoom: 'cover the floor and what stays',
  postSigns: 'put up the warning signs',
  sheetFloor: 'tape plastic over the floor, 6 ft beyond the work',
  sealOpenings: 'close ducts and doors with plastic',
  takeOff: 'take off, bag, label',
  coverAlarm: 'cover the alarm (each day)',
  restoreAlarm: 'uncover and test the alarm (each day)',
  cleanDaily: 'clean down each day',
  dustDown: 'dust down under a raking light',
  dustOff: 'dust off',
  vacuum: 'vacuum',
  maskOff: 'mask off',
  unmask: 'take the masking off',
  sandFill: 'sand the filler',
  fillSmall: 'fill small holes',
  bagSheeting: 'bag the plastic',
  cleanFinal: 'wet-wipe and mop from the top down',
  wipeCheck: 'wipe-check sills and floor, open the room',
}

function finishWords({ job }: SetContext, { operation, colourId, sheen }: PassLine): string {
  if (operation !== 'coat') return ''
  const colour = colourId === null ? undefined : job.colours[colourId]?.name
  return [...(colour === undefined ? [] : [colour]), ...(sheen === null ? [] : [sheenWords[sheen]])].join(
    ', ',
  )
}
