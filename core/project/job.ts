import { z } from 'zod'
import { keysOf, present } from '../lists/lists.ts'
import { dealingSchema, optionSchema } from './agreement-records.ts'
import { builtItemSchema } from './built-records.ts'
import { type Business, businessSchema } from './business-record.ts'
import { holdSchema } from './hold-records.ts'
import { issuedSchema } from './issued-records.ts'
import { cansUsedSchema, ownJobSchema, receiptSchema, spreadsSchema } from './outcome-records.ts'
import { photoSchema } from './photo-records.ts'
import { markSchema, pinSchema } from './progress-records.ts'
import {
  type Frozen,
  idSchema,
  localDateSchema,
  localTimeSchema,
  longText,
  priceSchema,
  shortText,
} from './schema-parts.ts'
import {
  crewMemberSchema,
  ownRoomKindSchema,
  productSchema,
  rateSchema,
  ruleSettingSchema,
} from './shop-records.ts'
import {
  ceilingOpeningSchema,
  openingSchema,
  roomSchema,
  storeySchema,
  trimRunSchema,
} from './sketch-records.ts'
import {
  colourSchema,
  conditionSchema,
  existingSchema,
  finishSchema,
  keptItemSchema,
} from './survey-records.ts'
import { planAims, roomOrders } from './vocabulary.ts'

export const jobIdSchema = idSchema<'JobId'>()
export type JobId = z.output<typeof jobIdSchema>

const headerSchema = z.strictObject({
  /** Made once, when the job is: what goes out of the program (events of a calendar) is known by it everywhere. A copy of the file is the same job. */
  id: jobIdSchema,
  title: shortText.min(1),
  client: shortText,
  /** All numbers with whom they reach, one a line. */
  phones: longText,
  mail: shortText,
  site: longText,
  /** How to get in: key, code, who opens. For the crew only. */
  access: longText,
  /** Null when nobody knows; then the house counts as old. */
  yearBuilt: z.int().min(1600).max(2200).nullable(),
  occupied: z.boolean(),
  childrenOrPets: z.boolean(),
  startsOn: localDateSchema,
  /** What the plan aims for: what weighs most of pay, days on site and rooms out of use. */
  planFor: z.enum(planAims),
  /** IANA name, e.g. America/Chicago. */
  timeZone: z.string().min(1).max(64),
  unitSystem: z.enum(['imperial', 'metric']),
  paper: z.enum(['letter', 'a4']),
  isDemonstration: z.boolean(),
  /** Finished with, or never begun: out of the way in the list of jobs, and nothing else. */
  isPutAway: z.boolean(),
  /** Counted over the shop's proposals when the first one of this job is given out. */
  proposalNumber: z.int().min(1).max(1_000_000).nullable(),
  /** How the places where the work is are heated and aired just now. */
  air: z.strictObject({
    temperatureC: z.number().min(-40).max(60),
    relativeHumidityPercent: z.number().min(1).max(100),
    outdoorTemperatureC: z.number().min(-60).max(60),
    /** Read with a surface thermometer on the coldest surface; null estimates it from the space behind. */
    surfaceTemperatureC: z.number().min(-60).max(80).nullable(),
  }),
})
export type JobHeader = Frozen<z.output<typeof headerSchema>>

export const openingPolicies = [
  'exactNet',
  'is1200Part13',
  'minimumVoid',
  'noDeduction',
  'partDeduction',
] as const
export type OpeningPolicy = (typeof openingPolicies)[number]
export const girthPolicies = [
  'exactGirth',
  'sixTwelveInch',
  'nineInchByLength',
  'threeHundredMillimetre',
] as const
export type GirthPolicy = (typeof girthPolicies)[number]

