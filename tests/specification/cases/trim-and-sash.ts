import { expect } from 'vitest'
import { specify } from '../../../core/specification/specify.ts'
import { toSquareFeet } from '../../../core/units/area.ts'
import { feet, toFeet } from '../../../core/units/length.ts'
import { finishFor } from '../../fixtures/job-builder.ts'
import { builtOf, quantity, takeoffOf, wallOf } from '../hand-takeoff.ts'
import {
  fixedWindow,
  hasStep,
  notices,
  oneSurfaceJob,
  specifyOne,
  squareFoot,
  stepOf,
} from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

const stair = { id: 'stair' as never, roomId: 'r' as never, kind: 'stair' } as never

/** Worked cases by the rule's id. */
export const trimAndSashCases: Readonly<Record<string, () => void>> = {
  'bare-wood': () => {
    const specification = specifyOne({
      surfaceClass: 'trim',
      conditions: [['bareWood', { areaMm2: 5 * squareFoot }]],
    })
    // The oil primer takes a day; of those that do bare wood the quick stain blocker (2 h) is the plainest.
    expect(stepOf(specification, 'trim/spotPrime/1').productClass).toBe('stainBlockingPrimer')
    expect(notices(specification, 'advice')[0]?.sentence).toContain('18% moisture')
    // Caulk holds on primer and not on bare wood; spots that are primed for holes have nothing to do with the gaps.
    const gap = ['caulkGap', { length: feet(12) }] as const
    const gapBesideBare = specifyOne({
      surfaceClass: 'trim',
      conditions: [['bareWood', { areaMm2: 5 * squareFoot }], gap],
    })
    expect(comesBefore(gapBesideBare, 'r/trim/spotPrime/1', 'r/trim/caulk/1')).toBe(true)
    const gapBesideHole = specifyOne({ surfaceClass: 'trim', conditions: [['hole', { count: 1 }], gap] })
    expect(hasStep(gapBesideHole, 'trim/spotPrime/1')).toBe(true)
    expect(comesBefore(gapBesideHole, 'r/trim/spotPrime/1', 'r/trim/caulk/1')).toBe(false)
  },
  'caulk-gap': () => {
    const specification = specifyOne({
      surfaceClass: 'trim',
      conditions: [['caulkGap', { length: feet(12) }]],
    })
    expect(toFeet(stepOf(specification, 'trim/caulk/1').amounts.length)).toBe(12)
    // Acrylic caulk waits 4 h before paint.
    expect(specification.order.find((edge) => edge.before === 'r/trim/caulk/1')?.minimumWait).toBe(240)
    const alkyd = specifyOne({
      surfaceClass: 'trim',
      coat: 'oilPaint',
      productClass: 'alkydEnamel',
      conditions: [['caulkGap', { length: feet(12) }]],
    })
    expect(notices(alkyd, 'compatibility')[0]?.source).toBe('MIL-HDBK-1110 s. 6.2.1')
  },
  'missing-putty': () => {
    const specification = specifyOne({
      surfaceClass: 'sash',
      conditions: [['missingPutty', { length: feet(8) }]],
    })
    expect(comesBefore(specification, 'r/sash/sealBare/1', 'r/sash/puttySash/1')).toBe(true)
    expect(specification.order.find((edge) => edge.before === 'r/sash/puttySash/1')?.minimumWait).toBe(
      7 * 24 * 60,
    )
  },
  'painted-shut': () => {
    const specification = specifyOne({
      surfaceClass: 'sash',
      coat: 'oilPaint',
      quantity: { count: 3 },
      conditions: [['paintedShut']],
    })
    expect(stepOf(specification, 'sash/freeSash/1').amounts.count).toBe(3)
    expect(comesBefore(specification, 'r/sash/freeSash/1', 'r/sash/sand/1')).toBe(true)
  },
  'fixed-sash': () => {
    const specification = specifyOne({
      surfaceClass: 'sash',
      productClass: 'latexWall',
      sheen: 'flat',
      quantity: { glass: 40 },
      job: { openings: [fixedWindow] },
    })
    expect(stepOf(specification, 'fixedSash/coat/2').because.map((each) => each.ruleId)).toContain(
      'fixed-sash',
    )
    expect(toFeet(stepOf(specification, 'fixedSash/coat/2').amounts.glassPerimeter)).toBe(40)
    expect(toFeet(stepOf(specification, 'fixedSash/scrapeGlass/1').amounts.glassPerimeter)).toBe(40)
    expect(hasStep(specification, 'fixedSash/easeSash/1')).toBe(false)
  },
  'moving-sash': () => {
    const specification = specifyOne({ surfaceClass: 'sash' })
    expect(stepOf(specification, 'sash/coat/1').because.map((each) => each.ruleId)).toContain('moving-sash')
    expect(comesBefore(specification, 'r/sash/coat/2', 'r/sash/easeSash/1')).toBe(true)
    expect(comesBefore(specification, 'r/sash/easeSash/1', 'r/sash/scrapeGlass/1')).toBe(true)
  },
  doors: () => {
    const specification = specifyOne({ surfaceClass: 'doors', productClass: 'latexWall', sheen: 'flat' })
    expect(stepOf(specification, 'doors/coat/2').because.map((each) => each.ruleId)).toEqual(['doors'])
  },
  stairs: () => {
    const specification = specifyOne({ surfaceClass: 'stairs', job: { builtItems: [stair] } })
    expect(notices(specification, 'advice')[0]?.sentence).toContain('every other tread')
    expect(stepOf(specification, 'stairs/coat/1').effects.closesRoom).toBe(true)
    expect(stepOf(specification, 'stairs/coat/1').because.map((each) => each.ruleId)).toContain('stairs')
    // The way out comes last: after walls and trim.
    const job = oneSurfaceJob({ surfaceClass: 'stairs', job: { builtItems: [stair] } })
    const walls = finishFor('walls', 'latexWall', 'sage', 'flat')
    const both = specify(
      { ...job, finishes: { ...job.finishes, [walls.id]: walls } },
      takeoffOf(
        quantity('r', builtOf('r', 'stair'), 'stairs', { area: 60 }),
        quantity('r', wallOf('r', 'north'), 'walls', { area: 96 }),
      ),
    )
    expect(comesBefore(both, 'r/walls/coat/2', 'r/stairs/coat/1')).toBe(true)
  },
  'oil-sand': () => {
    const specification = specifyOne({ surfaceClass: 'trim', coat: 'oilPaint', productClass: 'alkydEnamel' })
    expect(toSquareFeet(stepOf(specification, 'trim/sand/1').amounts.area)).toBe(100)
    // Oil over oil needs no primer.
    expect(hasStep(specification, 'trim/prime/1')).toBe(false)
  },
  'oil-bonding-primer': () => {
    const specification = specifyOne({ surfaceClass: 'trim', coat: 'oilPaint' })
    expect(stepOf(specification, 'trim/prime/1').productClass).toBe('bondingPrimer')
    // Neither primer nor deglosser: said as a hold.
    const without = specifyOne({
      surfaceClass: 'trim',
      coat: 'oilPaint',
      rules: [['oil-bonding-primer', false]],
    })
    expect(notices(without, 'compatibility')).toMatchObject([{ hold: true }])
  },
  'oil-deglosser': () => {
    const rules = [
      ['oil-bonding-primer', false],
      ['oil-deglosser', true],
    ] as const
    const specification = specifyOne({
      surfaceClass: 'trim',
      coat: 'oilPaint',
      quantity: { area: 50, length: 100 },
      rules,
    })
    // Wiping 50 sq ft at 90 an hour takes 33.3 min, coating at 50 an hour 60 min; the window is 30 - 5 = 25 min: 60 / 25 -> 3 batches.
    const wipes = specification.steps.filter((step) => step.operation === 'degloss')
    expect(wipes.map((step) => step.key)).toEqual([
      'r/trim/degloss/2.1',
      'r/trim/degloss/2.2',
      'r/trim/degloss/2.3',
    ])
    expect(wipes.reduce((sum, step) => sum + step.amounts.length, 0)).toBe(feet(100))
    const inside = specification.order.filter((edge) => edge.maximumWait !== null)
    // A batch takes 60 / 3 = 20 min to coat: it may wait 30 - 20 = 10 min after wiping.
    expect(inside.map((edge) => [edge.before, edge.after, edge.minimumWait, edge.maximumWait])).toEqual(
      [1, 2, 3].map((batch) => [`r/trim/degloss/2.${batch}`, `r/trim/coat/1.${batch}`, 5, 10]),
    )
    expect(comesBefore(specification, 'r/trim/coat/1.1', 'r/trim/degloss/2.2')).toBe(true)
    expect(comesBefore(specification, 'r/trim/coat/1.3', 'r/trim/coat/2')).toBe(true)
    expect(notices(specification, 'compatibility')).toEqual([])
    // Edges count as they do in the hours: 240 ft cut in at 240 an hour is one more hour, (60 + 60) / 25 -> 5 batches.
    const cut = specifyOne({
      surfaceClass: 'trim',
      coat: 'oilPaint',
      quantity: { area: 50, length: 100, cuttingIn: 240 },
      rules,
    })
    expect(cut.steps.filter((step) => step.operation === 'degloss')).toHaveLength(5)
  },
  varnish: () => {
    const paint = specifyOne({ surfaceClass: 'trim', coat: 'varnish' })
    expect(stepOf(paint, 'trim/prime/1').productClass).toBe('stainBlockingPrimer')
    const clear = specifyOne({ surfaceClass: 'trim', coat: 'varnish', productClass: 'clearVarnish' })
    expect(hasStep(clear, 'trim/prime/1')).toBe(false)
    expect(hasStep(clear, 'trim/sand/1')).toBe(true)
  },
  shellac: () => {
    expect(stepOf(specifyOne({ surfaceClass: 'doors', coat: 'shellac' }), 'doors/prime/1').productClass).toBe(
      'shellacPrimer',
    )
    const clear = specifyOne({ surfaceClass: 'doors', coat: 'shellac', productClass: 'clearVarnish' })
    expect(hasStep(clear, 'doors/prime/1')).toBe(false)
    expect(hasStep(clear, 'doors/sand/1')).toBe(true)
  },
}
