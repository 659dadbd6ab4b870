import { expect, test } from 'vitest'
import { sundries } from '../../core/price/sundries.ts'
import type { Step, StepAmounts } from '../../core/specification/types.ts'
import { squareFeet } from '../../core/units/area.ts'
import { feet } from '../../core/units/length.ts'
import { handStep, noAmounts, plainJob, plainSpecification } from '../fixtures/plain-room.ts'

/** Pieces of each thing that steps use up. */
function pieces(steps: readonly Step[]): Record<string, number | null> {
  const lines = sundries(plainJob(), { ...plainSpecification, steps }, 0)
  return Object.fromEntries(lines.map((line) => [line.key, line.pieces]))
}

function step(operation: Step['operation'], amounts: Partial<StepAmounts>, changes: Partial<Step> = {}) {
  return handStep(`study/${operation}/1`, { operation, amounts: { ...noAmounts, ...amounts }, ...changes })
}

test('cracks take tape by the foot, fasteners two screws, loose plaster four washers a square foot', () => {
  // 310 ft is more than one roll of 300; 51 popped fasteners take 102 screws; 26 sq ft take 104 washers.
  expect(pieces([step('tapeCrack', { length: feet(310) })])).toMatchObject({ mesh: 2 })
  expect(pieces([step('driveFastener', { count: 51 })])).toMatchObject({ screws: 2 })
  expect(pieces([step('reattachPlaster', { area: squareFeet(26) })])).toMatchObject({ washers: 2 })
  expect(pieces([step('stripWallpaper', { area: squareFeet(601) })])).toMatchObject({ remover: 2 })
})

test('abrasives go by grit: coarse after scraping, 120 before the first coat, 220 between coats', () => {
  const between = step('sand', { area: squareFeet(301) }, { key: 'study/trim/sand/2' })
  expect(
    pieces([
      step('scrape', { area: squareFeet(41) }),
      step('sand', { area: squareFeet(81) }, { key: 'study/trim/sand/1' }),
      between,
    ]),
  ).toEqual({ abrasive80: 2, abrasive120: 2, abrasive220: 3 })
})

test('sleeves go by what is rolled and brushes by what is cut in, in length of trim or along glass', () => {
  const coat = (surfaceClass: Step['surfaceClass'], amounts: Partial<StepAmounts>) =>
    step('coat', amounts, { surfaceClass })
  expect(
    pieces([
      coat('walls', { area: squareFeet(2001), cuttingIn: feet(3001) }),
      coat('doors', { area: squareFeet(40), length: feet(4000) }),
      coat('trim', { area: squareFeet(500), length: feet(2000) }),
      coat('sash', { area: squareFeet(10), glassPerimeter: feet(1501) }),
    ]),
  ).toEqual({ sleeves: 2, smallSleeves: 1, brushes: 2, trimBrushes: 1, sashBrushes: 2 })
})

test('lead-safe work uses sheeting, tape, signs, bags, filters, suits and cloths; other work none of them', () => {
  const lead = [
    step('postSigns', { count: 1 }),
    step('sheetFloor', { area: squareFeet(900) }),
    step('sealOpenings', { count: 5 }),
    step('cleanDaily', { area: squareFeet(900) }, { daily: true }),
    step('bagSheeting', { count: 5 }),
    step('cleanFinal', { area: squareFeet(900) }),
    step('wipeCheck', { count: 25 }),
  ]
  // Floor 900 sq ft and five openings of 25 sq ft are 1,025 sq ft: two rolls. Two suits for a room.
  expect(pieces(lead)).toEqual({
    sheeting: 2,
    sheetingTape: 1,
    signs: 1,
    wasteBags: 1,
    filters: 1,
    suits: 2,
    cloths: 1,
  })
  expect(pieces([step('sand', { area: squareFeet(80) })])).toEqual({ abrasive120: 1 })
})

test('a price is whole pieces at what one costs, and says so', () => {
  const [line] = sundries(
    plainJob(),
    { ...plainSpecification, steps: [step('maskOff', { length: feet(181) })] },
    0,
  )
  expect(line).toMatchObject({ pieces: 2, priceCents: 1400 })
  expect(line?.derivation).toBe(`181 ft / 180 ft each = 2 at $7.00 (shop assumption)`)
})
