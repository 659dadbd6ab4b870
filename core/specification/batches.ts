import type { Rate, RateBasis } from '../project/shop-records.ts'
import { areaFromUnits, toSquareFeet } from '../units/area.ts'
import { elapsedMinutes } from '../units/duration.ts'
import { formatLength, type Length, lengthFromUnits, toFeet } from '../units/length.ts'
import { amountsSum } from './amounts.ts'
import { equalParts, type OpenTimeBatches, openTimeBatches } from './open-time.ts'
import type { Precedence } from './order.ts'
import type { PlannedStep, StepMaker } from './planned-step.ts'
import type { Because, Step, StepAmounts } from './types.ts'

const ruleId = 'oil-deglosser'

/** Steps of a group with the deglosser and the coat it prepares for cut into batches, and the windows between them. */
interface Batched {
  readonly steps: readonly PlannedStep[]
  readonly precedences: readonly Precedence[]
  /** No time is left between the product's least and longest wait, so no batch fits. */
  readonly withoutWindow: boolean
}

/** The coat right after the deglosser is the primer where there is one, else the first finish coat. */
export function batched(maker: StepMaker, steps: readonly PlannedStep[]): Batched {
  const wipe = steps.find((each) => each.step.operation === 'degloss')
  const target = steps.find((each) => each.role === 'prime/1') ?? steps.find((each) => each.role === 'coat/1')
  if (wipe === undefined || target === undefined) return { steps, precedences: [], withoutWindow: false }
  const placed = withOrdinal(wipe, target.role === 'prime/1' ? '1' : '2')
  const batches = openTimeBatches({
    wipeMinutes: minutesOf(maker, placed, 'wipeSquareFeetPerHour'),
    coatMinutes: minutesOf(maker, target, 'coatSquareFeetPerHour'),
    openMinimum: wipe.product?.openTimeMinimumMinutes ?? 0,
    openMaximum: wipe.product?.openTimeMaximumMinutes ?? wipe.product?.recoatMaximumMinutes ?? 24 * 60,
  })
  const inPlace = steps.map((each) => (each === wipe ? placed : each))
  if (batches === null) return { steps: inPlace, precedences: [], withoutWindow: true }
  const why = batchReason(maker, placed, batches)
  const wipes = cut(placed, batches.count, why)
  const coats = cut(target, batches.count, why)
  return {
    steps: inPlace.flatMap((each) => (each === placed ? wipes : each === target ? coats : [each])),
    precedences: windows(maker, wipes, coats, batches),
    withoutWindow: false,
  }
}

/** Before a primer or before the first coat: two places in the order, two roles. */
function withOrdinal(wipe: PlannedStep, ordinal: string): PlannedStep {
  const key = wipe.step.key.replace(/[^/]*$/, ordinal)
  return { ...wipe, role: `degloss/${ordinal}`, step: { ...wipe.step, key, splittable: 'no' } }
}

/**
 * One person's minutes: main quantity and brushed edges at the shop's own rates, else at the rule's figures. Counted as the hours of
 * the price are, so that what is planned fits the window.
 */
function minutesOf(maker: StepMaker, planned: PlannedStep, fallback: string): number {
  const { step } = planned
  const { amounts } = step
  const own = ownRate(maker, step.operation, step)
  const main =
    own === undefined
      ? toSquareFeet(amounts.equivalentArea) / maker.book.number(ruleId, fallback)
      : quantityFor(own.basis, amounts) / own.perHour
  const edges =
    step.operation === 'degloss'
      ? 0
      : edgeHours(maker, step, 'cutIn', amounts.cuttingIn) +
        edgeHours(maker, step, 'glassEdge', amounts.glassPerimeter)
  return (main + edges) * 60 * step.difficulty
}

function ownRate({ job }: StepMaker, name: string, { surfaceClass }: Step): Rate | undefined {
  return job.rates[`${name}-${surfaceClass}`] ?? job.rates[name]
}

function quantityFor(basis: RateBasis, amounts: StepAmounts): number {
  switch (basis) {
    case 'area':
      return toSquareFeet(amounts.equivalentArea)
    case 'length':
      return toFeet(amounts.length)
    case 'count':
      return amounts.count
    case 'each':
      return 1
  }
}

