import type {
  ConditionKind,
  ExistingCoat,
  ProductClass,
  Severity,
  Sheen,
  Substrate,
} from '../project/vocabulary.ts'

/**
 * Explanations are common practice from memory, except the wipe test and the age of calcimine (old-house painting pages), the gloss
 * levels (MPI table) and the warning on textures (US EPA public text). Ages of houses and coats are rules of thumb.
 */

/** What a word of a closed list means, and how to tell that it is what one looks at. */
export interface GlossaryEntry {
  readonly word: string
  readonly meaning: string
  readonly recognise: string
}

function entry(word: string, meaning: string, recognise: string): GlossaryEntry {
  return { word, meaning, recognise }
}

export const substrateGlossary: Readonly<Record<Substrate, GlossaryEntry>> = {
  plaster: entry(
    'Plaster',
    'Lime or gypsum plaster on lath, usual in houses before about 1950.',
    'Hard and cold, sounds dull, a screwdriver turns on it; cracks run in lines and maps, not straight along joints.',
  ),
  gypsumBoard: entry(
    'Gypsum board',
    'Paper-faced board with taped joints.',
    'Sounds hollow between studs; a pin goes in; straight joints and round fastener heads show under a raking light.',
  ),
  wood: entry(
    'Wood',
    'Trim, doors, sash, stairs, paneling.',
    'Grain, joints and nail heads; warm to the hand.',
  ),
  metal: entry(
    'Metal',
    'Radiators, pipes, railings, steel doors.',
    'Cold; a magnet holds on iron and steel.',
  ),
  masonry: entry(
    'Masonry',
    'Brick, block, stone or concrete.',
    'Rough and cold, joints show; white salts mean that damp comes through.',
  ),
}

export const coatGlossary: Readonly<Record<ExistingCoat, GlossaryEntry>> = {
  bare: entry('Bare', 'Never coated, or stripped.', 'A drop of water darkens it and soaks in.'),
  latexFlat: entry(
    'Flat latex',
    'Water-borne paint without gloss.',
    'Solvent rub: alcohol on a white rag softens it and takes color off within a minute.',
  ),
  latexGlossy: entry(
    'Glossy latex',
    'Water-borne paint from satin to gloss.',
    'Shines under a raking light; alcohol on a rag still softens it.',
  ),
  oilPaint: entry(
    'Oil or alkyd paint',
    'Solvent-borne paint, usual on trim until about 1990.',
    'Solvent rub: alcohol on a rag does not soften it; hard, often yellowed, brittle when scraped.',
  ),
  calcimine: entry(
    'Calcimine (distemper)',
    'Chalk bound with animal glue, mainly on ceilings of houses before the 1940s.',
    'Wipe test: a warm damp sponge held about 10 seconds softens it and comes away white; the back of a peeled chip is chalky.',
  ),
  varnish: entry(
    'Varnish',
    'Clear oil or resin coat on wood.',
    'The grain shows; neither alcohol nor water softens it.',
  ),
  shellac: entry(
    'Shellac',
    'Clear or orange coat of resin in alcohol, on old trim and floors.',
    'Alcohol makes it sticky within a minute; water leaves white marks.',
  ),
  wallpaper: entry(
    'Wallpaper',
    'Paper or vinyl, perhaps painted over.',
    'Seams and edges show under a raking light; a corner lifts with a blade.',
  ),
  unknown: entry(
    'Not known',
    'Nobody has tested it; it is treated as the worst likely.',
    'Wipe test with a damp sponge, then a solvent rub with alcohol; note what comes of it.',
  ),
}

