import { z } from 'zod'
import { passKinds } from '../passes/pass-types.ts'
import { localDateSchema, localDateTimeSchema } from '../project/schema-parts.ts'
import { worded } from '../project/schema-words.ts'
import { keptItemKinds, productClasses, sheens, skills, surfaceClasses } from '../project/vocabulary.ts'
import { relaxations } from '../schedule/job/planning-site.ts'
import { holdKinds, operations, woodworkKinds } from '../specification/types.ts'
import { workOrderFields } from './work-order-schema.ts'

/**
 * The published form of the JSON files the program writes. Every key carries its unit. A change that readers would stumble over
 * raises `version`.
 */
const number = z.number()
const atLeastZero = z.number().min(0)
const cents = z.int()
const date = localDateSchema
/** Local time on site; the zone stands at the head of the file. */
const moment = localDateTimeSchema

function head<Format extends string>(format: Format) {
  return {
    format: z.literal(format),
    version: z.literal(1),
    jobTitle: z.string(),
    unitSystem: z.enum(['imperial', 'metric']),
  }
}

const quantityFigures = {
  netAreaSqFt: number,
  policyAreaSqFt: number,
  equivalentAreaSqFt: number,
  lengthFt: atLeastZero,
  cuttingInFt: atLeastZero,
  maskingFt: atLeastZero,
  glassPerimeterFt: atLeastZero,
  count: atLeastZero,
}

export const quantitiesSchema = z.strictObject({
  ...head('coatwright-quantities'),
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
          grossAreaSqFt: number,
          deductedAreaSqFt: number,
          ...quantityFigures,
          reachHeightFt: number,
          derivation: z.array(
            z.strictObject({
              kind: z.enum(['gross', 'deduction', 'addition', 'length', 'note']),
              text: z.string(),
              areaSqFt: number.nullable(),
              lengthFt: number.nullable(),
              sourceId: z.string().nullable(),
            }),
          ),
        }),
      ),
    }),
  ),
})

const stepFigures = {
  areaSqFt: number,
  equivalentAreaSqFt: number,
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
  ...head('coatwright-specification'),
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
      minimumWaitElapsedMinutes: number,
      maximumWaitElapsedMinutes: number.nullable(),
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
      notBefore: date.nullable(),
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
      expectedOn: date.nullable(),
      expectedIsAssumed: z.boolean(),
      usualDays: atLeastZero,
      cleared: z.strictObject({ on: date, by: z.string() }).nullable(),
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

export const estimateSchema = z.strictObject({
  ...head('coatwright-estimate'),
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
      priceCents: cents,
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
          unitPriceCents: cents,
        }),
      ),
      priceCents: cents,
      source: z.string(),
      derivation: z.string(),
    }),
  ),
  /** What labor is priced by: the accepted plan, a first plan that stands in for it, or hours alone. */
  labourBasis: z.enum(['accepted', 'first', 'hours']),
  rooms: z.array(z.strictObject({ roomId: z.string(), name: z.string(), priceCents: cents })),
  totals: z.strictObject({
    labourPersonMinutes: atLeastZero,
    labourCents: cents,
    materialsCents: cents,
    sundriesCents: cents,
    overheadCents: cents,
    contingencyCents: cents,
    profitCents: cents,
    beforeTaxCents: cents,
    taxCents: cents,
    totalCents: cents,
  }),
  doubts: z.array(z.string()),
})

export const scheduleSchema = z.strictObject({
  ...head('coatwright-schedule'),
  timeZone: z.string(),
  startsOn: date,
  finishesOn: date,
  tasks: z.array(
    z.strictObject({
      taskKey: z.string(),
      passKey: z
        .string()
        .optional()
        .describe('The pass; a coat that goes on the next day is a task on each day.'),
      name: z.string().optional(),
      roomSetId: z.string().optional().describe('Main room of the rooms worked and given back as one.'),
      roomId: z.string(),
      stepKeys: z.array(z.string()),
      startsAt: moment,
      endsAt: moment,
      segments: z.array(z.strictObject({ startsAt: moment, endsAt: moment })),
      crewMemberIds: z.array(z.string()),
      dryUntil: moment
        .nullable()
        .optional()
        .describe('What the task leaves wet is touch dry then, day and night counted; null for dry work.'),
    }),
  ),
  roomsOutOfUse: z
    .array(z.strictObject({ roomId: z.string(), from: moment, to: moment }))
    .optional()
    .describe(
      'First and last day, drying included, on which the household does without a room set; it is given back between two stretches.',
    ),
  verdict: z
    .strictObject({
      rulesBroken: z
        .int()
        .min(0)
        .describe('Counted by a judge that shares no code with the search; 0 in every plan that is written.'),
      earliestFinishOn: date
        .nullable()
        .describe('No plan of these tasks can finish before this day; null where that was not worked out.'),
      daysFromBestAtMost: z
        .int()
        .min(0)
        .nullable()
        .describe('Days from earliestFinishOn to finishesOn; 0 means that the last day is proved best.'),
      leastCostCents: cents
        .nullable()
        .describe('No plan of these tasks can cost less; null where not worked out.'),
      costCents: z
        .strictObject({
          pay: cents.describe('Attendance of everybody times the wage with burden.'),
          siteDays: cents.describe('Working days from the first to the last on site.'),
          roomDays: cents.describe('Days on which the household does without a room.'),
          handOvers: cents.describe(
            'Each time a room goes over to somebody else, or a coat goes on after a night.',
          ),
          total: cents.describe('The sum of the four.'),
        })
        .describe('What plans are compared by; days and hand-overs by the rules of the job.'),
      roomDaysOutOfUse: z.int().min(0),
      paidMinutes: atLeastZero.describe(
        'Attendance of everybody, setting up and leaving counted, breaks not.',
      ),
      promisesMoved: z
        .int()
        .min(0)
        .describe('Tasks of an accepted plan that this one moves to another day or to others.'),
      notKept: z
        .array(
          z.strictObject({
            what: z.enum(relaxations),
            id: z.string(),
          }),
        )
        .describe('What could not be asked of the plan as it was written down: a pin, a room, or a task.'),
    })
    .optional()
    .describe('How good the plan is known to be.'),
})

export const workOrderSchema = z.strictObject({ ...head('coatwright-work-order'), ...workOrderFields })

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
