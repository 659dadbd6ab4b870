import type { Condition } from '../../project/survey-records.ts'
import type { Finding } from '../findings.ts'
import { holdFor } from '../holds.ts'
import { commonPractice, type GroupRule, type GroupView } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  holdDays,
  orderBecause,
  primer,
  primerExtent,
  stepAt,
  suspected,
  uncured,
} from '../step-requests.ts'

const blockedFirst = orderBecause(
  ['blockStain'],
  ['spotPrime', 'prime', 'coat'],
  'The stain is blocked before the coats: it bleeds through any number of them.',
)
const washedFirst = orderBecause(
  ['wash', 'washMildew'],
  ['scrape', 'openCrack', 'sandPatch', 'sand/1', 'blockStain', 'fill', 'spotPrime', 'prime'],
  'It is washed off first: sanding drives dirt in, and a blocker over dirt lets go.',
)

function causeHolds(
  view: GroupView,
  kind: 'leak' | 'mildewCause',
  ruleId: string,
  findings: readonly Finding[],
  say: (condition: Condition) => string,
) {
  const days = view.book.number(ruleId, 'holdDays')
  return uncured(findings).map((finding) =>
    holdFor(kind, finding, days, say(finding.condition), commonPractice),
  )
}

const waterStain: GroupRule = {
  id: 'water-stain',
  level: 'group',
  phase: 'found',
  theme: 'stains',
  title: 'Water stains',
  found: 'A yellow or brown ring.',
  reason:
    'Water stains bleed through latex: once the leak is fixed and the place is dry they are covered with a stain-blocking primer.',
  source: commonPractice,
  safety: 'moisture',
  on: true,
  numbers: holdDays(14),
  when: (view) => hasFinding(view, 'waterStain'),
  consequence: (view) => {
    const stains = findingsOf(view, 'waterStain')
    return {
      primers: [primer('stain', 'spots', stains, { layer: 'block' })],
      holds: causeHolds(
        view,
        'leak',
        'water-stain',
        stains,
        (condition) =>
          `The leak behind the stain in ${view.room.name}${suspected(condition)} must be fixed and the place dry before it is blocked; then mark the cause fixed.`,
      ),
    }
  },
  order: [blockedFirst],
}

const soot: GroupRule = {
  id: 'soot',
  level: 'group',
  phase: 'found',
  theme: 'stains',
  title: 'Soot and smoke',
  found: 'Gray to black film, worst over fireplaces, stoves and candles.',
  reason: 'Soot smears under a brush and bleeds: it is washed off, and what stays is blocked.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'sootOrSmoke'),
  consequence: (view) => washedAndBlocked(view, 'sootOrSmoke'),
  order: [washedFirst, blockedFirst],
}

const nicotine: GroupRule = {
  id: 'nicotine',
  level: 'group',
  phase: 'found',
  theme: 'stains',
  title: 'Nicotine',
  found: 'An even yellow film that runs when it is wetted.',
  reason:
    'Nicotine dissolves in water and bleeds through latex: it is washed off, and the surface is primed against what stays.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'nicotine'),
  consequence: (view) => washedAndBlocked(view, 'nicotine'),
  order: [washedFirst, blockedFirst],
}

function washedAndBlocked(view: GroupView, kind: 'sootOrSmoke' | 'nicotine') {
  const found = findingsOf(view, kind)
  const extent = primerExtent(view, found)
  const layer = extent === 'whole' ? 'prime' : 'block'
  return {
    steps: [stepAt(found, 'wash', { productClass: 'cleaner' as const })],
    primers: [primer('stain', extent, found, { layer })],
  }
}

const mildew: GroupRule = {
  id: 'mildew',
  level: 'group',
  phase: 'found',
  theme: 'stains',
  title: 'Mildew',
  found: 'Gray or black specks that a drop of bleach lightens; dirt stays dark.',
  reason:
    'Mildew grows on through paint: it is washed off with a suitable cleaner and dried, and the moisture that feeds it is found.',
  source: commonPractice,
  safety: 'moisture',
  on: true,
  numbers: holdDays(14),
  when: (view) => hasFinding(view, 'mildew'),
  consequence: (view) => {
    const found = findingsOf(view, 'mildew')
    return {
      steps: [stepAt(found, 'washMildew', { productClass: 'mildewWash' as const })],
      holds: causeHolds(
        view,
        'mildewCause',
        'mildew',
        found,
        (condition) =>
          `Mildew in ${view.room.name}${suspected(condition)}: find where the moisture comes from and fix it, or it grows back; then mark the cause fixed.`,
      ),
    }
  },
  order: [washedFirst],
}

const knots: GroupRule = {
  id: 'knots',
  level: 'group',
  phase: 'found',
  theme: 'stains',
  title: 'Knots',
  found: 'Knots and resin streaks in wood, brown rings through the paint.',
  reason: 'Resin bleeds through primer and paint: each knot gets shellac, reaching over its edge.',
  source: commonPractice,
  safety: 'fumes',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'knots'),
  consequence: (view) => ({
    primers: [primer('knots', 'spots', findingsOf(view, 'knots'), { layer: 'block' })],
  }),
  order: [blockedFirst],
}

export const stainRules = [waterStain, soot, nicotine, mildew, knots] as const
