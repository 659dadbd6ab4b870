import { defaultRates } from '../core/price/default-rates.ts'
import { starterTexts } from '../core/price/starter-shop.ts'
import type { Business } from '../core/project/business-record.ts'
import { type ShopLists, tableOf } from '../core/project/empty-job.ts'
import { assumedSpreads } from '../core/project/outcome-records.ts'
import type { CrewMember, CrewMemberId, Week } from '../core/project/shop-records.ts'
import type { Colour, ColourId } from '../core/project/survey-records.ts'
import type { ColourDepth } from '../core/project/vocabulary.ts'
import { defaultRuleSettings } from '../core/specification/shop-defaults.ts'
import { defaultProducts } from '../core/specification/shop-products.ts'
import type { Cents } from '../core/units/money.ts'

// The shop, names, hours, wages, percentages, numbers of papers and colours in this file are invented for the demonstration.

const none: Week['monday'] = []
const fullDay: Week['monday'] = [{ from: '08:00', to: '16:30' }]
const early: Week['monday'] = [{ from: '07:30', to: '15:30' }]
const short: Week['monday'] = [{ from: '09:00', to: '14:00' }]
const lunch = [{ from: '12:00', to: '12:30' }] as const

/** Three people whose weeks differ: the owner, an early starter with Fridays off, and an apprentice for prep on short days. */
const crew: readonly CrewMember[] = [
  {
    id: 'robin' as CrewMemberId,
    name: 'Robin',
    skills: ['preparation', 'painting', 'fineBrush'],
    week: {
      monday: fullDay,
      tuesday: fullDay,
      wednesday: fullDay,
      thursday: fullDay,
      friday: fullDay,
      saturday: none,
      sunday: none,
    },
    breaks: lunch,
    daysOff: [],
    partDays: [{ date: '2027-04-07', from: '12:30', to: '16:30' }],
    wageCents: 3400 as Cents,
  },
  {
    id: 'kit' as CrewMemberId,
    name: 'Kit',
    skills: ['preparation', 'painting', 'fineBrush'],
    week: {
      monday: early,
      tuesday: early,
      wednesday: early,
      thursday: early,
      friday: none,
      saturday: none,
      sunday: none,
    },
    breaks: lunch,
    daysOff: ['2027-04-14'],
    partDays: [],
    wageCents: 2900 as Cents,
  },
  {
    id: 'ash' as CrewMemberId,
    name: 'Ash',
    skills: ['preparation', 'painting'],
    week: {
      monday: short,
      tuesday: short,
      wednesday: none,
      thursday: short,
      friday: fullDay,
      saturday: none,
      sunday: none,
    },
    breaks: lunch,
    daysOff: [],
    partDays: [],
    wageCents: 2200 as Cents,
  },
]

function colour(id: string, name: string, depth: ColourDepth, shown: string): Colour {
  return { id: id as ColourId, name, code: '', depth, shown }
}

const colours: readonly Colour[] = [
  colour('ceiling-white', 'Ceiling white', 'white', '#fbfaf6'),
  colour('trim-white', 'Trim off-white', 'offWhite', '#f3eee2'),
  colour('oat', 'Oat', 'offWhite', '#ece3d0'),
  colour('pale-sage', 'Pale sage', 'light', '#cfd6c4'),
  colour('morning-blue', 'Morning blue', 'light', '#c9d5dc'),
  colour('clay', 'Clay', 'medium', '#b98d6c'),
  colour('wet-slate', 'Wet slate', 'deep', '#4a545b'),
  colour('brick-red', 'Brick red', 'strong', '#8e3b2e'),
]

const business: Business = {
  name: 'Demonstration paint shop',
  logo: null,
  address: '12 Example Street\nExampleville',
  phone: '555 0100',
  mail: 'shop@coatwright.example',
  license: 'Contractor license EXAMPLE-0000',
  insurance: 'Liability insurance, policy EXAMPLE-0000',
  leadCertificate: { number: 'EXAMPLE-0000', expiresOn: '2029-06-30' },
  proposal: { validDays: 30, colorsDaysBefore: 10, prices: 'byRoom', hiddenHourCents: 6800 as Cents },
  texts: starterTexts,
  paymentSteps: [
    { name: 'On acceptance', percent: 20 },
    { name: 'When the upper floor is done', percent: 40 },
    { name: 'When all is done and looked over', percent: 40 },
  ],
  nextNumbers: { proposal: 1, changeOrder: 1, invoice: 1 },
  assumed: [],
}

export const demoShop: ShopLists = {
  business,
  houseRules: {
    roomOrder: 'byProfile',
    passes: { primed: 'together', repairs: 'together', largestHours: 6.5 },
    siteHours: { from: '07:30', to: '17:00' },
    holidays: ['2027-04-02'],
    maxRoomsOutOfUse: 5,
    setUpMinutes: 15,
    cleanUpMinutes: 20,
    openingPolicy: 'exactNet',
    girthPolicy: 'exactGirth',
    spreads: assumedSpreads,
    roomKinds: [],
    price: {
      burdenPercent: 28,
      overheadPercent: 12,
      profit: { basis: 'margin', percent: 15 },
      contingencyPercent: 6,
      materialsTaxPercent: 6,
      labourTaxPercent: 0,
      sundriesCentsPerHour: 40 as Cents,
    },
  },
  colours: tableOf(colours),
  products: tableOf(defaultProducts),
  crew: tableOf(crew),
  rates: tableOf(defaultRates),
  rules: tableOf(defaultRuleSettings),
}
