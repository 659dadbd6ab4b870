import { expect, test } from 'vitest'
import { quantityTotals } from '../../core/quantities/quantity-totals.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { DerivationLine, SurfaceQuantity } from '../../core/quantities/takeoff-types.ts'
import { inches } from '../../core/units/length.ts'
import { parseLength } from '../../core/units/parse-length.ts'
import { demoJob } from '../renderer/station-jobs.ts'

const jobs = (['plain-room', 'l-shaped-room', 'old-house'] as const).map((name) => ({
  name,
  surfaces: takeOff(demoJob(name)).surfaces,
}))

function areaOf(surface: SurfaceQuantity, kind: DerivationLine['kind']): number {
  return surface.derivation
    .filter((line) => line.kind === kind)
    .reduce((sum, line) => sum + (line.area ?? 0), 0)
}

function lengthOf(surface: SurfaceQuantity, start: string): number {
  return surface.derivation
    .filter((line) => line.text.startsWith(start))
    .reduce((sum, line) => sum + (line.length ?? 0), 0)
}

test.each(jobs)('the lines under a figure add up to it, on every surface of $name', ({ surfaces }) => {
  for (const surface of surfaces) {
    const [gross, deducted, added] = (['gross', 'deduction', 'addition'] as const).map((kind) =>
      areaOf(surface, kind),
    ) as [number, number, number]
    expect(gross, surface.key).toBe(surface.grossArea)
    expect(deducted, surface.key).toBe(surface.deductedArea)
    expect(gross - deducted + added, surface.key).toBe(surface.netArea)
    expect(lengthOf(surface, 'cut in along'), surface.key).toBe(surface.cuttingIn)
    expect(lengthOf(surface, 'mask along'), surface.key).toBe(surface.masking)
  }
})

test.each(jobs)(
  'what a line about edges names one by one adds up to its length, on every surface of $name',
  ({ surfaces }) => {
    const sixteenth = inches(1 / 16)
    for (const { key, derivation } of surfaces) {
      for (const { text, length } of derivation.filter(({ text }) => /^(cut in|mask) along/.test(text))) {
        const parts = text.split(' + ').map((part) => {
          const read = parseLength(/\d+' [^']*"$/.exec(part)?.[0] ?? '', 'imperial')
          if (!read.ok) throw new Error(`${key}: ${text}`)
          return read.length
        })
        const named = parts.reduce<number>((sum, part) => sum + part, 0)
        // Each is shown to the nearest sixteenth of an inch.
        expect(Math.abs(named - (length ?? 0)), `${key}: ${text}`).toBeLessThanOrEqual(
          (parts.length * sixteenth) / 2,
        )
      }
    }
  },
)

test('a line for the rule of openings stands under a wall only where that rule gives another area', () => {
  const exact = demoJob('plain-room')
  const walls = (job: typeof exact) =>
    takeOff(job).surfaces.filter(({ surfaceClass }) => surfaceClass === 'walls')
  const notes = (surface: SurfaceQuantity) => surface.derivation.filter(({ kind }) => kind === 'note')
  expect(walls(exact).flatMap(notes)).toEqual([])
  const whole = { ...exact, houseRules: { ...exact.houseRules, openingPolicy: 'noDeduction' as const } }
  for (const wall of walls(whole)) {
    const noted = notes(wall).map(({ area }) => area)
    expect(noted, wall.key).toEqual(wall.policyArea === wall.netArea ? [] : [wall.policyArea])
  }
  expect(walls(whole).some((wall) => wall.deductedArea > 0)).toBe(true)
})

test.each(jobs)(
  'the totals of the house are its surfaces one by one, in every figure of $name',
  ({ surfaces }) => {
    const totals = quantityTotals(surfaces)
    for (const [name, total] of Object.entries(totals)) {
      const summed = surfaces.reduce((sum, surface) => sum + surface[name as keyof typeof totals], 0)
      expect(total, name).toBe(summed)
      expect(total, name).toBeGreaterThan(0)
    }
  },
)
