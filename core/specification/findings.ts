import type { Room } from '../project/sketch-records.ts'
import type { Condition } from '../project/survey-records.ts'
import type { ConditionKind, SurfaceClass } from '../project/vocabulary.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { type Area, areaFromUnits, rectangleArea, squareFeet, sumAreas, zeroArea } from '../units/area.ts'
import { feet, inches, type Length, lengthFromUnits, zeroLength } from '../units/length.ts'
import type { RuleBook } from './rule-book.ts'

/** A condition as it lies on one group of surfaces: its share of the amount, in the one measure that fits its kind. */
export interface Finding {
  readonly condition: Condition
  readonly surfaceKeys: readonly string[]
  readonly length: Length
  readonly area: Area
  readonly count: number
  /** What is to be repaired and primed, overlap included. */
  readonly spotArea: Area
  /** False where nobody measured it and the house's assumption stands. */
  readonly measured: boolean
  /** False for what nobody wrote down: an allowance, whose condition is made up here and stands in no record. */
  readonly noted: boolean
}

type Measure = 'length' | 'area' | 'count'

interface KindFacts {
  /** First measure given wins. */
  readonly measures: readonly Measure[]
  /** What it is found on when it is noted for a whole room. */
  readonly classes: readonly SurfaceClass[]
  /** Not measured means all of the surface. */
  readonly wholeSurface: boolean
}

const broad: readonly SurfaceClass[] = ['ceiling', 'walls']
const wood: readonly SurfaceClass[] = ['wainscot', 'trim', 'doors', 'sash', 'stairs', 'builtWork']
const everything: readonly SurfaceClass[] = [...broad, ...wood, 'radiators']

function kindFacts(
  measures: readonly Measure[],
  classes: readonly SurfaceClass[],
  wholeSurface = false,
): KindFacts {
  return { measures, classes, wholeSurface }
}

const factsByKind: Readonly<Record<ConditionKind, KindFacts>> = {
  dustAndCobwebs: kindFacts(['area'], everything, true),
  loosePaint: kindFacts(['area', 'length'], everything),
  stressCrack: kindFacts(['length'], broad),
  movingCrack: kindFacts(['length'], broad),
  chalking: kindFacts(['area'], broad, true),
  poppedFastener: kindFacts(['count'], broad),
  unsandedPatch: kindFacts(['area', 'count'], broad),
  glossyOldPaint: kindFacts(['area'], everything, true),
  waterStain: kindFacts(['area', 'count'], everything),
  sootOrSmoke: kindFacts(['area'], everything, true),
  nicotine: kindFacts(['area'], everything, true),
  mildew: kindFacts(['area'], everything),
  rust: kindFacts(['area', 'count'], ['radiators']),
  knots: kindFacts(['count', 'area'], wood),
  hole: kindFacts(['area', 'count'], everything),
  loosePlasterKeys: kindFacts(['area'], broad),
  unwantedTexture: kindFacts(['area'], broad, true),
  oldWallpaper: kindFacts(['area'], ['walls'], true),
  newPlaster: kindFacts(['area'], broad, true),
  newSkimCoat: kindFacts(['area'], broad, true),
  bareJointCompound: kindFacts(['area'], broad),
  bareWood: kindFacts(['area'], wood),
  caulkGap: kindFacts(['length', 'count'], ['trim']),
  missingPutty: kindFacts(['length', 'count'], ['sash']),
  paintedShut: kindFacts(['count'], ['sash']),
  grease: kindFacts(['area'], everything, true),
}

/** Whether a condition noted for a whole room is looked for on this class. */
export function foundOnClass(condition: Condition, surfaceClass: SurfaceClass): boolean {
  if (condition.on.level === 'surface') return false
  const { surfaceClass: only } = condition.on
  return only === null ? factsByKind[condition.kind].classes.includes(surfaceClass) : only === surfaceClass
}

/** Whether a finding of this kind that nobody measured means all of its surface. */
export function isOfWholeSurface(kind: ConditionKind): boolean {
  return factsByKind[kind].wholeSurface
}

/** The share of a condition's amounts that falls on one part: the span of the running total, so that parts sum exactly. */
interface Share {
  readonly from: number
  readonly to: number
}
export const wholeShare: Share = { from: 0, to: 1 }

