import { z } from 'zod'
import { passKinds } from '../passes/pass-types.ts'
import { localDateSchema, localDateTimeSchema } from '../project/schema-parts.ts'
import { keptItemHandlings, photoStages, sheens } from '../project/vocabulary.ts'
import { phases } from './phases.ts'

const atLeastZero = z.number().min(0)
/** Of a room set, in the order in which the plan begins them; the same on the cover and on its sheet. */
const roomNumber = z.int().min(1).describe('In the order in which the plan begins the rooms.')
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
  coats: z.int().min(0).describe('Of the finish.'),
  amount: z.string().describe('In words, rounded for a hand: area, length or pieces of one coat.'),
  gallons: atLeastZero.describe('Of the finish, all coats.'),
  primerGallons: atLeastZero,
  stepKeys: texts,
})

const passEntry = z.strictObject({
  passKey: z.string(),
  number: z.int().min(1).describe('On its sheet, in the order of work.'),
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
  number: roomNumber,
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
      number: z.int().min(1).nullable().describe('Drawn in the plan; null for what every room has.'),
      what: z.string(),
      where: z.string(),
      amount: z.string(),
      how: z.string(),
      note: z.string(),
      photo: z.string(),
    }),
  ),
  photos: z
    .array(
      z.strictObject({
        picture: z.string(),
        number: z.int().min(1).nullable().describe('Of the finding it shows; null for a room.'),
        subject: z.string(),
        stage: z.enum(photoStages),
        note: z.string(),
      }),
    )
    .describe('On pages behind the sheet.'),
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
      count: z.int().min(1).describe('Pieces.'),
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
  cover: z
    .strictObject({
      crew: texts,
      rooms: z.array(
        z.strictObject({
          roomSetId: z.string(),
          number: roomNumber,
          phases: z.array(z.strictObject({ phase: z.enum(phases), days: z.array(localDateSchema) })),
        }),
      ),
      leadRules: z.array(z.strictObject({ text: z.string(), source: z.string() })),
      cautions: z.array(z.strictObject({ text: z.string(), rule: z.string() })),
    })
    .describe('What stands once for the whole job.'),
  rooms: z.array(roomSheet).describe('A sheet for each room set.'),
  colorRecord: z
    .strictObject({
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
    })
    .describe('What the client keeps when the work is done.'),
}
