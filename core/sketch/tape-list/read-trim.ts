import { inches, type Length, type LengthUnitSystem } from '../../units/length.ts'
import { type Reader, skip, sticky } from './item-reader.ts'
import { lengthAt, readWritten } from './tape-lengths.ts'
import { trimWords } from './tape-words.ts'

/** Runs of trim, as `crown`, `7 in base` and `no base`. */
export const readTrim: Reader = (text, at, system) => {
  const no = sticky(/(?:no|without)\s+/iy, text, at)
  const size = no ? null : trimHeightAt(text, at, system)
  const here = no ? at + no[0].length : (size?.end ?? at)
  for (const [kind, pattern] of trimWords) {
    const found = sticky(pattern, text, here)
    if (!found) continue
    const after = here + found[0].length
    if (no) return { end: after, role: 'trim', adds: { without: [kind] } }
    const behind = size ?? trimHeightAt(text, skip(text, after, /\s*/y), system, true)
    return {
      end: behind === null || behind === size ? after : behind.end,
      role: 'trim',
      adds: { trim: [{ kind, height: behind?.height ?? null }] },
    }
  }
  return null
}

/** The face height of a run, written as inches or a metric length under 18 in; `4 1/2 crown` counts as inches. */
function trimHeightAt(
  text: string,
  at: number,
  system: LengthUnitSystem,
  isBehind = false,
): { readonly height: Length; readonly end: number } | null {
  const fraction = sticky(/(\d+(?:[ -]\d+\/\d+))(?=[\s,;]|$)\s*/y, text, at)
  const written = fraction ? { text: `${fraction[1]} in`, end: at + fraction[0].length } : lengthAt(text, at)
  if (written === null || (!fraction && 'unit' in written && !smallUnits.has(written.unit ?? ''))) return null
  if (isBehind && sticky(/\s*[a-z]/iy, text, written.end)) return null
  const read = readWritten(
    text.slice(at, written.end),
    { bare: null, unit: 'in', feetApart: null, fault: null, ...written },
    system,
    null,
  )
  return read.ok && read.length <= inches(18)
    ? { height: read.length, end: skip(text, written.end, /\s*-?\s*/y) }
    : null
}

const smallUnits: ReadonlySet<string> = new Set(['in', 'mm', 'cm'])
