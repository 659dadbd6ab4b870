import { z } from 'zod'
import { type Frozen, idSchema, localDateSchema, priceSchema, shortText } from './schema-parts.ts'
import { productIdSchema, rateIdSchema } from './shop-records.ts'
import { colourIdSchema } from './survey-records.ts'

const receiptIdSchema = idSchema<'ReceiptId'>()
const cansUsedIdSchema = idSchema<'CansUsedId'>()
const ownJobIdSchema = idSchema<'OwnJobId'>()

/** What money on site is spent for. */
export const receiptKinds = ['material', 'sundry', 'other'] as const

/** Money that was spent for the job, as a receipt says it. */
export const receiptSchema = z.strictObject({
  id: receiptIdSchema,
  on: localDateSchema,
  kind: z.enum(receiptKinds),
  /** Where it was spent, or on what. */
  note: shortText,
  cents: priceSchema,
})

/** Cans that were used up; parts of a can count. */
export const cansUsedSchema = z.strictObject({
  id: cansUsedIdSchema,
  on: localDateSchema,
  productId: productIdSchema,
  colourId: colourIdSchema.nullable(),
  /** Of one can. */
  gallons: z.number().min(0.005).max(100),
  count: z.number().min(0.01).max(1000),
})
export type CansUsed = Frozen<z.output<typeof cansUsedSchema>>

const minutes = z.number().min(0).max(1e8)
const count = z.int().min(0).max(1e6)

/**
 * What a finished job of the shop says of its rates and of how far work comes out from what was counted. It stands on the shop sheet alone,
 * a copy of the day on which it was kept, so that it outlives the job.
 */
export const ownJobSchema = z.strictObject({
  /** Of the job. */
  id: ownJobIdSchema,
  title: shortText,
  keptOn: localDateSchema,
  rates: z
    .array(
      z.strictObject({
        rateId: rateIdSchema,
        /** Square feet, feet or pieces, times the difficulty. */
        workedAmount: z.number().min(0).max(1e9),
        plannedMinutes: minutes,
        workedMinutes: minutes,
      }),
    )
    .max(1000),
  /** Person-minutes of all steps whose minutes were written down. */
  plannedMinutes: minutes,
  workedMinutes: minutes,
  /** Rooms that were worked in, and those in which more was found than was seen before. */
  rooms: count,
  roomsFound: count,
  /** Counted for preparation in the rooms where more was found, and what was found there besides. */
  preparationMinutes: minutes,
  foundMinutes: minutes,
  coats: count,
  coatsAgain: count,
  plannedMaterialCents: priceSchema,
  paidMaterialCents: priceSchema,
})

const percent = (most: number) => z.number().min(0).max(most)

/** How far a job may come out from what was counted. Shop assumptions until `restsOn` says from how many own jobs they were worked out. */
export const spreadsSchema = z.strictObject({
  /** All hours of a job together, as one standard deviation. */
  pacePercent: percent(200),
  /** One kind of work against the others, as one standard deviation; a rate may have its own. */
  ratePercent: percent(200),
  materialPercent: percent(200),
  /** In so many of a hundred rooms more is found when surfaces are opened. */
  findingChancePercent: percent(100),
  /** What is found then, on average, of the hours for preparing that room. */
  findingSizePercent: percent(1000),
  /** So many of a hundred coats have to be done again. */
  coatAgainPercent: percent(100),
  /** Own finished jobs; 0 for assumptions. */
  restsOn: count,
})
export type Spreads = Frozen<z.output<typeof spreadsSchema>>

/** Shop assumptions that a shop begins with. */
export const assumedSpreads: Spreads = {
  pacePercent: 8,
  ratePercent: 20,
  materialPercent: 8,
  findingChancePercent: 25,
  findingSizePercent: 40,
  coatAgainPercent: 3,
  restsOn: 0,
}
