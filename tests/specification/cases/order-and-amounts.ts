import { expect } from 'vitest'
import type { RuleSetting } from '../../../core/project/shop-records.ts'
import type { RoomOrder } from '../../../core/project/vocabulary.ts'
import { specify } from '../../../core/specification/specify.ts'
import { toSquareFeet } from '../../../core/units/area.ts'
import { feet, inches, toFeet, zeroLength } from '../../../core/units/length.ts'
import { buildJob, existingOn, finishFor, rectangularRoom } from '../../fixtures/job-builder.ts'
import { plainSurfaces, takeoffOf } from '../hand-takeoff.ts'
import { hasStep, notices, specifyOne, squareFoot, stepOf } from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

function threePartJob(roomOrder: RoomOrder, profiled: boolean) {
  return buildJob({
    rooms: [rectangularRoom('r', 12, 10)],
    houseRules: { roomOrder },
    trimRuns: [
      {
        id: 'r-base' as never,
        roomId: 'r' as never,
        kind: 'baseboard',
        walls: null,
        height: inches(6),
        girth: inches(6),
        level: zeroLength,
        profiled,
      },
    ],
    existing: [
      existingOn('ceiling', 'plaster', 'latexFlat'),
      existingOn('walls', 'plaster', 'latexFlat'),
      existingOn('trim', 'wood', 'latexFlat'),
    ],
    finishes: [
      finishFor('ceiling', 'latexCeiling', 'off-white', 'flat'),
      finishFor('walls', 'latexWall', 'sage', 'flat'),
      finishFor('trim', 'waterborneEnamel', 'white', 'satin'),
    ],
  })
}

