import fc from 'fast-check'
import type { Job } from '../../core/project/job.ts'
import {
  type ConditionKind,
  conditionKinds,
  existingCoats,
  type ProductClass,
  type SurfaceClass,
  severities,
} from '../../core/project/vocabulary.ts'
import type { Takeoff } from '../../core/quantities/takeoff-types.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import { feet } from '../../core/units/length.ts'
import {
  allowancesOn,
  buildJob,
  conditionOn,
  existingOn,
  finishFor,
  keptIn,
  rectangularRoom,
} from '../fixtures/job-builder.ts'
import { plainSurfaces, takeoffOf } from './hand-takeoff.ts'

const classes: readonly SurfaceClass[] = ['ceiling', 'walls', 'trim']
const kindsOn: Readonly<Record<string, readonly ConditionKind[]>> = {
  ceiling: conditionKinds.filter(
    (kind) => !['paintedShut', 'missingPutty', 'caulkGap', 'knots', 'bareWood', 'rust'].includes(kind),
  ),
  walls: conditionKinds.filter(
    (kind) => !['paintedShut', 'missingPutty', 'knots', 'bareWood', 'rust'].includes(kind),
  ),
  trim: [
    'loosePaint',
    'glossyOldPaint',
    'hole',
    'knots',
    'bareWood',
    'caulkGap',
    'grease',
    'mildew',
    'waterStain',
  ],
}

/** Something found on one of the surfaces. */
export const randomCondition = fc
  .record({
    surfaceClass: fc.constantFrom(...classes),
    index: fc.nat(40),
    severity: fc.constantFrom(...severities),
    amount: fc.integer({ min: 0, max: 40 }),
    measured: fc.boolean(),
    causeCured: fc.boolean(),
  })
  .map(({ surfaceClass, index, severity, amount, measured, causeCured }) => {
    const kinds = kindsOn[surfaceClass] ?? []
    const kind = kinds[index % kinds.length] ?? 'hole'
    const amounts = measured ? { length: feet(amount), areaMm2: amount * 92_903.04, count: amount } : {}
    return { kind, surfaceClass, changes: { severity, causeCured, ...amounts } }
  })

const finishes: Readonly<Record<string, readonly ProductClass[]>> = {
  ceiling: ['latexCeiling', 'latexWall'],
  walls: ['latexWall', 'waterborneEnamel'],
  trim: ['waterborneEnamel', 'alkydEnamel'],
}

/** A job of one room with anything found in it, and its takeoff. */
export const randomHouse = fc
  .record({
    coats: fc.tuple(
      fc.constantFrom(...existingCoats),
      fc.constantFrom(...existingCoats),
      fc.constantFrom('bare', 'latexFlat', 'latexGlossy', 'oilPaint', 'varnish', 'shellac', 'unknown'),
    ),
    choice: fc.nat(1),
    colourId: fc.constantFrom('white', 'off-white', 'sage', 'red'),
    conditions: fc.array(randomCondition, { maxLength: 7 }),
    roomOrder: fc.constantFrom('byProfile', 'trimFirst', 'ceilingFirst', 'trimLast'),
    deglosser: fc.boolean(),
    yearBuilt: fc.constantFrom(null, 1925, 1965, 1995),
    textured: fc.boolean(),
    allowances: fc.boolean(),
  })
  .map((given) => {
    const job = buildJob({
      header: { yearBuilt: given.yearBuilt, childrenOrPets: true, occupied: true },
      houseRules: { roomOrder: given.roomOrder as 'byProfile' },
      rooms: [rectangularRoom('r', 12, 10)],
      trimRuns: [
        {
          id: 'r-base',
          roomId: 'r',
          kind: 'baseboard',
          walls: null,
          height: feet(1),
          girth: feet(1),
          level: feet(0),
          profiled: false,
        } as never,
      ],
      existing: classes.map((each, index) =>
        existingOn(each, index === 2 ? 'wood' : 'plaster', (given.coats[index] ?? 'unknown') as 'bare', {
          textured: given.textured && index === 0,
          sheen: index === 2 ? 'gloss' : 'flat',
        }),
      ),
      finishes: classes.map((each) =>
        finishFor(
          each,
          finishes[each]?.[given.choice] ?? 'latexWall',
          given.colourId,
          each === 'trim' ? 'satin' : 'flat',
        ),
      ),
      conditions: given.conditions.map(({ kind, surfaceClass, changes }, index) =>
        conditionOn(`c${index}`, kind, { roomId: 'r', surfaceClass }, changes),
      ),
      keptItems: [
        keptIn('alarm', 'r', 'smokeAlarm', 'coverDaily', { wired: true }),
        keptIn('plates', 'r', 'plate', 'takeOff'),
      ],
      rules: [
        ...(given.deglosser ? [{ id: 'oil-deglosser' as never, on: true, numbers: {} }] : []),
        ...(given.allowances ? allowancesOn : []),
      ],
    })
    return { job, takeoff: takeoffOf(...plainSurfaces('r')) }
  })

export const runs = { numRuns: 200, seed: 7 } as const

/** Looks at the specification of every one of 200 random houses. */
export function everySpecification(
  check: (specification: Specification, job: Job, takeoff: Takeoff) => void,
): void {
  fc.assert(
    fc.property(randomHouse, ({ job, takeoff }) => {
      check(specify(job, takeoff), job, takeoff)
    }),
    runs,
  )
}
