import type { Job } from '../../project/job.ts'
import type { Room } from '../../project/sketch-records.ts'
import { toSquareFeet } from '../../units/area.ts'
import { feet, lengthFromUnits, toFeet } from '../../units/length.ts'
import { allowanceFinding, type Finding } from '../findings.ts'
import type { Group } from '../groups.ts'
import { washOperations } from '../operation-facts.ts'
import { type GroupRule, type GroupView, type HouseRule, shopAssumption } from '../rule.ts'
import type { RuleBook } from '../rule-book.ts'
import {
  findingsOf,
  hasFinding,
  number,
  orderBecause,
  primer,
  primerExtent,
  stepAt,
} from '../step-requests.ts'
import { smallFillerClass } from './filling.ts'

/** What every room has of small damage, whether anybody wrote it down or not: by the house's numbers, or by the room's own. */
export interface RoomAllowances {
  /** Nail holes, dings and dents for each 100 sq ft of wall. */
  readonly dings: number
  /** Nail holes and dents for each 100 ft of trim. */
  readonly trimDings: number
  /** Feet of open joints for each 100 ft of trim. */
  readonly joints: number
  /** Percent of what is painted that is touched up at the end. */
  readonly touchUp: number
}

/** Board and houses from about 1990 on have fewer (shop assumption); of a house of unknown age nobody says so. */
function isNewer(job: Job, book: RuleBook, substrate: Group['substrate'] | null): boolean {
  const from = book.number('allowance-dings', 'newFrom')
  return substrate === 'gypsumBoard' || (job.header.yearBuilt ?? 0) >= from
}

/** The numbers that count in a room; `substrate` is that of the walls where it is known. */
export function allowancesOf(
  job: Job,
  room: Room,
  book: RuleBook,
  substrate: Group['substrate'] | null = null,
): RoomAllowances {
  const usual = (ruleId: string, old: string, newer: string, of: Group['substrate'] | null) =>
    book.isOn(ruleId) ? book.number(ruleId, isNewer(job, book, of) ? newer : old) : 0
  return {
    dings: room.allowances?.dings ?? usual('allowance-dings', 'perHundred', 'perHundredNew', substrate),
    trimDings:
      room.allowances?.trimDings ?? usual('allowance-dings', 'perHundredFeet', 'perHundredFeetNew', null),
    joints: room.allowances?.joints ?? usual('allowance-joints', 'feet', 'feetNew', null),
    touchUp: room.allowances?.touchUp ?? usual('touch-up', 'percent', 'percentNew', null),
  }
}

/** Filler and caulk show under varnish. */
function isPaintedTrim({ group }: GroupView): boolean {
  return group.surfaceClass === 'trim' && group.finish.productClass !== 'clearVarnish'
}

/** Skimmed or fresh surfaces have no dings of their own left. */
function isMadeNew(view: GroupView): boolean {
  return hasFinding(view, 'unwantedTexture', 'newPlaster', 'newSkimCoat', 'bareJointCompound')
}

/** What was written down counts towards the allowance: nobody fills a hole twice. */
function dings(view: GroupView): readonly Finding[] {
  const { job, room, book, group } = view
  const usual = allowancesOf(job, room, book, group.substrate)
  const noted = findingsOf(view, 'hole').reduce((sum, finding) => sum + finding.count, 0)
  const hundreds =
    group.surfaceClass === 'walls'
      ? toSquareFeet(group.amounts.area) / 100
      : toFeet(group.amounts.length) / 100
  const perHundred = group.surfaceClass === 'walls' ? usual.dings : usual.trimDings
  const count = Math.round(hundreds * perHundred) - noted
  return count > 0 ? [allowanceFinding(view, 'hole', count)] : []
}

