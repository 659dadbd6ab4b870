import { assumedParts, type Business } from '../project/business-record.ts'
import { type ShopLists, tableOf } from '../project/empty-job.ts'
import type { HouseRules } from '../project/job.ts'
import { assumedSpreads } from '../project/outcome-records.ts'
import { type CrewMember, crewMemberIdSchema, type Week } from '../project/shop-records.ts'
import { whiteOf } from '../project/usual-finishes.ts'
import { defaultRuleSettings } from '../specification/shop-defaults.ts'
import { defaultProducts } from '../specification/shop-products.ts'
import { roundToCents } from '../units/money.ts'
import { defaultRates } from './default-rates.ts'

/**
 * What a book begins with: nobody's shop in particular. All of its figures and texts are shop assumptions, and stand as such on the shop
 * sheet until the owner says that they are the shop's own.
 */

const fullDay: Week['monday'] = [{ from: '08:00', to: '16:30' }]

const painter: CrewMember = {
  id: crewMemberIdSchema.parse('painter'),
  name: 'Painter',
  skills: ['preparation', 'painting', 'fineBrush'],
  week: {
    monday: fullDay,
    tuesday: fullDay,
    wednesday: fullDay,
    thursday: fullDay,
    friday: fullDay,
    saturday: [],
    sunday: [],
  },
  breaks: [{ from: '12:00', to: '12:30' }],
  daysOff: [],
  partDays: [],
  wageCents: roundToCents(2800),
}

const houseRules: HouseRules = {
  roomOrder: 'byProfile',
  passes: { primed: 'together', repairs: 'together', largestHours: 6.5 },
  siteHours: { from: '08:00', to: '17:00' },
  holidays: [],
  maxRoomsOutOfUse: 0,
  setUpMinutes: 15,
  cleanUpMinutes: 20,
  openingPolicy: 'exactNet',
  girthPolicy: 'exactGirth',
  spreads: assumedSpreads,
  roomKinds: [],
  price: {
    burdenPercent: 25,
    overheadPercent: 15,
    profit: { basis: 'margin', percent: 15 },
    contingencyPercent: 5,
    materialsTaxPercent: 0,
    labourTaxPercent: 0,
    sundriesCentsPerHour: roundToCents(40),
  },
}

/** Sentences that most shops say in some form. They are no legal advice, and a shop reads them before it sends them. */
export const starterTexts: Business['texts'] = {
  notIncluded: [
    'Carpentry, plastering beyond the repairs named here, electrical work and plumbing.',
    'Insides of closets, cabinets and drawers, unless they are named.',
    'Testing for or removing hazardous materials, except what is named here.',
  ].join('\n'),
  whoMoves: [
    'You take down pictures, curtains and small things, and empty shelves and the tops of furniture.',
    'We move furniture to the middle of the room and cover it. You have pianos, clocks, electronics and anything very heavy moved before we start.',
    'We take off plates and hardware and put them back.',
  ].join('\n'),
  hiddenConditions:
    'What could not be seen when the house was walked is not in the price. When we find it, we stop there, show it to you, and say what it takes before we go on.',
  warranty:
    'For two years we come back and repair, at no charge, paint of ours that peels, blisters or lifts for lack of preparation. Damage, moisture, movement of the house and paint that was there before are not covered.',
  terms: 'Changes are agreed in writing, with price and days, before they are done.',
}

const business: Business = {
  name: '',
  logo: null,
  address: '',
  phone: '',
  mail: '',
  license: '',
  insurance: '',
  leadCertificate: { number: '', expiresOn: null },
  proposal: { validDays: 30, colorsDaysBefore: 7, prices: 'byRoom', hiddenHourCents: roundToCents(6500) },
  texts: starterTexts,
  paymentSteps: [
    { name: 'Deposit, on acceptance', percent: 30 },
    { name: 'Progress, when half of the rooms are done', percent: 40 },
    { name: 'Final, when all is done and looked over', percent: 30 },
  ],
  nextNumbers: { proposal: 1, changeOrder: 1, invoice: 1 },
  assumed: [...assumedParts],
}

const white = whiteOf([])

export const starterShop: ShopLists = {
  houseRules,
  business,
  colours: { [white.id]: white },
  products: tableOf(defaultProducts),
  crew: tableOf([painter]),
  rates: tableOf(defaultRates),
  rules: tableOf(defaultRuleSettings),
}
