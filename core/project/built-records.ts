import { z } from 'zod'
import {
  countSchema,
  type Frozen,
  idSchema,
  lengthSchema,
  positiveLengthSchema,
  shortText,
} from './schema-parts.ts'
import { roomIdSchema } from './sketch-records.ts'

export const builtItemIdSchema = idSchema<'BuiltItemId'>()
export type BuiltItemId = z.output<typeof builtItemIdSchema>

export const builtItemSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('stair'),
    id: builtItemIdSchema,
    roomId: roomIdSchema,
    name: shortText,
    treads: countSchema,
    risers: countSchema,
    stepLength: positiveLengthSchema,
    treadDepth: positiveLengthSchema,
    riserHeight: positiveLengthSchema,
    paintTreads: z.boolean(),
    paintRisers: z.boolean(),
    stringers: countSchema,
    stringerLength: lengthSchema,
    stringerGirth: lengthSchema,
    balusters: countSchema,
    balusterHeight: lengthSchema,
    balusterGirth: lengthSchema,
    newels: countSchema,
    newelHeight: lengthSchema,
    newelGirth: lengthSchema,
    handrailLength: lengthSchema,
    handrailGirth: lengthSchema,
  }),
  z.strictObject({
    kind: z.literal('radiator'),
    id: builtItemIdSchema,
    roomId: roomIdSchema,
    name: shortText,
    pattern: z.enum(['column', 'tube']),
    columns: z.int().min(1).max(6),
    heightInches: z.union([z.literal(20), z.literal(23), z.literal(26), z.literal(32), z.literal(38)]),
    sections: z.int().min(1).max(60),
  }),
  z.strictObject({
    kind: z.literal('cabinet'),
    id: builtItemIdSchema,
    roomId: roomIdSchema,
    name: shortText,
    width: positiveLengthSchema,
    height: positiveLengthSchema,
    depth: positiveLengthSchema,
    doors: countSchema,
    drawers: countSchema,
    paintInside: z.boolean(),
  }),
  z.strictObject({
    kind: z.literal('shelf'),
    id: builtItemIdSchema,
    roomId: roomIdSchema,
    name: shortText,
    length: positiveLengthSchema,
    depth: positiveLengthSchema,
    thickness: positiveLengthSchema,
    count: countSchema,
  }),
  z.strictObject({
    kind: z.literal('mantel'),
    id: builtItemIdSchema,
    roomId: roomIdSchema,
    name: shortText,
    width: positiveLengthSchema,
    height: positiveLengthSchema,
    legWidth: positiveLengthSchema,
    friezeHeight: positiveLengthSchema,
    shelfDepth: positiveLengthSchema,
  }),
])
export type BuiltItem = Frozen<z.output<typeof builtItemSchema>>
