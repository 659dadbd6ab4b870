import { washOperations } from '../operation-facts.ts'
import { commonPractice, type HouseRule, shopAssumption } from '../rule.ts'
import type { OrderStatement, Selector } from '../rule-facts.ts'
import { coatOrdinals, number, orderBecause } from '../step-requests.ts'

/**
 * The order of work on one surface: what stands earlier ends before what stands later starts. Stages without a step of their own
 * are passed over. Within a stage nothing is said.
 */
interface Stage {
  readonly does: readonly Selector[]
  /** Why it comes before everything after it. */
  readonly reason: string
}

/** A finish coat, and before a later one what is done between two coats. */
function coatStages(ordinal: string): readonly Stage[] {
  const coat: Stage = { does: [`coat/${ordinal}`], reason: 'A coat is dry before the next one.' }
  if (ordinal === '1') return [coat]
  return [
    { does: [`sand/${ordinal}`], reason: 'Sanding comes between the coats.' },
    { does: [`dustOff/${ordinal}`], reason: 'A coat over dust is a defect.' },
    coat,
  ]
}

const craftStages: readonly Stage[] = [
  { does: ['freeSash'], reason: 'What does not move is freed before it is worked on.' },
  { does: washOperations, reason: 'Dirt, paper and size come off first: dry work would drive them in.' },
  { does: ['reattachPlaster', 'driveFastener'], reason: 'The surface is made fast before it is worked on.' },
  {
    does: ['scrape', 'openCrack', 'treatRust'],
    reason: 'Rough work comes before fine: it would spoil it.',
  },
  { does: ['sand/1'], reason: 'The old coat is dulled before anything new goes on it.' },
  { does: ['vacuum/1'], reason: 'Chips and dust are cleared before anything is put on.' },
  { does: ['sealChalk', 'sealBare'], reason: 'A surface that does not hold is sealed before it is filled.' },
  { does: ['dampCrack'], reason: 'Dry plaster sucks the water out of filler: the crack is dampened first.' },
  { does: ['fill'], reason: 'Places are filled before what covers them.' },
  { does: ['skim'], reason: 'The skim is on before it is sanded and primed.' },
  {
    does: ['sandFill', 'sandPatch'],
    reason:
      'Filler and old patches are sanded together before they are primed: no coat goes on unsanded filler.',
  },
  { does: ['dustOff/0'], reason: 'Dust is off before the primer.' },
  { does: ['blockStain'], reason: 'Stains are blocked before they are covered.' },
  { does: ['spotPrime'], reason: 'Bare and patched spots are primed before what covers the whole.' },
  { does: ['puttySash'], reason: 'Putty has skinned before it is primed and painted with the sash.' },
  { does: ['degloss/1'], reason: 'The deglosser comes right before the coat it prepares for.' },
  { does: ['prime'], reason: 'The primer is on and dry before the finish.' },
  { does: ['caulk'], reason: 'Gaps are closed and set before they are painted.' },
  { does: ['dustOff/1'], reason: 'A coat over dust is a defect.' },
  { does: ['degloss/2'], reason: 'The deglosser comes right before the coat it prepares for.' },
  ...coatOrdinals.flatMap(coatStages),
  { does: ['unmask'], reason: 'The tape comes off last.' },
]

/** From filling to priming: gaps lie along the edges, and caulking them waits for none of it. */
const fillingToPriming = craftStages.slice(stageOf('dampCrack'), stageOf('prime') + 1)

function stageOf(selector: Selector): number {
  return craftStages.findIndex(({ does }) => does.includes(selector))
}

/** Whether gaps are caulked before or after a full primer is left to the two rules that disagree about it. */
function craftOrder(): readonly OrderStatement[] {
  return craftStages.slice(0, -1).map((stage, index) => ({
    before: stage.does,
    after: craftStages
      .slice(index + 1)
      .flatMap((later) => later.does)
      .filter((selector) => selector !== 'caulk' || !fillingToPriming.includes(stage)),
    reason: stage.reason,
    special: false,
  }))
}

