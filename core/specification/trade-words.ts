import type {
  ConditionKind,
  ExistingCoat,
  KeptItemHandling,
  ProductClass,
  Severity,
  Sheen,
  SurfaceClass,
} from '../project/vocabulary.ts'
import type { Operation, Step } from './types.ts'

/** The trade's words on paper for the tags of records and steps. Each list is complete, or it does not compile. */
export const operationWords: Readonly<Record<Operation, string>> = {
  protectRoom: 'Cover the floor and what stays',
  postSigns: 'Put up the warning signs and close off the room',
  sheetFloor: 'Tape plastic sheeting over the floor, 6 ft beyond the work',
  sealOpenings: 'Close ducts and doors with plastic sheeting',
  takeOff: 'Take off, bag and label',
  loosenHanging: 'Loosen what hangs here',
  coverAlarm: 'Cover the alarm for the working hours',
  dustDown: 'Dust down under a raking light',
  wash: 'Wash and rinse',
  washMildew: 'Wash off mildew',
  scrape: 'Scrape until nothing lifts, feather the edges',
  stripWallpaper: 'Strip the wallpaper',
  washOffSize: 'Wash off paste and size',
  washOffCalcimine: 'Wash off calcimine',
  openCrack: 'Open cracks to a V and clean them',
  driveFastener: 'Drive fasteners below the surface',
  reattachPlaster: 'Fasten loose plaster back to the lath',
  sealChalk: 'Seal the chalky surface',
  sealBare: 'Seal bare places',
  blockStain: 'Block stains',
  spotPrime: 'Spot-prime',
  dampCrack: 'Dampen the opened cracks',
  fill: 'Fill in layers',
  tapeCrack: 'Bridge the cracks with mesh tape, paper tape on board joints',
  fillSmall: 'Fill nail holes, dings and dents',
  skim: 'Skim',
  puttySash: 'Putty the sash',
  freeSash: 'Free the sash',
  caulk: 'Caulk gaps',
  treatRust: 'Clean and treat rust',
  sandPatch: 'Sand old patches flat',
  sandFill: 'Sand the filler',
  sand: 'Sand to dull the gloss',
  vacuum: 'Vacuum',
  dustOff: 'Dust off',
  degloss: 'Wipe with liquid deglosser',
  prime: 'Prime',
  coat: 'Coat',
  maskOff: 'Mask off',
  unmask: 'Take the masking off',
  easeSash: 'Cut the sash free and move it as soon as the coat is dry',
  scrapeGlass: 'Scrape paint off the glass',
  cleanDaily: 'Clean down at the end of the day',
  bagSheeting: 'Fold the sheeting in, bag it and carry it out',
  cleanFinal: 'Wet-wipe and mop everything from the top down',
  wipeCheck: 'Look over and wipe-check sills and floor, then open the room',
  touchUp: 'Touch up under a raking light',
  restoreAlarm: 'Uncover the alarm and test it',
  refitHanging: 'Refit what hangs here',
  putBack: 'Put back what was taken off',
  cleanUp: 'Clean up and clear the room',
  inspect: 'Look over at viewing distance',
}

export const surfaceClassWords: Readonly<Record<SurfaceClass, string>> = {
  ceiling: 'Ceiling',
  walls: 'Walls',
  wainscot: 'Wainscot',
  trim: 'Trim',
  doors: 'Doors',
  sash: 'Sash',
  stairs: 'Stairs',
  radiators: 'Radiators',
  builtWork: 'Built work',
}

/** The class of surface inside a sentence: `built work`. */
export function surfaceNoun(surfaceClass: SurfaceClass): string {
  return surfaceClassWords[surfaceClass].toLowerCase()
}

export const existingCoatWords: Readonly<Record<ExistingCoat, string>> = {
  bare: 'bare',
  latexFlat: 'latex, flat',
  latexGlossy: 'latex, glossy',
  oilPaint: 'oil paint',
  calcimine: 'calcimine',
  varnish: 'varnish',
  shellac: 'shellac',
  wallpaper: 'wallpaper',
  unknown: 'not known yet',
}

/** The class of a product in words, where its name does not say it already as `Water-borne bonding primer` does; else nothing. */
export function classBesideName(words: string, name: string): string {
  const said = name.toLowerCase().split(/[^a-z]+/)
  return words.split(/[^a-z]+/).every((word) => said.includes(word)) ? '' : words
}

