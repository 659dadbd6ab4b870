import { expect, test } from 'vitest'
import { defaultRates } from '../../core/price/default-rates.ts'
import { labour, stepMinutes } from '../../core/price/labour.ts'
import { labourCosts, meanWage } from '../../core/price/labour-costs.ts'
import type { Rate } from '../../core/project/shop-records.ts'
import { operations, type Step } from '../../core/specification/types.ts'
import { squareFeet } from '../../core/units/area.ts'
import { feet } from '../../core/units/length.ts'
import {
  handStep,
  noAmounts,
  person,
  plainJob,
  plainSpecification,
  plainSteps,
} from '../fixtures/plain-room.ts'

function stepOf(key: string): Step {
  const step = plainSteps.find((each) => each.key === key)
  if (step === undefined) throw new RangeError(key)
  return step
}

test('every operation has a rate of its own name, and every rate says where it comes from', () => {
  const ids = new Set<string>(defaultRates.map((rate) => rate.id))
  expect(operations.filter((operation) => !ids.has(operation))).toEqual([])
  expect(defaultRates.filter((rate) => rate.source === '' || rate.perHour <= 0)).toEqual([])
  expect(ids.size).toBe(defaultRates.length)
})

test('a wall coat is its area over the coat rate plus its cutting in over the brush rate', () => {
  expect(stepMinutes(plainJob(), stepOf('study/walls/coat-1'))).toBeCloseTo(
    (352 / 200) * 60 + (44 / 120) * 60,
    9,
  )
})

test('glass edges are added by their own rate and the sash has its own area rate', () => {
  const sash = handStep('sash', {
    operation: 'coat',
    surfaceClass: 'sash',
    amounts: { ...noAmounts, equivalentArea: squareFeet(9.6), area: squareFeet(3), glassPerimeter: feet(40) },
  })
  expect(stepMinutes(plainJob(), sash)).toBeCloseTo((9.6 / 100) * 60 + (40 / 60) * 60, 9)
})

test('difficulty multiplies all parts', () => {
  const plain = stepOf('study/walls/coat-1')
  const high = { ...plain, difficulty: 1.25 }
  expect(stepMinutes(plainJob(), high)).toBeCloseTo(stepMinutes(plainJob(), plain) * 1.25, 9)
})

test("the job's own rate stands before the default", () => {
  const coat: Rate = { id: 'coat' as Rate['id'], basis: 'area', perHour: 352, source: 'own' }
  const job = plainJob({ rates: { coat } })
  expect(stepMinutes(job, stepOf('study/walls/coat-1'))).toBeCloseTo(60 + (44 / 120) * 60, 9)
})

test('filling counts cracks by length, patches by area and holes by the piece', () => {
  const fill = handStep('fill', {
    operation: 'fill',
    amounts: { ...noAmounts, length: feet(30), area: squareFeet(4), count: 6 },
  })
  expect(stepMinutes(plainJob(), fill)).toBeCloseTo((30 / 60 + 4 / 40 + 6 / 40) * 60, 9)
})

test('covering goes by the floor, looking over is counted once per step whatever its amounts', () => {
  expect(stepMinutes(plainJob(), stepOf('study/protect'))).toBeCloseTo((120 / 180) * 60, 9)
  expect(stepMinutes(plainJob(), handStep('look', { operation: 'inspect' }))).toBeCloseTo(60 / 6, 9)
})

test('a daily step is counted once for each person-day its room takes', () => {
  const alarm = handStep('alarm', {
    operation: 'coverAlarm',
    daily: true,
    amounts: { ...noAmounts, count: 2 },
  })
  // 4,400 sq ft at 200 per hour are 22 h: three days of eight hours.
  const big = handStep('big', {
    operation: 'coat',
    amounts: { ...noAmounts, area: squareFeet(4400), equivalentArea: squareFeet(4400) },
  })
  const result = labour(plainJob(), { ...plainSpecification, steps: [alarm, big] })
  expect(result.steps[0]?.times).toBe(3)
  expect(result.steps[0]?.minutes).toBeCloseTo(3 * (2 / 20) * 60, 9)
})

