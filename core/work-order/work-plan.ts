import { groupedByEach } from '../lists/lists.ts'
import type { CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { JobPlan } from '../schedule/job-plan.ts'
import type { SiteMoment } from '../time/site-moment.ts'

/** What the documents need to know of an accepted plan. */
export interface WorkPlan {
  readonly tasks: readonly WorkPlanTask[]
  /** Local dates of the first and the last day of work. */
  readonly startsOn: string
  readonly finishesOn: string
}

/**
 * A plan as the scheduler made it (`JobPlan`), where what it was judged to be came along; a plan that was written down by hand or
 * accepted long ago may lack it.
 */
export type JudgedPlan = WorkPlan &
  Partial<Pick<JobPlan, 'cost' | 'days' | 'roomDays' | 'violations' | 'bound' | 'roomsOutOfUse' | 'relaxed'>>

export interface WorkPlanTask {
  readonly key: string
  /** Plans accepted before there were passes lack these three. */
  readonly passKey?: string | undefined
  readonly name?: string | undefined
  readonly roomSetId?: RoomId | undefined
  readonly roomId: RoomId
  /** The steps worked in it, in order. */
  readonly stepKeys: readonly string[]
  readonly startsAt: SiteMoment
  readonly endsAt: SiteMoment
  /** Between breaks and nights. */
  readonly segments: readonly { readonly startsAt: SiteMoment; readonly endsAt: SiteMoment }[]
  readonly crewMemberIds: readonly CrewMemberId[]
  /** Touch dry then; null for dry work. */
  readonly dryUntil?: SiteMoment | null
}

/** The tasks of the plan by the steps they hold. */
export function tasksByStep(plan: WorkPlan): ReadonlyMap<string, readonly WorkPlanTask[]> {
  return groupedByEach(plan.tasks, ({ stepKeys }) => stepKeys)
}

/** Null of no moments. */
export function earliest(moments: readonly SiteMoment[]): SiteMoment | null {
  return moments.toSorted()[0] ?? null
}

/** Null of no moments. */
export function latest(moments: readonly SiteMoment[]): SiteMoment | null {
  return moments.toSorted().at(-1) ?? null
}
