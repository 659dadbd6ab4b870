import { type Area, areaFromUnits, toSquareFeet } from '../units/area.ts'
import type { Finding } from './findings.ts'
import type { Group } from './groups.ts'
import { disturbsPaint } from './operation-facts.ts'
import type { PlannedStep } from './planned-step.ts'

/**
 * Square feet of coated surface that the steps of one group cut into: all of it where a step covers all of it; else the places found,
 * each once, and whole components that are freed (a sash cut loose counts with all of its face). Never more than the group.
 */
export function disturbedSquareFeet(group: Group, steps: readonly PlannedStep[]): number {
  if (group.coat === 'bare') return 0
  const cutting = steps.filter(cutsIntoPaint)
  if (cutting.some((each) => each.extent === 'whole')) return toSquareFeet(group.amounts.area)
  const places = new Map<string, Finding>()
  for (const { findings, step } of cutting) {
    if (step.operation === 'freeSash') continue
    for (const finding of findings) places.set(finding.condition.id, finding)
  }
  const spots = [...places.values()].reduce((sum, finding) => sum + finding.spotArea, 0)
  return toSquareFeet(Math.min(group.amounts.area, spots + freedArea(group, cutting)))
}

/** Dry or wet work on the old coat; sanding between new coats is not. */
export function cutsIntoPaint({ step, role }: PlannedStep): boolean {
  return disturbsPaint(step.operation) && !/^sand\/[2-9]/.test(role)
}

function freedArea(group: Group, cutting: readonly PlannedStep[]): Area {
  const freed = new Set(
    cutting.filter(({ step }) => step.operation === 'freeSash').flatMap(({ step }) => step.surfaceKeys),
  )
  return areaFromUnits(
    group.quantities
      .filter((quantity) => freed.has(quantity.key))
      .reduce((sum, quantity) => sum + quantity.netArea, 0),
  )
}