function edgeHours(maker: StepMaker, step: Step, name: 'cutIn' | 'glassEdge', length: Length): number {
  const perHour = ownRate(maker, name, step)?.perHour ?? maker.book.number(ruleId, `${name}FeetPerHour`)
  return toFeet(length) / perHour
}

function batchReason(maker: StepMaker, wipe: PlannedStep, batches: OpenTimeBatches): Because {
  const rule = maker.ruleById.get(ruleId)
  const { length } = wipe.step.amounts
  const each = length > 0 ? ` of ${formatLength(length / batches.count, maker.job.header.unitSystem)}` : ''
  const from = wipe.product?.openTimeMinimumMinutes ?? 0
  const to = wipe.product?.openTimeMaximumMinutes ?? 0
  return {
    ruleId,
    reason: `${batches.count} ${batches.count === 1 ? 'batch' : 'batches'}${each}: what is wiped is coated after ${from} and within ${to} minutes. Wipe one, coat it, then the next.`,
    source: rule?.source ?? '',
    conditionIds: [],
  }
}

function cut(planned: PlannedStep, count: number, why: Because): readonly PlannedStep[] {
  const because = [...planned.step.because.filter((each) => each.ruleId !== ruleId), why]
  const step = { ...planned.step, because, splittable: 'no' as const }
  if (count === 1) return [{ ...planned, step }]
  const cuts = step.parts.map(({ kind, amounts }) =>
    amountParts(amounts, count).map((amounts) => ({ kind, amounts })),
  )
  const amounts =
    cuts.length === 0
      ? amountParts(step.amounts, count)
      : Array.from({ length: count }, (_, index) =>
          amountsSum(cuts.flatMap((parts) => parts[index]?.amounts ?? [])),
        )
  const areas = equalParts(planned.touchedArea, count)
  return amounts.map((part, index) => ({
    ...planned,
    role: `${planned.role}.${index + 1}`,
    touchedArea: areaFromUnits(areas[index] ?? 0),
    step: {
      ...step,
      key: `${step.key}.${index + 1}`,
      amounts: part,
      parts: cuts.flatMap((parts) => parts[index] ?? []),
    },
  }))
}

function amountParts(amounts: StepAmounts, count: number): readonly StepAmounts[] {
  const parts = (total: number) => equalParts(total, count)
  const [area, equivalent, length] = [
    parts(amounts.area),
    parts(amounts.equivalentArea),
    parts(amounts.length),
  ]
  const [cutting, glass, pieces] = [
    parts(amounts.cuttingIn),
    parts(amounts.glassPerimeter),
    parts(amounts.count),
  ]
  return Array.from({ length: count }, (_, index) => ({
    area: areaFromUnits(area[index] ?? 0),
    equivalentArea: areaFromUnits(equivalent[index] ?? 0),
    length: lengthFromUnits(length[index] ?? 0),
    cuttingIn: lengthFromUnits(cutting[index] ?? 0),
    glassPerimeter: lengthFromUnits(glass[index] ?? 0),
    count: pieces[index] ?? 0,
  }))
}

function windows(
  maker: StepMaker,
  wipes: readonly PlannedStep[],
  coats: readonly PlannedStep[],
  batches: OpenTimeBatches,
): readonly Precedence[] {
  const source = maker.ruleById.get(ruleId)?.source ?? ''
  return wipes.flatMap((wipe, index) => {
    const coat = coats[index]
    const next = wipes[index + 1]
    if (coat === undefined) return []
    const precedence = { ruleId, source, special: true }
    const inside: Precedence = {
      ...precedence,
      before: wipe.step.key,
      after: coat.step.key,
      minimumWait: elapsedMinutes(batches.minimumGap),
      maximumWait: elapsedMinutes(batches.maximumGap),
      reason: 'What was wiped is coated while the old gloss is still soft.',
    }
    const then: readonly Precedence[] =
      next === undefined
        ? []
        : [
            {
              ...precedence,
              before: coat.step.key,
              after: next.step.key,
              minimumWait: 0,
              maximumWait: null,
              reason: 'Only so much is wiped as can be coated; then the next stretch.',
            },
          ]
    return [inside, ...then]
  })
}
