import { formatLength } from '../../units/length.ts'
import type { Finding } from '../findings.ts'
import { holdFor } from '../holds.ts'
import { commonPractice, type GroupRule, type GroupView, type StepRequest } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  holdDays,
  noticeOn,
  number,
  orderBecause,
  primer,
  primerExtent,
  stepAt,
  suspected,
  uncured,
} from '../step-requests.ts'
import { filling, fillingOrder, layers } from './filling.ts'

/** Wider than a hairline from this severity on. */
const severityRank = { slight: 1, moderate: 2, severe: 3 } as const

/** A crack that was found moving and whose cause was put right has come to rest. */
function restingCracks(view: GroupView): readonly Finding[] {
  const moving = new Set(uncured(findingsOf(view, 'movingCrack')))
  return findingsOf(view, 'stressCrack', 'movingCrack').filter((finding) => !moving.has(finding))
}

/** Open it, dampen bare plaster, fill, bridge it where it is wide, fill over: what every crack at rest gets. */
function crackSteps(view: GroupView, cracks: readonly Finding[]): readonly StepRequest[] {
  const from = view.book.number('stress-crack', 'tapeFrom')
  const wide = cracks.filter(({ condition }) => from > 0 && severityRank[condition.severity] >= from)
  const isSealed = view.group.coat === 'calcimine' || hasFinding(view, 'chalking')
  const drinks = view.group.substrate === 'plaster' && !isSealed
  return [
    stepAt(cracks, 'openCrack'),
    ...(drinks ? [stepAt(cracks, 'dampCrack')] : []),
    ...(wide.length > 0 ? [stepAt(wide, 'tapeCrack')] : []),
  ]
}

const stressCrack: GroupRule = {
  id: 'stress-crack',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Cracks in plaster or board',
  found: 'A crack that has come to rest, in plaster or along a joint of board.',
  reason:
    'A hairline filled on top opens again: the crack is opened to a V and cleaned, bare plaster is dampened so that it does not drink the filler, and a crack wider than a hairline is bridged with mesh (paper tape on a joint of board) under the last layer.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {
    ...layers(2),
    tapeFrom: {
      ...number(
        2,
        '0 never, 1 slight, 2 moderate, 3 severe',
        'How bad a crack is that gets tape',
        commonPractice,
      ),
      most: 3,
      whole: true,
    },
  },
  when: (view) => restingCracks(view).length > 0,
  consequence: (view) => {
    const cracks = restingCracks(view)
    const filled = filling(view, cracks, view.book.number('stress-crack', 'layers'))
    return { ...filled, steps: [...crackSteps(view, cracks), ...(filled.steps ?? [])] }
  },
  order: [
    ...fillingOrder,
    orderBecause(
      ['openCrack'],
      ['vacuum/1'],
      'The opened crack is cleaned out: filler does not hold on loose plaster and dust.',
    ),
    orderBecause(['openCrack'], ['fill', 'skim'], 'The crack is opened first so that filler keys into it.'),
  ],
}

const movingCrack: GroupRule = {
  id: 'moving-crack',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Cracks that still move',
  found: 'A crack with edges that move, curl up or have been filled before.',
  reason:
    'A crack that still moves comes back through hard filler: find out why, then open it, fill it with flexible filler and bridge it with mesh; or leave it as agreed with the client.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {
    ...holdDays(14),
    leaveAsAgreed: {
      ...number(0, '1 yes, 0 no', 'The client agreed to leave moving cracks as they are', commonPractice),
      most: 1,
      whole: true,
    },
  },
  when: (view) => uncured(findingsOf(view, 'movingCrack')).length > 0,
  consequence: (view) => {
    const moving = uncured(findingsOf(view, 'movingCrack'))
    if (view.book.number('moving-crack', 'leaveAsAgreed') > 0)
      return { notices: [leftAsAgreed(view, moving)] }
    return {
      steps: [
        stepAt(moving, 'openCrack'),
        stepAt(moving, 'fill', { ordinal: 'flexible', productClass: 'acrylicCaulk' }),
        stepAt(moving, 'tapeCrack'),
        stepAt(moving, 'fill', { ordinal: '2', productClass: 'dryingFiller' }),
        stepAt(moving, 'sandFill'),
      ],
      primers: [primer('patch', primerExtent(view, moving), moving)],
      holds: moving.map((finding) =>
        holdFor(
          'movingCrack',
          finding,
          view.book.number('moving-crack', 'holdDays'),
          `A crack of ${formatLength(finding.length, view.job.header.unitSystem)} in ${view.room.name} still moves${suspected(finding.condition)}. Note why and fix that before it is filled; otherwise agree with the client that it may open again.`,
          commonPractice,
        ),
      ),
    }
  },
  order: fillingOrder,
}

