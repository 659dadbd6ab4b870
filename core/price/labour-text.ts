import type { RateBasis } from '../project/shop-records.ts'
import { formatArea, squareFeet } from '../units/area.ts'
import { formatMinutes } from '../units/duration.ts'
import { feet, formatLength, type LengthUnitSystem } from '../units/length.ts'
import { plainWords } from '../words/text.ts'

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

/** `coat: 384.0 sq ft at 200.0 sq ft per hour = 1 h 55 min; cut in: ...; x 1.15 for difficulty`. */
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
  if (rate.basis === 'each') return `${plainWords(rate.id)}: ${formatMinutes(part.minutes)} each time`
  const [amount, perHour] = [part.quantity, rate.perHour].map((value) =>
    amountText(rate.basis, value, system),
  )
  return `${plainWords(rate.id)}: ${amount} at ${perHour} per hour = ${formatMinutes(part.minutes)}`
}

function amountText(basis: RateBasis, value: number, system: LengthUnitSystem): string {
  if (basis === 'area') return formatArea(squareFeet(value), system)
  if (basis === 'length') return formatLength(feet(value), system)
  return String(Number(value.toFixed(2)))
}
