import type { Entry } from '../parts/entries.ts'

/** A color as six figures behind #, for the screen. */
export function colourEntry(text: string): Entry<string> {
  const clean = text.trim().toLowerCase()
  return /^#[0-9a-f]{6}$/.test(clean)
    ? { ok: true, value: clean }
    : { ok: false, sentence: 'A color is written like #e4dccb.' }
}