const houseRulesSchema = z.strictObject({
  roomOrder: z.enum(roomOrders),
  /** How steps are gathered into passes. */
  passes: z.strictObject({
    /** Woodwork, patches and broad surfaces are primed in one go, or woodwork apart from ceiling and walls. */
    primed: z.enum(['together', 'apart']),
    /** Repairs of a room are one pass for each time that filler dries, or one for each of ceiling, walls and woodwork. */
    repairs: z.enum(['together', 'apart']),
    /** Person-hours; a larger pass is parted at openings or corners. */
    largestHours: z.number().min(1).max(24),
  }),
  siteHours: z.strictObject({ from: localTimeSchema, to: localTimeSchema }),
  holidays: z.array(localDateSchema).max(400),
  /** 0 means no limit. */
  maxRoomsOutOfUse: z.int().min(0).max(200),
  setUpMinutes: z.int().min(0).max(240),
  cleanUpMinutes: z.int().min(0).max(240),
  /** Waits with deglosser, fumes and sleeping rooms and so on are switched in `rules`. */
  openingPolicy: z.enum(openingPolicies),
  girthPolicy: z.enum(girthPolicies),
  spreads: spreadsSchema,
  /** Kinds of rooms as this shop finds them; a kind that is not here has what is usual. */
  roomKinds: z.array(ownRoomKindSchema).max(100),
  price: z.strictObject({
    burdenPercent: z.number().min(0).max(300),
    overheadPercent: z.number().min(0).max(300),
    /** Profit as a share of the price (margin) or as an addition to cost (markup): two different things. */
    profit: z.strictObject({ basis: z.enum(['margin', 'markup']), percent: z.number().min(0).max(95) }),
    contingencyPercent: z.number().min(0).max(100),
    materialsTaxPercent: z.number().min(0).max(50),
    labourTaxPercent: z.number().min(0).max(50),
    sundriesCentsPerHour: priceSchema,
  }),
})
export type HouseRules = Frozen<z.output<typeof houseRulesSchema>>

/** Every kind of record a job holds many of, by the name of its collection. Order is the order of the file. */
export const recordSchemas = {
  storeys: storeySchema,
  rooms: roomSchema,
  openings: openingSchema,
  ceilingOpenings: ceilingOpeningSchema,
  trimRuns: trimRunSchema,
  builtItems: builtItemSchema,
  keptItems: keptItemSchema,
  existing: existingSchema,
  conditions: conditionSchema,
  photos: photoSchema,
  holds: holdSchema,
  colours: colourSchema,
  finishes: finishSchema,
  products: productSchema,
  crew: crewMemberSchema,
  rates: rateSchema,
  rules: ruleSettingSchema,
  pins: pinSchema,
  marks: markSchema,
  issued: issuedSchema,
  options: optionSchema,
  dealings: dealingSchema,
  receipts: receiptSchema,
  cansUsed: cansUsedSchema,
  ownJobs: ownJobSchema,
} as const

export type CollectionName = keyof typeof recordSchemas
export const collectionNames = keysOf(recordSchemas)
export type RecordOf<Name extends CollectionName> = Frozen<z.output<(typeof recordSchemas)[Name]>>
export type Table<Item> = Readonly<Record<string, Item>>

/** A whole job in memory: three single records and tables of records by id. Lengths are whole 1/8000 mm. */
export type Job = {
  readonly header: JobHeader
  readonly houseRules: HouseRules
  readonly business: Business
} & { readonly [Name in CollectionName]: Table<RecordOf<Name>> }

/** The records a job has one of each. */
export const singleSchemas = {
  header: headerSchema,
  houseRules: houseRulesSchema,
  business: businessSchema,
} as const
export type SingleName = keyof typeof singleSchemas
export const singleNames = keysOf(singleSchemas)

/** Tables never change in place, so each is listed once: listing thousands of keys costs more than most edits. */
const listed = new WeakMap<object, readonly unknown[]>()

/** The records of a table in the order of the file. */
export function records<Item>(table: Table<Item>): readonly Item[] {
  const known = listed.get(table)
  if (known !== undefined) return known as readonly Item[]
  // For thousands of keys this is three times as fast as `Object.values`.
  const list = Object.keys(table).map((id) => present(table[id]))
  listed.set(table, list)
  return list
}

const placed = new WeakMap<object, ReadonlyMap<string, number>>()

/** The place of a record in its table, from 0; -1 where it is not there. A table is gone through once for all its records. */
export function placeInTable(table: Table<unknown>, id: string): number {
  const known = placed.get(table) ?? new Map(Object.keys(table).map((each, index) => [each, index]))
  placed.set(table, known)
  return known.get(id) ?? -1
}
