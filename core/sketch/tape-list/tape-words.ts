import type { OpeningKind, SlabKind, TrimKind } from '../../project/vocabulary.ts'

/** Patterns of the words of a line, anchored where they are looked for. All are read without regard to case. */
function wordPattern(words: string): RegExp {
  return new RegExp(`(?:${words})(?![a-z])`, 'iy')
}

export const openingWords: readonly (readonly [OpeningKind, RegExp])[] = [
  ['window', wordPattern('windows?|wins?|wdws?|wndws?|wnds?')],
  ['builtIn', wordPattern('built[- ]?ins?|bookcases?')],
  ['casedOpening', wordPattern('cased openings?|openings?|archways?|cos?')],
  ['door', wordPattern('doors?|drs?')],
  ['fireplace', wordPattern('fireplaces?|fps?|hearths?')],
]

/** Letters that stand for an opening only right behind a number: `3w, 2d`. */
export const openingLetters: Readonly<Record<string, OpeningKind>> = { w: 'window', d: 'door' }

export interface OpeningSort {
  readonly kinds: readonly OpeningKind[]
  readonly slab?: SlabKind
  readonly parts?: 2 | 3
  readonly isFixed?: boolean
  readonly isOutside?: boolean
}

/** Words before an opening that say what sort it is. */
export const openingSorts: readonly (readonly [RegExp, OpeningSort])[] = [
  [wordPattern('french'), { kinds: ['door'], slab: 'glazed', parts: 2 }],
  [wordPattern('double[- ]hung|dh'), { kinds: ['window'] }],
  [wordPattern('double|twin|pair of|dbl'), { kinds: ['door', 'window'], parts: 2 }],
  [wordPattern('triple'), { kinds: ['window'], parts: 3 }],
  [wordPattern('flush'), { kinds: ['door'], slab: 'flush' }],
  [wordPattern('panell?ed|panel'), { kinds: ['door'], slab: 'panelled' }],
  [wordPattern('glass|glazed'), { kinds: ['door'], slab: 'glazed' }],
  [wordPattern('louvered|louvred|louver'), { kinds: ['door'], slab: 'louvred' }],
  [wordPattern('exterior|ext|outside|entry|front|back'), { kinds: ['door'], isOutside: true }],
  [wordPattern('closet|interior|int'), { kinds: ['door'] }],
  [wordPattern('picture|fixed'), { kinds: ['window'], isFixed: true }],
]

/** A six-light window has no lights, and a closet door is a door. */
const noOpening = '(?![a-z])(?![- ]?(?:win|wdw|wnd|door|dr|sash))'

/** Things of a room that are counted and are no openings. */
export const thingWords: readonly (readonly ['lights' | 'radiators' | 'closets', RegExp])[] = [
  [
    'lights',
    wordPattern(
      `(?:(?:ceiling|wall|light) )?(?:lights?|lts?|fixtures?|sconces?|chandeliers?|lamps?)${noOpening}`,
    ),
  ],
  ['radiators', wordPattern('radiators?|rads?')],
  ['closets', wordPattern(`(?:walk[- ]?in )?closets?${noOpening}`)],
]

const behindTrim = '(?: ?mou?ldings?| ?mld?gs?| ?trim)?'

export const trimWords: readonly (readonly [TrimKind, RegExp])[] = [
  ['crown', wordPattern(`crowns?${behindTrim}|cornices?`)],
  ['chairRail', wordPattern(`chair[- ]?rails?${behindTrim}`)],
  ['pictureRail', wordPattern('picture[- ]?(?:rails?|mou?ldings?)')],
  ['wainscotCap', wordPattern('wainscot(?:ing)?(?: caps?)?')],
  ['baseboard', wordPattern(`base[- ]?boards?${behindTrim}|base${behindTrim}|bb`)],
]

export const ceilingWords = wordPattern('ceilings?|ceil|clgs?|high|height|ht|hgt|h')

/** Words that carry nothing. `usual` casings and bases are there anyway. */
export const fillers = /(?:and|with|plus|has|w\/|&|\+|[,;:.])(?![a-z])\s*|[,;]/iy

export const numberWords: Readonly<Record<string, number>> = {
  no: 0,
  without: 0,
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
}
