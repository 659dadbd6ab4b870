import { expect, test } from 'vitest'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { groupings, quantityGroups, totalsOf } from '../../renderer/panels/figures/quantity-groups.ts'
import { demoJob } from './station-jobs.ts'

const job = demoJob('old-house')
const takeoff = takeOff(job)
const specification = specify(job, takeoff)
const whole = totalsOf(takeoff.surfaces)

test('groups by room, storey and kind of surface sum to the whole house', () => {
  for (const grouping of ['room', 'storey', 'surfaceClass'] as const) {
    const groups = quantityGroups(job, takeoff, specification, grouping)
    for (const figure of ['netArea', 'length', 'cuttingIn', 'glassPerimeter', 'count'] as const) {
      expect(groups.reduce((sum, group) => sum + group.totals[figure], 0)).toBe(whole[figure])
    }
  }
})

test('every surface stands somewhere in every grouping', () => {
  for (const grouping of groupings) {
    const groups = quantityGroups(job, takeoff, specification, grouping)
    const keys = new Set(groups.flatMap((group) => group.surfaces.map((surface) => surface.key)))
    expect(keys.size).toBe(takeoff.surfaces.length)
  }
})