/** Worked cases by the rule's id. */
export const orderAndAmountsCases: Readonly<Record<string, () => void>> = {
  'craft-order': () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [
        ['hole', { count: 1 }],
        ['waterStain', { areaMm2: squareFoot }],
      ],
    })
    expect(comesBefore(specification, 'r/walls/fill/2', 'r/walls/blockStain/1')).toBe(true)
    expect(comesBefore(specification, 'r/walls/spotPrime/1', 'r/walls/coat/1')).toBe(true)
  },
  'caulk-after-primer': () => {
    const specification = specifyOne({
      surfaceClass: 'trim',
      coat: 'oilPaint',
      conditions: [['caulkGap', { length: feet(4) }]],
      rules: [
        ['caulk-after-primer', true],
        ['caulk-before-primer', false],
      ],
    })
    expect(comesBefore(specification, 'r/trim/prime/1', 'r/trim/caulk/1')).toBe(true)
  },
  'caulk-before-primer': () => {
    const gap = {
      surfaceClass: 'trim',
      coat: 'oilPaint',
      conditions: [
        ['caulkGap', { length: feet(4) }],
        ['hole', { count: 1 }],
      ],
    } as const
    const before = specifyOne(gap)
    expect(comesBefore(before, 'r/trim/sand/1', 'r/trim/caulk/1')).toBe(true)
    expect(comesBefore(before, 'r/trim/caulk/1', 'r/trim/prime/1')).toBe(true)
    // Gaps and holes lie apart: neither is closed before the other.
    expect(comesBefore(before, 'r/trim/sandFill/1', 'r/trim/caulk/1')).toBe(false)
    expect(comesBefore(before, 'r/trim/caulk/1', 'r/trim/sandFill/1')).toBe(false)
    // Both on contradict each other, and both are named.
    const both = specifyOne({ ...gap, rules: [['caulk-after-primer', true]] })
    expect(both.clashes).toHaveLength(1)
    expect(both.clashes[0]).toMatchObject({ kind: 'ruleClash' })
    expect(both.clashes[0]?.ids.slice(0, 2).toSorted()).toEqual(['caulk-after-primer', 'caulk-before-primer'])
  },
  'room-order': () => {
    // Last coat of one part before the first of the next, in each of the three orders and by profile.
    const orderIn = (roomOrder: RoomOrder, profiled: boolean) => {
      const specification = specify(threePartJob(roomOrder, profiled), takeoffOf(...plainSurfaces('r')))
      const firsts = specification.steps.filter((step) => step.operation === 'coat' && step.coat === 1)
      expect(
        comesBefore(specification, `r/${firsts[0]?.groupKey}/coat/2`, `r/${firsts[1]?.groupKey}/coat/1`),
      ).toBe(true)
      return firsts.map((step) => step.groupKey)
    }
    expect(orderIn('trimFirst', false)).toEqual(['trim', 'ceiling', 'walls'])
    expect(orderIn('ceilingFirst', true)).toEqual(['ceiling', 'trim', 'walls'])
    expect(orderIn('trimLast', true)).toEqual(['ceiling', 'walls', 'trim'])
    expect(orderIn('byProfile', true)).toEqual(['trim', 'ceiling', 'walls'])
    expect(orderIn('byProfile', false)).toEqual(['ceiling', 'trim', 'walls'])
  },
  'sand-before-coats': () => {
    const specification = specifyOne({ surfaceClass: 'trim', coat: 'oilPaint' })
    expect(comesBefore(specification, 'r/trim/sand/1', 'r/room/vacuum/1')).toBe(true)
    expect(comesBefore(specification, 'r/room/vacuum/1', 'r/trim/coat/1')).toBe(true)
  },
  'wet-edge': () => {
    const splittable = (area: number) =>
      stepOf(specifyOne({ surfaceClass: 'ceiling', quantity: { area } }), 'ceiling/coat/1').splittable
    expect([splittable(400), splittable(401)]).toEqual(['no', 'break'])
    expect([splittable(1600), splittable(1601)]).toEqual(['break', 'night'])
    expect(stepOf(specifyOne({ surfaceClass: 'walls' }), 'walls/coat/1').splittable).toBe('night')
  },
  'spot-size': () => {
    const rules = [['spot-size', true, { widthInches: 6 }]] as const
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['stressCrack', { length: feet(10) }]],
      rules,
    })
    expect(toSquareFeet(stepOf(specification, 'walls/spotPrime/1').amounts.area)).toBeCloseTo(10 * 0.5, 9)
  },
  'spot-or-full': () => {
    const at = (area: number) =>
      hasStep(
        specifyOne({ surfaceClass: 'walls', conditions: [['loosePaint', { areaMm2: area * squareFoot }]] }),
        'walls/prime/1',
      )
    // 30 % of 100 sq ft.
    expect([at(29.9), at(30.1)]).toEqual([false, true])
    const onWall = (area: number) =>
      specifyOne({ surfaceClass: 'walls', conditions: [['unsandedPatch', { areaMm2: area * squareFoot }]] })
    // 15 % of the one wall: from there the whole 100 sq ft of it are primed instead of the patch.
    expect(toSquareFeet(stepOf(onWall(15.1), 'walls/prime/walls').amounts.area)).toBe(100)
    expect(hasStep(onWall(15.1), 'walls/spotPrime/1')).toBe(false)
    expect(hasStep(onWall(14.9), 'walls/prime/walls')).toBe(false)
    expect(toSquareFeet(stepOf(onWall(14.9), 'walls/spotPrime/1').amounts.area)).toBeCloseTo(14.9, 9)
  },
  'quick-spots': () => {
    const spots = (rules: readonly RuleSetting[]) =>
      stepOf(
        specifyOne({
          surfaceClass: 'trim',
          conditions: [['bareWood', { areaMm2: 5 * squareFoot }]],
          job: { rules },
        }),
        'trim/spotPrime/1',
      ).productClass
    const hours = (value: number, on = true) => [
      { id: 'quick-spots' as RuleSetting['id'], on, numbers: { hours: value } },
    ]
    // By the products' labels: oil 24 h, quick alkyd 2 h, shellac 45 min. None is as quick as half an hour: then the plainest.
    expect([spots([]), spots(hours(1)), spots(hours(0.5)), spots(hours(4, false))]).toEqual([
      'stainBlockingPrimer',
      'shellacPrimer',
      'oilPrimer',
      'oilPrimer',
    ])
  },
  unmeasured: () => {
    const specification = specifyOne({
      surfaceClass: 'walls',
      conditions: [['stressCrack', { severity: 'severe' }]],
    })
    expect(toFeet(stepOf(specification, 'walls/openCrack/1').amounts.length)).toBe(25)
    expect(notices(specification, 'advice')[0]?.sentence).toContain('was not measured')
  },
  difficulty: () => {
    const high = specifyOne({
      surfaceClass: 'ceiling',
      existing: { textured: true },
      quantity: { reach: 12 },
      job: { header: { occupied: true } },
    })
    // Climbing 20, occupied 10, texture 15.
    expect(stepOf(high, 'ceiling/coat/1').difficulty).toBe(1.45)
    expect(stepOf(specifyOne({ surfaceClass: 'ceiling' }), 'ceiling/coat/1').difficulty).toBe(1)
    // A quarter of a wall of 12 ft lies above a reach of 9 ft: 5 of the 20.
    const wall = specifyOne({ surfaceClass: 'walls', quantity: { reach: 12 } })
    expect(stepOf(wall, 'walls/coat/1').difficulty).toBe(1.05)
  },
}
