import { z } from 'zod'
import { type CollectionName, recordSchemas, singleSchemas } from './job.ts'
import { pictureHashSchema } from './schema-parts.ts'
import { worded } from './schema-words.ts'
import { newestVersion } from './upgrades/file-upgrades.ts'

export const jobFileFormat = 'coatwright-job'
export const jobFileVersion = newestVersion

type Lists = { readonly [Name in CollectionName]: z.ZodArray<(typeof recordSchemas)[Name]> }

/** No real job comes near; it keeps a damaged or hostile file from filling the memory. */
const mostRecords = 20_000

const lists = Object.fromEntries(
  Object.entries(recordSchemas).map(([name, schema]) => [name, z.array(schema).max(mostRecords)]),
) as Lists

/** Pictures on their way: two for a photo, and those of papers. */
const mostPictures = 4000
/** Characters of base64 for the largest picture a book keeps. */
const longestPicture = 2_700_000

const travelingPicture = z.strictObject({
  hash: pictureHashSchema,
  base64: z
    .string()
    .max(longestPicture)
    .regex(/^[A-Za-z0-9+/]+={0,2}$/, 'a picture is written in base64'),
})
export type TravelingPicture = z.output<typeof travelingPicture>

/** The form of a job file. Lengths are millimetres and money is cents, and the file says so itself. */
export const jobFileSchema = z.strictObject({
  format: z.literal(jobFileFormat),
  version: z.literal(jobFileVersion),
  units: z.strictObject({ length: z.literal('mm'), money: z.literal('cent') }),
  ...singleSchemas,
  ...lists,
  /** Left out by a file without pictures; photos whose pictures do not travel say so where they are shown. */
  pictures: z.array(travelingPicture).max(mostPictures).optional(),
})

/** The published schema of the file form (JSON Schema 2020-12), for anybody who writes or checks job files elsewhere. */
export function jobFileJsonSchema(): object {
  const head = {
    name: `job-${jobFileVersion}`,
    title: `Coatwright job file, version ${jobFileVersion}`,
    description:
      'A whole job of Coatwright: the sketch of the house, what was found, what it shall become, the lists of the shop and what happened on site. Lengths are millimeters, money is whole cents. References between records, overlaps and outlines are checked beyond this schema when a file is read.',
  }
  return worded(head, z.toJSONSchema(jobFileSchema, { io: 'input' }))
}
