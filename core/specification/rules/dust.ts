import type { Finding } from '../findings.ts'
import { commonPractice, type GroupRule, type GroupView, type PlannedRequest } from '../rule.ts'
import { coatOrdinals, number, orderBecause, wholeStep } from '../step-requests.ts'
import type { Operation } from '../types.ts'

/** Dry work that makes dust before the coats; sanding between coats is not among them. */
const dustyOperations: readonly Operation[] = [
  'scrape',
  'openCrack',
  'treatRust',
  'sandPatch',
  'sandFill',
  'sand',
]
const roughWork: readonly Operation[] = [
  'scrape',
  'openCrack',
  'treatRust',
  'sand',
  'reattachPlaster',
  'stripWallpaper',
]
/** Sanded after filling, right before priming. */
const sandedLate: readonly Operation[] = ['sandFill', 'sandPatch']
const primings: readonly Operation[] = ['blockStain', 'spotPrime', 'prime']

/** Sanding between coats is left out: it raises little dust. */
export function isDustyPreparation(step: {
  readonly operation: Operation
  readonly ordinal: string
}): boolean {
  return dustyOperations.includes(step.operation) && !(step.operation === 'sand' && step.ordinal !== '1')
}

/** All of the group if any of the steps covers all of it; else the places they are at. */
function extentOf(steps: readonly PlannedRequest[]): {
  readonly extent: 'whole' | 'spots'
  readonly findings: readonly Finding[]
} {
  const whole = steps.some((step) => step.extent === 'whole')
  const findings = [...new Set(steps.flatMap((step) => step.findings))]
  return whole || findings.length === 0 ? { extent: 'whole', findings } : { extent: 'spots', findings }
}

function planned(view: GroupView, operations: readonly Operation[]): readonly PlannedRequest[] {
  return view.planned.filter(
    (step) => operations.includes(step.operation) && !(step.operation === 'sand' && step.ordinal !== '1'),
  )
}

const vacuumFirst: GroupRule = {
  id: 'vacuum-after-rough-work',
  level: 'group',
  phase: 'follow',
  theme: 'dust',
  title: 'Vacuum after scraping and sanding',
  found: 'Anything scraped, opened or sanded.',
  reason:
    'Chips and sanding dust are vacuumed and wiped off before sealer, filler or primer goes on: they would lie in the film.',
  source: 'vacuum with HEPA filter where old paint is disturbed: 40 CFR 745.85(a)(5); common practice',
  safety: 'dust',
  on: true,
  numbers: {},
  when: (view) => planned(view, roughWork).length > 0,
  consequence: (view) => ({ steps: [wholeStep('vacuum', extentOf(planned(view, roughWork)))] }),
  order: [],
}

const dustBeforePrimer: GroupRule = {
  id: 'dust-before-primer',
  level: 'group',
  phase: 'follow',
  theme: 'dust',
  title: 'Dust off before priming',
  found: 'Filler or old patches sanded before a primer or blocker.',
  reason: 'Primer over sanding dust holds the dust, not the wall.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {},
  when: (view) => planned(view, sandedLate).length > 0 && planned(view, primings).length > 0,
  consequence: (view) => ({
    steps: [wholeStep('dustOff', { ordinal: '0', ...extentOf(planned(view, [...primings, ...sandedLate])) })],
  }),
  order: [
    orderBecause(
      ['dustOff/0'],
      ['blockStain', 'spotPrime', 'prime'],
      'Primer over sanding dust holds the dust, not the wall.',
    ),
    orderBecause(['sandFill', 'sandPatch'], ['dustOff/0'], 'What sanding leaves is dusted off.'),
  ],
}

const dustBeforeCoat: GroupRule = {
  id: 'dust-before-coat',
  level: 'group',
  phase: 'follow',
  theme: 'dust',
  title: 'Dust off before each coat',
  found:
    'The first coat where something in the room was scraped or sanded; later ones where they were sanded between.',
  reason:
    'A coat over dust is a defect: the surface is dusted off right before the coat. Between coats it is sanded lightly and wiped, or nothing is done.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {
    betweenCoats: number(
      0,
      '1 yes, 0 no',
      'Also a light pole-sanding and a wipe between coats that are not enamel',
      commonPractice,
    ),
  },
  when: (view) => planned(view, ['coat']).length > 0,
  consequence: (view) => {
    const poleSands = view.book.number('dust-before-coat', 'betweenCoats') > 0
    const later = planned(view, ['coat']).filter((coat) => coat.ordinal !== '1')
    const unsanded = poleSands ? later.filter((coat) => !isScuffed(view, coat)) : []
    const wiped = [...later.filter((coat) => isScuffed(view, coat)), ...unsanded]
    return {
      steps: [
        ...(view.roomIsDusty ? [wholeStep('dustOff')] : []),
        ...unsanded.map((coat) => wholeStep('sand', { ordinal: coat.ordinal })),
        ...wiped.map((coat) => wholeStep('dustOff', { ordinal: coat.ordinal })),
      ],
    }
  },
  order: coatOrdinals.flatMap((ordinal) => [
    orderBecause(
      [`dustOff/${ordinal}`],
      [`coat/${ordinal}`],
      'A coat over dust is a defect: it is dusted off right before.',
    ),
    orderBecause(
      [`sand/${ordinal}`],
      [`dustOff/${ordinal}`],
      'What sanding leaves is dusted off before the coat.',
    ),
  ]),
}

function isScuffed(view: GroupView, coat: PlannedRequest): boolean {
  return view.planned.some((step) => step.operation === 'sand' && step.ordinal === coat.ordinal)
}

const maskKeptEdges: GroupRule = {
  id: 'mask-kept-edges',
  level: 'group',
  phase: 'follow',
  theme: 'coats',
  title: 'Mask what stays unpainted',
  found: 'Edges along something that is not painted: floors, brick, tile, varnished wood.',
  reason:
    'Edges along what stays as it is are masked; the tape comes off when the last coat is touch dry, not later.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => view.group.quantities.some((quantity) => quantity.masking > 0),
  consequence: () => ({
    steps: [wholeStep('maskOff', { extent: 'masking' }), wholeStep('unmask', { extent: 'masking' })],
  }),
  order: [
    orderBecause(
      ['maskOff'],
      ['sealChalk', 'sealBare', 'blockStain', 'spotPrime', 'prime', 'coat'],
      'The edges are masked before anything wet comes near them.',
    ),
    orderBecause(['vacuum/1'], ['maskOff'], 'Tape does not hold on dust.'),
    orderBecause(['coat'], ['unmask'], 'The tape stays until the last coat is touch dry.'),
  ],
}

/** In this order: scuffing before dusting off. */
export const dustRules = [vacuumFirst, dustBeforePrimer, dustBeforeCoat, maskKeptEdges] as const
