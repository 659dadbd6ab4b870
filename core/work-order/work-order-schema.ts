import { z } from 'zod'
import { passKinds } from '../passes/pass-types.ts'
import { localDateSchema, localDateTimeSchema } from '../project/schema-parts.ts'
import { keptItemHandlings, sheens } from '../project/vocabulary.ts'
import { phases } from './phases.ts'

const atLeastZero = z.number().min(0)
const count = z.int().min(0)
const texts = z.array(z.string())

const colorLine = z.strictObject({
  surface: z.string(),
  productId: z.string().nullable(),
  product: z.string(),
  colourId: z.string().nullable(),
  color: z.string(),
  code: z.string(),
  sheen: z.enum(sheens).nullable(),
  primer: z.string(),
  coats: count,
  amount: z.string().describe('In words, rounded for a hand: area, length or pieces of one coat.'),
  gallons: atLeastZero.describe('Of the finish, all coats.'),
  primerGallons: atLeastZero,
  stepKeys: texts,
})

const passEntry = z.strictObject({
  passKey: z.string(),
  number: z.int().min(1),
  kind: z.enum(passKinds),
  name: z.string(),
  personMinutes: atLeastZero,
  waits: z.array(
    z.strictObject({
      after: z.int().min(1).describe('Number of another pass of the same sheet.'),
      atLeastElapsedMinutes: atLeastZero,
      atMostElapsedMinutes: atLeastZero.nullable(),
    }),
  ),
  holds: z.array(z.int().min(1)).describe('Numbers of the holds of the same sheet, from 1.'),
  lines: z.array(
    z.strictObject({
      what: z.string(),
      where: z.string(),
      finish: z.string(),
      personMinutes: atLeastZero,
    }),
  ),
})

const roomSheet = z.strictObject({
  roomSetId: z.string(),
  number: z.int().min(1),
  name: z.string(),
  storey: z.string(),
  alongside: texts,
  personMinutes: atLeastZero,
  firstDay: localDateSchema.nullable(),
  lastDay: localDateSchema.nullable(),
  freeAt: localDateTimeSchema.nullable(),
  promisedBy: localDateTimeSchema.nullable(),
  lead: z.string().nullable(),
  ceilingHeight: z.string(),
  leadSafe: z.boolean(),
  openings: z.array(z.strictObject({ openingId: z.string(), letter: z.string(), words: z.string() })),
  colors: z.array(colorLine),
  unpainted: texts,
  repairs: z.array(
    z.strictObject({
      number: z.int().min(1).nullable(),
      what: z.string(),
      where: z.string(),
      amount: z.string(),
      how: z.string(),
      note: z.string(),
      photo: z.string(),
    }),
  ),
  passes: z.array(passEntry),
  handling: texts,
  cautions: z.array(z.strictObject({ text: z.string(), rule: z.string() })),
  holds: z.array(
    z.strictObject({
      key: z.string(),
      short: z.string(),
      where: z.string(),
      reason: z.string(),
      who: z.string(),
      expected: z.string(),
      cleared: z.string().nullable(),
    }),
  ),
  notices: z.array(z.strictObject({ sentence: z.string(), stops: z.boolean() })),
  register: z.array(
    z.strictObject({
      name: z.string(),
      where: z.string(),
      count: z.int().min(1),
      handling: z.enum(keptItemHandlings),
      wired: z.boolean(),
    }),
  ),
  notes: texts,
})

/** What the cover, the room sheets and the color record show, for other programs. */
export const workOrderFields = {
  startsOn: localDateSchema,
  finishesOn: localDateSchema,
  cover: z.strictObject({
    crew: texts,
    rooms: z.array(
      z.strictObject({
        roomSetId: z.string(),
        number: z.int().min(1),
        phases: z.array(z.strictObject({ phase: z.enum(phases), days: z.array(localDateSchema) })),
      }),
    ),
    leadRules: z.array(z.strictObject({ text: z.string(), source: z.string() })),
    cautions: z.array(z.strictObject({ text: z.string(), rule: z.string() })),
  }),
  rooms: z.array(roomSheet),
  colorRecord: z.strictObject({
    paints: z.array(
      z.strictObject({
        productId: z.string(),
        product: z.string(),
        brand: z.string(),
        color: z.string(),
        code: z.string(),
        sheen: z.string(),
        spareGallons: atLeastZero,
        roomNames: texts,
      }),
    ),
    care: texts,
    leadPapers: texts,
  }),
}
