import { expect } from 'vitest'
import { toSquareFeet } from '../../../core/units/area.ts'
import { toFeet } from '../../../core/units/length.ts'
import { hasStep, notices, specifyOne, squareFoot, stepOf } from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

/** Worked cases by the rule's id. */
export const coatsAndDustCases: Readonly<Record<string, () => void>> = {
  'sheen-advice': () => {
    const conditions = [['poppedFastener', { count: 2 }]] as const
    const satin = specifyOne({ surfaceClass: 'walls', sheen: 'satin', conditions })
    expect(notices(satin, 'advice')[0]?.sentence).toContain('gloss level 4')
    expect(notices(specifyOne({ surfaceClass: 'walls', sheen: 'matte', conditions }), 'advice')).toEqual([])
  },
  'colour-change': () => {
    const coats = (colourId: string) =>
      specifyOne({ surfaceClass: 'walls', colourId }).steps.filter((step) => step.operation === 'coat').length
    // Found white: white again 1, off-white 2, medium 2, strong over one lighter by two steps or more 3.
    expect(['white', 'off-white', 'sage', 'red'].map(coats)).toEqual([1, 2, 2, 3])
  },
  'tinted-primer': () => {
    expect(stepOf(specifyOne({ surfaceClass: 'walls', colourId: 'red' }), 'walls/prime/1').colourId).toBe(
      'red',
    )
    const paler = specifyOne({ surfaceClass: 'walls', existing: { depth: 'deep' }, colourId: 'off-white' })
    expect(stepOf(paler, 'walls/prime/1').colourId).toBe('off-white')
  },
  'enamel-coats': () => {
    const specification = specifyOne({ surfaceClass: 'trim', existing: { sheen: 'semiGloss' } })
    expect(stepOf(specification, 'trim/coat/2').because.map((each) => each.ruleId)).toEqual(['enamel-coats'])
  },
  'patched-coats': () => {
    const specification = specifyOne({ surfaceClass: 'walls', conditions: [['hole', { count: 1 }]] })
    expect(stepOf(specification, 'walls/coat/2').because.map((each) => each.ruleId)).toEqual([
      'patched-coats',
    ])
  },
  'coats-asked-for': () => {
    const reasons = (moreCoats: number) =>
      specifyOne({ surfaceClass: 'walls', colourId: 'sage', moreCoats })
        .steps.filter((step) => step.operation === 'coat')
        .map(({ because }) => because.map(({ ruleId }) => ruleId))
    expect(reasons(0)).toEqual([['colour-change'], ['colour-change']])
    expect(reasons(1)).toEqual([['colour-change'], ['colour-change'], ['coats-asked-for']])
  },
  'scuff-between-coats': () => {
    const specification = specifyOne({ surfaceClass: 'trim' })
    // A light sanding is taken for 0.3 of a full one.
    expect(stepOf(specification, 'trim/sand/2').difficulty).toBe(0.3)
    expect(comesBefore(specification, 'r/trim/coat/1', 'r/trim/sand/2')).toBe(true)
    expect(comesBefore(specification, 'r/trim/sand/2', 'r/trim/coat/2')).toBe(true)
  },
  'vacuum-after-rough-work': () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['loosePaint', { areaMm2: 8 * squareFoot }]],
    })
    expect(toSquareFeet(stepOf(specification, 'walls/vacuum/1').amounts.area)).toBeCloseTo(8, 9)
  },
  'dust-before-primer': () => {
    const specification = specifyOne({ surfaceClass: 'walls', conditions: [['hole', { count: 9 }]] })
    expect(comesBefore(specification, 'r/walls/sandFill/1', 'r/walls/dustOff/0')).toBe(true)
    expect(comesBefore(specification, 'r/walls/dustOff/0', 'r/walls/spotPrime/1')).toBe(true)
  },
  'dust-before-coat': () => {
    const plain = specifyOne({ surfaceClass: 'walls', colourId: 'sage' })
    expect([hasStep(plain, 'walls/dustOff/1'), hasStep(plain, 'walls/dustOff/2')]).toEqual([false, false])
    const dusty = specifyOne({ surfaceClass: 'walls', conditions: [['hole', { count: 1 }]] })
    expect(hasStep(dusty, 'walls/dustOff/1')).toBe(true)
    const poleSanded = specifyOne({
      surfaceClass: 'walls',
      colourId: 'sage',
      rules: [['dust-before-coat', true, { betweenCoats: 1 }]],
    })
    expect(comesBefore(poleSanded, 'r/walls/sand/2', 'r/walls/dustOff/2')).toBe(true)
    expect(comesBefore(poleSanded, 'r/walls/dustOff/2', 'r/walls/coat/2')).toBe(true)
    // A light sanding is 0.3 of a full one here too.
    expect(stepOf(poleSanded, 'walls/sand/2').difficulty).toBe(0.3)
  },
  'mask-kept-edges': () => {
    const specification = specifyOne({ surfaceClass: 'trim', quantity: { masking: 44 } })
    expect(toFeet(stepOf(specification, 'trim/maskOff/1').amounts.length)).toBe(44)
    expect(comesBefore(specification, 'r/trim/maskOff/1', 'r/trim/coat/1')).toBe(true)
    const off = specification.order.find((edge) => edge.after === 'r/trim/unmask/1')
    // The tape comes off at touch dry, 1 h, not at recoat, 4 h.
    expect(off).toMatchObject({ before: 'r/trim/coat/2', minimumWait: 60 })
  },
}
