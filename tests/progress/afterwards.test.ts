import fc from 'fast-check'
import { expect, test } from 'vitest'
import { agreementOf } from '../../core/agreement/agreement.ts'
import { estimate } from '../../core/price/estimate.ts'
import { stepMinutes } from '../../core/price/labour.ts'
import { comparedSteps, hourGroupings } from '../../core/progress/afterwards/compared-hours.ts'
import { hoursSum, jobReview } from '../../core/progress/afterwards/job-review.ts'
import { ownJobOf } from '../../core/progress/afterwards/own-job.ts'
import { ownRates, shopWithJob, spreadsFrom } from '../../core/progress/afterwards/own-jobs.ts'
import { reviewHtml } from '../../core/progress/afterwards/review-page.ts'
import type { Job, RecordOf } from '../../core/project/job.ts'
import { jobProblems } from '../../core/project/job-problems.ts'
import { assumedSpreads } from '../../core/project/outcome-records.ts'
import type { Mark } from '../../core/project/progress-records.ts'
import type { CrewMemberId } from '../../core/project/shop-records.ts'
import type { Cents } from '../../core/units/money.ts'
import { plainJob, plainSpecification, plainSteps, plainTakeoff, wallPaint } from '../fixtures/plain-room.ts'

type OwnJob = RecordOf<'ownJobs'>

const nothingAgreed = agreementOf([], false)
const people = ['ada', 'ben'] as readonly string[] as readonly CrewMemberId[]

function marked(marks: readonly Omit<Mark, 'id' | 'note'>[], changes: Partial<Job> = {}): Job {
  const records = marks.map((mark, index): Mark => ({ ...mark, id: `mark-${index}` as never, note: '' }))
  return plainJob({ marks: Object.fromEntries(records.map((mark) => [mark.id, mark])), ...changes })
}

function done(
  stepKey: string,
  actualMinutes: number | null,
  crewMemberIds: readonly CrewMemberId[] = people.slice(0, 1),
) {
  return {
    stepKey,
    mark: 'done' as const,
    at: '2027-03-30T10:00',
    crewMemberIds: [...crewMemberIds],
    actualMinutes,
  }
}

function reviewOf(job: Job) {
  return jobReview(job, plainSpecification, estimate(job, plainTakeoff, plainSpecification), nothingAgreed)
}

test('hours come to the same sums by work, room and person, whatever was ticked and by whom', () => {
  const ticks = fc.array(
    fc.record({
      stepKey: fc.constantFrom(...plainSteps.map(({ key }) => key)),
      mark: fc.constantFrom(
        'started' as const,
        'done' as const,
        'skipped' as const,
        'redo' as const,
        'cleared' as const,
      ),
      at: fc.constantFrom('2027-03-30T10:00', '2027-03-30T14:00', '2027-03-31T09:00'),
      crewMemberIds: fc.subarray([...people]),
      actualMinutes: fc.option(fc.integer({ min: 0, max: 300 })),
    }),
    { maxLength: 20 },
  )
  fc.assert(
    fc.property(ticks, (marks) => {
      const job = marked(marks)
      const review = reviewOf(job)
      const [first, ...others] = hourGroupings.map((grouping) => hoursSum(review.hours[grouping]))
      for (const sum of others) {
        expect(sum.planned).toBeCloseTo(first?.planned ?? -1, 6)
        expect(sum.worked).toBeCloseTo(first?.worked ?? -1, 6)
        expect(sum.left).toBeCloseTo(first?.left ?? -1, 6)
      }
      const steps = comparedSteps(job, plainSpecification)
      const counted = steps.reduce((sum, { step }) => sum + stepMinutes(job, step), 0)
      expect((first?.planned ?? 0) + (first?.left ?? 0)).toBeCloseTo(counted, 6)
      const { lines, cost, left, priceCents, overheadCents } = review.money
      expect(lines.reduce((sum, line) => sum + line.plannedCents, 0)).toBe(cost.plannedCents)
      expect(lines.reduce((sum, line) => sum + (line.realCents ?? line.plannedCents), 0)).toBe(cost.realCents)
      expect(left.realCents + cost.realCents + overheadCents).toBe(priceCents)
      expect(left.plannedCents + cost.plannedCents + overheadCents).toBe(priceCents)
    }),
    { numRuns: 60 },
  )
})

