import type { GirthPolicy, OpeningPolicy } from '../../../core/project/job.ts'
import type { Weekday } from '../../../core/project/shop-records.ts'
import type { KeptItem } from '../../../core/project/survey-records.ts'
import {
  type ColourDepth,
  type KeptItemKind,
  keptItemKinds,
  type ProductClass,
  productClasses,
  type RoomOrder,
  type Skill,
  type Substrate,
} from '../../../core/project/vocabulary.ts'

/** Words of the screen for tags that do not stand on paper. Each list is complete, or it does not compile. */
export const substrateWords: Readonly<Record<Substrate, string>> = {
  plaster: 'plaster',
  gypsumBoard: 'gypsum board',
  wood: 'wood',
  metal: 'metal',
  masonry: 'masonry',
}

export const depthWords: Readonly<Record<ColourDepth, string>> = {
  white: 'white',
  offWhite: 'off-white',
  light: 'light',
  medium: 'medium',
  deep: 'deep',
  strong: 'strong and clear',
}

export const keptItemWords: Readonly<Record<KeptItemKind, string>> = {
  plate: 'switch or outlet plate',
  lockset: 'lockset',
  hinges: 'hinges',
  curtainHardware: 'curtain hardware',
  lightFixture: 'light fixture',
  smokeAlarm: 'smoke alarm',
  carbonMonoxideAlarm: 'carbon monoxide alarm',
  sensor: 'sensor',
  hanging: 'wall hanging',
  other: 'something else',
}

/** One of a kind and several of it, as they are counted: `9 plates, 3 locks`. */
const keptNouns: Readonly<Record<KeptItemKind, readonly [string, string]>> = {
  plate: ['plate', 'plates'],
  lockset: ['lock', 'locks'],
  hinges: ['set of hinges', 'sets of hinges'],
  curtainHardware: ['curtain rod', 'curtain rods'],
  lightFixture: ['light fixture', 'light fixtures'],
  smokeAlarm: ['smoke alarm', 'smoke alarms'],
  carbonMonoxideAlarm: ['carbon monoxide alarm', 'carbon monoxide alarms'],
  sensor: ['sensor', 'sensors'],
  hanging: ['wall hanging', 'wall hangings'],
  other: ['other thing', 'other things'],
}

/** How many of each kind, in the order of the kinds. */
export function keptCounts(items: readonly Pick<KeptItem, 'kind' | 'count'>[]): string {
  return keptItemKinds
    .flatMap((kind) => {
      const count = items.reduce((sum, item) => sum + (item.kind === kind ? item.count : 0), 0)
      const [one, several] = keptNouns[kind]
      return count === 0 ? [] : [`${count} ${count === 1 ? one : several}`]
    })
    .join(', ')
}

export const skillWords: Readonly<Record<Skill, string>> = {
  preparation: 'preparation',
  painting: 'painting',
  fineBrush: 'fine brush work',
}

export const roomOrderWords: Readonly<Record<RoomOrder, string>> = {
  byProfile: 'By profile',
  trimFirst: 'Trim, ceiling, walls',
  ceilingFirst: 'Ceiling, trim, walls',
  trimLast: 'Ceiling, walls, trim',
}

export const roomOrderNotes: Readonly<Record<RoomOrder, string>> = {
  byProfile: 'Trim first where there is a crown or profiled trim, else the ceiling first.',
  trimFirst: 'Where trim is profiled: ceiling and walls are then cut to finished trim in one pass.',
  ceilingFirst: 'The ceiling first, as it drips on everything; the walls last, cut to finished trim.',
  trimLast: 'Trim last: it covers what the wall roller spattered.',
}

export const openingPolicyWords: Readonly<Record<OpeningPolicy, string>> = {
  exactNet: 'Exact: every opening taken off',
  is1200Part13: 'By IS 1200 part 13: small openings not taken off, medium ones on one face',
  minimumVoid: 'Only openings above a least size taken off',
  noDeduction: 'Nothing taken off',
  partDeduction: 'Half of each opening taken off',
}

export const girthPolicyWords: Readonly<Record<GirthPolicy, string>> = {
  exactGirth: 'Exact: length times girth',
  sixTwelveInch: 'Narrow girths rounded up to 6 in or 12 in',
  nineInchByLength: 'Under 9 in counted by length',
  threeHundredMillimetre: 'Under 300 mm counted by length',
}

export const weekdayWords: Readonly<Record<Weekday, string>> = {
  monday: 'Monday',
  tuesday: 'Tuesday',
  wednesday: 'Wednesday',
  thursday: 'Thursday',
  friday: 'Friday',
  saturday: 'Saturday',
  sunday: 'Sunday',
}

/** Products that can be a finish; primers, fillers and cleaners are chosen by the rules. */
export const finishClasses: readonly ProductClass[] = productClasses.filter((each) =>
  [
    'latexCeiling',
    'latexWall',
    'waterborneEnamel',
    'alkydEnamel',
    'radiatorEnamel',
    'clearVarnish',
    'floorEnamel',
  ].includes(each),
)
