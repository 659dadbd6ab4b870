import { expect } from 'vitest'
import { toSquareFeet } from '../../../core/units/area.ts'
import { notices, specifyOne, squareFoot, stepOf } from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

/** Worked cases by the rule's id. */
export const stainsAndMetalCases: Readonly<Record<string, () => void>> = {
  'water-stain': () => {
    const specification = specifyOne({
      surfaceClass: 'ceiling',
      conditions: [['waterStain', { areaMm2: 2 * squareFoot }]],
    })
    expect(toSquareFeet(stepOf(specification, 'ceiling/blockStain/1').amounts.area)).toBeCloseTo(2, 9)
    expect(notices(specification, 'cause')).toMatchObject([{ hold: true }])
  },
  soot: () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['sootOrSmoke', { areaMm2: 9 * squareFoot }]],
    })
    expect(comesBefore(specification, 'r/walls/wash/1', 'r/walls/blockStain/1')).toBe(true)
    // The wash dries 4 h.
    expect(specification.order.find((edge) => edge.before === 'r/walls/wash/1')?.minimumWait).toBe(240)
  },
  nicotine: () => {
    const specification = specifyOne({ surfaceClass: 'ceiling', conditions: [['nicotine']] })
    expect(toSquareFeet(stepOf(specification, 'ceiling/prime/1').amounts.area)).toBe(100)
    expect(stepOf(specification, 'ceiling/prime/1').productClass).toBe('stainBlockingPrimer')
  },
  mildew: () => {
    const specification = specifyOne({
      surfaceClass: 'ceiling',
      conditions: [['mildew', { areaMm2: 4 * squareFoot }]],
    })
    expect(specification.order.find((edge) => edge.before === 'r/ceiling/washMildew/1')?.minimumWait).toBe(
      24 * 60,
    )
    expect(stepOf(specification, 'ceiling/washMildew/1').cautions.map((each) => each.id)).toContain('bleach')
    expect(notices(specification, 'cause')).toMatchObject([{ hold: true }])
  },
  knots: () => {
    const specification = specifyOne({ surfaceClass: 'trim', conditions: [['knots', { count: 9 }]] })
    expect(stepOf(specification, 'trim/blockStain/1').productClass).toBe('shellacPrimer')
    // 9 spots of 4 x 4 in.
    expect(toSquareFeet(stepOf(specification, 'trim/blockStain/1').amounts.area)).toBeCloseTo(9 / 9, 9)
  },
  rust: () => {
    const specification = specifyOne({
      surfaceClass: 'radiators',
      substrate: 'metal',
      coat: 'oilPaint',
      conditions: [['rust', { areaMm2: 3 * squareFoot }]],
    })
    expect(comesBefore(specification, 'r/radiators/treatRust/1', 'r/radiators/spotPrime/1')).toBe(true)
    expect(stepOf(specification, 'radiators/spotPrime/1').productClass).toBe('metalPrimer')
  },
  radiator: () => {
    const specification = specifyOne({
      surfaceClass: 'radiators',
      substrate: 'metal',
      coat: 'latexFlat',
      productClass: 'latexWall',
    })
    expect(notices(specification, 'advice')[0]?.sentence).toContain('choose an enamel that withstands heat')
    expect(stepOf(specification, 'radiators/coat/1').cautions.map((each) => each.id)).toContain('heat')
  },
}
