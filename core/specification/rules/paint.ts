import { sheens } from '../../project/vocabulary.ts'
import { commonPractice, type GroupRule, type GroupView } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  orderBecause,
  primer,
  primerExtent,
  stepAt,
  wholeStep,
} from '../step-requests.ts'

/** What a scraped place must be primed for: it shows the bare material. */
function bareNeed(view: GroupView): 'bareWood' | 'bareMetal' | 'patch' {
  if (view.group.substrate === 'wood') return 'bareWood'
  return view.group.substrate === 'metal' ? 'bareMetal' : 'patch'
}

/** Only on plaster and board do the edges of old paint stand as craters under a raking light. */
function isBroad(view: GroupView): boolean {
  return view.group.surfaceClass === 'ceiling' || view.group.surfaceClass === 'walls'
}

const loosePaint: GroupRule = {
  id: 'loose-paint',
  level: 'group',
  phase: 'found',
  theme: 'paint',
  title: 'Loose or peeling paint',
  found: 'Paint that lifts under a scraper or tape.',
  reason:
    'Paint over loose paint rolls up with it: scrape until it stops lifting, feather the edges, vacuum, skim the craters on plaster and board flush, and prime the bare spots an inch over onto sound paint.',
  source: 'overlap 1 in: MIL-HDBK-1110 s. 4.4; degrees: MPI degree of surface degradation; common practice',
  safety: 'lead',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'loosePaint'),
  consequence: (view) => {
    const loose = findingsOf(view, 'loosePaint')
    const craters = isBroad(view) ? loose.filter(({ condition }) => condition.severity !== 'slight') : []
    return {
      steps: [
        stepAt(loose, 'scrape'),
        stepAt(loose, 'sand', { extent: 'spots' }),
        ...(craters.length > 0
          ? [
              stepAt(craters, 'skim', { ordinal: 'craters', productClass: 'dryingFiller' }),
              stepAt(craters, 'sandFill'),
            ]
          : []),
      ],
      primers: [primer(bareNeed(view), primerExtent(view, loose), loose)],
    }
  },
  order: [
    orderBecause(['skim'], ['sandFill'], 'What was skimmed is sanded flat once it is dry.'),
    orderBecause(['sandFill'], ['spotPrime', 'prime'], 'Skimmed craters are sanded before they are primed.'),
    orderBecause(['scrape'], ['sand/1'], 'The edges are feathered once nothing more lifts.'),
    orderBecause(
      ['scrape', 'sand/1'],
      ['vacuum/1'],
      'Chips and dust are vacuumed up before anything is put on: a coat over dust is a defect.',
    ),
    orderBecause(
      ['scrape'],
      ['sealChalk', 'sealBare', 'fill', 'skim', 'spotPrime', 'prime', 'coat'],
      'Whatever goes over loose paint comes off with it.',
    ),
  ],
}

/** Gloss level 5 and over by the MPI table: 35 units and more at 60 degrees. */
function isGlossy(view: GroupView): boolean {
  return sheens.indexOf(view.group.sheenFound) >= sheens.indexOf('semiGloss')
}

const glossyPaint: GroupRule = {
  id: 'glossy-paint',
  level: 'group',
  phase: 'found',
  theme: 'paint',
  title: 'Glossy old paint',
  found: 'A hard, shiny coat that a fingernail slides on; glossy latex too.',
  reason: 'New paint has nothing to hold on a gloss: it is sanded dull all over.',
  source: 'MIL-HDBK-1110 s. 4.4.1.2 (dulling or primer); common practice',
  safety: 'lead',
  on: true,
  numbers: {},
  when: (view) =>
    hasFinding(view, 'glossyOldPaint') ||
    view.group.coat === 'latexGlossy' ||
    (view.group.coat === 'latexFlat' && isGlossy(view)),
  consequence: (view) => {
    const found = findingsOf(view, 'glossyOldPaint')
    const everywhere = view.group.coat === 'latexGlossy' || isGlossy(view)
    return {
      steps: [
        everywhere ? wholeStep('sand', { findings: found }) : stepAt(found, 'sand', { extent: 'spots' }),
      ],
    }
  },
  order: [],
}

const grease: GroupRule = {
  id: 'grease',
  level: 'group',
  phase: 'found',
  theme: 'stains',
  title: 'Grease and hand marks',
  found: 'Kitchens, stair walls, round handles: water beads.',
  reason: 'Grease is washed off and rinsed first: sanding drives it in, and paint does not stick to it.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'grease'),
  consequence: (view) => ({
    steps: [stepAt(findingsOf(view, 'grease'), 'wash', { productClass: 'cleaner' })],
  }),
  order: [],
}

export const paintRules = [loosePaint, glossyPaint, grease] as const