const craft: HouseRule = {
  id: 'craft-order',
  level: 'house',
  theme: 'order',
  title: 'Order of work on a surface',
  found: 'Every surface.',
  reason:
    'Clean, make fast, scrape, sand, seal, fill, sand, dust off, prime, coat: each prepares for the next.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  order: craftOrder(),
}

const caulkAfterPrimer: HouseRule = {
  id: 'caulk-after-primer',
  level: 'house',
  theme: 'order',
  title: 'Caulk after the primer',
  found: 'Gaps along trim that is primed.',
  reason: 'Caulk holds better on primer, and primed gaps are easier to see.',
  source: commonPractice,
  safety: 'none',
  on: false,
  numbers: {},
  order: [
    orderBecause(['prime'], ['caulk'], 'Caulk holds better on primer, and primed gaps are easier to see.'),
  ],
}

/** On by default: repainted trim has a coat that caulk holds on, and gaps closed with the filling need no visit of their own. */
const caulkBeforePrimer: HouseRule = {
  id: 'caulk-before-primer',
  level: 'house',
  theme: 'order',
  title: 'Caulk before the primer',
  found: 'Gaps along trim that is primed.',
  reason: 'On a clean and dulled old coat caulk holds; primed over, it takes the finish as the wood does.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {},
  order: [orderBecause(['caulk'], ['prime'], 'Primed over, the caulk takes the finish as the wood does.')],
}

const noOrder: readonly OrderStatement[] = []

/** Its edges are made per room by `room-order.ts`; the switch and the reason are kept here. */
const roomOrder: HouseRule = {
  id: 'room-order',
  level: 'house',
  theme: 'order',
  title: 'Order inside a room',
  found: 'Every room; the order itself is chosen in the house rules and per room.',
  reason:
    'With a crown or profiled trim: trim, ceiling, walls, so that walls and ceiling are cut to finished trim. Otherwise ceiling, trim, walls. A shop that wants the trim last chooses so. Stairs come last; radiators dry beside everything.',
  source: 'sources disagree (trim first, trim last and ceiling first are all printed); shop choice',
  safety: 'none',
  on: true,
  numbers: {
    trimHoldHours: number(
      0,
      'hours',
      'Extra wait after the last coat of trim before it is cut or masked against',
      'one source: at least 24 h where trim is masked; otherwise the recoat time of the paint',
    ),
  },
  order: noOrder,
}

const spotSize: HouseRule = {
  id: 'spot-size',
  level: 'house',
  theme: 'paint',
  title: 'Size of a spot',
  found: 'Repairs measured by length or count.',
  reason: 'A repair is primed an inch over onto sound paint on each side.',
  source: 'overlap 1 in: MIL-HDBK-1110 s. 4.4; width of the repair: shop assumption',
  safety: 'none',
  on: true,
  numbers: {
    widthInches: number(
      4,
      'in',
      'Width of a strip along a crack, and of a single spot',
      'MIL-HDBK-1110 s. 4.4 (1 in each side) and 2 in of repair (shop assumption)',
    ),
  },
  order: noOrder,
}

const spotOrFull: HouseRule = {
  id: 'spot-or-full',
  level: 'house',
  theme: 'paint',
  title: 'Spots or the whole surface',
  found: 'Repairs that cover much of a surface.',
  reason: 'From some share on, priming all of it is quicker and more even than spots.',
  source:
    'MPI degree of surface degradation: moderate is spot-primed, severe and widespread is fully primed; share: shop assumption',
  safety: 'none',
  on: true,
  numbers: {
    percent: number(30, '% of the surface', 'From here the whole surface is primed'),
    wallPercent: number(15, '% of one wall', 'From here a single patch primes the whole of its wall'),
  },
  order: noOrder,
}

