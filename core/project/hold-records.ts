import { z } from 'zod'
import { type Frozen, idSchema, localDateSchema, longText, shortText } from './schema-parts.ts'

const holdIdSchema = idSchema<'HoldId'>()
export type HoldId = z.output<typeof holdIdSchema>

/**
 * What somebody said of a hold: who sees to it, when it is expected, when and by whom it was cleared. The hold itself follows from what
 * was found (`Specification.holds`); its key names room, surfaces and kind, so that the record outlives a new specification.
 */
export const holdSchema = z.strictObject({
  id: holdIdSchema,
  holdKey: z.string().min(1).max(8000),
  whoSeesToIt: shortText,
  /** Null when nobody knows; then the plan goes by the usual number of days and says so. */
  expectedOn: localDateSchema.nullable(),
  /** A hold counts as cleared once both a day and a name are there. */
  clearedOn: localDateSchema.nullable(),
  clearedBy: shortText,
  note: longText,
})
export type HoldRecord = Frozen<z.output<typeof holdSchema>>
