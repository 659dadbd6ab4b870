import { groupedBy } from '../lists/lists.ts'
import {
  type GirthPolicy,
  girthPolicies,
  type Job,
  type OpeningPolicy,
  openingPolicies,
} from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import { type Area, sumAreas } from '../units/area.ts'
import { girthPolicySources } from './girth-policies.ts'
import { openingPolicySources, type PolicySource } from './opening-policies.ts'
import { takeOff } from './take-off.ts'
import type { SurfaceQuantity } from './takeoff-types.ts'

/** One policy beside the others: what it makes of this job, and where it is written. */
export interface PolicyFigure<Policy> extends PolicySource {
  readonly policy: Policy
  /** Whether the job uses it. */
  readonly chosen: boolean
  readonly area: Area
  /** The same room by room; together they are the area exactly. */
  readonly byRoom: ReadonlyMap<RoomId, Area>
  /** Over (or, below zero, under) the exact figure. */
  readonly difference: number
}

const wallWork: readonly SurfaceClass[] = ['walls', 'wainscot']

/** Wall work (walls, wainscot and plaster reveals) under each rule for openings. */
export function compareOpeningPolicies(job: Job): readonly PolicyFigure<OpeningPolicy>[] {
  const chosen = job.houseRules.openingPolicy
  return compare(openingPolicies, 'exactNet', chosen, openingPolicySources, (openingPolicy) =>
    policyAreas({ ...job, houseRules: { ...job.houseRules, openingPolicy } }, (surface) =>
      wallWork.includes(surface.surfaceClass),
    ),
  )
}

/** Trim (runs, casings, wood jambs, stools) under each rule for narrow girths. Counted by length, work has no area. */
export function compareGirthPolicies(job: Job): readonly PolicyFigure<GirthPolicy>[] {
  const chosen = job.houseRules.girthPolicy
  return compare(girthPolicies, 'exactGirth', chosen, girthPolicySources, (girthPolicy) =>
    policyAreas(
      { ...job, houseRules: { ...job.houseRules, girthPolicy } },
      (surface) => surface.surfaceClass === 'trim',
    ),
  )
}

function policyAreas(job: Job, counts: (surface: SurfaceQuantity) => boolean): ReadonlyMap<RoomId, Area> {
  const byRoom = groupedBy(takeOff(job).surfaces.filter(counts), ({ roomId }) => roomId)
  return new Map(
    [...byRoom].map(([roomId, own]) => [roomId, sumAreas(own.map(({ policyArea }) => policyArea))]),
  )
}

function compare<Policy extends string>(
  policies: readonly Policy[],
  exact: Policy,
  chosen: Policy,
  sources: Readonly<Record<Policy, PolicySource>>,
  areasUnder: (policy: Policy) => ReadonlyMap<RoomId, Area>,
): readonly PolicyFigure<Policy>[] {
  const exactAreas = areasUnder(exact)
  const exactArea = sumAreas([...exactAreas.values()])
  return policies.map((policy) => {
    const byRoom = policy === exact ? exactAreas : areasUnder(policy)
    const area = sumAreas([...byRoom.values()])
    return {
      policy,
      chosen: policy === chosen,
      area,
      byRoom,
      difference: area - exactArea,
      ...sources[policy],
    }
  })
}
