import type { z } from 'zod'
import type { Passes } from '../passes/pass-types.ts'
import type { Estimate } from '../price/estimate-types.ts'
import { woodworkMinutes } from '../price/labour.ts'
import { type Job, records } from '../project/job.ts'
import type { DerivationLine, SurfaceQuantity, Takeoff } from '../quantities/takeoff-types.ts'
import type { Specification, Step } from '../specification/types.ts'
import { amountEntry, ft, places, sqFt, woodworkEntries } from './amount-entry.ts'
import { inRoom } from './by-room.ts'
import type { estimateSchema } from './output-forms/estimate-form.ts'
import type { quantitiesSchema } from './output-forms/quantities-form.ts'
import type { scheduleSchema } from './output-forms/schedule-form.ts'
import type { specificationSchema } from './output-forms/specification-form.ts'
import { passEntries } from './output-passes.ts'
import type { JudgedPlan } from './work-plan.ts'

type QuantitiesFile = z.output<typeof quantitiesSchema>
type SpecificationFile = z.output<typeof specificationSchema>
type EstimateFile = z.output<typeof estimateSchema>
type ScheduleFile = z.output<typeof scheduleSchema>

function headOf<Format extends string>(job: Job, format: Format) {
  return { format, version: 1, jobTitle: job.header.title, unitSystem: job.header.unitSystem } as const
}

/** `quantities.json`, in the form of `quantitiesSchema`. */
export function quantitiesFile(job: Job, takeoff: Takeoff): QuantitiesFile {
  return {
    ...headOf(job, 'coatwright-quantities'),
    totals: figuresOf(takeoff.surfaces),
    rooms: records(job.rooms).map((room) => {
      const surfaces = inRoom(takeoff.surfaces, room.id)
      return {
        roomId: room.id,
        name: room.name,
        totals: figuresOf(surfaces),
        surfaces: surfaces.map(surfaceEntry),
      }
    }),
  }
}

function surfaceEntry(surface: SurfaceQuantity) {
  return {
    surfaceKey: surface.key,
    surfaceClass: surface.surfaceClass,
    grossAreaSqFt: sqFt(surface.grossArea),
    deductedAreaSqFt: sqFt(surface.deductedArea),
    ...figuresOf([surface]),
    reachHeightFt: ft(surface.reachHeight),
    derivation: surface.derivation.map(derivationEntry),
  }
}

/** Sums in the program's whole units; rounded for the file once. */
function figuresOf(surfaces: readonly SurfaceQuantity[]) {
  const sum = (of: (surface: SurfaceQuantity) => number) =>
    surfaces.reduce((total, surface) => total + of(surface), 0)
  return {
    netAreaSqFt: sqFt(sum((surface) => surface.netArea)),
    policyAreaSqFt: sqFt(sum((surface) => surface.policyArea)),
    equivalentAreaSqFt: sqFt(sum((surface) => surface.equivalentArea)),
    lengthFt: ft(sum((surface) => surface.length)),
    cuttingInFt: ft(sum((surface) => surface.cuttingIn)),
    maskingFt: ft(sum((surface) => surface.masking)),
    glassPerimeterFt: ft(sum((surface) => surface.glassPerimeter)),
    count: sum((surface) => surface.count),
  }
}

function derivationEntry(line: DerivationLine) {
  return {
    kind: line.kind,
    text: line.text,
    areaSqFt: line.area === null ? null : sqFt(line.area),
    lengthFt: line.length === null ? null : ft(line.length),
    sourceId: line.sourceId,
  }
}

/** `specification.json`, in the form of `specificationSchema`. */
export function specificationFile(job: Job, specification: Specification, passes: Passes): SpecificationFile {
  return {
    ...headOf(job, 'coatwright-specification'),
    steps: specification.steps.map((step) => stepEntry(job, step)),
    order: specification.order.map((order) => ({
      before: order.before,
      after: order.after,
      minimumWaitElapsedMinutes: order.minimumWait,
      maximumWaitElapsedMinutes: order.maximumWait,
      reason: order.reason,
      source: order.source,
    })),
    ...passEntries(passes),
    holds: specification.holds.map((hold) => ({
      ...hold,
      surfaceKeys: [...hold.surfaceKeys],
      stepKeys: [...hold.stepKeys],
    })),
    notices: specification.notices.map((notice) => ({ ...notice, surfaceKeys: [...notice.surfaceKeys] })),
    clashes: specification.clashes.map(({ sentence, ids }) => ({ sentence, ids: [...ids] })),
  }
}

