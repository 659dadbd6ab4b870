import { z } from 'zod'
import { centsSchema, type Frozen, idSchema, localDateSchema, longText, shortText } from './schema-parts.ts'
import { conditionSchema, finishSchema, scopeSchema } from './survey-records.ts'

const optionIdSchema = idSchema<'OptionId'>()
const dealingIdSchema = idSchema<'DealingId'>()
export type OptionId = z.output<typeof optionIdSchema>
export type DealingId = z.output<typeof dealingIdSchema>

const { paint, colourId, sheen, productClass, moreCoats } = finishSchema.shape

/** One change to the job, as data: what a surface, a class of surfaces or the house becomes instead, or what was found. */
const jobChangeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('finish'),
    scope: scopeSchema,
    /** What is not named stays as it holds there. */
    set: z.strictObject({ paint, colourId, sheen, productClass, moreCoats }).partial(),
  }),
  /** What this scope said for itself is taken back; the wider scope says it again. */
  z.strictObject({ kind: z.literal('inherit'), scope: scopeSchema }),
  z.strictObject({ kind: z.literal('finding'), condition: conditionSchema }),
])
export type JobChange = Frozen<z.output<typeof jobChangeSchema>>

const jobChanges = z.array(jobChangeSchema).max(500)

/** Work the client may choose: a named list of changes to the job as it stands. */
export const optionSchema = z.strictObject({
  id: optionIdSchema,
  name: shortText.min(1),
  note: longText,
  changes: jobChanges.min(1),
  /** Options with the same word here are alternatives, of which one can be had; empty for one that stands alone. */
  oneOf: shortText,
  /** It is a color scheme, kept to be looked at beside the colors of the job, and not offered as work. */
  isScheme: z.literal(true).optional(),
})
export type JobOption = Frozen<z.output<typeof optionSchema>>

/** An amount of money with the tax on it. */
const moneySchema = z.strictObject({ beforeTaxCents: centsSchema, taxCents: centsSchema })
export type Money = Frozen<z.output<typeof moneySchema>>

const pricedLineSchema = z.strictObject({ label: shortText, ...moneySchema.shape })
export type PricedLine = Frozen<z.output<typeof pricedLineSchema>>

/** A part of the agreed price that is asked for at a named moment. */
const paymentStepSchema = z.strictObject({
  name: shortText.min(1),
  /** Of the agreed price; the last step takes what is left. */
  percent: z.number().min(0).max(100),
  when: shortText,
})
export type PaymentStep = Frozen<z.output<typeof paymentStepSchema>>

const number = z.int().min(1).max(1_000_000)
const minutes = z.number().min(0).max(1e8)
const beforeAfter = <Value extends z.ZodType>(value: Value) => z.strictObject({ before: value, after: value })

function dealing<Kind extends string, Shape extends z.core.$ZodLooseShape>(kind: Kind, shape: Shape) {
  return z.strictObject({ id: dealingIdSchema, kind: z.literal(kind), on: localDateSchema, ...shape })
}

/**
 * What happened between the shop and its client, one record for each event. Dealings are only ever added; how the job stands follows from
 * all of them. Money in them is what was said on that day, and never changes with the job.
 */
export const dealingSchema = z.discriminatedUnion('kind', [
  dealing('quoted', {
    /** Version of the proposal, counted from 1. */
    number,
    validUntil: localDateSchema.nullable(),
    lines: z.array(pricedLineSchema).min(1).max(500),
    options: z.array(z.strictObject({ ...optionSchema.shape, ...moneySchema.shape })).max(200),
    steps: z.array(paymentStepSchema).min(1).max(24),
  }),
  dealing('accepted', {
    quoteId: dealingIdSchema,
    /** Name of the person who accepted. */
    by: shortText.min(1),
    optionIds: z.array(optionIdSchema).max(200),
    /** What the options taken cost together, less the sum of their printed prices. */
    together: moneySchema,
    /** The whole job by its hours on that day, options taken; what changes later is measured from it. */
    counted: moneySchema,
  }),
  dealing('lost', { why: longText }),
  dealing('changeOffered', {
    number,
    title: shortText.min(1),
    why: longText,
    /** Put into the job when agreed; empty where the job holds them already. */
    changes: jobChanges,
    ...moneySchema.shape,
    minutes: beforeAfter(minutes),
    /** Last day of work without and with it; null where no plan was there. */
    finishesOn: beforeAfter(localDateSchema.nullable()),
    /** What it moves, a sentence for each room. */
    moves: z.array(longText).max(500),
  }),
  dealing('changeAnswered', {
    changeId: dealingIdSchema,
    answer: z.enum(['agreed', 'declined']),
    by: shortText.min(1),
    why: longText,
  }),
  dealing('begun', {}),
  dealing('finished', {}),
  dealing('invoiced', {
    number,
    title: shortText.min(1),
    /** The invoice that this one takes back, whole; null for one that asks for money. */
    credits: dealingIdSchema.nullable(),
    dueOn: localDateSchema.nullable(),
    lines: z
      .array(
        z.strictObject({
          /** The change order the line is for; null for the agreed price itself. */
          changeId: dealingIdSchema.nullable(),
          ...pricedLineSchema.shape,
        }),
      )
      .min(1)
      .max(500),
  }),
  /** Money that came in; less than nothing where some went back. */
  dealing('paid', { cents: centsSchema, how: shortText, note: longText }),
])
export type Dealing = Frozen<z.output<typeof dealingSchema>>
export type DealingKind = Dealing['kind']
export type DealingOf<Kind extends DealingKind> = Extract<Dealing, { readonly kind: Kind }>
