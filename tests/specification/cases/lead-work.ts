import { expect } from 'vitest'
import { houseWork } from '../../../core/price/house-work.ts'
import type { Operation, Specification } from '../../../core/specification/types.ts'
import { toSquareFeet } from '../../../core/units/area.ts'
import { rectangularRoom } from '../../fixtures/job-builder.ts'
import { hasStep, type OneSurface, oneSurfaceJob, specifyOne, squareFoot, stepOf } from '../one-surface.ts'
import { comesBefore } from '../step-list.ts'

/** A wall of 12 ft in a room of 12 x 10 ft in a house of 1930; so many square feet of its paint are loose. */
const given = (area: number, rule?: string): OneSurface => ({
  surfaceClass: 'walls',
  conditions: [['loosePaint', { areaMm2: area * squareFoot }]],
  rules: rule === undefined ? [] : [[rule, false]],
  job: { header: { yearBuilt: 1930 } },
})
const old = (area: number, rule?: string) => specifyOne(given(area, rule))

const operations = (specification: Specification): ReadonlySet<Operation> =>
  new Set(specification.steps.map((step) => step.operation))

/** Worked cases by the rule's id. */
export const leadWorkCases: Readonly<Record<string, () => void>> = {
  'lead-signs': () => {
    expect(comesBefore(old(20), 'r/room/postSigns/1', 'r/walls/scrape/1')).toBe(true)
    expect(comesBefore(old(20), 'r/room/postSigns/1', 'r/room/sheetFloor/1')).toBe(true)
    expect(hasStep(old(6), 'room/postSigns/1')).toBe(false)
    expect(hasStep(old(20, 'lead-signs'), 'room/postSigns/1')).toBe(false)
  },
  'lead-sheeting': () => {
    // 6 ft deep before a wall of 12 ft and 6 ft beyond both its ends is 144 sq ft: all 120 of the floor.
    expect(toSquareFeet(stepOf(old(20), 'room/sheetFloor/1').amounts.area)).toBe(120)
    // In a room of 40 by 30 ft: (40 + 8 + 8) x 8 with the owner's own 8 ft; 2 ft is weaker than the law and held to its 6 ft: (40 + 6 + 6) x 6.
    const sheeted = (reachFeet: number) =>
      specifyOne({
        ...given(20),
        rules: [['lead-sheeting', true, { reachFeet }]],
        job: { ...given(20).job, rooms: [rectangularRoom('r', 40, 30)] },
      })
    expect(toSquareFeet(stepOf(sheeted(8), 'room/sheetFloor/1').amounts.area)).toBeCloseTo(448, 6)
    expect(toSquareFeet(stepOf(sheeted(2), 'room/sheetFloor/1').amounts.area)).toBeCloseTo(312, 6)
    // One door and one duct.
    expect(stepOf(old(20), 'room/sealOpenings/1').amounts.count).toBe(1 + 1)
    expect(comesBefore(old(20), 'r/room/sealOpenings/1', 'r/walls/scrape/1')).toBe(true)
  },
  'lead-tools': () => {
    const [scrape, plain] = [old(20), old(6)].map((each) => stepOf(each, 'walls/scrape/1'))
    expect(scrape?.difficulty).toBeCloseTo((plain?.difficulty ?? 0) * 1.15, 9)
    expect(scrape?.because.map((each) => each.ruleId)).toContain('lead-tools')
    // A roller needs no extraction.
    expect(stepOf(old(20), 'walls/coat/1').difficulty).toBe(stepOf(old(6), 'walls/coat/1').difficulty)
  },
  'lead-daily-cleaning': () => {
    expect(stepOf(old(20), 'room/cleanDaily/1').daily).toBe(true)
    expect(hasStep(old(6), 'room/cleanDaily/1')).toBe(false)
  },
  'lead-final-cleaning': () => {
    const specification = old(20)
    // 120 sq ft of sheeting fill one bag of 200; 120 sq ft of floor take 3 cloths of 40, the one sill another.
    expect(stepOf(specification, 'room/bagSheeting/1').amounts.count).toBe(1)
    expect(toSquareFeet(stepOf(specification, 'room/cleanFinal/1').amounts.area)).toBe(120)
    expect(stepOf(specification, 'room/wipeCheck/1').amounts.count).toBe(3 + 1)
    const inOrder = [
      'walls/sand/1',
      'room/bagSheeting/1',
      'room/cleanFinal/1',
      'room/wipeCheck/1',
      'walls/coat/1',
    ]
    inOrder.slice(1).forEach((after, index) => {
      expect(comesBefore(specification, `r/${inOrder[index]}`, `r/${after}`)).toBe(true)
    })
  },
  'lead-papers': () => {
    const papers = (area: number, rule?: string) =>
      houseWork(oneSurfaceJob(given(area, rule)), old(area, rule))
    // Once, 60 min by the default rate.
    expect(papers(20).map(({ key, minutes }) => [key, minutes])).toEqual([['leadPapers', 60]])
    expect([papers(6), papers(20, 'lead-papers')]).toEqual([[], []])
    expect(operations(old(20)).has('cleanFinal')).toBe(true)
  },
}
