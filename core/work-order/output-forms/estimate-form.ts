import { z } from 'zod'
import { productClasses, sheens, surfaceClasses } from '../../project/vocabulary.ts'
import { atLeastZero, outputHead, wholeCents } from './output-parts.ts'

export const estimateSchema = z.strictObject({
  ...outputHead('coatwright-estimate'),
  lines: z.array(
    z.strictObject({
      kind: z.enum([
        'labour',
        'material',
        'sundry',
        'overhead',
        'contingency',
        'profit',
        'materialsTax',
        'labourTax',
      ]),
      label: z.string(),
      roomId: z.string().nullable(),
      surfaceClass: z.enum(surfaceClasses).nullable(),
      priceCents: wholeCents,
      derivation: z.string(),
    }),
  ),
  labour: z.array(
    z.strictObject({
      stepKey: z.string(),
      personMinutes: atLeastZero,
      times: z.int().min(1),
      derivation: z.string(),
    }),
  ),
  materials: z.array(
    z.strictObject({
      productId: z.string(),
      productName: z.string(),
      productClass: z.enum(productClasses),
      colourId: z.string().nullable(),
      colourName: z.string().nullable(),
      sheen: z.enum(sheens).nullable(),
      neededGallons: atLeastZero,
      boughtGallons: atLeastZero,
      containers: z.array(
        z.strictObject({
          name: z.string(),
          gallons: atLeastZero,
          count: z.int().min(1),
          unitPriceCents: wholeCents,
        }),
      ),
      priceCents: wholeCents,
      source: z.string(),
      derivation: z.string(),
    }),
  ),
  /** What labor is priced by: the accepted plan, a first plan that stands in for it, or hours alone. */
  labourBasis: z.enum(['accepted', 'first', 'hours']),
  rooms: z.array(z.strictObject({ roomId: z.string(), name: z.string(), priceCents: wholeCents })),
  totals: z.strictObject({
    labourPersonMinutes: atLeastZero,
    labourCents: wholeCents,
    materialsCents: wholeCents,
    sundriesCents: wholeCents,
    overheadCents: wholeCents,
    contingencyCents: wholeCents,
    profitCents: wholeCents,
    beforeTaxCents: wholeCents,
    taxCents: wholeCents,
    totalCents: wholeCents,
  }),
  doubts: z.array(z.string()),
})
