import { groupedBy, groupedByEach } from '../../lists/lists.ts'
import type { MinutesByStep, Passes, PassOrder } from '../../passes/pass-types.ts'
import type { Job } from '../../project/job.ts'
import type { PlanAim } from '../../project/vocabulary.ts'
import type { Specification } from '../../specification/types.ts'
import type { EpochMinutes } from '../../time/instant.ts'
import { instantOf } from '../../time/site-moment.ts'
import { elapsedMinutes } from '../../units/duration.ts'
import { compareText } from '../../words/text.ts'
import {
  type Keeping,
  type Link,
  nothingKept,
  type PlanPromise,
  type PlanSegment,
  type ScheduleProblem,
} from '../model.ts'
import { heldSteps } from './held-steps.ts'
import { passTasks, taskOf, usablePins } from './pass-tasks.ts'
import { crewOf, type PassTask, planGrid, type Relaxed, type Site } from './planning-site.ts'
import { roomLimitOf, roomsOf } from './rooms-of-job.ts'
import { siteClock } from './site-hours.ts'
import { engineRules, pricesOf, spendingOf } from './site-rules.ts'
import { factsByStep, type StepFact } from './step-facts.ts'

/** Part of an older plan that a new one keeps to. */
interface KeptTask {
  readonly stepKeys: readonly string[]
  readonly startsAt: string
  readonly endsAt: string
  readonly segments: readonly { readonly startsAt: string; readonly endsAt: string }[]
  readonly dryUntil?: string | null
  readonly crewMemberIds: readonly string[]
}

export interface PlanningFacts {
  /** Local moment the plan is made at; null plans from the job's first day. */
  readonly now: string | null
  /** How steps stand (`forecastInputs`); those left out are open. */
  readonly facts: readonly StepFact[]
  /**
   * The plan to keep to: `promised` was accepted, so its days of rooms are kept first and little is moved; of one that was only `shown` the
   * nearer of two equal plans is taken.
   */
  readonly keeps: { readonly as: 'promised' | 'shown'; readonly tasks: readonly KeptTask[] } | null
  readonly busy: Busy
}

/** Stretches in which people of the crew work on other accepted jobs, by their ids. */
export type Busy = Readonly<Record<string, readonly PlanSegment[]>>

export const nothingHappened: PlanningFacts = { now: null, facts: [], keeps: null, busy: {} }

/** A job as the engine's problem, and what each of its tasks stands for. */
export interface ProblemOfJob {
  readonly problem: ScheduleProblem
  readonly passes: Passes
  readonly tasks: ReadonlyMap<string, PassTask>
  readonly relaxed: readonly Relaxed[]
  /** What plans are looked for; the prices of the problem are the job's own all the same. */
  readonly aim: PlanAim
}

/** Reads a job into a problem: its passes as tasks, its room sets as rooms, its crew, hours, rules and prices. */
export function problemOfJob(
  job: Job,
  specification: Specification,
  passes: Passes,
  minutes: MinutesByStep,
  planning: PlanningFacts = nothingHappened,
): ProblemOfJob {
  const facts = factsByStep(specification, minutes, planning.facts)
  const clock = siteClock(job, planning.now, planGrid)
  const held = heldSteps(specification.holds, (planning.now ?? job.header.startsOn).slice(0, 10))
  const site: Site = {
    job,
    passes,
    facts,
    clock,
    people: crewOf(job, planning.busy),
    heldFrom: held.from,
    relaxed: [...held.relaxed],
  }
  const parts = passTasks(site)
  const pins = usablePins(site, parts)
  const tasks = parts.map((part) => taskOf(site, part, pins))
  const rules = engineRules(job, planGrid)
  const { roomDay: _, ...prices } = pricesOf(job)
  const problem: ScheduleProblem = {
    clock,
    gridMinutes: planGrid,
    tasks,
    links: linksOf(passes, parts),
    people: site.people,
    resources: [],
    rooms: roomsOf(site, tasks),
    rules: { ...rules, roomsOutOfUse: roomLimitOf(site, rules.roomsOutOfUse, tasks) },
    spending: spendingOf(job),
    prices,
    keeping: keepingOf(site, parts, planning.keeps),
  }
  return {
    problem,
    passes,
    tasks: new Map(parts.map((part) => [part.id, part])),
    relaxed: site.relaxed,
    aim: job.header.planFor,
  }
}

/** Waits between passes, over passes of which nothing is left to plan. */
function linksOf({ order }: Passes, parts: readonly PassTask[]): readonly Link[] {
  const ofPass = groupedBy(parts, ({ pass }) => pass.key)
  const kept = overGaps(order, (key) => ofPass.has(key))
  return kept.flatMap((each) =>
    (ofPass.get(each.before) ?? []).flatMap(({ id: from }) =>
      (ofPass.get(each.after) ?? []).map(({ id: to }): Link => {
        const atLeast = elapsedMinutes(Math.ceil(each.atLeast))
        return { from, to, measuredFrom: 'end', atLeast, atMost: each.atMost }
      }),
    ),
  )
}

/** What came after a pass that was dropped follows what came before it, as long after as the dropped one had to. */
function overGaps(order: readonly PassOrder[], isThere: (key: string) => boolean): readonly PassOrder[] {
  const gone = [...new Set(order.flatMap(({ before, after }) => [before, after]))].filter(
    (key) => !isThere(key),
  )
  return gone.reduce<readonly PassOrder[]>((left, key) => {
    const into = left.filter(({ after }) => after === key)
    const from = left.filter(({ before }) => before === key)
    const over = into.flatMap((first) =>
      from.map(({ after }) => ({ ...first, after, atMost: null, sameOrder: false })),
    )
    return [...left.filter(({ before, after }) => before !== key && after !== key), ...over]
  }, order)
}

/** Cents for each task that moves: of an accepted plan more than moving one could ever save, else next to nothing. */
const centsPerMove = { promised: 100_000, shown: 20 } as const
/** Cents for each day a room comes back later than was promised: ten tasks may move for it. */
const centsPerLateDay = 1_000_000

function keepingOf(site: Site, parts: readonly PassTask[], keeps: PlanningFacts['keeps']): Keeping {
  if (keeps === null) return nothingKept
  const instant = (moment: string): EpochMinutes => instantOf(moment, site.clock.timeZone)
  // A coat that goes on the next day stands in several tasks of the older plan.
  const byStep = groupedByEach(keeps.tasks, ({ stepKeys }) => stepKeys)
  const keptOf = ({ stepKeys }: PassTask): readonly KeptTask[] => [
    ...new Set(stepKeys.flatMap((key) => byStep.get(key) ?? [])),
  ]
  const tasks = parts.flatMap((part): readonly PlanPromise[] => {
    const kept = keptOf(part).toSorted((one, other) => compareText(one.startsAt, other.startsAt))
    const [first] = kept
    if (first === undefined) return []
    const people = first.crewMemberIds.filter((id) => site.people.some((person) => person.id === id))
    return [{ task: part.id, start: instant(first.startsAt), people }]
  })
  const rooms = site.passes.sets.flatMap(({ id }) => {
    const inside = parts.filter(({ pass }) => pass.roomSetId === id).flatMap(keptOf)
    const by = inside
      .map(({ endsAt, dryUntil }) => instant(dryUntil ?? endsAt))
      .sort((one, other) => other - one)[0]
    return by === undefined || keeps.as === 'shown' ? [] : [{ room: id, by }]
  })
  return { tasks, rooms, centsPerMove: centsPerMove[keeps.as], centsPerLateDay }
}