export const productClassWords: Readonly<Record<ProductClass, string>> = {
  latexCeiling: 'latex ceiling paint',
  latexWall: 'latex wall paint',
  waterborneEnamel: 'water-borne enamel',
  alkydEnamel: 'alkyd enamel',
  acrylicPrimer: 'acrylic primer',
  bondingPrimer: 'bonding primer',
  oilPrimer: 'oil primer',
  stainBlockingPrimer: 'stain-blocking primer',
  shellacPrimer: 'shellac primer',
  calcimineSealer: 'calcimine sealer',
  plasterSealer: 'plaster sealer',
  metalPrimer: 'metal primer',
  radiatorEnamel: 'radiator enamel',
  liquidDeglosser: 'liquid deglosser',
  dryingFiller: 'drying filler',
  settingFiller: 'setting filler',
  lightFiller: 'lightweight filler',
  woodFiller: 'wood filler',
  acrylicCaulk: 'acrylic caulk',
  glazingPutty: 'glazing putty',
  clearVarnish: 'clear varnish',
  cleaner: 'cleaner',
  mildewWash: 'mildew wash',
  floorEnamel: 'floor enamel',
}

export const sheenWords: Readonly<Record<Sheen, string>> = {
  flat: 'flat',
  matte: 'matte',
  eggshell: 'eggshell',
  satin: 'satin',
  semiGloss: 'semi-gloss',
  gloss: 'gloss',
  highGloss: 'high gloss',
}

export const conditionWords: Readonly<Record<ConditionKind, string>> = {
  dustAndCobwebs: 'dust and cobwebs',
  loosePaint: 'loose or peeling paint',
  stressCrack: 'stress crack',
  movingCrack: 'crack that moves or curls',
  chalking: 'chalky surface (wipe test)',
  poppedFastener: 'popped fastener',
  unsandedPatch: 'patch painted over unsanded',
  glossyOldPaint: 'glossy old paint',
  waterStain: 'water stain',
  sootOrSmoke: 'soot or smoke',
  nicotine: 'nicotine',
  mildew: 'mildew',
  rust: 'rust',
  knots: 'knots',
  hole: 'hole',
  loosePlasterKeys: 'plaster loose from its lath',
  unwantedTexture: 'texture not wanted',
  oldWallpaper: 'old wallpaper',
  newPlaster: 'new plaster',
  newSkimCoat: 'new skim coat',
  bareJointCompound: 'bare joint compound',
  bareWood: 'bare wood',
  caulkGap: 'open joint to caulk',
  missingPutty: 'missing putty',
  paintedShut: 'sash painted shut',
  grease: 'grease',
}

export const severityWords: Readonly<Record<Severity, string>> = {
  slight: 'slight',
  moderate: 'moderate',
  severe: 'severe',
}

export const handlingWords: Readonly<Record<KeptItemHandling, string>> = {
  takeOff: 'take off, bag, label',
  coverDaily: 'cover in working hours, restore the same day',
  loosen: 'loosen, paint behind, refit',
  maskInPlace: 'mask in place',
}

/** What is done another way than its operation usually is. */
const titlesByRole: Readonly<Record<string, string>> = {
  'fill/flexible': 'Fill moving cracks with flexible filler',
  'prime/walls': 'Prime all of each patched wall or ceiling',
  'sand/2': 'Sand lightly between coats',
  'sand/3': 'Sand lightly between coats',
  'sand/4': 'Sand lightly between coats',
  'skim/craters': 'Skim over scraped craters',
}

/** Sanded for nothing but the edges that scraping left; where the gloss is dulled too, one sanding does both. */
function isFeathering({ operation, because }: Step): boolean {
  return operation === 'sand' && because.length > 0 && because.every(({ ruleId }) => ruleId === 'loose-paint')
}

/** `Coat 2`, `Prime`, `Scrape until nothing lifts`. */
export function stepTitle(step: Step): string {
  const byRole = titlesByRole[step.key.split('/').slice(-2).join('/')]
  if (byRole !== undefined) return byRole
  if (isFeathering(step)) return 'Feather the edges of scraped paint'
  return step.coat > 0 ? `${operationWords[step.operation]} ${step.coat}` : operationWords[step.operation]
}
