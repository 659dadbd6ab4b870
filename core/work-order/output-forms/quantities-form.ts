import { z } from 'zod'
import { surfaceClasses } from '../../project/vocabulary.ts'
import { anyNumber, atLeastZero, outputHead } from './output-parts.ts'

const quantityFigures = {
  netAreaSqFt: anyNumber,
  policyAreaSqFt: anyNumber,
  equivalentAreaSqFt: anyNumber,
  lengthFt: atLeastZero,
  cuttingInFt: atLeastZero,
  maskingFt: atLeastZero,
  glassPerimeterFt: atLeastZero,
  count: atLeastZero,
}

export const quantitiesSchema = z.strictObject({
  ...outputHead('coatwright-quantities'),
  totals: z.strictObject(quantityFigures),
  rooms: z.array(
    z.strictObject({
      roomId: z.string(),
      name: z.string(),
      totals: z.strictObject(quantityFigures),
      surfaces: z.array(
        z.strictObject({
          surfaceKey: z.string(),
          surfaceClass: z.enum(surfaceClasses),
          grossAreaSqFt: anyNumber,
          deductedAreaSqFt: anyNumber,
          ...quantityFigures,
          reachHeightFt: anyNumber,
          derivation: z.array(
            z.strictObject({
              kind: z.enum(['gross', 'deduction', 'addition', 'length', 'note']),
              text: z.string(),
              areaSqFt: anyNumber.nullable(),
              lengthFt: anyNumber.nullable(),
              sourceId: z.string().nullable(),
            }),
          ),
        }),
      ),
    }),
  ),
})
