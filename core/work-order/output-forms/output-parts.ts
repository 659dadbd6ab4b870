import { z } from 'zod'
import { localDateSchema, localDateTimeSchema } from '../../project/schema-parts.ts'

/**
 * The published form of the JSON files the program writes. Every key carries its unit. A change that readers would stumble over
 * raises `version`.
 */
export const anyNumber = z.number()
export const atLeastZero = z.number().min(0)
export const wholeCents = z.int()
export const day = localDateSchema
/** Local time on site; the zone stands at the head of the file. */
export const momentOnSite = localDateTimeSchema

/** What every published file begins with. */
export function outputHead<Format extends string>(format: Format) {
  return {
    format: z.literal(format),
    version: z.literal(1),
    jobTitle: z.string(),
    unitSystem: z.enum(['imperial', 'metric']),
  }
}
