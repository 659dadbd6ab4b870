import type { ConditionKind } from '../../project/vocabulary.ts'
import type { GroupRule, GroupView } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  noticeOn,
  number,
  orderBecause,
  primer,
  wholeStep,
} from '../step-requests.ts'

const source =
  'old-house painting pages and a newspaper column on calcimine (wipe test, re-wetting, sealing); common practice'

/** What is filled or sanded after sealing, and so is primed again afterwards. */
const filledKinds: readonly ConditionKind[] = [
  'stressCrack',
  'movingCrack',
  'poppedFastener',
  'hole',
  'loosePlasterKeys',
  'unwantedTexture',
  'unsandedPatch',
]

function isChalky(view: GroupView): boolean {
  return view.group.coat === 'calcimine' || hasFinding(view, 'chalking')
}

const sealedFirst = orderBecause(
  ['sealChalk', 'sealBare'],
  ['fill', 'skim', 'sandFill', 'blockStain', 'spotPrime', 'prime', 'caulk', 'coat'],
  'Water-borne filler and paint re-wet bare chalk and lift: the surface is sealed, and the sealer dry, before anything else goes on.',
)

const calcimineSeal: GroupRule = {
  id: 'calcimine-seal',
  level: 'group',
  phase: 'found',
  theme: 'calcimine',
  title: 'Chalky (calcimine) surface: seal it',
  found: 'Calcimine or distemper: a damp sponge softens it and comes away white.',
  reason:
    'Calcimine is chalk in glue that water dissolves: no water-borne filler or paint on it. Cracks are opened, the whole surface is sealed with a calcimine sealer or an oil primer and left to dry, and only then filled.',
  source,
  safety: 'fumes',
  on: true,
  numbers: {},
  instead: ['calcimine-wash-off'],
  when: isChalky,
  consequence: (view) => {
    const filled = findingsOf(view, ...filledKinds)
    return {
      primers: [
        primer('chalk', 'whole', findingsOf(view, 'chalking'), { layer: 'sealChalk' }),
        ...(filled.length > 0 ? [primer('chalk', 'spots', filled)] : []),
      ],
      notices: wipeTest(view),
    }
  },
  order: [
    sealedFirst,
    orderBecause(
      ['scrape', 'openCrack', 'reattachPlaster', 'driveFastener', 'vacuum/1'],
      ['sealChalk'],
      'Loose places are scraped and cracks opened before sealing, so that the sealer binds their edges too.',
    ),
  ],
}

function wipeTest(view: GroupView) {
  if (view.group.coat === 'calcimine') return []
  return [
    noticeOn(
      view,
      'advice',
      `Chalking in ${view.room.name}: make the wipe test. Hold a warm damp sponge on a hidden spot for about 10 seconds; if it softens and the sponge comes away white, it is calcimine.`,
      source,
      findingsOf(view, 'chalking'),
    ),
  ]
}

const calcimineWashOff: GroupRule = {
  id: 'calcimine-wash-off',
  level: 'group',
  phase: 'found',
  theme: 'calcimine',
  title: 'Chalky (calcimine) surface: wash it off',
  found: 'Calcimine or distemper, thin enough to wash off.',
  reason:
    'Washed off to the plaster the chalk is gone for good: scrub, wipe and rinse until the water runs clear, let it dry, seal what is left in the pores.',
  source,
  safety: 'moisture',
  on: false,
  numbers: {
    dryHours: number(
      24,
      'hours',
      'Drying after the last rinse',
      'old-house painting pages: several hours to days',
    ),
  },
  when: isChalky,
  consequence: (view) => ({
    steps: [
      wholeStep('washOffCalcimine', {
        dryMinutes: view.book.number('calcimine-wash-off', 'dryHours') * 60,
      }),
    ],
    primers: [primer('chalk', 'whole', findingsOf(view, 'chalking'), { layer: 'sealBare' })],
    notices: wipeTest(view),
  }),
  order: [
    orderBecause(
      ['washOffCalcimine'],
      ['sealBare', 'sealChalk', 'scrape', 'openCrack', 'fill'],
      'The chalk is washed off and the plaster dry before it is opened, sealed and filled.',
    ),
    sealedFirst,
  ],
}

export const calcimineRules = [calcimineSeal, calcimineWashOff] as const
