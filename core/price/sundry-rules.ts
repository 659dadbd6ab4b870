import type { SurfaceClass } from '../project/vocabulary.ts'
import type { Operation, Step } from '../specification/types.ts'
import { toSquareFeet } from '../units/area.ts'
import { toFeet } from '../units/length.ts'

type SundryMeasure = 'length' | 'area' | 'count'

/** What is used up by quantity. Contents, lives and prices are shop assumptions. */
export interface SundryRule {
  readonly key: string
  readonly name: string
  readonly measure: SundryMeasure
  /** Feet, square feet or pieces of work a step uses it for; 0 where it does not. */
  readonly amount: (step: Step) => number
  /** What one of them serves. */
  readonly perPiece: number
  readonly pieceCents: number
}

const broad: readonly (SurfaceClass | null)[] = ['ceiling', 'walls']
const area = (step: Step) => toSquareFeet(step.amounts.area)
const length = (step: Step) => toFeet(step.amounts.length)
const count = (step: Step) => step.amounts.count

/** A quantity of certain operations, `times` over. */
function of(operations: readonly Operation[], quantity: (step: Step) => number, times = 1) {
  return (step: Step) => (operations.includes(step.operation) ? quantity(step) * times : 0)
}

/** Sanding between coats; its key ends in the coat it comes before. */
const isBetweenCoats = (step: Step) => /\/sand\/[2-9]$/.test(step.key)
const putOn: readonly Operation[] = ['prime', 'coat', 'sealChalk', 'sealBare']
const rolled = (step: Step, classes: readonly (SurfaceClass | null)[]) =>
  putOn.includes(step.operation) && classes.includes(step.surfaceClass) ? area(step) : 0

function rule(
  key: string,
  name: string,
  measure: SundryMeasure,
  amount: SundryRule['amount'],
  [perPiece, pieceCents]: readonly [number, number],
): SundryRule {
  return { key, name, measure, amount, perPiece, pieceCents }
}

export const sundryRules: readonly SundryRule[] = [
  rule('tape', 'Masking tape, roll of 180 ft', 'length', of(['maskOff'], length), [180, 700]),
  rule(
    'mesh',
    'Mesh or paper tape for cracks, roll of 300 ft',
    'length',
    of(['tapeCrack'], length),
    [300, 900],
  ),
  rule('screws', 'Drywall screws, box of 100', 'count', of(['driveFastener'], count, 2), [100, 800]),
  // About four washers hold a square foot of loose plaster.
  rule(
    'washers',
    'Plaster washers with screws, pack of 100',
    'count',
    of(['reattachPlaster'], area, 4),
    [100, 2500],
  ),
  rule('remover', 'Wallpaper remover, gallon', 'area', of(['stripWallpaper'], area), [600, 2200]),
  rule(
    'abrasive80',
    'Sandpaper sheet, 80 grit',
    'area',
    of(['scrape', 'sandPatch', 'treatRust'], area),
    [40, 120],
  ),
  rule(
    'abrasive120',
    'Sandpaper sheet, 120 grit',
    'area',
    (step) => (isBetweenCoats(step) ? 0 : of(['sand', 'sandFill'], area)(step)),
    [80, 120],
  ),
  rule(
    'abrasive220',
    'Sandpaper sheet, 220 grit',
    'area',
    (step) => (isBetweenCoats(step) ? area(step) : 0),
    [150, 120],
  ),
  rule('sleeves', 'Roller cover, 9 in, 3/8 in nap', 'area', (step) => rolled(step, broad), [2000, 600]),
  rule(
    'smallSleeves',
    'Roller cover, 4 in, 1/4 in nap',
    'area',
    (step) => rolled(step, ['doors', 'wainscot', 'builtWork']),
    [400, 350],
  ),
  rule(
    'brushes',
    'Angled brush, 2 1/2 in',
    'length',
    of(putOn, (step) => toFeet(step.amounts.cuttingIn)),
    [3000, 1600],
  ),
  rule(
    'trimBrushes',
    'Flat brush, 2 in',
    'length',
    (step) => (step.surfaceClass === 'trim' ? of(putOn, length)(step) : 0),
    [2000, 1400],
  ),
  rule(
    'sashBrushes',
    'Angled brush, 1 1/2 in',
    'length',
    of(putOn, (step) => toFeet(step.amounts.glassPerimeter)),
    [1500, 1200],
  ),
  rule(
    'covering',
    'Floor protection, per room',
    'count',
    of(['protectRoom'], () => 1),
    [1, 1400],
  ),
  rule('bags', 'Bag and label for what comes off', 'count', of(['takeOff'], count), [1, 15]),
  ...leadRules(),
]

/** What lead-safe work uses up besides. A door or a duct takes about 25 sq ft of sheeting. */
function leadRules(): readonly SundryRule[] {
  const sheeted = (step: Step) => of(['sheetFloor'], area)(step) + of(['sealOpenings'], count, 25)(step)
  return [
    rule('sheeting', 'Plastic sheeting 6 mil, roll of 1,000 sq ft', 'area', sheeted, [1000, 6500]),
    rule('sheetingTape', 'Sheeting tape, roll', 'count', of(['sealOpenings'], count), [6, 900]),
    rule('signs', 'Warning sign', 'count', of(['postSigns'], count), [4, 300]),
    rule('wasteBags', 'Waste bags 6 mil, box of 20', 'count', of(['bagSheeting'], count), [20, 2400]),
    rule('filters', 'HEPA filter for the vacuum', 'area', of(['cleanFinal'], area), [1500, 6000]),
    rule(
      'suits',
      'Disposable coveralls with shoe covers',
      'count',
      of(['sheetFloor'], () => 2),
      [1, 900],
    ),
    rule('cloths', 'Wiping cloths, pack of 80', 'count', of(['wipeCheck'], count), [80, 900]),
  ]
}
