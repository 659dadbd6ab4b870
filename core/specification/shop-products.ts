import type { Product } from '../project/shop-records.ts'
import { productIdSchema } from '../project/shop-records.ts'
import type { ProductClass, Sheen } from '../project/vocabulary.ts'
import { roundToCents } from '../units/money.ts'

/** What differs from one product to the next; the rest stands at the usual value of `product`. */
type Facts = Pick<
  Product,
  | 'name'
  | 'base'
  | 'volumeSolidsPercent'
  | 'dryFilmMils'
  | 'touchDryMinutes'
  | 'recoatMinimumMinutes'
  | 'source'
> &
  Partial<Product>

const hour = 60
const day = 24 * hour
const memory = 'memory, check the label'
const prices = 'Prices and loss: shop assumption.'
/** Brush and roller lose 10-15 % (coverage guide); the higher figure stands. */
const loss = 15

const latexFilm = 'Dry film 1.5 mil per coat: MIL-HDBK-1110 s. 4.4.1.2.'
const alkydFilm = 'Dry film 2 mil per coat: MIL-HDBK-1110 s. 4.4.1.1.'
const solids = `Volume solids: ${memory}.`
const latexDry = 'Touch about 1 h, recoat 4 h: consumer guides agree; check the label.'
const waterMinimum = 'Minimum 50 F: guides.'
const oilMinimum = 'Minimum 45 F: MIL-HDBK-1110 s. 7.4.1.'
const fifty = 10
const fortyFive = 7.2

const flats: readonly Sheen[] = ['flat', 'matte']
const enamelSheens: readonly Sheen[] = ['satin', 'semiGloss', 'gloss']

function tins(quart: number, gallon: number, pail: number | null): Product['containers'] {
  return [
    { name: 'quart', gallons: 0.25, priceCents: roundToCents(quart) },
    { name: 'gallon', gallons: 1, priceCents: roundToCents(gallon) },
    ...(pail === null ? [] : [{ name: '5 gallon pail', gallons: 5, priceCents: roundToCents(pail) }]),
  ]
}

function product(id: string, productClass: ProductClass, facts: Facts): Product {
  return {
    id: productIdSchema.parse(id),
    productClass,
    brand: '',
    sheens: [],
    lossPercent: loss,
    minimumTemperatureC: facts.base === 'waterborne' || facts.base === 'mineral' ? fifty : fortyFive,
    recoatMaximumMinutes: null,
    openTimeMinimumMinutes: null,
    openTimeMaximumMinutes: null,
    fumes: facts.base === 'oil' || facts.base === 'shellac',
    containers: tins(1800, 4200, null),
    ...facts,
    source: `${facts.source} ${prices}`,
  }
}

/** Fillers, washes and putties are bought by what they fill or wet, so the film their record asks for is not used. */
const noFilm = { volumeSolidsPercent: 100, dryFilmMils: 60, lossPercent: 10 } as const

const finishes: readonly Product[] = [
  product('ceiling-paint', 'latexCeiling', {
    name: 'Latex ceiling paint',
    base: 'waterborne',
    sheens: flats,
    volumeSolidsPercent: 34,
    dryFilmMils: 1.5,
    touchDryMinutes: hour,
    recoatMinimumMinutes: 4 * hour,
    containers: tins(1500, 3200, 13500),
    source: `${solids} ${latexFilm} ${latexDry} ${waterMinimum}`,
  }),
  product('wall-paint', 'latexWall', {
    name: 'Latex wall paint',
    base: 'waterborne',
    sheens: ['flat', 'matte', 'eggshell', 'satin'],
    volumeSolidsPercent: 37,
    dryFilmMils: 1.5,
    touchDryMinutes: hour,
    recoatMinimumMinutes: 4 * hour,
    containers: tins(1900, 4800, 21500),
    source: `${solids} ${latexFilm} ${latexDry} ${waterMinimum}`,
  }),
  product('waterborne-enamel', 'waterborneEnamel', {
    name: 'Water-borne enamel',
    base: 'waterborne',
    sheens: enamelSheens,
    volumeSolidsPercent: 38,
    dryFilmMils: 1.5,
    touchDryMinutes: hour,
    recoatMinimumMinutes: 4 * hour,
    containers: tins(2600, 6800, null),
    source: `${solids} ${latexFilm} ${latexDry} A water-borne alkyd takes longer (touch 4-6 h, recoat 16 h: memory). ${waterMinimum}`,
  }),
  product('alkyd-enamel', 'alkydEnamel', {
    name: 'Alkyd enamel',
    base: 'oil',
    sheens: [...enamelSheens, 'highGloss'],
    volumeSolidsPercent: 52,
    dryFilmMils: 2,
    touchDryMinutes: 8 * hour,
    recoatMinimumMinutes: 24 * hour,
    containers: tins(2600, 6500, null),
    source: `${solids} ${alkydFilm} Touch 6-8 h, recoat 16-24 h: guides disagree, the longer stands. ${oilMinimum}`,
  }),
  product('radiator-enamel', 'radiatorEnamel', {
    name: 'Heat-resisting enamel for radiators',
    base: 'oil',
    sheens: enamelSheens,
    volumeSolidsPercent: 48,
    dryFilmMils: 1.5,
    touchDryMinutes: 8 * hour,
    recoatMinimumMinutes: 24 * hour,
    containers: tins(2800, 7200, null),
    source: `Film and drying as an alkyd enamel: ${memory}. ${oilMinimum}`,
  }),
  product('floor-enamel', 'floorEnamel', {
    name: 'Floor and stair enamel',
    base: 'waterborne',
    sheens: ['satin', 'semiGloss', 'gloss'],
    volumeSolidsPercent: 38,
    dryFilmMils: 1.5,
    touchDryMinutes: 2 * hour,
    recoatMinimumMinutes: 6 * hour,
    containers: tins(2200, 5400, null),
    source: `Film and drying: ${memory}. ${waterMinimum}`,
  }),
  product('clear-varnish', 'clearVarnish', {
    name: 'Clear varnish',
    base: 'oil',
    sheens: enamelSheens,
    volumeSolidsPercent: 48,
    dryFilmMils: 1.5,
    touchDryMinutes: 6 * hour,
    recoatMinimumMinutes: 24 * hour,
    containers: tins(2400, 6000, null),
    source: `Film and drying: ${memory}. ${oilMinimum}`,
  }),
]