function stepEntry(job: Job, step: Step): SpecificationFile['steps'][number] {
  const { amounts } = step
  return {
    stepKey: step.key,
    roomId: step.roomId,
    surfaceClass: step.surfaceClass,
    groupKey: step.groupKey,
    surfaceKeys: [...step.surfaceKeys],
    keptItems: step.keptItemIds.map((keptItemId) => ({
      keptItemId,
      kind: job.keptItems[keptItemId]?.kind ?? null,
    })),
    operation: step.operation,
    coat: step.coat,
    productClass: step.productClass,
    productId: step.productId,
    colourId: step.colourId,
    sheen: step.sheen,
    ...amountEntry(amounts),
    woodwork: woodworkEntries(woodworkMinutes(job, step)),
    difficultyFactor: places(step.difficulty),
    skill: step.skill,
    touchDryElapsedMinutes: step.touchDry,
    splittable: step.splittable,
    daily: step.daily,
    because: step.because.map((each) => ({ ...each, conditionIds: [...each.conditionIds] })),
    cautions: step.cautions.map(({ text, rule }) => ({ text, rule })),
  }
}

/** `estimate.json`, in the form of `estimateSchema`. */
export function estimateFile(job: Job, priced: Estimate): EstimateFile {
  const { totals } = priced
  return {
    ...headOf(job, 'coatwright-estimate'),
    lines: priced.lines.map(({ kind, label, roomId, surfaceClass, cents, derivation }) => ({
      kind,
      label,
      roomId,
      surfaceClass,
      priceCents: cents,
      derivation,
    })),
    labour: priced.labour.steps.map(({ stepKey, minutes, times, derivation }) => ({
      stepKey,
      personMinutes: places(minutes),
      times,
      derivation,
    })),
    materials: priced.materials.map((line) => ({
      productId: line.productId,
      productName: line.productName,
      productClass: line.productClass,
      colourId: line.colourId,
      colourName: line.colourName,
      sheen: line.sheen,
      neededGallons: places(line.gallons),
      boughtGallons: places(line.boughtGallons),
      containers: line.containers.map(({ name, gallons, count, priceCents }) => ({
        name,
        gallons,
        count,
        unitPriceCents: priceCents,
      })),
      priceCents: line.priceCents,
      source: line.source,
      derivation: line.derivation,
    })),
    labourBasis: priced.basis,
    rooms: priced.rooms.map(({ roomId, name, cents }) => ({ roomId, name, priceCents: cents })),
    totals: {
      labourPersonMinutes: places(totals.labourMinutes),
      labourCents: totals.labour,
      materialsCents: totals.materials,
      sundriesCents: totals.sundries,
      overheadCents: totals.overhead,
      contingencyCents: totals.contingency,
      profitCents: totals.profit,
      beforeTaxCents: totals.beforeTax,
      taxCents: totals.tax,
      totalCents: totals.total,
    },
    doubts: [...priced.doubts],
  }
}

/** `schedule.json`, in the form of `scheduleSchema`. */
export function scheduleFile(job: Job, plan: JudgedPlan): ScheduleFile {
  const { roomsOutOfUse } = plan
  const verdict = verdictOf(plan)
  return {
    ...headOf(job, 'coatwright-schedule'),
    timeZone: job.header.timeZone,
    startsOn: plan.startsOn,
    finishesOn: plan.finishesOn,
    tasks: plan.tasks.map((task) => ({
      taskKey: task.key,
      ...(task.passKey === undefined ? {} : { passKey: task.passKey }),
      ...(task.name === undefined ? {} : { name: task.name }),
      ...(task.roomSetId === undefined ? {} : { roomSetId: task.roomSetId }),
      roomId: task.roomId,
      stepKeys: [...task.stepKeys],
      startsAt: task.startsAt,
      endsAt: task.endsAt,
      segments: task.segments.map(({ startsAt, endsAt }) => ({ startsAt, endsAt })),
      crewMemberIds: [...task.crewMemberIds],
      ...(task.dryUntil === undefined ? {} : { dryUntil: task.dryUntil }),
    })),
    ...(roomsOutOfUse && {
      roomsOutOfUse: roomsOutOfUse.map(({ roomId, from, to }) => ({ roomId, from, to })),
    }),
    ...(verdict && { verdict }),
  }
}

function verdictOf({
  cost,
  roomDays,
  days,
  violations,
  bound,
  relaxed,
}: JudgedPlan): ScheduleFile['verdict'] {
  if (cost === undefined || violations === undefined) return undefined
  const paid = (days ?? []).reduce((sum, { paidMinutes }) => sum + paidMinutes, 0)
  const { pay, siteDays, handOvers, total } = cost
  return {
    rulesBroken: violations.length,
    earliestFinishOn: bound?.finishesOn ?? null,
    daysFromBestAtMost: bound?.gapDays ?? null,
    leastCostCents: bound?.cents ?? null,
    costCents: { pay, siteDays, roomDays: cost.roomDays, handOvers, total },
    roomDaysOutOfUse: roomDays ?? 0,
    paidMinutes: paid,
    promisesMoved: cost.movedTasks,
    notKept: (relaxed ?? []).map(({ what, id }) => ({ what, id })),
  }
}