// Two coats on the walls are 127.6 minutes each by their rates. Ada earns 30.00, Ben 20.00, burden 25 %.
test('a coat by two in 150 minutes, a receipt and two and a half cans, by hand', () => {
  const coat = plainSteps.find(({ coat, surfaceClass }) => coat === 1 && surfaceClass === 'walls')
  if (coat === undefined) throw new Error('the room has a coat')
  const job = marked([done(coat.key, 150, people)], {
    receipts: {
      one: { id: 'one' as never, on: '2027-03-30', kind: 'material', note: '', cents: 19_000 as Cents },
    },
    cansUsed: {
      one: {
        id: 'one' as never,
        on: '2027-03-30',
        productId: wallPaint.id,
        colourId: coat.colourId,
        gallons: 1,
        count: 2.5,
      },
    },
  })
  expect(jobProblems(job)).toEqual([])
  const review = reviewOf(job)
  expect(
    review.hours.person.filter(({ worked }) => worked > 0).map(({ label, worked }) => [label, worked]),
  ).toEqual([
    ['Ada', 75],
    ['Ben', 75],
  ])
  expect(review.hours.work.find(({ key }) => key === 'paint')).toMatchObject({ worked: 150 })
  const line = (key: string) => review.money.lines.find((each) => each.key === key)
  // (75 / 60) x (30.00 + 20.00) x 1.25 = 78.125, and 17100 of paint were planned.
  expect(line('labour')?.realCents).toBe(7813)
  expect(line('material')).toMatchObject({ plannedCents: 17_100, realCents: 19_000 })
  const paint = review.material.find(({ label }) => label.startsWith('Wall paint'))
  expect(paint).toMatchObject({ boughtGallons: 3, usedGallons: 2.5 })
  expect(reviewHtml(job, review, [], '2027-04-02')).toContain('$190.00')
})

function ownJob(index: number, pace: number, coatPace: number): OwnJob {
  const line = (rateId: string, planned: number, worked: number, perHour: number) => ({
    rateId: rateId as never,
    workedAmount: (planned / 60) * perHour,
    plannedMinutes: planned,
    workedMinutes: worked,
  })
  const rates = [line('coat', 600, 600 * pace * coatPace, 200), line('sand', 300, 300 * pace, 240)]
  return {
    id: `job-${index}` as never,
    title: `House ${index}`,
    keptOn: '2027-05-01',
    rates,
    plannedMinutes: 900,
    workedMinutes: 900 * pace,
    rooms: 4,
    roomsFound: index % 2,
    preparationMinutes: 100 * (index % 2),
    foundMinutes: 30 * (index % 2),
    coats: 10,
    coatsAgain: index === 0 ? 1 : 0,
    plannedMaterialCents: 10_000 as Cents,
    paidMaterialCents: (10_000 + 500 * index) as Cents,
  }
}

test('four own jobs leave the assumptions alone, five say how far jobs come out', () => {
  const jobs = [1.1, 1.0, 0.9, 1.2, 0.8].map((pace, index) => ownJob(index, pace, 1))
  expect(spreadsFrom(jobs.slice(0, 4), assumedSpreads)).toBe(assumedSpreads)
  const spreads = spreadsFrom(jobs, assumedSpreads)
  // Logarithms of 1.1, 1, 0.9, 1.2, 0.8: mean -0.0102, squares over four 0.02568, so a deviation of 0.1602; sqrt(exp(0.02568) - 1) = 16.1 %.
  // Paid 1, 1.05, 1.1, 1.15, 1.2 of what was planned: squares of the logarithms over four 0.00519, so 7.2 %.
  // Rooms with a finding 2 of 20, 60 of 200 minutes; one coat of 50 again.
  expect(spreads).toEqual({
    pacePercent: 16.1,
    ratePercent: 0,
    materialPercent: 7.2,
    findingChancePercent: 10,
    findingSizePercent: 30,
    coatAgainPercent: 2,
    restsOn: 5,
  })
})

test('a rate taken over rests on its jobs, and taking it again changes nothing', () => {
  const shop = plainJob()
  const jobs = [ownJob(0, 1, 1.25), ownJob(1, 1, 1.25)]
  const coat = (sheet: Job) => ownRates(sheet, jobs).find(({ rate }) => rate.id === 'coat')
  const first = coat(shop)
  // 1200 min counted at 200 an hour took 1500: observed 160. Trust 1200 / (1200 + 240) = 0.8333: 200 / (1 + 0.8333 x 0.25) = 165.5.
  expect(first?.suggested).toMatchObject({ perHour: 166, own: { jobs: 2, spreadPercent: null } })
  if (first === undefined) throw new Error('there is evidence')
  const taken: Job = { ...shop, rates: { ...shop.rates, coat: first.suggested } }
  expect(jobProblems(taken)).toEqual([])
  expect(coat(taken)?.suggested).toEqual(first.suggested)
})

test('what a job says is kept on the shop sheet under the job, once', () => {
  const job = marked(plainSteps.map(({ key }) => done(key, 60)))
  const whole = estimate(job, plainTakeoff, plainSpecification)
  const own = ownJobOf(job, plainSpecification, whole, nothingAgreed, '2027-04-02')
  const worked = plainSteps.filter((step) => stepMinutes(job, step) > 0).length * 60
  expect(own.workedMinutes).toBeCloseTo(worked, 6)
  expect(own.rates.reduce((sum, { workedMinutes }) => sum + workedMinutes, 0)).toBeCloseTo(worked, 6)
  expect(own).toMatchObject({ rooms: 1, roomsFound: 0, paidMaterialCents: 0 })
  const shop = shopWithJob(shopWithJob(plainJob(), own), { ...own, keptOn: '2027-04-03' })
  expect(Object.values(shop.ownJobs)).toEqual([{ ...own, keptOn: '2027-04-03' }])
  expect(jobProblems(shop)).toEqual([])
})
