import { type Contribution, commonPractice, type GroupRule, type GroupView } from '../rule.ts'
import {
  hasFinding,
  holdDays,
  isWaterborne,
  noticeOn,
  number,
  orderBecause,
  primer,
  wholeStep,
} from '../step-requests.ts'
import { surfaceNoun } from '../trade-words.ts'

function oldOil(view: GroupView): boolean {
  return view.group.coat === 'oilPaint'
}

function oilUnderWater(view: GroupView): boolean {
  return oldOil(view) && isWaterborne(view.group.finish.productClass)
}

const oilSand: GroupRule = {
  id: 'oil-sand',
  level: 'group',
  phase: 'system',
  theme: 'trim',
  title: 'Old oil paint: sand everything',
  found: 'Old oil or alkyd paint: alcohol on a rag does not soften it.',
  reason:
    'Old oil paint is hard and smooth: all of it is sanded dull and dusted off so that the next coat can hold.',
  source: 'MIL-HDBK-1110 s. 4.4.1.2 (latex over smooth old alkyd); common practice',
  safety: 'lead',
  on: true,
  numbers: {},
  when: oldOil,
  consequence: () => ({ steps: [wholeStep('sand')] }),
  order: [
    orderBecause(
      ['sand/1'],
      ['vacuum/1'],
      'Everything is dusted off after sanding: dust under the primer is a layer that lets go.',
    ),
    orderBecause(
      ['sand/1'],
      ['degloss', 'spotPrime', 'prime', 'coat'],
      'Old oil paint is dulled before anything goes over it.',
    ),
  ],
}

const oilBondingPrimer: GroupRule = {
  id: 'oil-bonding-primer',
  level: 'group',
  phase: 'system',
  theme: 'trim',
  title: 'Old oil paint going water-borne: bonding primer',
  found: 'Old oil or alkyd paint under a water-borne finish.',
  reason: 'Water-borne enamel peels off old oil paint: a bonding primer between them holds on both.',
  source: 'MIL-HDBK-1110 s. 4.4.1.2 (latex over smooth old alkyd); common practice',
  safety: 'none',
  on: true,
  numbers: {},
  when: oilUnderWater,
  consequence: () => ({ primers: [primer('bond', 'whole')] }),
  order: [],
}

const oilDeglosser: GroupRule = {
  id: 'oil-deglosser',
  level: 'group',
  phase: 'system',
  theme: 'trim',
  title: 'Old oil paint going water-borne: liquid deglosser in batches',
  found: 'Old oil or alkyd paint under a water-borne finish, where the shop prefers a deglosser.',
  reason:
    'A deglosser softens the old gloss for a short while only: just so many feet are wiped as can be coated inside its open time, then the next.',
  source:
    "dull only what can be coated within about 30 minutes: painter's page; others differ, the label decides",
  safety: 'fumes',
  on: false,
  numbers: {
    wipeSquareFeetPerHour: number(90, 'sq ft/h', 'Wiping, where the shop has no rate of its own'),
    coatSquareFeetPerHour: number(
      50,
      'sq ft/h',
      'Coating what was wiped, where the shop has no rate of its own',
    ),
    cutInFeetPerHour: number(240, 'ft/h', 'Brushing along an edge, where the shop has no rate of its own'),
    glassEdgeFeetPerHour: number(60, 'ft/h', 'Brushing along glass, where the shop has no rate of its own'),
  },
  when: oilUnderWater,
  consequence: () => ({ steps: [wholeStep('degloss', { productClass: 'liquidDeglosser' })] }),
  order: [
    orderBecause(
      ['sandFill', 'dustOff/0', 'blockStain', 'spotPrime'],
      ['degloss'],
      'The deglosser comes right before the coat it prepares for; nothing stands between them.',
    ),
  ],
}

const varnished: GroupRule = {
  id: 'varnish',
  level: 'group',
  phase: 'system',
  theme: 'trim',
  title: 'Varnished wood',
  found: 'A clear coat that neither alcohol nor water softens.',
  reason:
    'Varnish is sanded dull; under paint it gets a primer that holds on it and keeps the stain of the wood from bleeding.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {},
  when: (view) => view.group.coat === 'varnish',
  consequence: (view) => ({
    steps: [wholeStep('sand')],
    primers:
      view.group.finish.productClass === 'clearVarnish'
        ? []
        : [primer('bond', 'whole'), primer('stain', 'whole')],
  }),
  order: [],
}

