import { z } from 'zod'
import { heldToLimit, isSafetyRule, limitWords, safetyLimit } from './safety-limits.ts'
import {
  type Frozen,
  idSchema,
  localDateSchema,
  localTimeSchema,
  longText,
  positiveLengthSchema,
  priceSchema,
  shortText,
} from './schema-parts.ts'
import { productClasses, roomUses, sheens, skills, trimKinds } from './vocabulary.ts'

export const productIdSchema = idSchema<'ProductId'>()
export const crewMemberIdSchema = idSchema<'CrewMemberId'>()
export const rateIdSchema = idSchema<'RateId'>()
export const ruleIdSchema = idSchema<'RuleId'>()
export type ProductId = z.output<typeof productIdSchema>
export type CrewMemberId = z.output<typeof crewMemberIdSchema>

/** What rooms of a kind have at this shop, in place of what is usual: by the name of the kind, or by a word in the name of a room. */
export const ownRoomKindSchema = z.strictObject({
  name: shortText.min(1),
  use: z.enum(roomUses),
  /** Null: as high as the rooms around it. */
  height: positiveLengthSchema.nullable(),
  trim: z.array(z.enum(trimKinds)).max(trimKinds.length),
  doors: z.int().min(0).max(20),
  windows: z.int().min(0).max(40),
  plates: z.int().min(0).max(99),
  lights: z.int().min(0).max(99),
})
export type OwnRoomKind = Frozen<z.output<typeof ownRoomKindSchema>>

const minutes = z
  .int()
  .min(0)
  .max(60 * 24 * 90)

/** Gallons: about what a sample tube holds. Smaller ones are a slip of the decimal point. */
const smallestContainer = 0.005

/** A product of the shop's list: a generic class with the figures of its label. `source` says where the figures come from. */
export const productSchema = z.strictObject({
  id: productIdSchema,
  name: shortText.min(1),
  /** Who makes it, as it stands on the can; empty where the shop has not said. For buying only. */
  brand: shortText,
  productClass: z.enum(productClasses),
  base: z.enum(['waterborne', 'oil', 'shellac', 'mineral']),
  sheens: z.array(z.enum(sheens)),
  volumeSolidsPercent: z.number().min(1).max(100),
  /** Dry film per coat in mils (1/1000 in). */
  dryFilmMils: z.number().min(0.01).max(100),
  /** Lost in the tray, the roller and the texture, percent of the theoretical spread. */
  lossPercent: z.number().min(0).max(90),
  minimumTemperatureC: z.number().min(-30).max(60),
  touchDryMinutes: minutes,
  recoatMinimumMinutes: minutes,
  /** After this it must be dulled again before the next coat; null where there is no limit. */
  recoatMaximumMinutes: minutes.nullable(),
  /** For a deglosser: what it wiped must be coated no sooner and no later than this. */
  openTimeMinimumMinutes: minutes.nullable(),
  openTimeMaximumMinutes: minutes.nullable(),
  /** Strong solvent smell: sleeping rooms stay empty until touch dry. */
  fumes: z.boolean(),
  containers: z
    .array(
      z.strictObject({
        name: shortText,
        gallons: z.number().min(smallestContainer).max(100),
        priceCents: priceSchema,
      }),
    )
    .min(1)
    .max(12),
  source: longText,
})
export type Product = Frozen<z.output<typeof productSchema>>

const windowSchema = z.strictObject({ from: localTimeSchema, to: localTimeSchema })
export const weekdays = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const
export type Weekday = (typeof weekdays)[number]
const weekSchema = z.strictObject({
  monday: z.array(windowSchema).max(6),
  tuesday: z.array(windowSchema).max(6),
  wednesday: z.array(windowSchema).max(6),
  thursday: z.array(windowSchema).max(6),
  friday: z.array(windowSchema).max(6),
  saturday: z.array(windowSchema).max(6),
  sunday: z.array(windowSchema).max(6),
})
export type Week = Frozen<z.output<typeof weekSchema>>

export const crewMemberSchema = z.strictObject({
  id: crewMemberIdSchema,
  name: shortText.min(1),
  skills: z.array(z.enum(skills)).min(1),
  week: weekSchema,
  /** Every working day, besides the gaps between windows. */
  breaks: z.array(windowSchema).max(6),
  daysOff: z.array(localDateSchema).max(400),
  /** Dates with other hours than the week's. */
  partDays: z
    .array(z.strictObject({ date: localDateSchema, from: localTimeSchema, to: localTimeSchema }))
    .max(400),
  /** Wage per hour before burden. */
  wageCents: priceSchema,
})
export type CrewMember = Frozen<z.output<typeof crewMemberSchema>>

/** What a rate is counted by. */
const rateBases = ['area', 'length', 'count', 'each'] as const
export type RateBasis = (typeof rateBases)[number]

/** How much of an operation one person does in an hour: square feet, feet, or pieces. The id is the operation's word. */
export const rateSchema = z.strictObject({
  id: rateIdSchema,
  basis: z.enum(rateBases),
  /** At least one in two days. */
  perHour: z.number().min(0.02).max(100_000),
  source: longText,
  /** Where the shop's own finished jobs say it: how many, and how far they lie from one another (one standard deviation; null for too few). */
  own: z
    .strictObject({
      jobs: z.int().min(1).max(100_000),
      spreadPercent: z.number().min(0).max(200).nullable(),
    })
    .exactOptional(),
})
export type Rate = Frozen<z.output<typeof rateSchema>>

/** Why a safety rule does not apply in this house: who tested it and what they wrote. It is printed wherever the rule would speak. */
export const leftOutSchema = z.strictObject({
  /** A certified person, with the certificate where there is one. */
  testedBy: shortText.min(3),
  reportNumber: shortText.min(1),
  testedOn: localDateSchema,
  /** What was tested and what was found, in the words of the report. */
  found: longText.min(10),
})
export type LeftOut = Frozen<z.output<typeof leftOutSchema>>

const settingFields = z.strictObject({
  id: ruleIdSchema,
  on: z.boolean(),
  numbers: z.record(z.string().max(60), z.number()),
  /** Only on a safety rule that is off, and then always. */
  leftOut: leftOutSchema.exactOptional(),
  /** What was put right in an older setting, in words, until the owner changes it. */
  raised: longText.exactOptional(),
})

/** A rule of the book as this job keeps it: switched, or with the owner's own numbers. Rules without a record stand at their defaults. */
export const ruleSettingSchema = settingFields.check(({ value, issues }) => {
  const refuse = (path: string[], message: string) =>
    issues.push({ code: 'custom', input: path.reduce<unknown>(valueIn, value), path, message })
  for (const [name, number] of Object.entries(value.numbers)) {
    const limit = safetyLimit(value.id, name)
    if (limit !== undefined && heldToLimit(limit, number) !== number)
      refuse(['numbers', name], limitWords(limit))
  }
  if (isSafetyRule(value.id) && value.on === (value.leftOut !== undefined)) {
    refuse(
      ['on'],
      'a rule that protects people is left out only with a written reason (leftOut), and then it is off',
    )
  }
  if (!isSafetyRule(value.id) && value.leftOut !== undefined)
    refuse(['leftOut'], 'only a safety rule has this')
})

function valueIn(value: unknown, step: string): unknown {
  return typeof value === 'object' && value !== null ? Reflect.get(value, step) : undefined
}

export type RuleSetting = Frozen<z.output<typeof ruleSettingSchema>>