/** Read where primers are chosen (`group-plan.ts`); metal keeps its own primer, which stands heat and rust. */
const quickSpots: HouseRule = {
  id: 'quick-spots',
  level: 'house',
  theme: 'paint',
  title: 'Spots with a quick primer',
  found: 'Bare or patched spots whose usual primer holds the surface for long.',
  reason:
    'A few spots must not keep a whole window or door waiting overnight: where a quicker primer does the same, it is taken.',
  source: commonPractice,
  safety: 'fumes',
  on: true,
  numbers: {
    hours: number(
      4,
      'hours',
      'Longest wait after priming spots, where a primer in stock allows it',
      shopAssumption,
    ),
  },
  order: noOrder,
}

const severityNumbers = {
  'length-slight': number(3, 'ft', 'Crack or gap, slight'),
  'length-moderate': number(10, 'ft', 'Crack or gap, moderate'),
  'length-severe': number(25, 'ft', 'Crack or gap, severe'),
  'area-slight': number(2, '% of the surface', 'Area, slight'),
  'area-moderate': number(10, '% of the surface', 'Area, moderate'),
  'area-severe': number(40, '% of the surface', 'Area, severe'),
  'count-slight': number(3, 'pieces', 'Count, slight'),
  'count-moderate': number(8, 'pieces', 'Count, moderate'),
  'count-severe': number(20, 'pieces', 'Count, severe'),
  squareFeetPerPatch: number(1, 'sq ft', 'A patch counted but not measured'),
}

const unmeasured: HouseRule = {
  id: 'unmeasured',
  level: 'house',
  theme: 'difficulty',
  title: 'Amounts nobody measured',
  found: 'A finding written down without length, area or count.',
  reason: 'Until it is measured an amount is assumed by how bad it is.',
  source: shopAssumption,
  safety: 'none',
  on: true,
  numbers: severityNumbers,
  order: noOrder,
}

const difficultyRule: HouseRule = {
  id: 'difficulty',
  level: 'house',
  theme: 'difficulty',
  title: 'Difficulty',
  found: 'Work overhead, on stairs, on upper floors, around people.',
  reason:
    'The same quantity takes longer off a ladder, on a stair, upstairs and around a family. Climbing counts for what is out of reach: the crown and not the base, of a wall what lies above.',
  source:
    'climbing + 20%: UK trade article; upper stories + 5% each: "Measuring Painter\'s Work" (19th century); the rest: shop assumption',
  safety: 'height',
  on: true,
  numbers: {
    reachFeet: number(9, 'ft', 'Reach above which somebody climbs'),
    climbingPercent: number(
      20,
      '%',
      'Addition for climbing',
      'UK trade article "Estimating for Interior Painting and Decorating"',
    ),
    stairPercent: number(20, '%', 'Addition for broad work over stairs', shopAssumption),
    storeyPercent: number(
      5,
      '%',
      'Addition for each floor above the first',
      '"Measuring Painter\'s Work" (19th century): + 5% per story of 12 ft or less',
    ),
    occupiedPercent: number(10, '%', 'Addition in a lived-in house', shopAssumption),
    texturePercent: number(15, '%', 'Addition for coating a texture', shopAssumption),
  },
  order: noOrder,
}

const wetEdge: HouseRule = {
  id: 'wet-edge',
  level: 'house',
  theme: 'order',
  title: 'Keep a wet edge',
  found: 'Ceilings; anything else stops at a corner.',
  reason: 'A ceiling left half done shows the lap: it is coated in one go.',
  source: commonPractice,
  safety: 'none',
  on: true,
  numbers: {
    squareFeet: number(
      400,
      'sq ft',
      'Largest ceiling one person keeps wet; a larger one may pause over a break',
    ),
    squareFeetOfDay: number(
      1600,
      'sq ft',
      'Largest ceiling coated within a day; a larger one is parted overnight along a straight line',
    ),
  },
  order: noOrder,
}

export const orderRules = [craft, caulkAfterPrimer, caulkBeforePrimer, roomOrder, wetEdge] as const
export const amountRules = [spotSize, spotOrFull, quickSpots, unmeasured, difficultyRule] as const
