import type { CrewMemberId } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { SiteMoment } from './site-time.ts'

/** What the documents need to know of an accepted plan. */
export interface WorkPlan {
  readonly tasks: readonly WorkPlanTask[]
  /** Local dates of the first and the last day of work. */
  readonly startsOn: string
  readonly finishesOn: string
}

export interface WorkPlanTask {
  readonly key: string
  readonly roomId: RoomId
  /** The steps worked in it, in order. */
  readonly stepKeys: readonly string[]
  readonly startsAt: SiteMoment
  readonly endsAt: SiteMoment
  /** Between breaks and nights. */
  readonly segments: readonly { readonly startsAt: SiteMoment; readonly endsAt: SiteMoment }[]
  readonly crewMemberIds: readonly CrewMemberId[]
}

/** The tasks of the plan by the steps they hold. */
export function tasksByStep(plan: WorkPlan): ReadonlyMap<string, readonly WorkPlanTask[]> {
  const byStep = new Map<string, WorkPlanTask[]>()
  for (const task of plan.tasks) {
    for (const key of task.stepKeys) byStep.set(key, [...(byStep.get(key) ?? []), task])
  }
  return byStep
}

export function earliest(moments: readonly SiteMoment[]): SiteMoment | null {
  return moments.toSorted()[0] ?? null
}

export function latest(moments: readonly SiteMoment[]): SiteMoment | null {
  return moments.toSorted().at(-1) ?? null
}
