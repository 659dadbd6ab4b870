import type { MinutesByStep } from '../../passes/pass-types.ts'
import type { CrewMemberId } from '../../project/shop-records.ts'
import type { Specification } from '../../specification/types.ts'
import type { WorkingMinutes } from '../../units/duration.ts'

/**
 * How a step stands when a plan is made; moments are local (`2027-03-31T08:30`). Done work stays where it was, work under way goes on, what
 * was dropped leaves its place to what came after it, the rest is free.
 */
export type StepFact =
  | { readonly kind: 'open'; readonly stepKey: string; readonly leftMinutes: WorkingMinutes }
  | {
      readonly kind: 'started'
      readonly stepKey: string
      readonly startedAt: string
      readonly crewMemberIds: readonly CrewMemberId[]
      readonly leftMinutes: WorkingMinutes
    }
  | {
      readonly kind: 'done'
      readonly stepKey: string
      readonly startedAt: string
      readonly endedAt: string
      readonly crewMemberIds: readonly CrewMemberId[]
    }
  | { readonly kind: 'dropped'; readonly stepKey: string }

/** How every step stands; those nothing is said of are open with all their minutes before them. */
export function factsByStep(
  specification: Specification,
  minutes: MinutesByStep,
  facts: readonly StepFact[],
): ReadonlyMap<string, StepFact> {
  const known = new Map(facts.map((fact) => [fact.stepKey, fact]))
  return new Map(
    specification.steps.map((step) => {
      const leftMinutes = minutes.get(step.key)
      if (leftMinutes === undefined) throw new Error(`there are no minutes for step ${step.key}`)
      return [step.key, known.get(step.key) ?? { kind: 'open', stepKey: step.key, leftMinutes }]
    }),
  )
}
