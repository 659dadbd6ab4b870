import { z } from 'zod'
import { passKinds } from '../../passes/pass-types.ts'
import { keptItemKinds, productClasses, sheens, skills, surfaceClasses } from '../../project/vocabulary.ts'
import { holdKinds, operations, woodworkKinds } from '../../specification/types.ts'
import { anyNumber, atLeastZero, day, outputHead } from './output-parts.ts'

const stepFigures = {
  areaSqFt: anyNumber,
  equivalentAreaSqFt: anyNumber,
  lengthFt: atLeastZero,
  cuttingInFt: atLeastZero,
  glassPerimeterFt: atLeastZero,
  count: atLeastZero,
}

/** The figures of all kinds add up to those of the step. */
const woodworkPart = z.strictObject({
  kind: z.enum(woodworkKinds),
  ...stepFigures,
  personMinutes: atLeastZero,
})

const because = z.strictObject({
  ruleId: z.string(),
  reason: z.string(),
  source: z.string(),
  conditionIds: z.array(z.string()),
})

export const specificationSchema = z.strictObject({
  ...outputHead('coatwright-specification'),
  steps: z.array(
    z.strictObject({
      stepKey: z.string(),
      roomId: z.string(),
      surfaceClass: z.enum(surfaceClasses).nullable(),
      groupKey: z.string(),
      surfaceKeys: z.array(z.string()),
      keptItems: z.array(z.strictObject({ keptItemId: z.string(), kind: z.enum(keptItemKinds).nullable() })),
      operation: z.enum(operations),
      coat: z.int().min(0),
      productClass: z.enum(productClasses).nullable(),
      productId: z.string().nullable(),
      colourId: z.string().nullable(),
      sheen: z.enum(sheens).nullable(),
      ...stepFigures,
      woodwork: z.array(woodworkPart),
      difficultyFactor: atLeastZero,
      skill: z.enum(skills),
      touchDryElapsedMinutes: atLeastZero,
      splittable: z.enum(['no', 'break', 'night']),
      daily: z.boolean(),
      because: z.array(because),
      cautions: z.array(z.strictObject({ text: z.string(), rule: z.string() })),
    }),
  ),
  order: z.array(
    z.strictObject({
      before: z.string(),
      after: z.string(),
      minimumWaitElapsedMinutes: anyNumber,
      maximumWaitElapsedMinutes: anyNumber.nullable(),
      reason: z.string(),
      source: z.string(),
    }),
  ),
  roomSets: z.array(
    z.strictObject({ roomSetId: z.string(), name: z.string(), roomIds: z.array(z.string()) }),
  ),
  /** What is done in one go, in a valid order of work; every step is in exactly one pass, and in one of its lines. */
  passes: z.array(
    z.strictObject({
      passKey: z.string(),
      roomSetId: z.string(),
      roomIds: z.array(z.string()),
      kind: z.enum(passKinds),
      name: z.string(),
      stepKeys: z.array(z.string()),
      personMinutes: atLeastZero,
      people: z.strictObject({ min: z.int().min(1), max: z.int().min(1) }),
      skills: z.array(z.enum(skills)),
      breaking: z.enum(['never', 'natural']),
      smallestPartPersonMinutes: atLeastZero.nullable(),
      wetForElapsedMinutes: atLeastZero.nullable(),
      dusty: z.boolean(),
      fumesForElapsedMinutes: atLeastZero.nullable(),
      closedForElapsedMinutes: atLeastZero.nullable(),
      holdKeys: z.array(z.string()),
      notBefore: day.nullable(),
      cautions: z.array(z.strictObject({ text: z.string(), rule: z.string() })),
      lines: z.array(
        z.strictObject({
          words: z.string(),
          operation: z.enum(operations),
          surfaceClass: z.enum(surfaceClasses).nullable(),
          coat: z.int().min(0),
          productId: z.string().nullable(),
          colourId: z.string().nullable(),
          sheen: z.enum(sheens).nullable(),
          stepKeys: z.array(z.string()),
          ...stepFigures,
          woodwork: z.array(z.strictObject({ kind: z.enum(woodworkKinds), ...stepFigures })),
          personMinutes: atLeastZero,
        }),
      ),
    }),
  ),
  passOrder: z.array(
    z.strictObject({
      before: z.string(),
      after: z.string(),
      atLeastElapsedMinutes: atLeastZero,
      atMostElapsedMinutes: atLeastZero.nullable(),
      sameOrder: z.boolean(),
      reason: z.string(),
    }),
  ),
  holds: z.array(
    z.strictObject({
      key: z.string(),
      roomId: z.string(),
      surfaceKeys: z.array(z.string()),
      kind: z.enum(holdKinds),
      reason: z.string(),
      whoSeesToIt: z.string(),
      expectedOn: day.nullable(),
      expectedIsAssumed: z.boolean(),
      usualDays: atLeastZero,
      cleared: z.strictObject({ on: day, by: z.string() }).nullable(),
      stepKeys: z.array(z.string()),
      source: z.string(),
    }),
  ),
  notices: z.array(
    z.strictObject({
      kind: z.string(),
      roomId: z.string().nullable(),
      surfaceKeys: z.array(z.string()),
      sentence: z.string(),
      source: z.string(),
      hold: z.boolean(),
      holdKey: z.string().optional(),
    }),
  ),
  clashes: z.array(z.strictObject({ sentence: z.string(), ids: z.array(z.string()) })),
})
