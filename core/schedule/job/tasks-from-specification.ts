import { type Job, records } from '../../project/job.ts'
import type { Pin } from '../../project/progress-records.ts'
import type { Specification, Step } from '../../specification/types.ts'
import { elapsedMinutes, workingMinutes } from '../../units/duration.ts'
import {
  type EpochMinutes,
  epochMinutes,
  type Link,
  type PlanPromise,
  type RoomEffects,
  type ScheduleProblem,
  type Task,
  type TaskState,
} from '../model.ts'
import { heldSteps } from './held-steps.ts'
import { crewOf, planGrid, type Relaxed, type Site } from './planning-site.ts'
import { roomLimitOf, roomsOf } from './schedule-rooms.ts'
import { localInstant, siteClock } from './site-hours.ts'
import { engineRules } from './site-rules.ts'
import { factsByStep, type MinutesByStep, type StepFact } from './step-facts.ts'
import { type GroupingLimits, groupSteps, type StepGroup, usualGrouping } from './step-groups.ts'
import { type StepLink, stepLinks, tightest } from './step-links.ts'
import { joinManners, type Manner, mannerOf } from './step-manner.ts'
import { crewMost, longestTimesOf, peopleInRoom, splittingOf, wantedSplitting } from './task-crew.ts'

export interface PlanningFacts {
  /** Local moment the plan is made at; null plans from the job's first day. */
  readonly now: string | null
  /** How steps stand (`forecastInputs`); those left out are open. */
  readonly facts: readonly StepFact[]
  /** What an accepted plan promised, by step key. */
  readonly promises: readonly {
    readonly stepKey: string
    readonly startsAt: string
    readonly crewMemberIds: readonly string[]
  }[]
  readonly grouping?: GroupingLimits
}

export const nothingHappened: PlanningFacts = { now: null, facts: [], promises: [] }

/** A specification as the engine's problem, and what each of its tasks stands for. */
export interface TasksOfJob {
  readonly problem: ScheduleProblem
  readonly groups: ReadonlyMap<string, StepGroup>
  readonly relaxed: readonly Relaxed[]
}

/**
 * Turns the steps of a specification, with their person-minutes, into tasks, rooms, people and rules. Daily steps (covering alarms)
 * become the chores of each day; dropped steps leave no task.
 */
export function tasksFromSpecification(
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
  planning: PlanningFacts = nothingHappened,
): TasksOfJob {
  const facts = factsByStep(specification, minutes, planning.facts)
  const daily = new Set(specification.steps.flatMap((step) => (step.daily ? [step.key] : [])))
  const planned = specification.steps.filter((step) => !step.daily && facts.get(step.key)?.kind !== 'dropped')
  const plannedKeys = new Set(planned.map((step) => step.key))
  const links = stepLinks(
    specification,
    (key) => plannedKeys.has(key),
    (key) => daily.has(key),
  )
  const held = heldSteps(specification.holds, (planning.now ?? job.header.startsOn).slice(0, 10))
  const limits = planning.grouping ?? usualGrouping
  const groups = sortedByFact(groupSteps(planned, links, minutes, limits, held.from), facts)
  const clock = siteClock(job, planning.now, planGrid)
  const people = crewOf(job)
  const longestTimes = people.map((person) => longestTimesOf(job, clock, person))
  const peopleAtOnce = new Map(records(job.rooms).map((room) => [room.id, peopleInRoom(job, room)]))
  const site: Site = { job, facts, clock, people, longestTimes, heldFrom: held.from, peopleAtOnce }
  const relaxed: Relaxed[] = [...held.relaxed]
  const pins = usablePins(site, groups, relaxed)
  const tasks = groups.map((group) => taskOf(site, group, pins.get(group.key), relaxed))
  const rules = engineRules(job, planGrid)
  const problem: ScheduleProblem = {
    clock,
    gridMinutes: planGrid,
    tasks,
    links: taskLinks(groups, links),
    people,
    resources: [],
    rooms: roomsOf(site, tasks, relaxed),
    rules: { ...rules, roomsOutOfUse: roomLimitOf(site, rules.roomsOutOfUse, tasks, relaxed) },
    promises: promisesOf(site, groups, planning.promises),
  }
  return { problem, groups: new Map(groups.map((group) => [group.key, group])), relaxed }
}

/** Work done, begun or free is never one task: facts stay facts, the rest of a group goes on without them. */
function sortedByFact(groups: readonly StepGroup[], facts: Site['facts']): readonly StepGroup[] {
  return groups.flatMap((group) => {
    if (group.steps.every((step) => facts.get(step.key)?.kind === 'open')) return [group]
    const runs: Step[][] = []
    for (const step of group.steps) {
      const isOpen = facts.get(step.key)?.kind === 'open'
      const last = runs.at(-1)
      const lastIsOpen = last?.[0] && facts.get(last[0].key)?.kind === 'open'
      if (last && isOpen && lastIsOpen) last.push(step)
      else runs.push([step])
    }
    return runs.map((steps) => ({ key: (steps[0] as Step).key, steps }))
  })
}

