import { expect } from 'vitest'
import { stepTitle } from '../../../core/specification/trade-words.ts'
import { toSquareFeet } from '../../../core/units/area.ts'
import { feet } from '../../../core/units/length.ts'
import { hasStep, notices, specifyOne, squareFoot, stepOf } from '../one-surface.ts'
import { comesBefore, stepList } from '../step-list.ts'

/** Worked cases by the rule's id. */
export const paintAndPlasterCases: Readonly<Record<string, () => void>> = {
  'loose-paint': () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['loosePaint', { areaMm2: 8 * squareFoot }]],
    })
    expect(toSquareFeet(stepOf(specification, 'walls/scrape/1').amounts.area)).toBeCloseTo(8, 9)
    expect(toSquareFeet(stepOf(specification, 'walls/spotPrime/1').amounts.area)).toBeCloseTo(8, 9)
    expect(stepTitle(stepOf(specification, 'walls/sand/1'))).toBe('Feather the edges of scraped paint')
    const glossy = specifyOne({
      surfaceClass: 'walls',
      conditions: [
        ['loosePaint', { areaMm2: 8 * squareFoot }],
        ['glossyOldPaint', {}],
      ],
    })
    expect(stepTitle(stepOf(glossy, 'walls/sand/1'))).toBe('Sand to dull the gloss')
    for (const [before, after] of [
      ['scrape', 'sand'],
      ['sand', 'vacuum'],
      ['vacuum', 'spotPrime'],
      ['spotPrime', 'coat'],
    ]) {
      expect(comesBefore(specification, `r/walls/${before}/1`, `r/walls/${after}/1`)).toBe(true)
    }
    // The craters that scraping leaves on plaster are skimmed flush; wood is feathered only.
    expect(toSquareFeet(stepOf(specification, 'walls/skim/craters').amounts.area)).toBeCloseTo(8, 9)
    expect(comesBefore(specification, 'r/walls/skim/craters', 'r/walls/sandFill/1')).toBe(true)
    const wood = specifyOne({
      surfaceClass: 'trim',
      conditions: [['loosePaint', { areaMm2: 8 * squareFoot }]],
    })
    expect(hasStep(wood, 'trim/skim/craters')).toBe(false)
    // Severe is primed all over, not in spots.
    const severe = specifyOne({
      surfaceClass: 'walls',
      conditions: [['loosePaint', { areaMm2: 8 * squareFoot, severity: 'severe' }]],
    })
    expect(toSquareFeet(stepOf(severe, 'walls/prime/1').amounts.area)).toBe(100)
    expect(hasStep(severe, 'walls/spotPrime/1')).toBe(false)
  },
  'glossy-paint': () => {
    const specification = specifyOne({
      surfaceClass: 'doors',
      coat: 'latexGlossy',
      existing: { sheen: 'gloss' },
    })
    expect(stepOf(specification, 'doors/sand/1').because.map((each) => each.ruleId)).toEqual(['glossy-paint'])
    expect(hasStep(specification, 'doors/prime/1')).toBe(false)
    // Flat paint stays unsanded.
    expect(hasStep(specifyOne({ surfaceClass: 'doors', coat: 'latexFlat' }), 'doors/sand/1')).toBe(false)
  },
  grease: () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      coat: 'latexGlossy',
      conditions: [['grease', { areaMm2: 20 * squareFoot }]],
    })
    expect(toSquareFeet(stepOf(specification, 'walls/wash/1').amounts.area)).toBeCloseTo(20, 9)
    expect(comesBefore(specification, 'r/walls/wash/1', 'r/walls/sand/1')).toBe(true)
  },
  'stress-crack': () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['stressCrack', { length: feet(9) }]],
    })
    expect(stepList(specification, 'r').filter((each) => each.startsWith('walls'))).toEqual([
      'walls/openCrack/1',
      'walls/vacuum/1',
      'walls/dampCrack/1',
      'walls/fill/1 settingFiller',
      'walls/tapeCrack/1',
      'walls/fill/2 dryingFiller',
      'walls/sandFill/1',
      'walls/dustOff/0',
      'walls/spotPrime/1 acrylicPrimer',
      'walls/dustOff/1',
      'walls/coat/1 latexWall',
      'walls/coat/2 latexWall',
    ])
    const slight = (substrate: 'plaster' | 'gypsumBoard') =>
      specifyOne({ surfaceClass: 'walls', substrate, conditions: [['stressCrack', { severity: 'slight' }]] })
    // A hairline gets no tape; board does not drink as plaster does.
    expect([
      hasStep(slight('plaster'), 'walls/tapeCrack/1'),
      hasStep(slight('plaster'), 'walls/dampCrack/1'),
    ]).toEqual([false, true])
    expect(hasStep(slight('gypsumBoard'), 'walls/dampCrack/1')).toBe(false)
    // 9 ft x 4 in = 3 sq ft primed.
    expect(toSquareFeet(stepOf(specification, 'walls/spotPrime/1').amounts.area)).toBeCloseTo(9 / 3, 9)
  },
  'moving-crack': () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['movingCrack', { length: feet(6), suspectedCause: 'settling' }]],
    })
    expect(notices(specification, 'cause')).toMatchObject([
      { hold: true, surfaceKeys: ['wall:r:north:whole'] },
    ])
    expect(notices(specification, 'cause')[0]?.sentence).toContain('settling')
    expect(hasStep(specification, 'walls/openCrack/1')).toBe(true)
    const cured = specifyOne({
      surfaceClass: 'walls',
      conditions: [['movingCrack', { length: feet(6), causeCured: true }]],
    })
    expect(notices(cured, 'cause')).toEqual([])
    // Come to rest it is filled as any other crack; while it moves, with what stretches and with mesh, or it is left.
    expect(stepOf(cured, 'walls/fill/1').productClass).toBe('settingFiller')
    expect(stepOf(specification, 'walls/fill/flexible').productClass).toBe('acrylicCaulk')
    expect(hasStep(specification, 'walls/fill/1')).toBe(false)
    expect(comesBefore(specification, 'r/walls/fill/flexible', 'r/walls/tapeCrack/1')).toBe(true)
    expect(comesBefore(specification, 'r/walls/tapeCrack/1', 'r/walls/fill/2')).toBe(true)
    const left = specifyOne({
      surfaceClass: 'walls',
      conditions: [['movingCrack', { length: feet(6) }]],
      rules: [['moving-crack', true, { leaveAsAgreed: 1 }]],
    })
    expect([hasStep(left, 'walls/openCrack/1'), left.holds]).toEqual([false, []])
    expect(notices(left, 'advice')[0]?.sentence).toContain('left as agreed')
  },
  'popped-fastener': () => {
    const specification = specifyOne({
      surfaceClass: 'ceiling',
      substrate: 'gypsumBoard',
      conditions: [['poppedFastener', { count: 9 }]],
    })
    expect(stepOf(specification, 'ceiling/driveFastener/1').amounts.count).toBe(9)
    expect(stepOf(specification, 'ceiling/fill/1').amounts.count).toBe(9)
    expect(comesBefore(specification, 'r/ceiling/driveFastener/1', 'r/ceiling/fill/1')).toBe(true)
  },
  'unsanded-patch': () => {
    const specification = specifyOne({ surfaceClass: 'walls', conditions: [['unsandedPatch', { count: 3 }]] })
    // A patch counted but not measured is taken for 1 sq ft.
    expect(toSquareFeet(stepOf(specification, 'walls/sandPatch/1').amounts.area)).toBeCloseTo(3 * 1, 9)
    expect(comesBefore(specification, 'r/walls/sandPatch/1', 'r/walls/spotPrime/1')).toBe(true)
  },
  hole: () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [
        ['hole', { count: 4 }],
        ['hole', { count: 1, severity: 'severe' }],
      ],
    })
    expect(stepOf(specification, 'walls/fill/2').amounts.count).toBe(4 + 1)
    // Only the severe one takes a third layer.
    expect(stepOf(specification, 'walls/fill/3').amounts.count).toBe(1)
    expect(
      notices(specification, 'advice').some((each) => each.sentence.includes('patched with board')),
    ).toBe(true)
    const wood = specifyOne({ surfaceClass: 'trim', conditions: [['hole', { count: 2 }]] })
    expect(stepOf(wood, 'trim/fill/1').productClass).toBe('woodFiller')
  },
  'loose-plaster-keys': () => {
    const specification = specifyOne({
      surfaceClass: 'ceiling',
      conditions: [
        ['loosePlasterKeys', { areaMm2: 6 * squareFoot, severity: 'severe' }],
        ['stressCrack', { length: feet(3) }],
      ],
    })
    expect(comesBefore(specification, 'r/ceiling/reattachPlaster/1', 'r/ceiling/openCrack/1')).toBe(true)
    expect(notices(specification, 'cause')).toMatchObject([{ hold: true }])
    expect(stepOf(specification, 'ceiling/reattachPlaster/1').cautions.map((each) => each.id)).toContain(
      'overhead',
    )
  },
  'unwanted-texture': () => {
    const specification = specifyOne({
      surfaceClass: 'ceiling',
      existing: { textured: true },
      conditions: [['unwantedTexture']],
    })
    expect(toSquareFeet(stepOf(specification, 'ceiling/skim/2').amounts.area)).toBe(100)
    expect(comesBefore(specification, 'r/ceiling/skim/2', 'r/ceiling/sandFill/1')).toBe(true)
    expect(comesBefore(specification, 'r/ceiling/sandFill/1', 'r/ceiling/prime/1')).toBe(true)
  },
  'new-plaster': () => {
    const specification = specifyOne({ surfaceClass: 'walls', coat: 'bare', conditions: [['newPlaster']] })
    expect(stepOf(specification, 'walls/prime/1').productClass).toBe('plasterSealer')
    expect(notices(specification, 'cause')[0]?.sentence).toContain('28 days')
    const cured = specifyOne({
      surfaceClass: 'walls',
      coat: 'bare',
      conditions: [['newPlaster', { causeCured: true }]],
    })
    expect(notices(cured, 'cause')).toEqual([])
  },
  'bare-compound': () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['bareJointCompound', { areaMm2: 12 * squareFoot }]],
    })
    expect(toSquareFeet(stepOf(specification, 'walls/spotPrime/1').amounts.area)).toBeCloseTo(12, 9)
    expect(comesBefore(specification, 'r/walls/sandFill/1', 'r/walls/spotPrime/1')).toBe(true)
  },
  'unknown-coat': () => {
    const specification = specifyOne({ surfaceClass: 'ceiling', coat: 'unknown' })
    expect(stepOf(specification, 'ceiling/prime/1').productClass).toBe('bondingPrimer')
    expect(notices(specification, 'advice')).toMatchObject([{ hold: true }])
    // A texture is never sanded to find out.
    expect(
      hasStep(
        specifyOne({ surfaceClass: 'ceiling', coat: 'unknown', existing: { textured: true } }),
        'ceiling/sand/1',
      ),
    ).toBe(false)
  },
  'bare-surface': () => {
    const primed = (substrate: 'wood' | 'metal' | 'gypsumBoard') =>
      stepOf(specifyOne({ surfaceClass: 'walls', substrate, coat: 'bare' }), 'walls/prime/1').productClass
    expect([primed('wood'), primed('metal'), primed('gypsumBoard')]).toEqual([
      'oilPrimer',
      'metalPrimer',
      'acrylicPrimer',
    ])
    // Wood that is to be seen is not painted over by a primer.
    const clear = specifyOne({ surfaceClass: 'trim', coat: 'bare', productClass: 'clearVarnish' })
    expect(hasStep(clear, 'trim/prime/1')).toBe(false)
    expect(hasStep(clear, 'trim/coat/1')).toBe(true)
  },
}
