import type { Opening, TrimRun } from './sketch-records.ts'
import { type Wall, wallLetter } from './walls.ts'

/** The trade's nouns for openings and trim, on screen and paper alike. Each list is complete, or it does not compile. */
export const openingNouns: Readonly<Record<Opening['kind'], string>> = {
  door: 'door',
  casedOpening: 'cased opening',
  window: 'window',
  fireplace: 'fireplace',
  builtIn: 'built-in',
  other: 'opening',
}

export const trimNouns: Readonly<Record<TrimRun['kind'], string>> = {
  baseboard: 'baseboard',
  crown: 'crown',
  pictureRail: 'picture rail',
  chairRail: 'chair rail',
  wainscotCap: 'wainscot cap',
}

/** `wall B`: walls go by letters from the outline's first corner, as on the printed plan. */
export function wallName(wall: Pick<Wall, 'index'>): string {
  return `wall ${wallLetter(wall.index)}`
}

/** `window "east"`, or `door` where it has no name. */
export function openingNoun(opening: Pick<Opening, 'kind' | 'name'>): string {
  const noun = openingNouns[opening.kind]
  return opening.name === '' ? noun : `${noun} "${opening.name}"`
}

/** In lower case, in the singular. */
export function trimNoun(run: Pick<TrimRun, 'kind'>): string {
  return trimNouns[run.kind]
}
