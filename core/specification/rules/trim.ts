import { commonPractice, type GroupRule } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  isWaterborne,
  noticeOn,
  number,
  orderBecause,
  primer,
  primerExtent,
  stepAt,
} from '../step-requests.ts'

const bareWoodPlaces: GroupRule = {
  id: 'bare-wood',
  level: 'group',
  phase: 'found',
  theme: 'trim',
  title: 'Bare places in wood',
  found: 'Wood worn or stripped bare.',
  reason: 'Bare wood is sanded and primed: enamel on it raises the grain and soaks in.',
  source: 'moisture at most 18%: NHBC Standards 2006 8.5-D2; common practice',
  safety: 'lead',
  on: true,
  numbers: { moisturePercent: number(18, '%', 'Most moisture of the wood', 'NHBC Standards 2006 8.5-D2') },
  when: (view) => hasFinding(view, 'bareWood'),
  consequence: (view) => {
    const bare = findingsOf(view, 'bareWood')
    const percent = view.book.number('bare-wood', 'moisturePercent')
    return {
      steps: [stepAt(bare, 'sand', { extent: 'spots' })],
      primers: [primer('bareWood', primerExtent(view, bare), bare)],
      notices: [
        noticeOn(
          view,
          'advice',
          `Bare wood in ${view.room.name}: measure it before priming; ${percent}% moisture at most.`,
          'NHBC Standards 2006 8.5-D2',
          bare,
        ),
      ],
    }
  },
  order: [
    {
      ...orderBecause(['spotPrime'], ['caulk'], 'Caulk does not hold on bare wood: it is primed first.'),
      ownSteps: true,
    },
  ],
}

const caulkGap: GroupRule = {
  id: 'caulk-gap',
  level: 'group',
  phase: 'found',
  theme: 'trim',
  title: 'Gaps along trim',
  found: 'An open line between trim and wall, or in a miter.',
  reason: 'An open line shows as a shadow through any coat: it is closed with paintable acrylic caulk.',
  source: 'acrylic latex over caulk, oil and alkyd crack on it: MIL-HDBK-1110 s. 6.2.1; common practice',
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'caulkGap'),
  consequence: (view) => {
    const gaps = findingsOf(view, 'caulkGap')
    const cracks = !isWaterborne(view.group.finish.productClass)
    return {
      steps: [stepAt(gaps, 'caulk', { productClass: 'acrylicCaulk' })],
      notices: cracks
        ? [
            noticeOn(
              view,
              'compatibility',
              `Alkyd enamel over caulk in ${view.room.name} cracks as the caulk moves: choose a water-borne finish there.`,
              'MIL-HDBK-1110 s. 6.2.1',
              gaps,
            ),
          ]
        : [],
    }
  },
  order: [orderBecause(['caulk'], ['coat'], 'Caulk is closed and dry before it is painted.')],
}

const doorEdges: GroupRule = {
  id: 'doors',
  level: 'group',
  phase: 'found',
  theme: 'trim',
  title: 'Doors and their edges',
  found: 'Door slabs, flush or paneled.',
  reason:
    'Panels first, then rails, then stiles; top and bottom edges too, or the door swells; each edge takes the color of the side it shows on, the hinge edge that of the face it is seen with.',
  source: 'a newspaper column of 1988 and painting pages; common practice',
  safety: 'none',
  on: true,
  numbers: { coats: number(2, 'coats', 'Finish coats on doors', commonPractice) },
  when: (view) => view.group.surfaceClass === 'doors' && view.group.finish.productClass !== 'clearVarnish',
  consequence: (view) => ({ coats: view.book.number('doors', 'coats') }),
  order: [],
}

const stairTreads: GroupRule = {
  id: 'stairs',
  level: 'group',
  phase: 'found',
  theme: 'trim',
  title: 'Stairs stay passable',
  found: 'Treads, risers, balusters and rails.',
  reason:
    'A stair is the way out: it is painted last, from the top down, every other tread at a time so that people can pass; all at once only where it is agreed that it is closed until it is dry.',
  source: commonPractice,
  safety: 'height',
  on: true,
  numbers: {},
  when: (view) => view.group.surfaceClass === 'stairs',
  consequence: (view) => ({
    coats: 1,
    notices: [
      noticeOn(
        view,
        'advice',
        `The stair in ${view.room.name}: tell the family which evening it is wet; coat every other tread where people must pass, and mark what is wet.`,
        commonPractice,
      ),
    ],
  }),
  order: [],
}

export const trimRules = [bareWoodPlaces, caulkGap, doorEdges, stairTreads] as const
