import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import { defaultRates } from '../../core/price/default-rates.ts'
import { stepMinutes } from '../../core/price/labour.ts'
import { mostMoreCoats } from '../../core/project/survey-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { buildJob, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'

const finish = finishFor('walls', 'latexWall', 'red', 'eggshell')
const job = buildJob({
  rooms: [rectangularRoom('study', 12, 10)],
  existing: [existingOn('walls', 'gypsumBoard', 'latexFlat')],
  finishes: [{ ...finish, moreCoats: mostMoreCoats }],
  rates: defaultRates,
})
const specification = specify(job, takeOff(job))

test('as many coats as can be asked for dry one after the other, each in a pass of its own', () => {
  const coats = specification.steps
    .filter(({ operation, surfaceClass }) => operation === 'coat' && surfaceClass === 'walls')
    .toSorted((one, other) => one.coat - other.coat)
  expect(coats.length).toBeGreaterThan(4)
  for (const [index, before] of coats.slice(0, -1).entries()) {
    const after = coats[index + 1]
    const order = specification.order.find((each) => each.before === before.key && each.after === after?.key)
    expect(order?.minimumWait, `${before.key} before ${after?.key}`).toBeGreaterThan(0)
  }
  const minutes = new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)]))
  const { passes } = gatherPasses(job, specification, minutes)
  for (const { stepKeys } of passes)
    expect(coats.filter(({ key }) => stepKeys.includes(key)).length).toBeLessThanOrEqual(1)
})
