import { pointsDistance } from '../geometry/point.ts'
import type { Job } from '../project/job.ts'
import type { Room } from '../project/sketch-records.ts'
import { findWall } from '../project/walls.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { type Area, areaFromUnits, squareFeet, toSquareFeet } from '../units/area.ts'
import { toFeet } from '../units/length.ts'
import { cutsIntoPaint } from './disturbed.ts'
import { becauseOf, type PlannedStep, type StepMaker } from './planned-step.ts'
import type { RoomFacts } from './room-facts.ts'
import type { GroupWork } from './room-notices.ts'
import { floorArea, roomStep } from './room-steps.ts'
import type { RoomView } from './rule.ts'
import { verdictOf } from './rules/lead-safe.ts'
import type { Operation, StepAmounts } from './types.ts'

/**
 * Whether lead-safe work is done in a room: something on its old paint is disturbed, and with what was disturbed before it is more
 * than the minor-repair exemption of 40 CFR 745.83 allows.
 */
export function isLeadSafeWork(view: RoomView): boolean {
  return view.book.isOn('lead-safe') && view.disturbedSquareFeet > 0 && verdictOf(view).kind === 'covered'
}

/** What lead-safe work adds to a room: before the first scraper, every evening, and after the last sanding. */
export function leadSteps(
  maker: StepMaker,
  facts: RoomFacts,
  view: RoomView,
  work: readonly GroupWork[],
): readonly PlannedStep[] {
  if (!isLeadSafeWork(view)) return []
  const { room } = facts
  const step = (operation: Operation, ruleId: string, amounts: Partial<StepAmounts>, daily = false) =>
    maker.book.isOn(ruleId) ? [roomStep(maker, room, operation, ruleId, { amounts, daily })] : []
  const number = (ruleId: string, name: string) => maker.book.number(ruleId, name)
  const floor = floorArea(room)
  const sheeted = sheetedFloor(maker.job, room, disturbedSurfaces(work), number('lead-sheeting', 'reachFeet'))
  const pieces = (amount: Area, perPiece: number) =>
    Math.max(1, Math.ceil(toSquareFeet(amount) / perPiece - 1e-9))
  const bags = pieces(sheeted, number('lead-final-cleaning', 'sheetingPerBag'))
  const cloths = pieces(floor, number('lead-final-cleaning', 'floorPerCloth')) + sillsOf(facts)
  return [
    ...step('postSigns', 'lead-signs', { count: 1 }),
    ...step('sheetFloor', 'lead-sheeting', { area: sheeted }),
    ...step('sealOpenings', 'lead-sheeting', {
      count: waysIn(facts) + Math.round(number('lead-sheeting', 'ductsPerRoom')),
    }),
    ...step('cleanDaily', 'lead-daily-cleaning', { area: sheeted }, true),
    ...step('bagSheeting', 'lead-final-cleaning', { count: bags }),
    ...step('cleanFinal', 'lead-final-cleaning', { area: floor }),
    ...step('wipeCheck', 'lead-final-cleaning', { count: cloths }),
  ]
}

/** Work on old paint takes longer with extraction or mist; the reason is given with it. */
export function withExtraction(maker: StepMaker, view: RoomView, planned: PlannedStep): PlannedStep {
  if (!maker.book.isOn('lead-tools') || !isLeadSafeWork(view)) return planned
  if (!planned.step.effects.dusty || !cutsIntoPaint(planned)) return planned
  const slower = 1 + maker.book.number('lead-tools', 'slowerPercent') / 100
  const because = becauseOf(maker, [{ ruleId: 'lead-tools', conditionIds: [] }])
  const { step } = planned
  return {
    ...planned,
    step: {
      ...step,
      difficulty: Math.round(step.difficulty * slower * 1000) / 1000,
      because: [...step.because, ...because],
    },
  }
}

function disturbedSurfaces(work: readonly GroupWork[]): readonly SurfaceQuantity[] {
  return work.flatMap(({ group, steps }) => {
    if (group.coat === 'bare') return []
    const touched = new Set(steps.filter(cutsIntoPaint).flatMap(({ step }) => step.surfaceKeys))
    return group.quantities.filter((quantity) => touched.has(quantity.key))
  })
}

/**
 * Floor to be sheeted: as deep as the sheeting reaches before every disturbed surface and as far beyond both its ends; never more
 * than the floor, and all of it under a ceiling. Strips that meet in a corner are counted twice, so the figure is on the safe side.
 */
export function sheetedFloor(
  job: Job,
  room: Room,
  surfaces: readonly SurfaceQuantity[],
  reachFeet: number,
): Area {
  const floor = floorArea(room)
  if (surfaces.some(({ surface }) => surface.kind === 'ceiling')) return floor
  const places = new Map(surfaces.map((each) => placeOnFloor(job, room, each)))
  const strips = [...places.values()].map((width) => squareFeet((width + 2 * reachFeet) * reachFeet))
  return areaFromUnits(
    Math.min(
      floor,
      strips.reduce<number>((sum, strip) => sum + strip, 0),
    ),
  )
}

/** Feet a surface is wide where it stands; parts of one wall or opening stand in one place. */
function placeOnFloor(
  job: Job,
  room: Room,
  { surface, key, length }: SurfaceQuantity,
): readonly [string, number] {
  if (surface.kind === 'opening') {
    return [surface.openingId, toFeet(job.openings[surface.openingId]?.width ?? 0)]
  }
  if (surface.kind === 'wall') {
    const wall = findWall(room, surface.wallId)
    return [surface.wallId, wall === null ? 0 : toFeet(pointsDistance(wall.start, wall.end))]
  }
  return [key, toFeet(length)]
}

/** Doors and cased openings, from whichever side. */
function waysIn({ openings }: RoomFacts): number {
  return openings.filter(({ kind }) => kind === 'door' || kind === 'casedOpening').length
}

function sillsOf({ openings }: RoomFacts): number {
  return openings.filter(({ kind }) => kind === 'window').length
}
