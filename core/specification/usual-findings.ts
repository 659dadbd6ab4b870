import type { Condition } from '../project/survey-records.ts'
import type { ConditionKind, SurfaceClass } from '../project/vocabulary.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { rectangleArea } from '../units/area.ts'
import { feet, type LengthUnitSystem, lengthFromUnits, millimetres } from '../units/length.ts'

/** A finding to begin with: how much of it is written down until somebody measures. `all` is the whole surface. */
export interface UsualFinding {
  readonly kind: ConditionKind
  readonly measure: 'feet' | 'squareFeet' | 'count' | 'all'
  readonly amount: number
}

const run = (kind: ConditionKind, amount: number): UsualFinding => ({ kind, measure: 'feet', amount })
const spot = (kind: ConditionKind, amount: number): UsualFinding => ({ kind, measure: 'squareFeet', amount })
const each = (kind: ConditionKind, amount: number): UsualFinding => ({ kind, measure: 'count', amount })
const all = (kind: ConditionKind): UsualFinding => ({ kind, measure: 'all', amount: 0 })

/** Plaster and oil paint until 1950; board with sprayed textures until 1986; board and water-borne paint since. Common practice, from memory. */
type Era = 'plaster' | 'board' | 'recent'

const paintedWood = [
  spot('loosePaint', 2),
  all('glossyOldPaint'),
  each('hole', 4),
  spot('bareWood', 1),
  each('knots', 3),
  all('grease'),
]

/** The six that are usual on a class of surface, the most frequent first. Kinds: common practice, from memory. Amounts: shop assumption. */
const usual: Readonly<Record<SurfaceClass, Readonly<Record<Era, readonly UsualFinding[]>>>> = {
  ceiling: {
    plaster: [
      run('stressCrack', 8),
      spot('loosePaint', 6),
      all('chalking'),
      spot('waterStain', 4),
      spot('loosePlasterKeys', 6),
      run('movingCrack', 6),
    ],
    board: [
      run('stressCrack', 6),
      each('poppedFastener', 6),
      spot('waterStain', 4),
      all('unwantedTexture'),
      spot('unsandedPatch', 4),
      all('nicotine'),
    ],
    recent: [
      each('poppedFastener', 6),
      run('stressCrack', 4),
      spot('waterStain', 4),
      spot('unsandedPatch', 4),
      spot('mildew', 4),
      spot('bareJointCompound', 4),
    ],
  },
  walls: {
    plaster: [
      run('stressCrack', 6),
      spot('loosePaint', 4),
      each('hole', 2),
      all('oldWallpaper'),
      spot('unsandedPatch', 3),
      run('movingCrack', 4),
    ],
    board: [
      each('hole', 3),
      each('poppedFastener', 6),
      run('stressCrack', 4),
      spot('unsandedPatch', 3),
      all('oldWallpaper'),
      all('grease'),
    ],
    recent: [
      each('hole', 3),
      each('poppedFastener', 6),
      spot('unsandedPatch', 3),
      run('stressCrack', 4),
      spot('bareJointCompound', 4),
      all('grease'),
    ],
  },
  wainscot: { plaster: paintedWood, board: paintedWood, recent: paintedWood },
  trim: {
    plaster: [
      run('caulkGap', 10),
      spot('loosePaint', 1),
      all('glossyOldPaint'),
      each('hole', 4),
      spot('bareWood', 1),
      each('knots', 3),
    ],
    board: [
      run('caulkGap', 10),
      all('glossyOldPaint'),
      each('hole', 4),
      spot('loosePaint', 1),
      each('knots', 3),
      all('grease'),
    ],
    recent: [
      run('caulkGap', 10),
      each('hole', 4),
      spot('bareWood', 1),
      each('knots', 3),
      spot('loosePaint', 1),
      all('grease'),
    ],
  },
  doors: { plaster: paintedWood, board: paintedWood, recent: paintedWood },
  sash: {
    plaster: [
      run('missingPutty', 3),
      each('paintedShut', 1),
      spot('loosePaint', 1),
      all('glossyOldPaint'),
      spot('bareWood', 1),
      spot('mildew', 1),
    ],
    board: [
      spot('loosePaint', 1),
      each('paintedShut', 1),
      run('missingPutty', 2),
      spot('mildew', 1),
      spot('bareWood', 1),
      all('glossyOldPaint'),
    ],
    recent: [
      spot('mildew', 1),
      spot('bareWood', 1),
      spot('loosePaint', 1),
      each('hole', 2),
      each('paintedShut', 1),
      all('dustAndCobwebs'),
    ],
  },
  stairs: { plaster: paintedWood, board: paintedWood, recent: paintedWood },
  radiators: {
    plaster: [
      spot('rust', 1),
      spot('loosePaint', 1),
      all('dustAndCobwebs'),
      all('glossyOldPaint'),
      all('sootOrSmoke'),
      all('grease'),
    ],
    board: [
      spot('rust', 1),
      all('dustAndCobwebs'),
      spot('loosePaint', 1),
      all('glossyOldPaint'),
      all('grease'),
      all('nicotine'),
    ],
    recent: [
      all('dustAndCobwebs'),
      spot('rust', 1),
      spot('loosePaint', 1),
      all('glossyOldPaint'),
      all('grease'),
      all('nicotine'),
    ],
  },
  builtWork: { plaster: paintedWood, board: paintedWood, recent: paintedWood },
}

/** The six findings that are usual on a class of surface in a house of that year; null counts as old. Common practice, from memory. */
export function usualFindings(yearBuilt: number | null, surfaceClass: SurfaceClass): readonly UsualFinding[] {
  const year = yearBuilt ?? 0
  return usual[surfaceClass][year < 1950 ? 'plaster' : year < 1986 ? 'board' : 'recent']
}

type Amounts = Pick<Condition, 'length' | 'areaMm2' | 'count'>

/**
 * The amounts a usual finding is written down with, no more than its surface has; none for `all`. Where meters are read, a foot
 * counts as 0.3 m and a square foot as 0.1 m², so that the figure is round.
 */
export function usualAmounts(
  { measure, amount }: UsualFinding,
  surface: Pick<SurfaceQuantity, 'netArea' | 'length'>,
  system: LengthUnitSystem,
): Amounts {
  const none: Amounts = { length: null, areaMm2: null, count: null }
  switch (measure) {
    case 'feet': {
      const most = surface.length > 0 ? surface.length : Number.POSITIVE_INFINITY
      const wanted = system === 'imperial' ? feet(amount) : millimetres(amount * 300)
      return { ...none, length: lengthFromUnits(Math.min(wanted, most)) }
    }
    case 'squareFeet': {
      const wanted = system === 'imperial' ? rectangleArea(feet(amount), feet(1)) / 10_000 : amount * 100_000
      return { ...none, areaMm2: Math.min(wanted, surface.netArea / 10_000) }
    }
    case 'count':
      return { ...none, count: amount }
    case 'all':
      return none
  }
}
