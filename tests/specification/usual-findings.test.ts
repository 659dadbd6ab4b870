import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { resolveFinish } from '../../core/project/scopes.ts'
import { surfaceClasses } from '../../core/project/vocabulary.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import { compareSpecifications } from '../../core/specification/compare.ts'
import { specify } from '../../core/specification/specify.ts'
import { usualAmounts, usualFindings } from '../../core/specification/usual-findings.ts'
import { squareFeet, zeroArea } from '../../core/units/area.ts'
import { feet, metres, zeroLength } from '../../core/units/length.ts'
import { conditionOn } from '../fixtures/job-builder.ts'
import { demoJob } from '../renderer/station-jobs.ts'
import { takeoffOf } from './hand-takeoff.ts'

const years = [null, 1926, 1949, 1950, 1985, 1986, 2015]
const wall = { netArea: squareFeet(100), length: zeroLength }

test('every class of surface has six different usual findings in a house of any year', () => {
  for (const surfaceClass of surfaceClasses) {
    for (const year of years) {
      const kinds = usualFindings(year, surfaceClass).map(({ kind }) => kind)
      expect(new Set(kinds).size, `${surfaceClass} in ${year}`).toBe(6)
    }
  }
})

test('nobody is offered a finding that brings no work, on any class of surface of a real house', () => {
  const house: Job = { ...demoJob('old-house'), conditions: {}, existing: {} }
  const { surfaces } = createTakeOff()(house)
  const idle: string[] = []
  for (const surfaceClass of surfaceClasses) {
    const surface = surfaces.find(
      (each) => each.surfaceClass === surfaceClass && resolveFinish(house, each.surface)?.paint === true,
    )
    if (surface === undefined) throw new Error(`the old house has painted ${surfaceClass}`)
    const alone = takeoffOf(surface)
    const clean = specify(house, alone)
    const offered = years.flatMap((year) => usualFindings(year, surfaceClass))
    for (const usual of new Map(offered.map((each) => [each.kind, each])).values()) {
      const amounts = usualAmounts(usual, surface, 'imperial')
      const c1 = conditionOn('c1', usual.kind, surface.surface, amounts)
      const { appearing, changed } = compareSpecifications(
        clean,
        specify({ ...house, conditions: { c1 } }, alone),
      )
      if (appearing.length + changed.length === 0) idle.push(`${surfaceClass}: ${usual.kind}`)
    }
  }
  expect(idle).toEqual([])
})

test('a usual amount is round in the units of the job and never more than the surface has', () => {
  const [crack, peeling] = [usualFindings(1926, 'ceiling')[0], usualFindings(1926, 'ceiling')[1]]
  if (crack === undefined || peeling === undefined) throw new Error('a ceiling has usual findings')
  expect(usualAmounts(crack, wall, 'imperial')).toEqual({ length: feet(8), areaMm2: null, count: null })
  expect(usualAmounts(crack, wall, 'metric').length).toBe(metres(2.4))
  expect(usualAmounts(crack, { ...wall, length: feet(3) }, 'imperial').length).toBe(feet(3))
  expect(usualAmounts(peeling, wall, 'metric').areaMm2).toBe(600_000)
  expect(usualAmounts(peeling, { ...wall, netArea: zeroArea }, 'metric').areaMm2).toBe(0)
})