function taskOf(site: Site, group: StepGroup, pin: Pin | undefined, relaxed: Relaxed[]): Task {
  const { roomId } = group.steps[0] as Step
  const manner = group.steps.map(mannerOf).reduce(joinManners)
  const facts = group.steps.map((step) => site.facts.get(step.key) as StepFact)
  const left = facts.reduce((sum, fact) => sum + ('leftMinutes' in fact ? fact.leftMinutes : 0), 0)
  const work = Math.max(planGrid, Math.ceil(left))
  const crew = { min: 1, max: crewMost(site, manner, roomId, work) }
  const splitting = splittingOf(site, manner, work, crew.max)
  if (splitting !== wantedSplitting(manner)) {
    relaxed.push({ what: splitting === 'break' ? 'splitOverBreak' : 'splitOverNight', id: group.key })
  }
  return {
    id: group.key,
    work: workingMinutes(work),
    crew,
    skills: manner.skills,
    room: roomId,
    splitting,
    effects: effectsOf(manner, group.steps),
    product: manner.paint,
    earliestStart: heldUntilInstant(site, group),
    state: stateOf(site, facts[0] as StepFact, pin),
    demands: [],
  }
}

/** A task never mixes steps that wait for different days, so any of them says it; what was begun waits no more. */
function heldUntilInstant(site: Site, { steps }: StepGroup): EpochMinutes | null {
  const key = (steps[0] as Step).key
  const from = site.heldFrom.get(key)
  const waits = from !== undefined && site.facts.get(key)?.kind === 'open'
  return waits ? localInstant(`${from}T00:00`, site.clock.timeZone) : null
}

function effectsOf(manner: Manner, steps: readonly Step[]): RoomEffects {
  const { wet, dusty, fumes, closesRoom } = manner
  const dry = elapsedMinutes(Math.ceil(Math.max(...steps.map((step) => step.touchDry))))
  return {
    wetFor: wet ? dry : null,
    dusty,
    fumesFor: fumes ? dry : null,
    closedFor: closesRoom ? (wet ? dry : elapsedMinutes(0)) : null,
  }
}

function stateOf(site: Site, fact: StepFact, pin: Pin | undefined): TaskState {
  const instant = (moment: string) => localInstant(moment, site.clock.timeZone)
  switch (fact.kind) {
    case 'done':
      return {
        kind: 'done',
        start: instant(fact.startedAt),
        end: instant(fact.endedAt),
        people: fact.crewMemberIds,
      }
    case 'started': {
      const start = epochMinutes(Math.min(site.clock.start, instant(fact.startedAt)))
      const people =
        fact.crewMemberIds.length > 0 ? fact.crewMemberIds : site.people.slice(0, 1).map(({ id }) => id)
      return {
        kind: 'started',
        start,
        people,
        remainingWork: workingMinutes(Math.max(planGrid, Math.ceil(fact.leftMinutes))),
      }
    }
    default:
      return pin === undefined
        ? { kind: 'open' }
        : {
            kind: 'pinned',
            start: onGrid(instant(pin.startsAt)),
            people: pin.crewMemberIds.length > 0 ? pin.crewMemberIds : null,
          }
  }
}

function onGrid(instant: number): EpochMinutes {
  return epochMinutes(Math.round(instant / planGrid) * planGrid)
}

/** Pins hold tasks that are still open, in the future and not before what they wait for; others are said to be lost. The last pin of a task counts. */
function usablePins(site: Site, groups: readonly StepGroup[], relaxed: Relaxed[]): ReadonlyMap<string, Pin> {
  const byTask = new Map<string, Pin>()
  for (const pin of records(site.job.pins)) {
    const group = groups.find((one) => one.steps.some((step) => step.key === pin.taskKey))
    const isOpen = group?.steps.every((step) => site.facts.get(step.key)?.kind === 'open') ?? false
    const start = onGrid(localInstant(pin.startsAt, site.clock.timeZone))
    const least = group === undefined ? null : heldUntilInstant(site, group)
    const isInTime = start >= Math.max(site.clock.start, least ?? 0)
    if (group !== undefined && isOpen && isInTime) byTask.set(group.key, pin)
    else if (group === undefined || isOpen) relaxed.push({ what: 'pinLost', id: pin.id })
  }
  return byTask
}

function taskLinks(groups: readonly StepGroup[], links: readonly StepLink[]): readonly Link[] {
  const taskOfStep = new Map(
    groups.flatMap((group) => group.steps.map((step) => [step.key, group.key] as const)),
  )
  const between = links.flatMap((link): StepLink[] => {
    const [before, after] = [taskOfStep.get(link.before), taskOfStep.get(link.after)]
    return before === undefined || after === undefined || before === after ? [] : [{ ...link, before, after }]
  })
  return tightest(between).map(({ before, after, atLeast, atMost }) => ({
    from: before,
    to: after,
    measuredFrom: 'end',
    atLeast: elapsedMinutes(atLeast),
    atMost: atMost === null ? null : elapsedMinutes(atMost),
  }))
}

function promisesOf(
  site: Site,
  groups: readonly StepGroup[],
  promises: PlanningFacts['promises'],
): readonly PlanPromise[] {
  const byStep = new Map(promises.map((promise) => [promise.stepKey, promise]))
  return groups.flatMap((group) => {
    const promise = byStep.get(group.key)
    if (promise === undefined || site.facts.get(group.key)?.kind !== 'open') return []
    return [
      {
        task: group.key,
        start: localInstant(promise.startsAt, site.clock.timeZone),
        people: promise.crewMemberIds,
      },
    ]
  })
}
