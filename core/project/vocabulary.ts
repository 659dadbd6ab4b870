/**
 * The closed lists of the trade's words that records use. A word is added here once and then used everywhere.
 */

export const roomUses = [
  'entry',
  'hall',
  'stairHall',
  'living',
  'dining',
  'kitchen',
  'bath',
  'bedroom',
  'study',
  'closet',
  'atticStair',
  'attic',
  'utility',
  'other',
] as const
export type RoomUse = (typeof roomUses)[number]

export const openingKinds = ['door', 'casedOpening', 'window', 'fireplace', 'builtIn', 'other'] as const
export type OpeningKind = (typeof openingKinds)[number]

export const slabKinds = ['flush', 'panelled', 'glazed', 'partGlazed', 'louvred'] as const
export type SlabKind = (typeof slabKinds)[number]

export const sashOperations = ['fixed', 'doubleHung', 'casement', 'hopper'] as const

export const trimKinds = ['baseboard', 'crown', 'pictureRail', 'chairRail', 'wainscotCap'] as const
export type TrimKind = (typeof trimKinds)[number]

export const ceilingOpeningKinds = ['stairwell', 'skylight', 'hatch'] as const

/** Coarse classes of surface that defaults are set by. */
export const surfaceClasses = [
  'ceiling',
  'walls',
  'wainscot',
  'trim',
  'doors',
  'sash',
  'stairs',
  'radiators',
  'builtWork',
] as const
export type SurfaceClass = (typeof surfaceClasses)[number]

export const substrates = ['plaster', 'gypsumBoard', 'wood', 'metal', 'masonry'] as const
export type Substrate = (typeof substrates)[number]

export const existingCoats = [
  'bare',
  'latexFlat',
  'latexGlossy',
  'oilPaint',
  'calcimine',
  'varnish',
  'shellac',
  'wallpaper',
  'unknown',
] as const
export type ExistingCoat = (typeof existingCoats)[number]

/** Depth of colour, for counting coats: from white to a strong, clear colour. */
export const colourDepths = ['white', 'offWhite', 'light', 'medium', 'deep', 'strong'] as const
export type ColourDepth = (typeof colourDepths)[number]

/** Gloss levels G1-G7 of the MPI gloss table, by the words painters use. */
export const sheens = ['flat', 'matte', 'eggshell', 'satin', 'semiGloss', 'gloss', 'highGloss'] as const
export type Sheen = (typeof sheens)[number]

export const conditionKinds = [
  'dustAndCobwebs',
  'loosePaint',
  'stressCrack',
  'movingCrack',
  'chalking',
  'poppedFastener',
  'unsandedPatch',
  'glossyOldPaint',
  'waterStain',
  'sootOrSmoke',
  'nicotine',
  'mildew',
  'rust',
  'knots',
  'hole',
  'loosePlasterKeys',
  'unwantedTexture',
  'oldWallpaper',
  'newPlaster',
  'newSkimCoat',
  'bareJointCompound',
  'bareWood',
  'caulkGap',
  'missingPutty',
  'paintedShut',
  'grease',
] as const
export type ConditionKind = (typeof conditionKinds)[number]

export const severities = ['slight', 'moderate', 'severe'] as const
export type Severity = (typeof severities)[number]

/** How strong a picture under the sketch shows. */
export const underlayStrengths = ['faint', 'middle', 'strong'] as const

/** When a photo was taken: before the work or after it. */
export const photoStages = ['before', 'after'] as const
export type PhotoStage = (typeof photoStages)[number]

export const keptItemKinds = [
  'plate',
  'lockset',
  'hinges',
  'curtainHardware',
  'lightFixture',
  'smokeAlarm',
  'carbonMonoxideAlarm',
  'sensor',
  'hanging',
  'other',
] as const
export type KeptItemKind = (typeof keptItemKinds)[number]

export const keptItemHandlings = ['takeOff', 'coverDaily', 'loosen', 'maskInPlace'] as const
export type KeptItemHandling = (typeof keptItemHandlings)[number]

/** Generic product classes; the shop's list holds classes, never brands. */
export const productClasses = [
  'latexCeiling',
  'latexWall',
  'waterborneEnamel',
  'alkydEnamel',
  'acrylicPrimer',
  'bondingPrimer',
  'oilPrimer',
  'stainBlockingPrimer',
  'shellacPrimer',
  'calcimineSealer',
  'plasterSealer',
  'metalPrimer',
  'radiatorEnamel',
  'liquidDeglosser',
  'dryingFiller',
  'settingFiller',
  'lightFiller',
  'woodFiller',
  'acrylicCaulk',
  'glazingPutty',
  'clearVarnish',
  'cleaner',
  'mildewWash',
  'floorEnamel',
] as const
export type ProductClass = (typeof productClasses)[number]

export const skills = ['preparation', 'painting', 'fineBrush'] as const
export type Skill = (typeof skills)[number]

/** What a plan is looked for. `balanced` takes the job's own money as it is; the others let one thing weigh more. */
export const planAims = ['balanced', 'soonest', 'calmest', 'cheapest'] as const
export type PlanAim = (typeof planAims)[number]

/** Trim, ceiling, walls; ceiling, trim, walls; ceiling, walls, trim. `byProfile` is trim first where it is profiled, else ceiling first. */
export const roomOrders = ['byProfile', 'trimFirst', 'ceilingFirst', 'trimLast'] as const
export type RoomOrder = (typeof roomOrders)[number]
