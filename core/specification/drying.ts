import type { Job } from '../project/job.ts'
import type { Product } from '../project/shop-records.ts'
import { humidityFactor, temperatureFactor } from './air.ts'
import type { StepRequest } from './rule.ts'
import type { RuleBook } from './rule-book.ts'

/** Drying times of the products, adjusted to the air of the job. */
export interface Drying {
  readonly touch: (request: StepRequest, product: Product | null) => number
  readonly recoat: (request: StepRequest, product: Product | null) => number
}

/** Label times are given near 20 C and 50 %; the rule `drying-air` switches the adjustment and keeps its numbers. */
export function dryingOf(job: Job, book: RuleBook): Drying {
  return {
    touch: ({ dryMinutes }, product) =>
      wholeFive((dryMinutes ?? product?.touchDryMinutes ?? 0) * factorFor(job, book, product)),
    recoat: ({ dryMinutes }, product) =>
      wholeFive((dryMinutes ?? product?.recoatMinimumMinutes ?? 0) * factorFor(job, book, product)),
  }
}

/** Up to the next five minutes: the figures are not finer than that. */
function wholeFive(minutes: number): number {
  return Math.ceil(minutes / 5 - 1e-9) * 5
}

/** A deglosser's window is the label's; all else dries by temperature, and what holds water by humidity too. */
function factorFor(job: Job, book: RuleBook, product: Product | null): number {
  if (!book.isOn('drying-air') || product?.productClass === 'liquidDeglosser') return 1
  const { temperatureC, relativeHumidityPercent } = job.header.air
  const holdsWater = product === null || product.base === 'waterborne' || product.base === 'mineral'
  const humidity = humidityFactor(relativeHumidityPercent, {
    dampFrom: book.number('drying-air', 'dampFrom'),
    dampFactor: book.number('drying-air', 'dampFactor'),
    wetFrom: book.number('drying-air', 'wetFrom'),
    wetFactor: book.number('drying-air', 'wetFactor'),
  })
  return temperatureFactor(temperatureC) * (holdsWater ? humidity : 1)
}