export const conditionGlossary: Readonly<Record<ConditionKind, GlossaryEntry>> = {
  dustAndCobwebs: entry(
    'Dust and cobwebs',
    'Loose dirt on the surface.',
    'Raking light: hold a lamp flat along the wall.',
  ),
  loosePaint: entry(
    'Loose or peeling paint',
    'A coat that has let go of what is under it.',
    'It lifts under a scraper, or tape pressed on and pulled takes it off.',
  ),
  stressCrack: entry(
    'Crack at rest',
    'A crack that has stopped moving.',
    'Edges flat and level, no fresh dust in it; a pencil line across it stays whole.',
  ),
  movingCrack: entry(
    'Crack that moves',
    'A crack that opens and closes.',
    'Edges curled up or offset, filled before and open again; wider in winter.',
  ),
  chalking: entry(
    'Chalking',
    'The coat turns to powder, or is calcimine.',
    'A dark cloth comes away white; make the wipe test with a damp sponge.',
  ),
  poppedFastener: entry(
    'Popped fastener',
    'A nail or screw head that has lifted the surface.',
    'A round bump or crack ring; the board gives when pressed beside it.',
  ),
  unsandedPatch: entry(
    'Patch never sanded',
    'An old repair painted over as it was.',
    'Proud edges and knife marks under a raking light.',
  ),
  glossyOldPaint: entry(
    'Glossy old paint',
    'A hard shiny coat.',
    'A fingernail slides on it; it mirrors a lamp.',
  ),
  waterStain: entry(
    'Water stain',
    'Brown salts left by a leak.',
    'Yellow or brown ring; feel whether it is still cold or damp.',
  ),
  sootOrSmoke: entry(
    'Soot or smoke',
    'Gray or black film from fire and candles.',
    'Smears under a dry finger; worst over fireplaces and registers.',
  ),
  nicotine: entry(
    'Nicotine',
    'Yellow film from smoking.',
    'A wet white cloth comes away yellow; drips run brown.',
  ),
  mildew: entry(
    'Mildew',
    'Fungus that lives on damp surfaces.',
    'Gray or black specks; a drop of bleach lightens them, dirt stays dark.',
  ),
  rust: entry(
    'Rust',
    'Corroding iron under or through the coat.',
    'Brown stain, scale or blisters on radiators, pipes, fastener heads.',
  ),
  knots: entry('Knots', 'Resin that bleeds through paint.', 'Round yellow or brown spots in pine trim.'),
  hole: entry(
    'Hole or dent',
    'Missing material.',
    'A hand lamp along the wall shows dents that daylight hides.',
  ),
  loosePlasterKeys: entry(
    'Loose plaster keys',
    'Plaster that has broken away from its lath and hangs by itself.',
    'It gives under the flat hand or sounds hollow; press a screwdriver handle beside the crack: it moves.',
  ),
  unwantedTexture: entry(
    'Texture to be made smooth',
    'Sand, stipple or sprayed texture that is to go.',
    'Feel and raking light; before 1980 it may hold asbestos: do not scrape it to find out.',
  ),
  oldWallpaper: entry(
    'Old wallpaper',
    'Paper on the wall, perhaps under paint.',
    'Straight seams under a raking light; hollow bubbles.',
  ),
  newPlaster: entry(
    'New plaster',
    'Plaster not yet cured.',
    'Dark patches are still damp; light and even all over when cured.',
  ),
  newSkimCoat: entry(
    'New skim coat',
    'A thin coat of compound over a wall, not yet primed.',
    'White, smooth, powders under a finger.',
  ),
  bareJointCompound: entry(
    'Bare joint compound',
    'Taped or filled places without primer.',
    'White bands and spots that drink water.',
  ),
  bareWood: entry('Bare wood', 'Wood worn or stripped of its coat.', 'A drop of water darkens it.'),
  caulkGap: entry(
    'Open gap',
    'An open line between trim and wall or in a miter.',
    'A shadow line; a card goes in.',
  ),
  missingPutty: entry(
    'Missing putty',
    'Putty gone from the edge of the glass.',
    'Glass rattles; bare wood shows in the rabbet.',
  ),
  paintedShut: entry(
    'Painted shut',
    'Sash held by paint across its edges.',
    'It does not move; the paint is unbroken over the joint.',
  ),
  grease: entry(
    'Grease and hand marks',
    'Grease from cooking and hands.',
    'Water beads on it; dark round handles and over stoves.',
  ),
}

