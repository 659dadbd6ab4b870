import { groupedBy, present } from '../lists/lists.ts'
import type { ConditionId } from '../project/survey-records.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { type Area, areaFromUnits, sumAreas, zeroArea } from '../units/area.ts'
import { sumLengths, zeroLength } from '../units/length.ts'
import { type Finding, patchArea } from './findings.ts'
import { amountsOfSurfaces, type Group } from './groups.ts'
import type { Extent, GroupView, PlannedRequest, StepRequest } from './rule.ts'
import type { StepAmounts, WoodworkPart } from './types.ts'
import { woodworkParts } from './woodwork.ts'

/** A step of a group with everything the rules asked of it put together. */
export interface Draft extends StepRequest {
  readonly surfaceClass: SurfaceClass
  readonly surfaceKeys: readonly string[]
  readonly amounts: StepAmounts
  readonly parts: readonly WoodworkPart[]
  /** Square feet of the surface the step is on; for lead, dust and paint alike. */
  readonly touchedArea: Area
  /** Rules that asked for it, with what triggered each. */
  readonly reasons: readonly { readonly ruleId: string; readonly conditionIds: readonly ConditionId[] }[]
}

export const noAmounts: StepAmounts = {
  area: zeroArea,
  equivalentArea: zeroArea,
  length: zeroLength,
  cuttingIn: zeroLength,
  glassPerimeter: zeroLength,
  count: 0,
}

/** One draft per operation and ordinal: the widest extent, all findings, all reasons. */
export function draftsOf(view: GroupView, requests: readonly PlannedRequest[]): readonly Draft[] {
  const byRole = groupedBy(requests, ({ operation, ordinal }) => `${operation}/${ordinal}`)
  return [...byRole.values()].map((list) => draftOf(view, list))
}

function draftOf(view: GroupView, list: readonly PlannedRequest[]): Draft {
  const first = present(list[0])
  const extent = widest(list.map((request) => request.extent))
  const findings = uniqueFindings(list.flatMap((request) => request.findings))
  const { group } = view
  const dry = list.flatMap((request) => (request.dryMinutes === null ? [] : [request.dryMinutes]))
  return {
    operation: first.operation,
    ordinal: first.ordinal,
    extent,
    findings,
    productClass: first.productClass,
    coloured: list.some((request) => request.coloured),
    dryMinutes: dry.length === 0 ? null : Math.max(...dry),
    surfaceClass: group.surfaceClass,
    surfaceKeys: surfaceKeysOf(group, extent, findings),
    amounts: amountsOf(view, first, extent, findings),
    parts: partsOf(view, extent, findings),
    touchedArea: extent === 'whole' ? group.amounts.area : spotArea(group, findings),
    reasons: reasonsOf(list),
  }
}

function widest(extents: readonly Extent[]): Extent {
  return (
    (['whole', 'surfaces', 'masking', 'measured', 'spots'] as const).find((each) => extents.includes(each)) ??
    'whole'
  )
}

function uniqueFindings(findings: readonly Finding[]): readonly Finding[] {
  return [...new Map(findings.map((finding) => [finding.condition.id, finding])).values()]
}

function surfaceKeysOf(group: Group, extent: Extent, findings: readonly Finding[]): readonly string[] {
  const touched =
    extent === 'masking'
      ? new Set(group.quantities.filter((each) => each.masking > 0).map((each) => each.key))
      : new Set(findings.flatMap((finding) => finding.surfaceKeys))
  return group.quantities
    .map((quantity) => quantity.key)
    .filter((key) => extent === 'whole' || touched.has(key))
}

function spotArea(group: Group, findings: readonly Finding[]): Area {
  const spots = sumAreas(findings.map((finding) => finding.spotArea))
  return areaFromUnits(Math.min(spots, group.amounts.area))
}

function amountsOf(
  view: GroupView,
  { operation }: StepRequest,
  extent: Extent,
  findings: readonly Finding[],
): StepAmounts {
  const { group } = view
  switch (extent) {
    case 'whole':
      return group.amounts
    case 'surfaces': {
      const touched = new Set(findings.flatMap((finding) => finding.surfaceKeys))
      return amountsOfSurfaces(group.quantities.filter(({ key }) => touched.has(key)))
    }
    case 'spots': {
      const patches = operation === 'sandPatch' ? findings.map((each) => patchArea(each, view.book)) : null
      const area = patches === null ? spotArea(group, findings) : sumAreas(patches)
      return { ...noAmounts, area, equivalentArea: area }
    }
    case 'measured': {
      const area = areaFromUnits(Math.min(sumAreas(findings.map((each) => each.area)), group.amounts.area))
      return {
        ...noAmounts,
        area,
        equivalentArea: area,
        length: sumLengths(findings.map((each) => each.length)),
        count: findings.reduce((sum, each) => sum + each.count, 0),
      }
    }
    case 'masking':
      return maskingOf(group.quantities)
  }
}

function maskingOf(surfaces: readonly SurfaceQuantity[]): StepAmounts {
  return { ...noAmounts, length: sumLengths(surfaces.map((each) => each.masking)) }
}

/** Spots and what is measured in them lie somewhere on the group; nobody said on which kind of woodwork. */
function partsOf(
  { job, group }: GroupView,
  extent: Extent,
  findings: readonly Finding[],
): readonly WoodworkPart[] {
  if (extent === 'spots' || extent === 'measured') return []
  const keys = new Set(surfaceKeysOf(group, extent, findings))
  const surfaces = group.quantities.filter(({ key }) => keys.has(key))
  return woodworkParts(job, surfaces, extent === 'masking' ? maskingOf : amountsOfSurfaces)
}

function reasonsOf(list: readonly PlannedRequest[]): Draft['reasons'] {
  const byRule = new Map<string, ConditionId[]>()
  for (const { ruleId, findings } of list) {
    const ids = byRule.get(ruleId) ?? []
    for (const { condition, noted } of findings) {
      if (noted && !ids.includes(condition.id)) ids.push(condition.id)
    }
    byRule.set(ruleId, ids)
  }
  return [...byRule].map(([ruleId, conditionIds]) => ({ ruleId, conditionIds }))
}