/** A noted finding with the share of its amount that falls on these surfaces. */
export function findingOn(
  condition: Condition,
  surfaces: readonly SurfaceQuantity[],
  share: Share,
  book: RuleBook,
): Finding {
  const amounts = amountsOf(condition, surfaces, share, book)
  return { condition, surfaceKeys: surfaces.map((each) => each.key), noted: true, ...amounts }
}

/** Small damage that is counted on, as a finding: so many places, or so much length of open joint; it stands in no record. */
export function allowanceFinding(
  { group, room, book }: AllowancePlace,
  kind: 'hole' | 'caulkGap' | 'oldWallpaper',
  amount: number,
): Finding {
  const { quantities, surfaceClass, key } = group
  const condition: Condition = {
    id: `allowance-${key}-${kind}` as Condition['id'],
    on: { level: 'room', roomId: room.id, surfaceClass },
    kind,
    severity: 'slight',
    length: null,
    areaMm2: null,
    count: null,
    suspectedCause: '',
    causeCured: true,
    note: '',
    photo: null,
    foundOn: null,
  }
  const surfaceKeys = quantities.map((quantity) => quantity.key)
  const measure = kind === 'caulkGap' ? 'length' : 'count'
  return { condition, surfaceKeys, noted: false, ...inMeasure(measure, amount, true, book) }
}

interface AllowancePlace {
  readonly group: {
    readonly key: string
    readonly surfaceClass: SurfaceClass
    readonly quantities: readonly SurfaceQuantity[]
  }
  readonly room: Room
  readonly book: RuleBook
}

type Amounts = Pick<Finding, 'length' | 'area' | 'count' | 'spotArea' | 'measured'>

function amountsOf(
  condition: Condition,
  surfaces: readonly SurfaceQuantity[],
  share: Share,
  book: RuleBook,
): Amounts {
  const facts = factsByKind[condition.kind]
  for (const measure of facts.measures) {
    const given = givenAmount(condition, measure)
    if (given !== null) return inMeasure(measure, shareOf(given, share), true, book)
  }
  const all = sumAreas(surfaces.map((each) => each.netArea))
  if (facts.wholeSurface) return { ...inMeasure('area', all, true, book) }
  const measure = facts.measures[0] ?? 'area'
  if (condition.kind === 'paintedShut') {
    return inMeasure(
      'count',
      surfaces.reduce((sum, each) => sum + each.count, 0),
      true,
      book,
    )
  }
  return inMeasure(measure, assumedAmount(condition, measure, all, share, book), false, book)
}

function givenAmount(condition: Condition, measure: Measure): number | null {
  switch (measure) {
    case 'length':
      return condition.length
    case 'area':
      return condition.areaMm2 === null ? null : condition.areaMm2 * 10_000
    case 'count':
      return condition.count
  }
}

function shareOf(amount: number, share: Share): number {
  return Math.round(amount * share.to) - Math.round(amount * share.from)
}

function assumedAmount(
  condition: Condition,
  measure: Measure,
  area: number,
  share: Share,
  book: RuleBook,
): number {
  const assumed = book.number('unmeasured', `${measure}-${condition.severity}`)
  switch (measure) {
    case 'length':
      return shareOf(feet(assumed), share)
    case 'area':
      return Math.round((area * assumed) / 100)
    case 'count':
      return shareOf(assumed, share)
  }
}

/** Spots reach over onto sound paint; strips and single spots are as wide as the rule `spot-size` says. */
function inMeasure(measure: Measure, amount: number, measured: boolean, book: RuleBook): Amounts {
  const nothing = { length: zeroLength, area: zeroArea, count: 0, measured }
  const width = inches(book.number('spot-size', 'widthInches'))
  switch (measure) {
    case 'length':
      return { ...nothing, length: lengthFromUnits(amount), spotArea: rectangleArea(amount, width) }
    case 'area':
      return { ...nothing, area: areaFromUnits(amount), spotArea: areaFromUnits(amount) }
    case 'count':
      return { ...nothing, count: amount, spotArea: areaFromUnits(amount * rectangleArea(width, width)) }
  }
}

/** Square feet of a patch counted but not measured; shop assumption, rule `unmeasured`. */
export function patchArea(finding: Finding, book: RuleBook): Area {
  return finding.area > 0
    ? finding.area
    : squareFeet(finding.count * book.number('unmeasured', 'squareFeetPerPatch'))
}
