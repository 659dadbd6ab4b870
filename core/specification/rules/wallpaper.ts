import { sumAreas, toSquareFeet } from '../../units/area.ts'
import { allowanceFinding, type Finding } from '../findings.ts'
import { commonPractice, type GroupRule, type GroupView, type StepRequest, shopAssumption } from '../rule.ts'
import {
  findingsOf,
  hasFinding,
  noticeOn,
  number,
  orderBecause,
  primer,
  stepAt,
  wholeStep,
} from '../step-requests.ts'
import { filling, fillingOrder } from './filling.ts'

function isPapered(view: GroupView): boolean {
  return view.group.coat === 'wallpaper' || hasFinding(view, 'oldWallpaper')
}

/** All of it where the record says wallpaper; else where it was found. */
function onPaper(view: GroupView, operation: StepRequest['operation'], changes: Partial<StepRequest> = {}) {
  const found = findingsOf(view, 'oldWallpaper')
  return view.group.coat === 'wallpaper'
    ? wholeStep(operation, { findings: found, ...changes })
    : stepAt(found, operation, changes)
}

function sealing(view: GroupView) {
  const found = findingsOf(view, 'oldWallpaper')
  const extent = view.group.coat === 'wallpaper' ? 'whole' : 'spots'
  return primer('pasteResidue', extent, found, { layer: 'sealBare' })
}

/** Gouges of the scraper and places where the face came off with the paper, counted on by the area stripped. */
function torn(view: GroupView): readonly Finding[] {
  const area =
    view.group.coat === 'wallpaper'
      ? view.group.amounts.area
      : sumAreas(findingsOf(view, 'oldWallpaper').map((finding) => finding.area))
  const perHundred = view.book.number('wallpaper-strip', 'repairsPerHundred')
  const count = Math.round((toSquareFeet(area) / 100) * perHundred)
  return count > 0 ? [allowanceFinding(view, 'oldWallpaper', count)] : []
}

const sealedFirst = orderBecause(
  ['sealBare'],
  ['fill', 'skim', 'sandFill', 'spotPrime', 'prime', 'coat'],
  'What is left of the paste swells and bubbles under water-borne filler and paint: it is locked in first.',
)

const wallpaperStrip: GroupRule = {
  id: 'wallpaper-strip',
  level: 'group',
  phase: 'found',
  theme: 'wallpaper',
  title: 'Wallpaper: strip it',
  found: 'Wallpaper, or paint over wallpaper: seams show under a raking light.',
  reason:
    'Paint wets the paste and lifts the paper: it is stripped, the size washed off, the wall left to dry and sealed, and what the scraper gouged or the paper tore is filled and primed.',
  source: commonPractice,
  safety: 'moisture',
  on: true,
  numbers: {
    dryHours: number(24, 'hours', 'Drying after the size is washed off', commonPractice),
    repairsPerHundred: number(
      8,
      'per 100 sq ft',
      'Gouges and torn places to fill once the paper is off',
      shopAssumption,
    ),
  },
  instead: ['wallpaper-keep'],
  when: isPapered,
  consequence: (view) => {
    const places = torn(view)
    const repaired = places.length === 0 ? {} : filling(view, places, 1)
    return {
      steps: [
        onPaper(view, 'stripWallpaper'),
        onPaper(view, 'washOffSize', { dryMinutes: view.book.number('wallpaper-strip', 'dryHours') * 60 }),
        ...(repaired.steps ?? []),
      ],
      primers: [sealing(view), ...(repaired.primers ?? [])],
    }
  },
  order: [
    ...fillingOrder,
    orderBecause(['stripWallpaper'], ['washOffSize'], 'Size and paste are reached once the paper is off.'),
    orderBecause(
      ['washOffSize'],
      ['scrape', 'openCrack', 'reattachPlaster', 'sandPatch', 'sealBare', 'fill'],
      'The washed wall shows its cracks and must be dry before it is worked on.',
    ),
    sealedFirst,
  ],
}

const wallpaperKeep: GroupRule = {
  id: 'wallpaper-keep',
  level: 'group',
  phase: 'found',
  theme: 'wallpaper',
  title: 'Wallpaper: seal and paint over it',
  found: 'Sound, flat wallpaper that the client wants kept under paint.',
  reason: 'Painting over paper is second best: an oil sealer keeps the water of the paint from the paste.',
  source: commonPractice,
  safety: 'fumes',
  on: false,
  numbers: {},
  when: isPapered,
  consequence: (view) => ({
    primers: [sealing(view)],
    notices: [
      noticeOn(
        view,
        'compatibility',
        `Wallpaper in ${view.room.name} is painted over: seams may open and it can hardly be stripped later. Let the client agree in writing.`,
        commonPractice,
      ),
    ],
  }),
  order: [sealedFirst],
}

export const wallpaperRules = [wallpaperStrip, wallpaperKeep] as const
