import { commonPractice, type GroupRule } from '../rule.ts'
import { findingsOf, hasFinding, number, orderBecause, primer, stepAt, wholeStep } from '../step-requests.ts'

const missingPutty: GroupRule = {
  id: 'missing-putty',
  level: 'group',
  phase: 'found',
  theme: 'sash',
  title: 'Missing sash putty',
  found: 'Putty cracked or gone from the glass edge.',
  reason:
    'Bare rabbets are primed so that the wood does not drink the oil of the putty; the putty skins before it is primed and painted.',
  source: commonPractice,
  safety: 'lead',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'missingPutty'),
  consequence: (view) => {
    const gaps = findingsOf(view, 'missingPutty')
    return {
      steps: [stepAt(gaps, 'puttySash', { productClass: 'glazingPutty' })],
      primers: [primer('bareWood', 'spots', gaps, { layer: 'sealBare' })],
    }
  },
  order: [
    orderBecause(
      ['sealBare', 'spotPrime'],
      ['puttySash'],
      'The rabbet is primed first: bare wood drinks the oil of the putty and it crumbles.',
    ),
    orderBecause(
      ['puttySash'],
      ['prime', 'coat'],
      'The putty has skinned before it is primed and painted, or the paint wrinkles; primer and paint seal it to the glass.',
    ),
  ],
}

const paintedShut: GroupRule = {
  id: 'painted-shut',
  level: 'group',
  phase: 'found',
  theme: 'sash',
  title: 'Sash painted shut',
  found: 'A sash that does not move, paint unbroken across its edges.',
  reason:
    'The paint line is cut and the sash moved before it is sanded and painted: afterwards the new paint would tear.',
  source: commonPractice,
  safety: 'lead',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'paintedShut'),
  consequence: (view) => ({ steps: [stepAt(findingsOf(view, 'paintedShut'), 'freeSash')] }),
  order: [
    orderBecause(
      ['freeSash'],
      ['scrape', 'sand/1', 'vacuum/1', 'spotPrime', 'prime', 'coat'],
      'The sash is freed first: cut loose later, its new paint tears.',
    ),
  ],
}

const glassLast = orderBecause(
  ['coat'],
  ['scrapeGlass'],
  'The paint that seals the edge of the glass is dry before what ran over it is scraped off.',
)

const fixedSash: GroupRule = {
  id: 'fixed-sash',
  level: 'group',
  phase: 'found',
  theme: 'sash',
  title: 'Fixed sash: two coats in place',
  found: 'Sash that cannot be taken out or moved.',
  reason:
    'Fixed sash is painted where it stands, two coats, cut along every light; the glass perimeter and not the area drives the time.',
  source: 'common practice; same sash with 6 lights instead of 1: area + 31%, cut-in line + 134% (computed)',
  safety: 'none',
  on: true,
  numbers: { coats: number(2, 'coats', 'Finish coats on fixed sash', commonPractice) },
  when: (view) => view.group.fixedSash,
  consequence: (view) => ({
    coats: view.book.number('fixed-sash', 'coats'),
    steps: [wholeStep('scrapeGlass')],
  }),
  order: [glassLast],
}

const movingSash: GroupRule = {
  id: 'moving-sash',
  level: 'group',
  phase: 'found',
  theme: 'sash',
  title: 'Sash that moves',
  found: 'Double-hung, casement or hopper sash.',
  reason:
    'Glass edges first, then bars, rails, stiles, frame, stool last; one coat only on meeting edges, cords and channels bare; the sash is moved before the paint sets, freed when it is dry, and its glass scraped.',
  source: 'two newspaper columns of 1988 and sash repair pages; common practice',
  safety: 'none',
  on: true,
  numbers: { coats: number(2, 'coats', 'Finish coats on the faces of moving sash', commonPractice) },
  when: (view) => view.group.surfaceClass === 'sash' && !view.group.fixedSash,
  consequence: (view) => ({
    coats: view.book.number('moving-sash', 'coats'),
    steps: [wholeStep('easeSash'), wholeStep('scrapeGlass')],
  }),
  order: [
    glassLast,
    orderBecause(
      ['coat'],
      ['easeSash'],
      'A sash left shut dries shut: it is cut free and moved as soon as the last coat is dry.',
    ),
    orderBecause(['easeSash'], ['scrapeGlass'], 'The sash is moved before its glass is scraped.'),
  ],
}

export const sashRules = [missingPutty, paintedShut, fixedSash, movingSash] as const
