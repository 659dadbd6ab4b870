import { commonPractice, type GroupRule, type HouseRule } from '../rule.ts'
import { orderBecause, wholeStep } from '../step-requests.ts'

/** Edges of these rules are made per room by `room-edges.ts`; switches and reasons are kept here. */
export const sandBeforeCoats: HouseRule = {
  id: 'sand-before-coats',
  level: 'house',
  theme: 'order',
  title: 'All sanding before the first coat in a room',
  found: 'Every room.',
  reason:
    'Dust settles on wet paint: everything in the room is scraped, sanded and vacuumed before the first finish coat on anything.',
  source: commonPractice,
  safety: 'dust',
  on: true,
  numbers: {},
  order: [],
}

export const primeBeforeCoats: HouseRule = {
  id: 'prime-before-coats',
  level: 'house',
  theme: 'order',
  title: 'All primer before the first finish coat in a room',
  found: 'Every room in which something is sealed, blocked or primed.',
  reason:
    'Primer splashes and is sanded into: everything in the room is primed before any finish coat in it. A red primer after two white coats of trim spots them.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  order: [],
}

export const washBeforeSanding: HouseRule = {
  id: 'wash-before-sanding',
  level: 'house',
  theme: 'order',
  title: 'Wash before anything in the room is sanded',
  found: 'Every room in which something is washed.',
  reason:
    'Sanding drives grease and dirt into the surface, and its dust sticks to what is still to be washed.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  order: [],
}

/** Bare chalk and paper are not washed over; what is on them is dealt with by their own rules. */
const notWashed = ['calcimine', 'wallpaper', 'bare']

export const stoveGrease: GroupRule = {
  id: 'stove-grease',
  level: 'group',
  phase: 'found',
  theme: 'stains',
  title: 'Near a stove: wash everything',
  found: 'Every painted surface of a kitchen: ceiling, walls, woodwork, doors, sash.',
  reason:
    'Cooking leaves grease on every surface near a stove, not only on the walls: all of it is washed and rinsed before it is sanded or painted.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  when: (view) => view.room.use === 'kitchen' && !notWashed.includes(view.group.coat),
  consequence: () => ({ steps: [wholeStep('wash', { productClass: 'cleaner' })] }),
  order: [
    orderBecause(
      ['wash'],
      ['scrape', 'openCrack', 'sandPatch', 'sand/1', 'fill', 'spotPrime', 'prime', 'coat'],
      'Grease is washed off before anything else touches the surface.',
    ),
  ],
}