const allowanceDings: GroupRule = {
  id: 'allowance-dings',
  level: 'group',
  phase: 'found',
  theme: 'plaster',
  title: 'Nail holes, dings and dents',
  found: 'All walls and trim, whether anybody counted them or not; more in old plaster than in new board.',
  reason:
    'Walls and trim have nail holes and dings that show under a raking light: they are filled, sanded and primed.',
  source: shopAssumption,
  safety: 'none',
  on: true,
  numbers: {
    perHundred: number(24, 'per 100 sq ft of wall', 'In plaster, and in houses built before the year below'),
    perHundredNew: number(6, 'per 100 sq ft of wall', 'In board, and in newer houses'),
    perHundredFeet: number(16, 'per 100 ft of trim', 'In houses built before the year below'),
    perHundredFeetNew: number(4, 'per 100 ft of trim', 'In newer houses'),
    newFrom: number(1990, 'year', 'Houses from this year on count as newer'),
  },
  when: (view) =>
    (view.group.surfaceClass === 'walls' || isPaintedTrim(view)) &&
    !isMadeNew(view) &&
    dings(view).length > 0,
  consequence: (view) => {
    const found = dings(view)
    return {
      steps: [
        stepAt(found, 'fillSmall', { productClass: smallFillerClass(view) }),
        stepAt(found, 'sandFill'),
      ],
      primers: [primer('patch', primerExtent(view, found), found)],
    }
  },
  order: [
    orderBecause(
      [
        ...washOperations,
        'reattachPlaster',
        'driveFastener',
        'scrape',
        'openCrack',
        'sandPatch',
        'sand/1',
        'vacuum/1',
        'sealChalk',
        'sealBare',
      ],
      ['fillSmall'],
      'Small holes are filled when the surface is clean, sound and dull.',
    ),
    orderBecause(['fillSmall'], ['sandFill'], 'Filler is sanded flat once it is dry: sanded soft, it tears.'),
    orderBecause(
      ['fillSmall'],
      ['dustOff', 'blockStain', 'spotPrime', 'prime', 'coat'],
      'Holes are filled before what covers them.',
    ),
  ],
}

function joints(view: GroupView): readonly Finding[] {
  const { job, room, book, group } = view
  const per = allowancesOf(job, room, book).joints
  const noted = findingsOf(view, 'caulkGap').reduce((sum, finding) => sum + toFeet(finding.length), 0)
  const open = (toFeet(group.amounts.length) * per) / 100 - noted
  return open > 0 ? [allowanceFinding(view, 'caulkGap', lengthFromUnits(feet(open)))] : []
}

const allowanceJoints: GroupRule = {
  id: 'allowance-joints',
  level: 'group',
  phase: 'found',
  theme: 'trim',
  title: 'Open joints along trim',
  found: 'All trim that is painted, whether anybody measured the gaps or not.',
  reason:
    'Some of the line between trim and wall has always opened: it is closed with paintable acrylic caulk.',
  source: shopAssumption,
  safety: 'none',
  on: true,
  numbers: {
    feet: number(
      40,
      'ft per 100 ft',
      'In houses built before the year of the rule “Nail holes, dings and dents”',
    ),
    feetNew: number(8, 'ft per 100 ft', 'In newer houses'),
  },
  when: (view) => isPaintedTrim(view) && joints(view).length > 0,
  consequence: (view) => ({
    steps: [stepAt(joints(view), 'caulk', { productClass: 'acrylicCaulk' })],
  }),
  order: [orderBecause(['caulk'], ['coat'], 'Caulk is closed and dry before it is painted.')],
}

/** Its step and edges are made by `touch-up.ts`; the reason, the numbers and the switch are kept here. */
const touchUp: HouseRule = {
  id: 'touch-up',
  level: 'house',
  theme: 'coats',
  title: 'Touch up at the end',
  found: 'Every room that is painted.',
  reason:
    'When everything is dry the room is gone over under a raking light, and what was missed or marked is touched up from the same batch.',
  source: shopAssumption,
  safety: 'none',
  on: true,
  numbers: {
    percent: number(
      3,
      '% of what is painted',
      'In houses built before the year of the rule “Nail holes, dings and dents”',
    ),
    percentNew: number(1, '% of what is painted', 'In newer houses'),
  },
  order: [],
}

export const allowanceRules = [allowanceDings, allowanceJoints, touchUp] as const
