import { expect } from 'vitest'
import { toSquareFeet } from '../../../core/units/area.ts'
import { feet } from '../../../core/units/length.ts'
import { hasStep, notices, specifyOne, squareFoot, stepOf } from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

/** Worked cases by the rule's id. */
export const chalkAndPaperCases: Readonly<Record<string, () => void>> = {
  'calcimine-seal': () => {
    const specification = specifyOne({
      surfaceClass: 'ceiling',
      coat: 'calcimine',
      conditions: [['stressCrack', { length: feet(9) }]],
    })
    expect(comesBefore(specification, 'r/ceiling/openCrack/1', 'r/ceiling/sealChalk/1')).toBe(true)
    const wait = specification.order.find((edge) => edge.before === 'r/ceiling/sealChalk/1')
    // The sealer dries 16 h before the first filler.
    expect(wait).toMatchObject({ after: 'r/ceiling/fill/1', minimumWait: 16 * 60, ruleId: 'calcimine-seal' })
    // Without a calcimine sealer on the list an oil primer does it.
    const found = specifyOne({ surfaceClass: 'ceiling', conditions: [['chalking']], job: { products: [] } })
    expect(stepOf(found, 'ceiling/sealChalk/1').productClass).toBe('calcimineSealer')
    expect(notices(found, 'advice').some((each) => each.sentence.includes('wipe test'))).toBe(true)
  },
  'calcimine-wash-off': () => {
    const rules = [
      ['calcimine-seal', false],
      ['calcimine-wash-off', true],
    ] as const
    const specification = specifyOne({
      surfaceClass: 'ceiling',
      coat: 'calcimine',
      conditions: [['stressCrack', { length: feet(9) }]],
      rules,
    })
    const wait = specification.order.find((edge) => edge.before === 'r/ceiling/washOffCalcimine/1')
    expect(wait).toMatchObject({ after: 'r/ceiling/openCrack/1', minimumWait: 24 * 60 })
    expect(comesBefore(specification, 'r/ceiling/sealBare/1', 'r/ceiling/fill/1')).toBe(true)
    // Both ways at once is a contradiction that is said, not resolved.
    const both = specifyOne({
      surfaceClass: 'ceiling',
      coat: 'calcimine',
      rules: [['calcimine-wash-off', true]],
    })
    expect(both.clashes[0]?.ids).toEqual(['r', 'calcimine-seal', 'calcimine-wash-off'])
  },
  'wallpaper-strip': () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['oldWallpaper', { areaMm2: 40 * squareFoot }]],
    })
    expect(toSquareFeet(stepOf(specification, 'walls/stripWallpaper/1').amounts.area)).toBeCloseTo(40, 9)
    expect(comesBefore(specification, 'r/walls/washOffSize/1', 'r/walls/sealBare/1')).toBe(true)
    expect(stepOf(specification, 'walls/sealBare/1').productClass).toBe('plasterSealer')
    // 8 torn places per 100 sq ft: 3.2 on 40 sq ft, 3 whole ones; nobody noted them.
    const fill = stepOf(specification, 'walls/fill/1')
    expect(fill.amounts.count).toBe(3)
    expect(fill.because).toMatchObject([{ ruleId: 'wallpaper-strip', conditionIds: [] }])
    expect(comesBefore(specification, 'r/walls/sealBare/1', 'r/walls/fill/1')).toBe(true)
    expect(comesBefore(specification, 'r/walls/fill/1', 'r/walls/sandFill/1')).toBe(true)
    const none = specifyOne({
      surfaceClass: 'walls',
      coat: 'wallpaper',
      rules: [['wallpaper-strip', true, { repairsPerHundred: 0 }]],
    })
    expect(hasStep(none, 'walls/stripWallpaper/1')).toBe(true)
    expect(hasStep(none, 'walls/fill/1')).toBe(false)
  },
  'wallpaper-keep': () => {
    const rules = [
      ['wallpaper-strip', false],
      ['wallpaper-keep', true],
    ] as const
    const specification = specifyOne({ surfaceClass: 'walls', coat: 'wallpaper', rules })
    expect(hasStep(specification, 'walls/stripWallpaper/1')).toBe(false)
    expect(hasStep(specification, 'walls/sealBare/1')).toBe(true)
    expect(notices(specification, 'compatibility')[0]?.sentence).toContain('seams may open')
  },
}