export const severityGlossary: Readonly<Record<Severity, GlossaryEntry>> = {
  slight: entry('Slight', 'Here and there; nothing more will come loose.', 'Looked for, it is found.'),
  moderate: entry('Moderate', 'Plain to see; the material under it shows in places.', 'Seen from the door.'),
  severe: entry('Severe', 'Widespread, or the surface itself gives.', 'It is the first thing anybody sees.'),
}

/** Gloss levels by the MPI table: units at 60 degrees, then at 85. */
export const sheenGlossary: Readonly<Record<Sheen, GlossaryEntry>> = {
  flat: entry(
    'Flat',
    'Gloss level 1: at most 5 units at 60 degrees, 10 at 85.',
    'No shine from any side; hides patches best, marks easily.',
  ),
  matte: entry(
    'Matte',
    'Gloss level 2: at most 10 at 60, 10 to 35 at 85.',
    'A little shine when looked along.',
  ),
  eggshell: entry(
    'Eggshell',
    'Gloss level 3: 10 to 25 at 60, 10 to 35 at 85.',
    'Soft shine along the wall; shows patches from here up.',
  ),
  satin: entry(
    'Satin',
    'Gloss level 4: 20 to 35 at 60, 35 and over at 85.',
    'Shine from an angle; washes well.',
  ),
  semiGloss: entry(
    'Semi-gloss',
    'Gloss level 5: 35 to 70 at 60.',
    'A lamp shows blurred in it; usual on trim.',
  ),
  gloss: entry('Gloss', 'Gloss level 6: 70 to 85 at 60.', 'A lamp shows clear in it.'),
  highGloss: entry('High gloss', 'Gloss level 7: over 85 at 60.', 'Like a mirror; shows every flaw.'),
}

export const productClassGlossary: Readonly<Record<ProductClass, string>> = {
  latexCeiling: 'Flat water-borne paint for ceilings: hides in one or two coats, spatters little.',
  latexWall: 'Water-borne wall paint, flat to satin.',
  waterborneEnamel: 'Hard water-borne paint for trim and doors: quick, does not yellow.',
  alkydEnamel: 'Solvent-borne enamel: flows well, dries overnight, yellows indoors.',
  acrylicPrimer: 'Water-borne primer for patches, compound and flat old paint.',
  bondingPrimer: 'Water-borne primer that holds on dulled old oil paint and gloss.',
  oilPrimer: 'Solvent-borne primer for bare wood; also seals chalk.',
  stainBlockingPrimer: 'Quick alkyd primer that keeps stains from bleeding through.',
  shellacPrimer: 'Alcohol-borne primer for knots, heavy stains and over old shellac.',
  calcimineSealer: 'Thick oil sealer that binds chalky ceilings.',
  plasterSealer: 'Sealer that resists the alkali of new plaster and locks in what is left of paste.',
  metalPrimer: 'Primer against rust.',
  radiatorEnamel: 'Enamel that withstands the heat of a radiator.',
  liquidDeglosser: 'Wiped on to soften an old gloss; must be coated inside its open time.',
  dryingFiller: 'Ready-mixed compound that dries by losing water; sands easily.',
  lightFiller:
    'Ready-mixed, airy filler for nail holes and dents; shallow ones can be sanded within about an hour.',
  settingFiller: 'Powder compound that sets hard by itself; for deep first layers.',
  woodFiller: 'Filler for holes and open joints in wood.',
  acrylicCaulk: 'Paintable elastic filler for gaps along trim.',
  glazingPutty: 'Putty between glass and sash.',
  clearVarnish: 'Clear coat for wood that keeps its look.',
  cleaner: 'Degreasing wash, rinsed off.',
  mildewWash: 'Wash that kills mildew, rinsed off.',
  floorEnamel: 'Hard-wearing enamel for floors and treads.',
}
