import { z } from 'zod'
import { worded } from '../project/schema-words.ts'
import { estimateSchema } from './output-forms/estimate-form.ts'
import { outputHead } from './output-forms/output-parts.ts'
import { quantitiesSchema } from './output-forms/quantities-form.ts'
import { scheduleSchema } from './output-forms/schedule-form.ts'
import { specificationSchema } from './output-forms/specification-form.ts'
import { workOrderFields } from './work-order-schema.ts'

export const workOrderSchema = z.strictObject({ ...outputHead('coatwright-work-order'), ...workOrderFields })

/** File name of each output and its form. */
export const outputSchemas = {
  quantities: quantitiesSchema,
  specification: specificationSchema,
  estimate: estimateSchema,
  schedule: scheduleSchema,
  'work-order': workOrderSchema,
} as const
export type OutputName = keyof typeof outputSchemas

const outputWords: Readonly<Record<OutputName, string>> = {
  quantities: 'Net areas, lengths and edges of every surface of a job, with how each figure came about.',
  specification:
    'The steps of a job in an order that works, why each is there, what waits for what, and what has to be decided first.',
  estimate: 'Hours, materials and every line of the price of a job.',
  schedule: 'Who works where and when, and how good the plan is known to be.',
  'work-order': 'What the cover, the sheet of each room set and the color record show.',
}

/** JSON Schema (draft 2020-12) of one output, as committed beside the demonstration data. */
export function outputJsonSchema(name: OutputName): string {
  const head = { name: `${name}-1`, title: `Coatwright ${name}, version 1`, description: outputWords[name] }
  const schema = worded(head, z.toJSONSchema(outputSchemas[name], { io: 'input' }))
  return `${JSON.stringify(schema, null, 2)}\n`
}
