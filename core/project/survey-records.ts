import { z } from 'zod'
import {
  countSchema,
  type Frozen,
  idSchema,
  lengthSchema,
  localDateSchema,
  longText,
  shortText,
} from './schema-parts.ts'
import { openingIdSchema, roomIdSchema, wallIdSchema } from './sketch-records.ts'
import { surfaceRefSchema } from './surface-ref.ts'
import {
  colourDepths,
  conditionKinds,
  existingCoats,
  keptItemHandlings,
  keptItemKinds,
  productClasses,
  severities,
  sheens,
  substrates,
  surfaceClasses,
} from './vocabulary.ts'

const existingIdSchema = idSchema<'ExistingId'>()
export const conditionIdSchema = idSchema<'ConditionId'>()
export const finishIdSchema = idSchema<'FinishId'>()
export const colourIdSchema = idSchema<'ColourId'>()
export const keptItemIdSchema = idSchema<'KeptItemId'>()
export type ExistingId = z.output<typeof existingIdSchema>
export type ConditionId = z.output<typeof conditionIdSchema>
export type FinishId = z.output<typeof finishIdSchema>
export type ColourId = z.output<typeof colourIdSchema>
export type KeptItemId = z.output<typeof keptItemIdSchema>

/** What a default or a choice applies to; the narrower scope wins: surface, then room, then house. */
export const scopeSchema = z.discriminatedUnion('level', [
  z.strictObject({ level: z.literal('house'), surfaceClass: z.enum(surfaceClasses) }),
  z.strictObject({ level: z.literal('room'), roomId: roomIdSchema, surfaceClass: z.enum(surfaceClasses) }),
  z.strictObject({ level: z.literal('surface'), surface: surfaceRefSchema }),
])
export type Scope = Frozen<z.output<typeof scopeSchema>>

/** What is there now. A fact that nobody has said at this scope is null: the next wider scope says it, or the usual of the class is taken. */
export const existingSchema = z.strictObject({
  id: existingIdSchema,
  scope: scopeSchema,
  substrate: z.enum(substrates).nullable(),
  coat: z.enum(existingCoats).nullable(),
  sheen: z.enum(sheens).nullable(),
  depth: z.enum(colourDepths).nullable(),
  /** Sand texture, stipple or popcorn on the surface. */
  textured: z.boolean().nullable(),
})
export type Existing = Frozen<z.output<typeof existingSchema>>

/** Coats that can be asked for beyond those that the rules count. */
export const mostMoreCoats = 3

/** What it shall become. `paint: false` leaves the surface as it is (a floor kept, a varnished door left). */
export const finishSchema = z.strictObject({
  id: finishIdSchema,
  scope: scopeSchema,
  paint: z.boolean(),
  colourId: colourIdSchema.nullable(),
  sheen: z.enum(sheens),
  productClass: z.enum(productClasses),
  /** Coats asked for beyond those that the rules count. */
  moreCoats: z.int().min(0).max(mostMoreCoats).optional(),
})
export type Finish = Frozen<z.output<typeof finishSchema>>

export const colourSchema = z.strictObject({
  id: colourIdSchema,
  name: shortText.min(1),
  /** What the store tints it by; empty where nobody has said. For buying only. */
  code: shortText,
  depth: z.enum(colourDepths),
  /** For the screen only, `#rrggbb`. */
  shown: z
    .string()
    .max(7, { abort: true })
    .regex(/^#[0-9a-f]{6}$/, 'a color is written #rrggbb in small letters'),
})
export type Colour = Frozen<z.output<typeof colourSchema>>

/** What was found wrong on a surface (or in a whole room), how much and how bad. Amounts that do not apply are null. */
export const conditionSchema = z.strictObject({
  id: conditionIdSchema,
  on: z.discriminatedUnion('level', [
    z.strictObject({ level: z.literal('surface'), surface: surfaceRefSchema }),
    z.strictObject({
      level: z.literal('room'),
      roomId: roomIdSchema,
      surfaceClass: z.enum(surfaceClasses).nullable(),
    }),
  ]),
  kind: z.enum(conditionKinds),
  severity: z.enum(severities),
  length: lengthSchema.nullable(),
  /** Square millimetres. */
  areaMm2: z.number().min(0).max(1e10).nullable(),
  count: countSchema.nullable(),
  suspectedCause: shortText,
  /** The cause (a leak, a chimney) has been put right. */
  causeCured: z.boolean(),
  note: longText,
  /** File name of a photo, or null. */
  photo: shortText.nullable(),
  foundOn: localDateSchema.nullable(),
})
export type Condition = Frozen<z.output<typeof conditionSchema>>

/** Something in the way that stays in the house: comes off, is loosened, or is covered. */
export const keptItemSchema = z.strictObject({
  id: keptItemIdSchema,
  roomId: roomIdSchema,
  kind: z.enum(keptItemKinds),
  name: shortText,
  on: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('ceiling') }),
    z.strictObject({ kind: z.literal('wall'), wallId: wallIdSchema }),
    z.strictObject({ kind: z.literal('opening'), openingId: openingIdSchema }),
    z.strictObject({ kind: z.literal('room') }),
  ]),
  count: z.int().min(1).max(1000),
  handling: z.enum(keptItemHandlings),
  /** Wired alarms and sensors cannot come down; they are covered for the working hours only. */
  wired: z.boolean(),
  note: longText,
})
export type KeptItem = Frozen<z.output<typeof keptItemSchema>>
