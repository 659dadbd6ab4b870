import { z } from 'zod'
import { type Frozen, idSchema, localDateSchema, pictureHashSchema, shortText } from './schema-parts.ts'
import { roomIdSchema } from './sketch-records.ts'
import { conditionIdSchema } from './survey-records.ts'
import { photoStages } from './vocabulary.ts'

const photoIdSchema = idSchema<'PhotoId'>()
export type PhotoId = z.output<typeof photoIdSchema>

/** A photo of a room or of what was found. The picture lies in the book beside the job, so that a job can be read without it. */
export const photoSchema = z.strictObject({
  id: photoIdSchema,
  of: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('room'), roomId: roomIdSchema }),
    z.strictObject({ kind: z.literal('finding'), conditionId: conditionIdSchema }),
  ]),
  picture: pictureHashSchema,
  /** The same picture for lists, plan and paper. */
  small: pictureHashSchema,
  stage: z.enum(photoStages),
  note: shortText,
  keptOn: localDateSchema.nullable(),
})
export type Photo = Frozen<z.output<typeof photoSchema>>