const primers: readonly Product[] = [
  product('acrylic-primer', 'acrylicPrimer', {
    name: 'Acrylic primer',
    base: 'waterborne',
    volumeSolidsPercent: 34,
    dryFilmMils: 1.5,
    touchDryMinutes: hour,
    recoatMinimumMinutes: 3 * hour,
    containers: tins(1500, 3400, 14500),
    source: `${solids} ${latexFilm} Touch 0.5-1 h, recoat 1-3 h: primer guide. ${waterMinimum}`,
  }),
  product('bonding-primer', 'bondingPrimer', {
    name: 'Water-borne bonding primer',
    base: 'waterborne',
    volumeSolidsPercent: 38,
    dryFilmMils: 1.5,
    touchDryMinutes: hour,
    recoatMinimumMinutes: 3 * hour,
    containers: tins(1900, 4800, null),
    source: `${solids} ${latexFilm} Drying as the acrylic primer: ${memory}. ${waterMinimum}`,
  }),
  product('oil-primer', 'oilPrimer', {
    name: 'Oil primer',
    base: 'oil',
    volumeSolidsPercent: 55,
    dryFilmMils: 2,
    touchDryMinutes: 4 * hour,
    recoatMinimumMinutes: 24 * hour,
    recoatMaximumMinutes: 30 * day,
    containers: tins(1700, 4400, null),
    source: `${solids} ${alkydFilm} Touch 1-4 h, recoat 6-8 h to 24 h: primer guide. Longest wait before it must be dulled again: ${memory}. ${oilMinimum}`,
  }),
  product('stain-blocking-primer', 'stainBlockingPrimer', {
    name: 'Stain-blocking alkyd primer, quick drying',
    base: 'oil',
    volumeSolidsPercent: 50,
    dryFilmMils: 1.5,
    touchDryMinutes: hour,
    recoatMinimumMinutes: 2 * hour,
    containers: tins(1700, 4300, null),
    source: `Film: ${memory}. Recoat 1-2 h: ${memory}. ${oilMinimum}`,
  }),
  product('shellac-primer', 'shellacPrimer', {
    name: 'Shellac primer',
    base: 'shellac',
    volumeSolidsPercent: 30,
    dryFilmMils: 1.2,
    touchDryMinutes: 15,
    recoatMinimumMinutes: 45,
    containers: tins(2400, 6800, null),
    source: `Film: ${memory}. Touch in minutes, recoat 15-30 min (guides), 45 min stands (memory).`,
  }),
  product('calcimine-sealer', 'calcimineSealer', {
    name: 'Oil sealer for chalk-bound ceilings',
    base: 'oil',
    volumeSolidsPercent: 45,
    dryFilmMils: 3,
    touchDryMinutes: 4 * hour,
    recoatMinimumMinutes: 16 * hour,
    containers: tins(2000, 5200, 23500),
    source: `Thick coat, about 200 sq ft/gal, overnight dry: painter's article on chalk-bound ceilings; volume solids: ${memory}. ${oilMinimum}`,
  }),
  product('plaster-sealer', 'plasterSealer', {
    name: 'Alkali-resisting plaster sealer',
    base: 'waterborne',
    volumeSolidsPercent: 34,
    dryFilmMils: 1.5,
    touchDryMinutes: hour,
    recoatMinimumMinutes: 4 * hour,
    containers: tins(1600, 3800, 16500),
    source: `Film and drying: ${memory}. ${waterMinimum}`,
  }),
  product('metal-primer', 'metalPrimer', {
    name: 'Rust-inhibiting metal primer',
    base: 'oil',
    volumeSolidsPercent: 50,
    dryFilmMils: 2,
    touchDryMinutes: 4 * hour,
    recoatMinimumMinutes: 24 * hour,
    containers: tins(1800, 4600, null),
    source: `Film: ${memory}. Drying as the oil primer: primer guide. ${oilMinimum}`,
  }),
]

