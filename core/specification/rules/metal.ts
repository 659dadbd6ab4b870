import { commonPractice, type GroupRule } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  noticeOn,
  orderBecause,
  primer,
  primerExtent,
  stepAt,
  wholeStep,
} from '../step-requests.ts'

const rust: GroupRule = {
  id: 'rust',
  level: 'group',
  phase: 'found',
  theme: 'metal',
  title: 'Rust',
  found: 'Brown scale or stain on radiators, pipes and iron.',
  reason:
    'Rust spreads under paint: it is brushed or sanded to sound metal and primed the same day with a metal primer.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {},
  when: (view) => hasFinding(view, 'rust'),
  consequence: (view) => {
    const rusted = findingsOf(view, 'rust')
    return {
      steps: [stepAt(rusted, 'treatRust', { extent: 'spots' })],
      primers: [primer('bareMetal', primerExtent(view, rusted), rusted)],
    }
  },
  order: [
    orderBecause(
      ['treatRust'],
      ['vacuum/1', 'spotPrime', 'prime', 'coat'],
      'The rust comes off first: it goes on growing under paint.',
    ),
  ],
}

const radiator: GroupRule = {
  id: 'radiator',
  level: 'group',
  phase: 'found',
  theme: 'metal',
  title: 'Radiators',
  found: 'Radiators and heating pipes.',
  reason:
    'A radiator is painted cold and kept off until the coat has dried: heat bakes wet paint into blisters and smell.',
  source: commonPractice,
  safety: 'fumes',
  on: true,
  numbers: {},
  when: (view) => view.group.surfaceClass === 'radiators',
  consequence: (view) => ({
    steps: view.group.coat === 'bare' ? [] : [wholeStep('sand')],
    notices: [
      noticeOn(
        view,
        'advice',
        `Turn the heating of ${view.room.name} off and let the radiator go cold before it is painted; leave it off until the coat has dried${view.group.finish.productClass === 'radiatorEnamel' ? '' : ', and choose an enamel that withstands heat'}.`,
        commonPractice,
      ),
    ],
  }),
  order: [],
}

export const metalRules = [rust, radiator] as const
