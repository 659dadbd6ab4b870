import { expect, test } from 'vitest'
import { estimate } from '../../core/price/estimate.ts'
import { compareChange } from '../../core/progress/change-order.ts'
import { forecastInputs } from '../../core/progress/forecast-inputs.ts'
import { punchList } from '../../core/progress/punch-list.ts'
import { rateSuggestions } from '../../core/progress/rate-suggestions.ts'
import type { CrewMemberId } from '../../core/project/shop-records.ts'
import { squareFeet } from '../../core/units/area.ts'
import { viewingRule } from '../../core/work-order/viewing-rule.ts'
import { handStep, noAmounts, plainJob, plainSpecification, plainTakeoff } from '../fixtures/plain-room.ts'
import { marksOf, type SiteMark } from './site-marks.ts'

const first = 'study/walls/coat-1'
const ceiling = 'study/ceiling/coat-1'
const ada = 'ada' as CrewMemberId

function jobWith(...marks: readonly SiteMark[]) {
  return plainJob({ marks: marksOf(...marks) })
}

test('the punch list holds what was marked to be redone until it is done again', () => {
  const redo = {
    stepKey: first,
    mark: 'redo',
    at: '2027-03-31T16:00',
    note: 'holiday left of the window',
  } as const
  const open = punchList(jobWith(redo), plainSpecification)
  expect(open).toEqual([
    {
      stepKey: first,
      roomId: 'study',
      roomName: 'Study',
      seen: 'holiday left of the window',
      notedAt: '2027-03-31T16:00',
      madeGoodAt: null,
    },
  ])
  const made = punchList(
    jobWith(redo, { stepKey: first, mark: 'done', at: '2027-04-01T09:00' }),
    plainSpecification,
  )
  expect(made[0]?.madeGoodAt).toBe('2027-04-01T09:00')
})

test('the viewing rule gives the published distance', () => {
  expect(viewingRule.text).toContain('39 in (1 m) or more')
})

test('slower work than planned suggests a lower rate, between the present and the observed one', () => {
  // Planned 127.6 min, worked 255.2: half the pace. Trust 105.6 / (105.6 + 240) for the coat's part.
  const job = jobWith({ stepKey: first, mark: 'done', at: '2027-03-30T12:00', actualMinutes: 255 })
  const coat = rateSuggestions(job, plainSpecification).find((each) => each.rate.id === 'coat')
  expect(coat?.observedPerHour).toBeCloseTo(200 / (255 / 127.6), 6)
  expect(coat?.suggestedPerHour).toBeCloseTo(200 / (1 + (105.6 / (105.6 + 240)) * (255 / 127.6 - 1)), 0)
  expect(coat?.source).toBe("shop's own hours: 1 step, 211 min worked where 106 min were planned")
})

test('steps without minutes or done twice teach nothing about pace', () => {
  const job = jobWith(
    { stepKey: ceiling, mark: 'done', at: '2027-03-30T09:00' },
    { stepKey: first, mark: 'redo', at: '2027-03-30T12:00' },
    { stepKey: first, mark: 'done', at: '2027-03-30T15:00', actualMinutes: 300 },
  )
  expect(rateSuggestions(job, plainSpecification)).toEqual([])
})

test('a forecast takes what is done and under way as given and the rest as free', () => {
  const job = jobWith(
    { stepKey: ceiling, mark: 'started', at: '2027-03-30T08:15', crewMemberIds: [ada] },
    { stepKey: ceiling, mark: 'done', at: '2027-03-30T09:30', crewMemberIds: [ada], actualMinutes: 75 },
    { stepKey: 'study/walls/mask', mark: 'skipped', at: '2027-03-30T09:35' },
    { stepKey: first, mark: 'started', at: '2027-03-30T10:40', crewMemberIds: [ada], actualMinutes: 27 },
  )
  const facts = forecastInputs(job, plainSpecification)
  expect(facts.map((fact) => fact.kind)).toEqual(['open', 'done', 'dropped', 'started', 'open'])
  expect(facts[1]).toMatchObject({ startedAt: '2027-03-30T08:15', endedAt: '2027-03-30T09:30' })
  expect(facts[3]).toMatchObject({ startedAt: '2027-03-30T10:40', crewMemberIds: ['ada'] })
  const started = facts[3]
  expect(started?.kind === 'started' ? started.leftMinutes : 0).toBeCloseTo(127.6 - 27, 9)
})

test('a start nobody marked is reckoned back from the minutes of those who worked', () => {
  const job = jobWith({
    stepKey: ceiling,
    mark: 'done',
    at: '2027-03-30T09:30',
    crewMemberIds: [ada, 'ben' as CrewMemberId],
    actualMinutes: 60,
  })
  expect(forecastInputs(job, plainSpecification)[1]).toMatchObject({ startedAt: '2027-03-30T09:00' })
})

test('a change order shows steps, hours, price and finish before and after', () => {
  const scrape = handStep('study/walls/scrape', {
    surfaceClass: 'walls',
    operation: 'scrape',
    amounts: { ...noAmounts, area: squareFeet(20), equivalentArea: squareFeet(20) },
  })
  const harder = plainSpecification.steps.map((step) =>
    step.key === first ? { ...step, difficulty: 1.5 } : step,
  )
  const found = { ...plainSpecification, steps: [scrape, ...harder] }
  const job = plainJob()
  const side = (specification: typeof plainSpecification, finishesOn: string) => ({
    job,
    specification,
    estimate: estimate(job, plainTakeoff, specification),
    finishesOn,
  })
  const change = compareChange(side(plainSpecification, '2027-03-30'), side(found, '2027-03-31'))
  expect(change.added.map((step) => step.key)).toEqual(['study/walls/scrape'])
  expect(change.removed).toEqual([])
  expect(change.changed).toMatchObject([{ after: { key: first } }])
  // 370.8 min become 474.6: more than the 450 of one person-day, so a second day of chores (30 min) comes on top.
  const more = (20 / 30) * 60 + 0.5 * 127.6
  expect(change.minutes.after - change.minutes.before).toBeCloseTo(more + 30, 6)
  expect(change.totalCents.after).toBeGreaterThan(change.totalCents.before)
  expect(change.finishesOn).toEqual({ before: '2027-03-30', after: '2027-03-31' })
})

test('comparing a job with itself changes nothing', () => {
  const job = plainJob()
  const side = {
    job,
    specification: plainSpecification,
    estimate: estimate(job, plainTakeoff, plainSpecification),
    finishesOn: null,
  }
  expect(compareChange(side, side)).toMatchObject({ added: [], removed: [], changed: [], newNotices: [] })
})