const preparations: readonly Product[] = [
  product('liquid-deglosser', 'liquidDeglosser', {
    ...noFilm,
    name: 'Liquid deglosser',
    base: 'oil',
    touchDryMinutes: 5,
    recoatMinimumMinutes: 5,
    openTimeMinimumMinutes: 5,
    openTimeMaximumMinutes: 30,
    containers: tins(1600, 4200, null),
    source: `Dull only what can be coated within about 30 min: painter's page. Least wait 5 min: ${memory}. Others say to wait 30-60 min: the label decides.`,
  }),
  product('setting-filler', 'settingFiller', {
    ...noFilm,
    name: 'Setting compound, 45 min',
    base: 'mineral',
    touchDryMinutes: 45,
    recoatMinimumMinutes: 90,
    containers: [{ name: '18 lb bag', gallons: 2.2, priceCents: roundToCents(1700) }],
    source: `Sets chemically in its rated time, next layer once hard: ${memory}. Joint work at 50 F and over: install guides.`,
  }),
  product('drying-filler', 'dryingFiller', {
    ...noFilm,
    name: 'Drying joint compound',
    base: 'mineral',
    touchDryMinutes: hour,
    recoatMinimumMinutes: 6 * hour,
    containers: [
      { name: 'quart', gallons: 0.25, priceCents: roundToCents(700) },
      { name: 'gallon', gallons: 1, priceCents: roundToCents(1400) },
      { name: '4.5 gallon pail', gallons: 4.5, priceCents: roundToCents(2200) },
    ],
    source:
      'A 1/16 in coat takes 2 h to days by temperature and humidity: Drywall Finishing Council, Joint Compound Drying Time; the 6 h band stands. Joint work at 50 F and over: install guides.',
  }),
  product('light-filler', 'lightFiller', {
    ...noFilm,
    name: 'Lightweight filler',
    base: 'waterborne',
    touchDryMinutes: 30,
    recoatMinimumMinutes: 90,
    containers: [
      { name: 'half pint', gallons: 0.0625, priceCents: roundToCents(600) },
      { name: 'quart', gallons: 0.25, priceCents: roundToCents(1400) },
    ],
    source: `Shallow holes can be sanded after 30 min to 2 h, deep ones later: common practice, ${memory}. The label decides.`,
  }),
  product('wood-filler', 'woodFiller', {
    ...noFilm,
    name: 'Wood filler',
    base: 'waterborne',
    touchDryMinutes: hour,
    recoatMinimumMinutes: 4 * hour,
    containers: [
      { name: 'pint', gallons: 0.125, priceCents: roundToCents(1200) },
      { name: 'quart', gallons: 0.25, priceCents: roundToCents(2000) },
    ],
    source: 'Acrylic filler 2-4 h: filler guides.',
  }),
  product('acrylic-caulk', 'acrylicCaulk', {
    ...noFilm,
    name: 'Paintable acrylic caulk',
    base: 'waterborne',
    touchDryMinutes: 30,
    recoatMinimumMinutes: 4 * hour,
    containers: [{ name: 'cartridge', gallons: 0.079, priceCents: roundToCents(450) }],
    source: `Tack-free 30 min, paint after 1-4 h: caulk guide. A 10.1 fl oz cartridge: ${memory}.`,
  }),
  product('glazing-putty', 'glazingPutty', {
    ...noFilm,
    name: 'Glazing putty',
    base: 'oil',
    touchDryMinutes: day,
    recoatMinimumMinutes: 7 * day,
    fumes: false,
    containers: [{ name: 'quart', gallons: 0.25, priceCents: roundToCents(1500) }],
    source: `Skins before it is painted, about a week: ${memory}.`,
  }),
  product('cleaner', 'cleaner', {
    ...noFilm,
    name: 'Degreasing wash',
    base: 'waterborne',
    touchDryMinutes: hour,
    recoatMinimumMinutes: 4 * hour,
    containers: tins(800, 2000, null),
    source: `Drying after rinsing: ${memory}.`,
  }),
  product('mildew-wash', 'mildewWash', {
    ...noFilm,
    name: 'Mildew wash',
    base: 'waterborne',
    touchDryMinutes: hour,
    recoatMinimumMinutes: day,
    containers: tins(800, 1800, null),
    source: `Drying after rinsing: ${memory}.`,
  }),
]

/** The list a new shop starts with: generic classes only, every figure to be replaced by the label of what is bought. */
export const defaultProducts: readonly Product[] = [...finishes, ...primers, ...preparations]
