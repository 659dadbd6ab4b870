import { z } from 'zod'
import {
  type Frozen,
  localDateSchema,
  longText,
  pictureHashSchema,
  priceSchema,
  shortText,
} from './schema-parts.ts'

/** Parts of the shop sheet that are somebody's guess until the owner says that they are the shop's own. */
export const assumedParts = ['people', 'money', 'rates', 'products', 'texts'] as const

/** Kinds of papers that the shop counts through all its jobs. */
export const numberedPapers = ['proposal', 'changeOrder', 'invoice'] as const
export type NumberedPaper = (typeof numberedPapers)[number]

const paperNumber = z.int().min(1).max(1_000_000)

/**
 * Who the shop is and what it sells under. It stands once in the book, on the shop sheet, and a job has a copy. Texts are sentences for the
 * client, one a line.
 */
export const businessSchema = z.strictObject({
  name: shortText,
  /** Picture at the head of papers for the client, in the book beside the jobs; null for none. */
  logo: pictureHashSchema.nullable(),
  address: longText,
  phone: shortText,
  mail: shortText,
  license: shortText,
  insurance: shortText,
  /** Of the firm, under the renovation rule of the EPA or of a state in its place. */
  leadCertificate: z.strictObject({ number: shortText, expiresOn: localDateSchema.nullable() }),
  proposal: z.strictObject({
    /** From the day it is given out. */
    validDays: z.int().min(1).max(730),
    /** Colors are needed so many days before work starts. */
    colorsDaysBefore: z.int().min(0).max(365),
    prices: z.enum(['byRoom', 'inOne']),
    /** What an hour of work on hidden conditions is charged. */
    hiddenHourCents: priceSchema,
  }),
  texts: z.strictObject({
    notIncluded: longText,
    whoMoves: longText,
    hiddenConditions: longText,
    warranty: longText,
    terms: longText,
  }),
  /** Shares of the price in the order in which they fall due. */
  paymentSteps: z
    .array(z.strictObject({ name: shortText.min(1), percent: z.number().min(0).max(100) }))
    .max(8),
  /** What the next paper of each kind is numbered; counted on the shop sheet only. */
  nextNumbers: z.strictObject({ proposal: paperNumber, changeOrder: paperNumber, invoice: paperNumber }),
  assumed: z.array(z.enum(assumedParts)).max(assumedParts.length),
})
export type Business = Frozen<z.output<typeof businessSchema>>