test('eight hours to the minute are one day, a minute more are two', () => {
  const alarm = handStep('alarm', { operation: 'coverAlarm', daily: true })
  const timesFor = (hours: number) => {
    const area = squareFeet(200 * hours)
    const coat = handStep('coat', {
      operation: 'coat',
      amounts: { ...noAmounts, area, equivalentArea: area },
    })
    return labour(plainJob(), { ...plainSpecification, steps: [alarm, coat] }).steps[0]?.times
  }
  expect(timesFor(8)).toBe(1)
  expect(timesFor(8 + 1 / 60)).toBe(2)
  expect(timesFor(16)).toBe(2)
  expect(timesFor(0.1)).toBe(1)
})

test('cleaning up lead dust is priced for the days on which old paint is disturbed, not for those of painting', () => {
  const area = (feet: number) => ({ ...noAmounts, area: squareFeet(feet), equivalentArea: squareFeet(feet) })
  const clean = handStep('clean', { operation: 'cleanDaily', daily: true, amounts: area(120) })
  const alarm = handStep('alarm', {
    operation: 'coverAlarm',
    daily: true,
    amounts: { ...noAmounts, count: 2 },
  })
  const scrape = handStep('scrape', { operation: 'scrape', amounts: area(40) })
  const sandBetween = handStep('walls/sand/2', { operation: 'sand', amounts: area(20_000) })
  const coat = handStep('coat', { operation: 'coat', amounts: area(4400) })
  const steps = [clean, alarm, scrape, sandBetween, coat]
  const times = labour(plainJob(), { ...plainSpecification, steps }).steps.map((step) => step.times)
  expect(times[0]).toBe(1)
  expect(times[1]).toBeGreaterThanOrEqual(3)
})

test('setting up and clearing away are counted for whole person-days', () => {
  const hours = labour(plainJob(), plainSpecification)
  const ofSteps = hours.steps.reduce((total, line) => total + line.minutes, 0)
  // 40 + 58 + 17.6 + 2 x 127.6 = 370.8 min: one day of 480 - 30 min.
  expect(ofSteps).toBeCloseTo(40 + 36 + 22 + 17.6 + 2 * 127.6, 9)
  expect(hours.dailyChores).toMatchObject({ minutes: 30, personDays: 1 })
  expect(hours.minutes).toBeCloseTo(ofSteps + 30, 9)
})

test('the text of a step shows its quantities and rates in the units of the job', () => {
  const imperial = labour(plainJob(), plainSpecification).steps.at(-1)?.derivation
  expect(imperial).toBe(
    'Coat: 352 sq ft at 200 sq ft per hour = 1 h 46 min; Cut in along an edge: 44 ft at 120 ft per hour = 22 min',
  )
  const job = plainJob()
  const metric = labour({ ...job, header: { ...job.header, unitSystem: 'metric' } }, plainSpecification)
  expect(metric.steps.at(-1)?.derivation).toContain('32.7 m² at 18.6 m² per hour')
})

test('a step whose rate nobody knows is a broken promise', () => {
  const step = handStep('odd', { operation: 'juggle' as Step['operation'] })
  expect(() => stepMinutes(plainJob(), step)).toThrow('juggle')
})

test('work that nobody on the crew list has the skill for costs what everybody earns on the mean, never nothing', () => {
  const crew = {
    ada: person('ada', 5000, ['preparation']),
    ben: person('ben', 3000, ['preparation', 'painting']),
  }
  const job = plainJob({ crew })
  expect(meanWage(job, 'painting')).toBe(3000)
  expect(meanWage(job, 'preparation')).toBe(4000)
  expect(meanWage(job, 'fineBrush')).toBe(4000)
  expect(meanWage(job, null)).toBe(4000)
  expect(meanWage(plainJob({ crew: {} }), 'painting')).toBe(0)
  const brushed = {
    ...plainSpecification,
    steps: [handStep('sash', { skill: 'fineBrush', operation: 'inspect' })],
  }
  const [line] = labourCosts(job, brushed, labour(job, brushed))
  // 60 / 6 = 10 minutes at $40.00, with 25 % burden.
  expect(line?.cents).toBe(Math.round((10 / 60) * 4000 * (1 + job.houseRules.price.burdenPercent / 100)))
})
