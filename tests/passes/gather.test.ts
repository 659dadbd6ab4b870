import fc from 'fast-check'
import { test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import type { Passes } from '../../core/passes/pass-types.ts'
import { labour } from '../../core/price/labour.ts'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { Takeoff } from '../../core/quantities/takeoff-types.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import { lShapedRoom } from '../../demo-data/l-shaped-room.ts'
import { oldHouse } from '../../demo-data/old-house.ts'
import { plainRoom } from '../../demo-data/plain-room.ts'
import { randomHouse } from '../specification/random-house.ts'
import { randomWork } from './random-work.ts'
import { expectSound } from './sound-passes.ts'

interface Gathered {
  readonly passes: Passes
  readonly specification: Specification
  readonly minutes: ReadonlyMap<string, ReturnType<typeof labour>['minutes']>
}

function gathered(job: Job, takeoff: Takeoff = takeOff(job)): Gathered {
  const specification = specify(job, takeoff)
  const minutes = new Map(labour(job, specification).steps.map((line) => [line.stepKey, line.minutes]))
  return { passes: gatherPasses(job, specification, minutes), specification, minutes }
}

test.each([
  ['old house', oldHouse()],
  ['plain room', plainRoom()],
  ['room with a corner', lShapedRoom()],
])(
  'the passes of the %s hold every step once, in an order without a circle or a wait inside',
  (_name, job) => {
    const { passes, specification, minutes } = gathered(job)
    expectSound(passes, specification, minutes)
  },
)

test('so do those of a room with anything found in it', () => {
  fc.assert(
    fc.property(randomHouse, ({ job, takeoff }) => {
      const { passes, specification, minutes } = gathered(job, takeoff)
      expectSound(passes, specification, minutes)
    }),
    { numRuns: 120, seed: 12 },
  )
})

test('and those of work that no rule book would ask for', () => {
  fc.assert(
    fc.property(randomWork, ({ job, specification, minutes }) => {
      expectSound(gatherPasses(job, specification, minutes), specification, minutes)
    }),
    { numRuns: 400, seed: 12 },
  )
})
