import { expect } from 'vitest'
import { tableOf } from '../../../core/project/empty-job.ts'
import type { RuleSetting } from '../../../core/project/shop-records.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import { specify } from '../../../core/specification/specify.ts'
import { toSquareFeet } from '../../../core/units/area.ts'
import { toFeet } from '../../../core/units/length.ts'
import {
  buildJob,
  conditionOn,
  existingOn,
  finishFor,
  keptIn,
  rectangularRoom,
} from '../../fixtures/job-builder.ts'
import { plainSurfaces, takeoffOf } from '../hand-takeoff.ts'
import { hasStep, specifyOne, stepOf } from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

/** Worked cases by the rule's id. */
export const roomCases: Readonly<Record<string, () => void>> = {
  'protect-room': () => {
    const on = specifyOne({ surfaceClass: 'walls' })
    expect(comesBefore(on, 'r/room/protectRoom/1', 'r/walls/coat/1')).toBe(true)
    // 12 x 10 ft of floor.
    expect(toSquareFeet(stepOf(on, 'room/protectRoom/1').amounts.area)).toBe(12 * 10)
    expect(
      hasStep(specifyOne({ surfaceClass: 'walls', rules: [['protect-room', false]] }), 'room/protectRoom/1'),
    ).toBe(false)
  },
  'floors-kept': () => {
    const reasons = stepOf(specifyOne({ surfaceClass: 'walls' }), 'room/protectRoom/1').because
    expect(reasons.map((each) => each.ruleId)).toEqual(['protect-room', 'floors-kept'])
  },
  'prime-before-coats': () => {
    // Red walls take a tinted primer, white trim does not: the red is on before the first white coat.
    const job = twoSurfaces('latexFlat')
    const specified = specify(job, takeoffOf(...plainSurfaces('r')))
    expect(comesBefore(specified, 'r/walls/prime/1', 'r/trim/coat/1')).toBe(true)
    const off = { ...job, rules: tableOf([ruleOff('prime-before-coats')]) }
    const before = specify(off, takeoffOf(...plainSurfaces('r')))
    expect(comesBefore(before, 'r/walls/prime/1', 'r/trim/coat/1')).toBe(false)
  },
  'wash-before-sanding': () => {
    const grease = conditionOn('grease', 'grease', { roomId: 'r', surfaceClass: 'walls' })
    const specified = specify(twoSurfaces('oilPaint', [grease]), takeoffOf(...plainSurfaces('r')))
    expect(comesBefore(specified, 'r/walls/wash/1', 'r/trim/sand/1')).toBe(true)
    const edge = specified.order.find((each) => each.ruleId === 'wash-before-sanding')
    // What is washed dries; the sanding of something else need not wait for that.
    expect(edge?.minimumWait).toBe(0)
  },
  'stove-grease': () => {
    const kitchen = (coat: 'latexFlat' | 'calcimine') =>
      specifyOne({
        surfaceClass: 'ceiling',
        coat,
        job: { rooms: [rectangularRoom('r', 12, 10, { use: 'kitchen' })] },
      })
    expect(toSquareFeet(stepOf(kitchen('latexFlat'), 'ceiling/wash/1').amounts.area)).toBe(100)
    // Chalk comes off with the grease; elsewhere nothing is washed unless it was found.
    expect(hasStep(kitchen('calcimine'), 'ceiling/wash/1')).toBe(false)
    expect(hasStep(specifyOne({ surfaceClass: 'ceiling' }), 'ceiling/wash/1')).toBe(false)
  },
  'take-off-hardware': () => {
    const job = {
      keptItems: [
        keptIn('plates', 'r', 'plate', 'takeOff', { count: 4 }),
        keptIn('lock', 'r', 'lockset', 'takeOff'),
      ],
    }
    const specification = specifyOne({ surfaceClass: 'walls', job })
    expect(stepOf(specification, 'room/takeOff/1').amounts.count).toBe(4 + 1)
    expect(stepOf(specification, 'room/takeOff/1').cautions.map((each) => each.id)).toEqual(['electricity'])
    expect(comesBefore(specification, 'r/walls/coat/1', 'r/room/putBack/1')).toBe(true)
  },
  'mask-in-place': () => {
    const job = { keptItems: [keptIn('vent', 'r', 'other', 'maskInPlace', { count: 2 })] }
    const specification = specifyOne({ surfaceClass: 'walls', job })
    // 3 ft of tape around each of 2.
    expect(toFeet(stepOf(specification, 'room/maskOff/1').amounts.length)).toBe(2 * 3)
    expect(comesBefore(specification, 'r/walls/coat/1', 'r/room/unmask/1')).toBe(true)
  },
  'loosen-hanging': () => {
    const job = { keptItems: [keptIn('mirror', 'r', 'hanging', 'loosen')] }
    const specification = specifyOne({ surfaceClass: 'walls', job })
    expect(comesBefore(specification, 'r/room/loosenHanging/1', 'r/walls/coat/1')).toBe(true)
    const refit = specification.order.find(
      (edge) => edge.after === 'r/room/refitHanging/1' && edge.before.startsWith('r/walls'),
    )
    // The wall paint's recoat time, 4 h.
    expect(refit?.minimumWait).toBe(240)
  },
  'cover-alarm': () => {
    const job = {
      keptItems: [
        keptIn('smoke', 'r', 'smokeAlarm', 'coverDaily', { wired: true }),
        keptIn('sensor', 'r', 'sensor', 'takeOff'),
      ],
    }
    const specification = specifyOne({ surfaceClass: 'ceiling', job })
    const [cover, restore] = [
      stepOf(specification, 'room/coverAlarm/1'),
      stepOf(specification, 'room/restoreAlarm/1'),
    ]
    expect([cover.daily, restore.daily]).toEqual([true, true])
    expect(restore.keptItemIds).toEqual(cover.keptItemIds)
    expect(cover.cautions.map((each) => each.id)).toEqual(['alarmCovered'])
    expect(specification.steps.at(-1)?.operation).toBe('restoreAlarm')
  },
  'dust-down': () => {
    const specification = specifyOne({ surfaceClass: 'ceiling', conditions: [['dustAndCobwebs']] })
    expect(stepOf(specification, 'room/dustDown/1').because[0]?.conditionIds).toEqual(['c1'])
    expect(comesBefore(specification, 'r/room/dustDown/1', 'r/ceiling/coat/1')).toBe(true)
  },
  'clean-up': () => {
    expect(
      specifyOne({ surfaceClass: 'walls' })
        .steps.slice(-2)
        .map((step) => step.operation),
    ).toEqual(['cleanUp', 'inspect'])
  },
  'finish-coat': () => {
    const specification = specifyOne({ surfaceClass: 'walls', rules: [['colour-change', false]] })
    expect(stepOf(specification, 'walls/coat/1').because.map((each) => each.ruleId)).toEqual(['finish-coat'])
  },
}

const ruleOff = (id: string): RuleSetting => ({
  id: id as RuleSetting['id'],
  on: false,
  numbers: {},
})

/** Red walls and white trim in one room, the trim with the coat given on it. */
function twoSurfaces(coat: 'latexFlat' | 'oilPaint', conditions: readonly Condition[] = []) {
  return buildJob({
    rooms: [rectangularRoom('r', 12, 10, { order: 'trimFirst' })],
    existing: [existingOn('walls', 'gypsumBoard', 'latexFlat'), existingOn('trim', 'wood', coat)],
    finishes: [
      finishFor('walls', 'latexWall', 'red', 'flat'),
      finishFor('trim', 'waterborneEnamel', 'white', 'semiGloss'),
    ],
    conditions,
  })
}
