import type { Rate, RateBasis } from '../project/shop-records.ts'
import { rateIdSchema } from '../project/shop-records.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import type { Operation, WoodworkKind } from '../specification/types.ts'

/** Parts of a step that are counted besides its main quantity. */
const addedRateNames = [
  'cutIn',
  'glassEdge',
  'fillPatches',
  'fillHoles',
  'sandFillPatches',
  'sandFillHoles',
  'caulkSpots',
  'scrapeEdges',
  'leadPapers',
] as const
export type AddedRateName = (typeof addedRateNames)[number]

/** A rate is named after its operation; `coat-trim` stands before `coat` on trim, and `coat-crown` before both on a crown. */
type RateName = Operation | AddedRateName | `${Operation | AddedRateName}-${SurfaceClass | WoodworkKind}`

const assumption = 'shop assumption, learn from progress'
/**
 * Seen: washing off soft distemper with cutting out and making good, 6 sq yd per person-hour, a British trade article of the
 * mid-20th century ("Estimating for Interior Painting and Decorating"). Six square yards are 54 sq ft.
 */
const washingOff =
  'UK trade article "Estimating for Interior Painting and Decorating", undated: 6 sq yd per person-hour, with cutting out and making good'

function rate(name: RateName, basis: RateBasis, perHour: number, source = assumption): Rate {
  return { id: rateIdSchema.parse(name), basis, perHour, source }
}

/**
 * What one person does in an hour: square feet of equivalent area (of floor, where a step is on the room as a whole), feet, or
 * pieces; `each` is once per step.
 * What could be read is in `rates.md` beside our figures; it covers little of today's interior repaint, so all but one are labelled
 * assumptions the shop replaces; `suggestRates` offers the shop's own figures as soon as steps are marked done with their minutes.
 */
export const defaultRates: readonly Rate[] = [
  rate('protectRoom', 'area', 180),
  rate('postSigns', 'each', 4),
  rate('sheetFloor', 'area', 240),
  rate('sealOpenings', 'count', 6),
  rate('takeOff', 'count', 15),
  rate('loosenHanging', 'count', 12),
  rate('coverAlarm', 'count', 20),
  rate('dustDown', 'area', 1500),
  rate('wash', 'area', 200),
  rate('washMildew', 'area', 100),
  rate('scrape', 'area', 30),
  rate('scrapeEdges', 'length', 40),
  rate('stripWallpaper', 'area', 40),
  rate('washOffSize', 'area', 120),
  rate('washOffCalcimine', 'area', 54, washingOff),
  rate('openCrack', 'length', 40),
  rate('driveFastener', 'count', 40),
  rate('reattachPlaster', 'area', 12),
  rate('sealChalk', 'area', 180),
  rate('sealBare', 'area', 150),
  rate('blockStain', 'area', 60),
  rate('spotPrime', 'area', 80),
  rate('dampCrack', 'length', 300),
  rate('fill', 'length', 60),
  rate('tapeCrack', 'length', 60),
  rate('fillPatches', 'area', 40),
  rate('fillHoles', 'count', 40),
  rate('fillSmall', 'count', 30),
  rate('skim', 'area', 60),
  rate('puttySash', 'length', 20),
  rate('freeSash', 'count', 3),
  rate('caulk', 'length', 90),
  rate('caulkSpots', 'count', 30),
  rate('treatRust', 'area', 30),
  rate('sandPatch', 'area', 40),
  rate('sandFill', 'length', 120),
  rate('sandFillPatches', 'area', 60),
  rate('sandFillHoles', 'count', 80),
  rate('sand', 'area', 240),
  rate('sand-trim', 'area', 60),
  rate('sand-doors', 'area', 70),
  rate('sand-sash', 'area', 60),
  rate('sand-stairs', 'area', 50),
  rate('sand-radiators', 'area', 50),
  rate('sand-builtWork', 'area', 60),
  rate('vacuum', 'area', 900),
  rate('dustOff', 'area', 1500),
  rate('dustOff-trim', 'area', 400),
  rate('dustOff-sash', 'area', 400),
  rate('degloss', 'area', 90),
  rate('prime', 'area', 220),
  rate('prime-trim', 'area', 60),
  rate('prime-doors', 'area', 70),
  rate('prime-sash', 'area', 110),
  rate('prime-wainscot', 'area', 100),
  rate('prime-stairs', 'area', 60),
  rate('prime-radiators', 'area', 40),
  rate('prime-builtWork', 'area', 60),
  rate('coat', 'area', 200),
  rate('coat-trim', 'area', 50),
  rate('coat-doors', 'area', 60),
  rate('coat-sash', 'area', 100),
  rate('coat-wainscot', 'area', 90),
  rate('coat-stairs', 'area', 50),
  rate('coat-radiators', 'area', 35),
  rate('coat-builtWork', 'area', 50),
  rate('cutIn', 'length', 120),
  rate('cutIn-trim', 'length', 240),
  rate('cutIn-doors', 'length', 240),
  rate('cutIn-sash', 'length', 240),
  rate('glassEdge', 'length', 60),
  rate('maskOff', 'length', 150),
  rate('unmask', 'length', 400),
  rate('easeSash', 'count', 20),
  rate('scrapeGlass', 'length', 180),
  rate('cleanDaily', 'area', 480),
  rate('bagSheeting', 'count', 6),
  rate('cleanFinal', 'area', 150),
  rate('wipeCheck', 'count', 20),
  rate('touchUp', 'area', 30),
  rate('leadPapers', 'each', 1),
  rate('restoreAlarm', 'count', 30),
  rate('refitHanging', 'count', 12),
  rate('putBack', 'count', 12),
  rate('cleanUp', 'area', 240),
  rate('inspect', 'each', 6),
]

const defaultsById: ReadonlyMap<string, Rate> = new Map(defaultRates.map((each) => [each.id, each]))

/** The shop's first rate of an operation; undefined for a name that has none. */
export function defaultRate(name: string): Rate | undefined {
  return defaultsById.get(name)
}