const shellacked: GroupRule = {
  id: 'shellac',
  level: 'group',
  phase: 'system',
  theme: 'trim',
  title: 'Shellacked wood',
  found: 'A clear coat that alcohol softens within a minute; water leaves white marks on it.',
  reason:
    'Most primers let go of old shellac: it is sanded dull and, under paint, primed with shellac, which bites into it.',
  source: commonPractice,
  safety: 'fumes',
  on: true,
  numbers: {},
  when: (view) => view.group.coat === 'shellac',
  consequence: ({ group }) => ({
    steps: [wholeStep('sand')],
    primers: group.finish.productClass === 'clearVarnish' ? [] : [primer('overShellac', 'whole')],
  }),
  order: [],
}

const bareSurface: GroupRule = {
  id: 'bare-surface',
  level: 'group',
  phase: 'system',
  theme: 'coats',
  title: 'Bare surfaces',
  found: 'Wood, metal, plaster, board or masonry that has never been coated or has been stripped.',
  reason: 'A bare surface takes the primer made for it: finish paint alone soaks in, flashes or rusts.',
  source: 'primer and one or two top coats on bare wood: MIL-HDBK-1110 s. 4.4.1; common practice',
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => view.group.coat === 'bare' && view.group.finish.productClass !== 'clearVarnish',
  consequence: (view) => ({
    steps: view.group.substrate === 'wood' ? [wholeStep('sand')] : [],
    primers: [primer(wholeBareNeed(view), 'whole')],
  }),
  order: [],
}

function wholeBareNeed(view: GroupView) {
  switch (view.group.substrate) {
    case 'wood':
      return 'bareWood'
    case 'metal':
      return 'bareMetal'
    case 'plaster':
    case 'gypsumBoard':
    case 'masonry':
      return 'porous'
  }
}

const unknownCoat: GroupRule = {
  id: 'unknown-coat',
  level: 'group',
  phase: 'system',
  theme: 'paint',
  title: 'Coat not known',
  found: 'Nobody has tested what is on the surface.',
  reason:
    'Until it is tested an unknown coat is treated as the worst likely: old oil paint, dulled (but never on a texture) and given a bonding primer.',
  source: commonPractice,
  safety: 'lead',
  on: true,
  numbers: holdDays(1),
  when: (view) => view.group.coat === 'unknown' && !hasFinding(view, 'oldWallpaper', 'chalking'),
  consequence: (view) => ({
    steps: view.group.textured ? [] : [wholeStep('sand')],
    primers: [primer(view.group.substrate === 'metal' ? 'bareMetal' : 'bond', 'whole')],
    ...unknownSaying(view),
  }),
  order: [],
}

/** A coat of unknown kind on old plaster may be calcimine, on which every water-borne product fails: that is worth a hold. */
function unknownSaying(view: GroupView): Contribution {
  const { substrate, surfaceClass, quantities } = view.group
  const maybeChalk = substrate === 'plaster' && (surfaceClass === 'ceiling' || surfaceClass === 'walls')
  if (!maybeChalk) {
    const sentence = `Nobody has said what is on the ${surfaceNoun(surfaceClass)} of ${view.room.name}. Rub a spot with alcohol on a rag: latex softens, oil paint does not; then note it.`
    return { notices: [noticeOn(view, 'advice', sentence, commonPractice)] }
  }
  return {
    holds: [
      {
        kind: 'unknownCoat',
        surfaceKeys: quantities.map((quantity) => quantity.key),
        reason: `Nobody has said what is on the ${surfaceNoun(surfaceClass)} of ${view.room.name}. Wipe with a warm damp sponge for about 10 seconds (calcimine softens and comes away white) and rub with alcohol (latex softens, oil does not) before anything is put on it.`,
        since: null,
        days: view.book.number('unknown-coat', 'holdDays'),
        source: commonPractice,
      },
    ],
  }
}

export const systemRules = [
  oilSand,
  oilBondingPrimer,
  oilDeglosser,
  varnished,
  shellacked,
  bareSurface,
  unknownCoat,
] as const
