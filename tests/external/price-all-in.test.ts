import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import type { SurfaceClass } from '../../core/project/vocabulary.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { toFeet } from '../../core/units/length.ts'

/**
 * What the demonstration house costs per unit, everything in it, beside ranges that contractors and consumer guides print on public
 * pages (read in 2026, excerpts only; dollars of 2020 to 2026). Sources by letter:
 *  A  a contractor's posted price list, labor and paint: wall $1.75 and ceiling $2.00 per sq ft in two coats; base $5.50 and crown $6.50
 *     per ft in three coats; door $190 (that is $95 a face); casing $100 a side; window $220 per opening.
 *  B  a contractor's page: labor and materials $2 to $6 per sq ft, a plain wall $2.75; trim $1 to $6 per ft.
 *  C  a contractor's page: trim $1 to $4 per ft, up to 25 % more above 8 ft; each side of a door with its trim $45 to $200; window
 *     frames and trim $25 to $150.
 *  D  consumer guides: walls $1 to $2 per sq ft; trim $1 to $6 per ft; window $97 to $785 inside and outside.
 * They are for houses in fair order; an old one that is lived in stands in their upper half.
 */
const ranges: Readonly<Record<string, readonly [number, number]>> = {
  'wall, per sq ft': [1, 6], // D's least, B's most
  'ceiling, per sq ft': [1, 6], // as walls; A prints 2.00
  'trim, per ft': [1, 6.5], // B and D 1 to 6, A 5.50 to 6.50
  'door, per face': [45, 200], // C
  'sash, each': [25, 220], // C's least, A's most
}

const read = readJobFile(
  readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'old-house.json'), 'utf8'),
)
if (!read.ok) throw new Error(read.problem.sentence)
const job = read.value
const takeoff = takeOff(job)
const specification = specify(job, takeoff)
const priced = estimate(job, takeoff, specification)

/** The whole price before tax, shared out by the hours spent on each class of surface: setting up, goods and profit go along. */
function dollarsOf(surfaceClass: SurfaceClass): number {
  const minutes = new Map(priced.labour.steps.map((step) => [step.stepKey, step.minutes as number]))
  const spent = (of: (step: (typeof specification.steps)[number]) => boolean) =>
    specification.steps.filter(of).reduce((sum, step) => sum + (minutes.get(step.key) ?? 0), 0)
  const share =
    spent((step) => step.surfaceClass === surfaceClass) / spent((step) => step.surfaceClass !== null)
  return (priced.totals.beforeTax / 100) * share
}

/** What is worked on of a class, in the unit it is priced by. */
function worked(surfaceClass: SurfaceClass, unit: 'area' | 'length' | 'count'): number {
  const keys = new Set(
    specification.steps
      .filter((step) => step.surfaceClass === surfaceClass && step.operation === 'coat')
      .flatMap((step) => step.surfaceKeys),
  )
  return takeoff.surfaces
    .filter(({ key }) => keys.has(key))
    .reduce((sum, { netArea, length, count }) => {
      return sum + (unit === 'area' ? toSquareFeet(netArea) : unit === 'length' ? toFeet(length) : count)
    }, 0)
}

test.each([
  ['wall, per sq ft', 'walls', 'area'],
  ['ceiling, per sq ft', 'ceiling', 'area'],
  ['trim, per ft', 'trim', 'length'],
  ['door, per face', 'doors', 'count'],
  ['sash, each', 'sash', 'count'],
] as const)(
  'the demonstration house, all in, %s, lies in the published range',
  (name, surfaceClass, unit) => {
    const [least, most] = ranges[name] as readonly [number, number]
    const dollars = dollarsOf(surfaceClass) / worked(surfaceClass, unit)
    expect(dollars, `${name}: $${dollars.toFixed(2)}`).toBeGreaterThanOrEqual(least)
    expect(dollars, `${name}: $${dollars.toFixed(2)}`).toBeLessThanOrEqual(most)
  },
)
