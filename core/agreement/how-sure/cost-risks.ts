import type { Estimate } from '../../price/estimate-types.ts'
import { meanWage } from '../../price/labour-costs.ts'
import type { Job } from '../../project/job.ts'
import type { Spreads } from '../../project/outcome-records.ts'
import type { RoomId } from '../../project/sketch-records.ts'
import type { Specification, Step } from '../../specification/types.ts'
import { workKindOf } from '../../specification/work-kinds.ts'

/** What of the direct cost may come out otherwise, in cents that are not rounded, and by how much. */
export interface CostRisks {
  /** Labor, materials and sundries as they are priced. */
  readonly plannedCents: number
  readonly labourCents: number
  readonly materialCents: number
  /** The labor parted by rate; together it is all of the labor. */
  readonly rates: readonly { readonly rateId: string; readonly cents: number; readonly spread: number }[]
  /** Labor for preparing each room. */
  readonly rooms: readonly { readonly roomId: RoomId; readonly cents: number }[]
  /** Labor and material of each finish coat. */
  readonly coats: readonly number[]
  readonly spreads: Spreads
}

/**
 * Parts the cost of an estimate by what can go otherwise. Labor that is no step (setting up, moving, half days) goes along with the steps in
 * proportion: a job that takes longer has more days.
 */
export function costRisks(job: Job, specification: Specification, estimate: Estimate): CostRisks {
  const { totals } = estimate
  const { spreads } = job.houseRules
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  const wages = new Map(specification.steps.map(({ skill }) => [skill, 0]))
  for (const skill of wages.keys()) wages.set(skill, meanWage(job, skill))
  const byRate = new Map<string, { cents: number; spread: number }>()
  const byRoom = new Map<RoomId, number>()
  const coats = new Map<string, number>()
  const addRate = (rateId: string, percent: number, cents: number) => {
    const sum = byRate.get(rateId) ?? { cents: 0, spread: percent / 100 }
    byRate.set(rateId, { ...sum, cents: sum.cents + cents })
  }
  for (const line of estimate.labour.steps) {
    const step = steps.get(line.stepKey)
    if (step === undefined) continue
    const cents = (line.minutes / 60) * (wages.get(step.skill) ?? 0)
    const minutes = line.parts.reduce((sum, part) => sum + part.minutes, 0)
    for (const { rate, minutes: own } of line.parts) {
      const percent = rate.own?.spreadPercent ?? spreads.ratePercent
      if (minutes > 0) addRate(rate.id, percent, (cents * own) / minutes)
    }
    if (isPreparation(step)) byRoom.set(step.roomId, (byRoom.get(step.roomId) ?? 0) + cents)
    if (step.operation === 'coat') coats.set(step.key, cents)
  }
  for (const { key, minutes } of estimate.labour.houseWork)
    addRate(key, spreads.ratePercent, (minutes / 60) * meanWage(job, null))
  const counted = [...byRate.values()].reduce((sum, { cents }) => sum + cents, 0)
  const scale = counted === 0 ? 0 : totals.labour / counted
  const paint = materialByStep(estimate)
  return {
    plannedCents: totals.labour + totals.materials + totals.sundries,
    labourCents: totals.labour,
    materialCents: totals.materials + totals.sundries,
    rates: [...byRate].map(([rateId, { cents, spread }]) => ({ rateId, cents: cents * scale, spread })),
    rooms: [...byRoom].map(([roomId, cents]) => ({ roomId, cents: cents * scale })),
    coats: [...coats].map(([key, cents]) => cents * scale + (paint.get(key) ?? 0)),
    spreads,
  }
}

/** Work in which more may be found: what opens, repairs or prepares a surface. */
function isPreparation({ operation }: Pick<Step, 'operation'>): boolean {
  return workKindOf(operation) === 'prepare'
}

function materialByStep({ materials }: Estimate): ReadonlyMap<string, number> {
  return new Map(
    materials.flatMap(({ priceCents, gallons, steps }) =>
      steps.map((step) => [step.stepKey, (priceCents * step.gallons) / gallons] as const),
    ),
  )
}
