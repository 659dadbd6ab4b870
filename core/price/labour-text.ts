import type { RateBasis } from '../project/shop-records.ts'
import { formatMinutes } from '../units/duration.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { basisAmount, rateName } from './rate-names.ts'

interface RatedPart {
  readonly rate: {
    readonly id: string
    readonly basis: RateBasis
    readonly perHour: number
    readonly source: string
  }
  readonly quantity: number
  readonly minutes: number
}

/** `Coat: 384 sq ft at 200 sq ft per hour = 1 h 55 min; Cut in along an edge: ...; x 1.15 for difficulty`. */
export function labourText(
  parts: readonly RatedPart[],
  difficulty: number,
  times: number,
  system: LengthUnitSystem,
): string {
  const lines = parts.map((part) => partText(part, system))
  if (difficulty !== 1) lines.push(`x ${Number(difficulty.toFixed(3))} for difficulty`)
  if (times !== 1) lines.push(`x ${times} working days (counted before there is a plan)`)
  return lines.join('; ')
}

function partText(part: RatedPart, system: LengthUnitSystem): string {
  const { rate } = part
  const name = rateName(rate.id)
  if (rate.basis === 'each') return `${name}: ${formatMinutes(part.minutes)} each time`
  const [amount, perHour] = [part.quantity, rate.perHour].map((value) =>
    basisAmount(rate.basis, value, system),
  )
  return `${name}: ${amount} at ${perHour} per hour = ${formatMinutes(part.minutes)}`
}
