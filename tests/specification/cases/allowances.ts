import { expect } from 'vitest'
import { toSquareFeet } from '../../../core/units/area.ts'
import { toFeet } from '../../../core/units/length.ts'
import { rectangularRoom } from '../../fixtures/job-builder.ts'
import { hasStep, type OneSurface, specifyOne, squareFoot, stepOf } from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

const on = (rule: string) => [[rule, true]] as const

/** 100 sq ft of wall with the allowance on. */
const wall = (given: Partial<OneSurface> = {}) =>
  specifyOne({
    surfaceClass: 'walls',
    rules: on('allowance-dings'),
    job: { header: { yearBuilt: 1930 } },
    ...given,
  })
const holes = (given: Partial<OneSurface> = {}) => stepOf(wall(given), 'walls/fillSmall/1').amounts.count

/** 50 ft of trim with an allowance on. */
const trim = (rule: string, given: Partial<OneSurface> = {}) =>
  specifyOne({
    surfaceClass: 'trim',
    quantity: { length: 50 },
    rules: on(rule),
    job: { header: { yearBuilt: 1930 } },
    ...given,
  })

const own = (allowances: { dings?: number; trimDings?: number; joints?: number; touchUp?: number }) => ({
  header: { yearBuilt: 1930 },
  rooms: [
    rectangularRoom('r', 12, 10, {
      allowances: { dings: null, trimDings: null, joints: null, touchUp: null, ...allowances },
    }),
  ],
})

/** Worked cases by the rule's id. */
export const allowanceCases: Readonly<Record<string, () => void>> = {
  'allowance-dings': () => {
    // 24 to 100 sq ft of old plaster; 6 in board, and in a house of 1990.
    expect(holes()).toBe(24)
    expect(holes({ substrate: 'gypsumBoard' })).toBe(6)
    expect(holes({ job: { header: { yearBuilt: 1990 } } })).toBe(6)
    // Of unknown age it counts as old.
    expect(holes({ job: { header: { yearBuilt: null } } })).toBe(24)
    // The room's own number; none at all.
    expect(holes({ job: own({ dings: 40 }) })).toBe(40)
    expect(hasStep(wall({ job: own({ dings: 0 }) }), 'walls/fillSmall/1')).toBe(false)
    // Ten that were counted are filled as holes, the other 14 as what is always there.
    expect(holes({ conditions: [['hole', { count: 10 }]] })).toBe(24 - 10)
    expect(hasStep(wall({ conditions: [['hole', { count: 30 }]] }), 'walls/fillSmall/1')).toBe(false)
    expect(hasStep(wall({ conditions: [['unwantedTexture']] }), 'walls/fillSmall/1')).toBe(false)
    // 16 to 100 ft of trim.
    expect(stepOf(trim('allowance-dings'), 'trim/fillSmall/1').amounts.count).toBe(8)
    const plain = wall({ conditions: [['loosePaint', { areaMm2: 2 * squareFoot }]] })
    const inOrder = ['scrape', 'fillSmall', 'sandFill', 'spotPrime', 'coat']
    inOrder.slice(1).forEach((after, index) => {
      expect(comesBefore(plain, `r/walls/${inOrder[index]}/1`, `r/walls/${after}/1`)).toBe(true)
    })
    // An allowance is no finding: it points to no record.
    expect(stepOf(plain, 'walls/fillSmall/1').because.flatMap((each) => each.conditionIds)).toEqual([])
  },
  'allowance-joints': () => {
    const feetOf = (given: Partial<OneSurface> = {}) =>
      toFeet(stepOf(trim('allowance-joints', given), 'trim/caulk/1').amounts.length)
    // 40 ft to 100 ft of old trim, 8 of newer.
    expect(feetOf()).toBeCloseTo(20, 6)
    expect(feetOf({ job: { header: { yearBuilt: 1995 } } })).toBeCloseTo(4, 6)
    expect(feetOf({ job: own({ joints: 100 }) })).toBeCloseTo(50, 6)
    const varnished = trim('allowance-joints', { productClass: 'clearVarnish' })
    expect(hasStep(varnished, 'trim/caulk/1')).toBe(false)
  },
  'touch-up': () => {
    const touched = (yearBuilt: number) =>
      specifyOne({ surfaceClass: 'walls', rules: on('touch-up'), job: { header: { yearBuilt } } })
    // 3 % of 100 sq ft, 1 % in a newer house.
    expect(toSquareFeet(stepOf(touched(1930), 'room/touchUp/1').amounts.area)).toBeCloseTo(3, 6)
    expect(toSquareFeet(stepOf(touched(1995), 'room/touchUp/1').amounts.area)).toBeCloseTo(1, 6)
    expect(comesBefore(touched(1930), 'r/walls/coat/1', 'r/room/touchUp/1')).toBe(true)
    expect(comesBefore(touched(1930), 'r/room/touchUp/1', 'r/room/inspect/1')).toBe(true)
    const none = specifyOne({ surfaceClass: 'walls', rules: on('touch-up'), job: own({ touchUp: 0 }) })
    expect(hasStep(none, 'room/touchUp/1')).toBe(false)
  },
}
