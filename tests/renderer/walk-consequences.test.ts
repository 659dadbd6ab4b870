import { expect, test } from 'vitest'
import { compareSpecifications } from '../../core/specification/compare.ts'
import { chainOf } from '../../renderer/panels/parts/chain.ts'
import { chainWith } from '../../renderer/panels/parts/found/ConditionPaper.tsx'
import {
  foundCounts,
  newCondition,
  reachOf,
  withReach,
} from '../../renderer/panels/parts/found/condition-records.ts'
import { demoJob } from './station-jobs.ts'

const chain = chainOf(demoJob('plain-room'))
const ceiling = chain.takeoff.surfaces.find((surface) => surface.surfaceClass === 'ceiling')
if (ceiling === undefined) throw new Error('the plain room has a ceiling')
const peeling = newCondition(ceiling, '2027-03-29')

test('what is only thought about changes steps and hours, but measures nothing anew and stores nothing', () => {
  const before = chain.job.conditions
  const after = chainWith(chain, peeling)
  const change = compareSpecifications(chain.specification, after.specification)
  expect(change.appearing.map((step) => step.operation)).toContain('scrape')
  expect(after.estimate.totals.labourMinutes).toBeGreaterThan(chain.estimate.totals.labourMinutes)
  expect(after.takeoff).toBe(chain.takeoff)
  expect(chain.job.conditions).toBe(before)
})

test('a finding can be said of the surface, of its kind in the room, or of the room', () => {
  for (const reach of ['surface', 'class', 'room'] as const) {
    expect(reachOf(withReach(peeling, ceiling, reach))).toBe(reach)
  }
})

test('findings are counted on the surfaces they lie on', () => {
  const { job } = chainWith(chain, peeling)
  const was = foundCounts(chain.job, chain.takeoff).get(ceiling.key) ?? 0
  expect(foundCounts(job, chain.takeoff).get(ceiling.key)).toBe(was + 1)
})
