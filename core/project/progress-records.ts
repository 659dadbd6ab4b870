import { z } from 'zod'
import { type Frozen, idSchema, localDateTimeSchema, longText } from './schema-parts.ts'
import { crewMemberIdSchema } from './shop-records.ts'

const markIdSchema = idSchema<'MarkId'>()
const pinIdSchema = idSchema<'PinId'>()
export type MarkId = z.output<typeof markIdSchema>
export type PinId = z.output<typeof pinIdSchema>

/** Steps have stable keys so that marks and pins outlive a new specification. */
const stepKeySchema = z.string().min(1).max(400)

/** Something that happened to a step on site. Marks are only ever added; the latest says how the step stands. */
export const markSchema = z.strictObject({
  id: markIdSchema,
  stepKey: stepKeySchema,
  mark: z.enum(['started', 'done', 'skipped', 'redo', 'cleared']),
  at: localDateTimeSchema,
  crewMemberIds: z.array(crewMemberIdSchema),
  actualMinutes: z.int().min(0).max(100_000).nullable(),
  note: longText,
})
export type Mark = Frozen<z.output<typeof markSchema>>

/**
 * A pass held by hand at a moment, with or without named people. A pin set before there were passes names a step: it holds the pass that has
 * the step (`pinsOnPasses`).
 */
export const pinSchema = z.strictObject({
  id: pinIdSchema,
  passKey: stepKeySchema,
  startsAt: localDateTimeSchema,
  crewMemberIds: z.array(crewMemberIdSchema),
})
export type Pin = Frozen<z.output<typeof pinSchema>>
