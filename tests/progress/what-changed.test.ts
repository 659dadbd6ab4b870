import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import { type Sums, type WhatChanged, type WorkedOut, whatChanged } from '../../core/progress/what-changed.ts'
import { type Job, records } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import { createSpecify } from '../../core/specification/specify.ts'
import type { SiteMoment } from '../../core/time/site-moment.ts'
import type { WorkPlan } from '../../core/work-order/work-plan.ts'

const takeOff = createTakeOff()
const specify = createSpecify()
const read = readJobFile(
  readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'old-house.json'), 'utf8'),
)
if (!read.ok) throw new Error(read.problem.sentence)
const house = read.value

function workedOut(job: Job, plan: WorkPlan | null = null): WorkedOut {
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  return { job, specification, estimate: estimate(job, takeoff, specification), plan }
}

/** The house with some findings taken away, other wages, or a finish left out. */
function changed(job: Job, gone: readonly number[], percent: number, unpainted: readonly number[]): Job {
  const conditions = records(job.conditions).filter((_, index) => !gone.includes(index))
  const finishes = records(job.finishes).map((finish, index) =>
    unpainted.includes(index) ? { ...finish, paint: false } : finish,
  )
  return {
    ...job,
    conditions: Object.fromEntries(conditions.map((each) => [each.id, each])),
    finishes: Object.fromEntries(finishes.map((each) => [each.id, each])),
    houseRules: {
      ...job.houseRules,
      price: { ...job.houseRules.price, overheadPercent: job.houseRules.price.overheadPercent + percent },
    },
  }
}

const places = fc.array(fc.nat(12), { maxLength: 4 })

test('the differences of the rooms add up to that of the house, and where nothing changed there is no card', () => {
  const before = workedOut(house)
  expect(whatChanged(before, workedOut({ ...house }))).toBeNull()
  fc.assert(
    fc.property(places, fc.nat(3), places, (gone, percent, unpainted) => {
      const after = workedOut(changed(house, gone, percent, unpainted))
      const what = whatChanged(before, after)
      if (what === null) {
        expect(after.estimate.totals).toEqual(before.estimate.totals)
        return
      }
      for (const amount of ['steps', 'minutes', 'cents'] as const) {
        expect(ofRooms(what, amount), amount).toBeCloseTo(
          what.whole.after[amount] - what.whole.before[amount],
          6,
        )
      }
      const back = whatChanged(after, before)
      expect(back?.rooms.map(({ before, after }) => [after, before])).toEqual(
        what.rooms.map(({ before, after }) => [before, after]),
      )
    }),
    { numRuns: 6, examples: [[[], 0, []]] },
  )
})

function ofRooms({ rooms }: WhatChanged, amount: keyof Sums): number {
  return rooms.reduce((sum, { before, after }) => sum + after[amount] - before[amount], 0)
}

test('a plan that moves is said by its last day and by the rooms that are ready on another one', () => {
  const [dining, kitchen] = records(house.rooms)
  if (dining === undefined || kitchen === undefined) throw new Error('the house has no rooms')
  const plan = (first: string, second: string): WorkPlan => ({
    startsOn: '2027-06-01',
    finishesOn: [first, second].toSorted().at(-1) ?? first,
    tasks: [
      [dining.id, first],
      [kitchen.id, second],
    ].map(([roomId, date]) => ({
      key: `${roomId}`,
      roomId: roomId as typeof dining.id,
      stepKeys: [],
      startsAt: `${date}T08:00` as SiteMoment,
      endsAt: `${date}T16:00` as SiteMoment,
      segments: [],
      crewMemberIds: [],
    })),
  })
  const before = workedOut(house, plan('2027-06-02', '2027-06-04'))
  const moved = whatChanged(before, { ...before, plan: plan('2027-06-04', '2027-06-03') })
  expect(moved?.lines).toEqual([`${dining.name}: ready 2 days later`, `${kitchen.name}: ready 1 day earlier`])
  const later = whatChanged(before, { ...before, plan: plan('2027-06-02', '2027-06-07') })
  expect(later?.lines).toEqual([
    'Last day of work 3 days later: Mon Jun 7',
    `${kitchen.name}: ready 3 days later`,
  ])
  expect(later?.rooms).toEqual([])
  expect(whatChanged(before, { ...before, plan: null })).toBeNull()
})

test('steps are named with their room, and counted where many rooms have them', () => {
  const before = workedOut(house)
  const finding = records(house.conditions).find(({ kind }) => kind === 'waterStain')
  if (finding === undefined) throw new Error('no stain was found in the house')
  const { [finding.id]: _, ...others } = house.conditions
  const fewer = whatChanged(before, workedOut({ ...house, conditions: others }))
  expect(fewer?.lines.some((line) => /^\d+ fewer steps? in /.test(line))).toBe(true)
  expect(fewer?.lines.at(-1)).toMatch(/^\$[\d,.]+ less before tax, by hours$/)
  const unpainted = changed(house, [], 0, [0, 1, 2, 3])
  const counted = whatChanged(before, workedOut(unpainted))?.lines ?? []
  expect(counted.some((line) => /^\d+ fewer steps in \d+ rooms$/.test(line))).toBe(true)
})
