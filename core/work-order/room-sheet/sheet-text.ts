import type { KeptItemHandling } from '../../project/vocabulary.ts'
import { sheenWords } from '../../specification/trade-words.ts'
import type { LengthUnitSystem } from '../../units/length.ts'
import { capital } from '../../words/text.ts'
import { volumeText } from '../material-words.ts'
import type {
  ColorLine,
  PassEntry,
  PassLineEntry,
  PassWait,
  RegisterLine,
  RepairLine,
  SheetHold,
} from './sheet-types.ts'
import { waitWords } from './sheet-words.ts'

/** How much is said of what a pass holds: all of it, without amounts, or only what its name and the table of colors do not say. */
const lineDetails = ['full', 'short', 'key', 'name'] as const
export type LineDetail = (typeof lineDetails)[number]

/** What stands behind the name of a pass; at least the colors that go on. */
export function passText(pass: PassEntry, detail: LineDetail): string {
  if (detail === 'name') return [...new Set(pass.lines.flatMap(colorOf))].join('; ')
  const lines = detail === 'key' ? pass.lines.filter(isKey) : pass.lines
  return lines.map((line) => lineText(line, detail)).join('; ')
}

function colorOf({ finish }: PassLineEntry): readonly string[] {
  return finish === '' ? [] : [finish]
}

/** Neither dusting nor cleaning nor the sanding that a name says already. */
function isKey({ serves, finish, what }: PassLineEntry): boolean {
  return !serves && (finish !== '' || what.includes(' with '))
}

function lineText(line: PassLineEntry, detail: LineDetail): string {
  const { what, finish, serves } = line
  const place = detail === 'full' ? line.where : line.place
  const isPlaced = place !== '' && (detail === 'full' || !serves)
  const work = finish === '' ? lowered(what) : `${lowered(what)} ${finish}`
  return isPlaced ? `${work}: ${place}` : work
}

function lowered(text: string): string {
  return text.slice(0, 1).toLowerCase() + text.slice(1)
}

/** `16 h after 9`, or with the name of the pass; the longest first. */
export function waitsText(waits: readonly PassWait[], withNames: boolean): string {
  return waits.map((wait) => waitText(wait, withNames)).join('; ')
}

function waitText({ after, afterName, atLeast, atMost }: PassWait, withNames: boolean): string {
  const which = withNames ? `${after} ${lowered(afterName)}` : String(after)
  const least = atLeast > 0 ? [`${waitWords(atLeast)} after ${which}`] : []
  const most = atMost === null ? [] : [`no later than ${waitWords(atMost)} after ${after}`]
  return [...least, ...most].join(', ')
}

/** `Brick red, eggshell`; a clear or uncolored finish by its sheen alone. */
export function finishText({ color, sheen }: ColorLine): string {
  return [...(color === '' ? [] : [color]), ...(sheen === null ? [] : [sheenWords[sheen]])].join(', ')
}

/** The finish with its product. */
export function colorText(line: ColorLine): string {
  const finish = finishText(line)
  return finish === '' ? line.product : `${finish}: ${line.product}`
}

/** Ceiling and walls with their area; woodwork by its kinds, each with its amount. */
export function surfaceText({ surface, amount }: ColorLine): string {
  if (amount.includes(',')) return amount
  return amount === '' ? surface : `${surface}: ${amount}`
}

/** `sample for asbestos: walls. A sampling professional; expected Apr 8`, with the whole reason where there is room. */
export function holdText(hold: SheetHold, inFull: boolean): string {
  const { alarm, short, where, reason, who, expected, expectedShort } = hold
  const loud = alarm === null ? '' : `${alarm} `
  if (inFull) return `${loud}${reason} Who sees to it: ${who}. Expected: ${expected}.`
  return `${loud}${capital(short)}${where === '' ? '' : `: ${where}`}. ${who}; ${expectedShort}.`
}

/** Taking off is the usual; only another way of handling is said. */
const handlingShort: Readonly<Record<KeptItemHandling, string>> = {
  takeOff: '',
  coverDaily: ': cover each day',
  loosen: ': loosen, refit',
  maskInPlace: ': mask in place',
}

/** A line of what is in the room and what is done with it. */
export function registerText({ name, where, count, handling, wired }: RegisterLine): string {
  const many = count > 1 ? `${count} ` : ''
  return `${many}${name}${wired ? ' (wired)' : ''}, ${where}${handlingShort[handling]}`
}

/** `bonding primer, 0.92 gal`; a dash for none. */
export function primerText({ primer, primerGallons }: ColorLine, system: LengthUnitSystem): string {
  if (primer === '') return '–'
  const volume = volumeText(primerGallons, system)
  return volume === '' ? primer : `${primer}, ${volume}`
}

/** `stress crack, slight: old leak (put right)`. */
export function repairText({ what, note, photo }: RepairLine, withNotes: boolean): string {
  const notes = withNotes && note !== '' ? `; ${note}` : ''
  return `${what}${notes}${photo === '' ? '' : ` (${photo})`}`
}