function leftAsAgreed(view: GroupView, moving: readonly Finding[]) {
  return noticeOn(
    view,
    'advice',
    `Cracks in ${view.room.name} that still move are left as agreed with the client: painted over, they may open again.`,
    commonPractice,
    moving,
  )
}

const poppedFastener: GroupRule = {
  id: 'popped-fastener',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Popped fasteners',
  found: 'A nail or screw head that has lifted the surface.',
  reason:
    'A fastener only filled over pops again: it is driven below the surface until the board stops moving, with one added beside it, then filled.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: layers(2, 'common practice; new board gets three on fasteners (ASTM C840 s. 22.6, level 4)'),
  when: (view) => hasFinding(view, 'poppedFastener'),
  consequence: (view) => {
    const popped = findingsOf(view, 'poppedFastener')
    const filled = filling(view, popped, view.book.number('popped-fastener', 'layers'))
    return { ...filled, steps: [stepAt(popped, 'driveFastener'), ...(filled.steps ?? [])] }
  },
  order: [
    ...fillingOrder,
    orderBecause(['driveFastener'], ['fill'], 'The board must have stopped moving before it is filled.'),
  ],
}

const unsandedPatch: GroupRule = {
  id: 'unsanded-patch',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Old patches painted over unsanded',
  found: 'A patch that stands proud or shows its edges under a raking light.',
  reason:
    'A proud patch shows through every coat: it is sanded flat first and primed so that it does not flash.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'unsandedPatch'),
  consequence: (view) => {
    const patches = findingsOf(view, 'unsandedPatch')
    return {
      steps: [stepAt(patches, 'sandPatch', { extent: 'spots' })],
      primers: [primer('patch', primerExtent(view, patches), patches)],
    }
  },
  order: [],
}

const hole: GroupRule = {
  id: 'hole',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Holes and dents',
  found: 'Holes of hangings, dents, chipped corners; in wood as in plaster.',
  reason: 'Holes are filled in layers, sanded and primed: one thick fill sinks and shows as a dent.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {
    ...layers(2),
    severeLayers: number(3, 'layers', 'Layers where the hole is severe', commonPractice),
  },
  when: (view) => hasFinding(view, 'hole'),
  consequence: (view) => {
    const holes = findingsOf(view, 'hole')
    const severe = holes.filter(({ condition }) => condition.severity === 'severe')
    const filled = filling(view, holes, view.book.number('hole', 'layers'))
    if (severe.length === 0) return filled
    const deep = filling(view, severe, view.book.number('hole', 'severeLayers'))
    const third = (deep.steps ?? []).filter((step) => step.ordinal === '3')
    return { ...filled, steps: [...(filled.steps ?? []), ...third], notices: [boardAdvice(view)] }
  },
  order: fillingOrder,
}

function boardAdvice(view: GroupView) {
  return noticeOn(
    view,
    'advice',
    `A severe hole in ${view.room.name}: a hole a hand goes through is backed or patched with board before it is filled.`,
    commonPractice,
    findingsOf(view, 'hole').filter(({ condition }) => condition.severity === 'severe'),
  )
}

const loosePlasterKeys: GroupRule = {
  id: 'loose-plaster-keys',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Plaster loose from its lath',
  found: 'Plaster that gives under the hand or sounds hollow: its keys behind the lath are broken.',
  reason:
    'Paint and filler hold nothing up: loose plaster is drawn back to the lath with screws and washers, or replaced, before anything goes on it.',
  source: 'historic plaster repair pages (washers, broken keys); common practice',
  safety: 'height',
  on: true,
  numbers: { ...layers(2), ...holdDays(14) },
  when: (view) => hasFinding(view, 'loosePlasterKeys'),
  consequence: (view) => {
    const loose = findingsOf(view, 'loosePlasterKeys')
    const filled = filling(view, loose, view.book.number('loose-plaster-keys', 'layers'))
    const severe = loose.filter(({ condition }) => condition.severity === 'severe')
    return {
      ...filled,
      steps: [stepAt(loose, 'reattachPlaster'), ...(filled.steps ?? [])],
      holds: uncured(severe).map((finding) =>
        holdFor(
          'loosePlaster',
          finding,
          view.book.number('loose-plaster-keys', 'holdDays'),
          `Plaster in ${view.room.name} is badly loose and may fall${suspected(finding.condition)}. Keep people from under it; have it taken down and replaced, or proved sound, before it is painted.`,
          commonPractice,
        ),
      ),
    }
  },
  order: [
    ...fillingOrder,
    orderBecause(
      ['reattachPlaster'],
      ['scrape', 'openCrack', 'sandPatch', 'sand/1', 'vacuum/1', 'fill'],
      'Loose plaster is made fast first: work beside it brings it down.',
    ),
  ],
}

export const plasterRules = [
  stressCrack,
  movingCrack,
  poppedFastener,
  unsandedPatch,
  hole,
  loosePlasterKeys,
] as const
