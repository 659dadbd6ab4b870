import { expect, test } from 'vitest'
import { quantityTotals } from '../../core/quantities/quantity-totals.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { groupings, quantityGroups } from '../../core/specification/quantity-groups.ts'
import { specify } from '../../core/specification/specify.ts'
import { demoJob } from '../renderer/station-jobs.ts'

const job = demoJob('old-house')
const takeoff = takeOff(job)
const specification = specify(job, takeoff)
const whole = quantityTotals(takeoff.surfaces)

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
