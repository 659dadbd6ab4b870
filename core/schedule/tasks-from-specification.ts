import { polygonArea } from '../geometry/polygon.ts'
import { type Job, records } from '../project/job.ts'
import type { Pin } from '../project/progress-records.ts'
import type { Room, RoomId } from '../project/sketch-records.ts'
import type { Specification, Step } from '../specification/types.ts'
import { areaFromSquareUnits, toSquareFeet } from '../units/area.ts'
import { elapsedMinutes, workingMinutes } from '../units/duration.ts'
import { presentWindows } from './calendar.ts'
import {
  type EpochMinutes,
  epochMinutes,
  type Link,
  type Person,
  type PlanPromise,
  type RoomEffects,
  type ScheduleProblem,
  type ScheduleRoom,
  type Splitting,
  type Task,
  type TaskState,
} from './model.ts'
import { localInstant, personOf, siteClock } from './site-hours.ts'
import { engineRules, isSiteRuleOn, siteRuleNumber, siteRules } from './site-rules.ts'
import { factsByStep, type MinutesByStep, type StepFact } from './step-facts.ts'
import { type GroupingLimits, groupSteps, type StepGroup, usualGrouping } from './step-groups.ts'
import { type StepLink, stepLinks, tightest } from './step-links.ts'
import { joinManners, type Manner, mannerOf } from './step-manner.ts'
import { hallsOnTheWay, openNeighbours } from './ways-through.ts'

/** All starts and ends lie on whole steps of so many minutes. */
export const planGrid = 5

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

/** What could not be asked of the plan as it was written down; ids of pins and rooms. */
export interface Relaxed {
  readonly what: 'pinLost' | 'eveningsLost' | 'splitOverBreak' | 'splitOverNight'
  /** A pin, a room or a task. */
  readonly id: string
}

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
  const groups = sortedByFact(groupSteps(planned, links, minutes, planning.grouping ?? usualGrouping), facts)
  const site: Site = { job, facts, clock: siteClock(job, planning.now, planGrid), people: crewOf(job) }
  const relaxed: Relaxed[] = []
  const pins = usablePins(site, groups, relaxed)
  const tasks = groups.map((group) => taskOf(site, group, pins.get(group.key), relaxed))
  const problem: ScheduleProblem = {
    clock: site.clock,
    gridMinutes: planGrid,
    tasks,
    links: taskLinks(groups, links),
    people: site.people,
    resources: [],
    rooms: roomsOf(site, tasks, relaxed),
    rules: engineRules(job, planGrid),
    promises: promisesOf(site, groups, planning.promises),
  }
  return { problem, groups: new Map(groups.map((group) => [group.key, group])), relaxed }
}

interface Site {
  readonly job: Job
  readonly facts: ReadonlyMap<string, StepFact>
  readonly clock: ReturnType<typeof siteClock>
  readonly people: readonly Person[]
}

/** By id, so that the same job gives the same plan in whatever order its crew was entered. */
function crewOf(job: Job): readonly Person[] {
  return records(job.crew)
    .toSorted((one, other) => (one.id < other.id ? -1 : 1))
    .map((member) => personOf(member, planGrid))
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
    earliestStart: null,
    state: stateOf(site, facts[0] as StepFact, pin),
    demands: [],
  }
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

/** Pins hold tasks that are still open, in the future; others are said to be lost. The last pin of a task counts. */
function usablePins(site: Site, groups: readonly StepGroup[], relaxed: Relaxed[]): ReadonlyMap<string, Pin> {
  const byTask = new Map<string, Pin>()
  for (const pin of records(site.job.pins)) {
    const group = groups.find((one) => one.steps.some((step) => step.key === pin.taskKey))
    const isOpen = group?.steps.every((step) => site.facts.get(step.key)?.kind === 'open') ?? false
    const start = onGrid(localInstant(pin.startsAt, site.clock.timeZone))
    if (group !== undefined && isOpen && start >= site.clock.start) byTask.set(group.key, pin)
    else if (group === undefined || isOpen) relaxed.push({ what: 'pinLost', id: pin.id })
  }
  return byTask
}

/** One more person for every hour and a half of work, as far as the room and the crew go (shop assumption). */
function crewMost(site: Site, manner: Manner, roomId: RoomId, work: number): number {
  const skilled = site.people.filter((person) => hasSkills(person, manner)).length
  const room = peopleInRoom(site.job, roomId)
  return Math.max(1, Math.min(skilled, room ?? skilled, Math.ceil(work / 90)))
}

function hasSkills(person: Person, { skills }: Manner): boolean {
  return skills.every((skill) => person.skills.includes(skill))
}

function peopleInRoom(job: Job, roomId: RoomId): number | null {
  const room = job.rooms[roomId]
  if (room === undefined || !isSiteRuleOn(job, siteRules.crowding)) return null
  const floor = toSquareFeet(areaFromSquareUnits(polygonArea(room.corners)))
  if (floor < siteRuleNumber(job, siteRules.crowding, 'squareFeetForTwo')) return 1
  return floor < siteRuleNumber(job, siteRules.crowding, 'squareFeetForThree') ? 2 : null
}

function wantedSplitting({ splittable }: Manner): Splitting {
  return splittable === 'no' ? 'none' : splittable
}

/** Work longer than anybody's longest stretch cannot be done in one; then it pauses over breaks, or over nights. */
function splittingOf(site: Site, manner: Manner, work: number, crewMax: number): Splitting {
  const wanted = wantedSplitting(manner)
  if (wanted === 'night') return wanted
  const each = Math.ceil(work / crewMax / planGrid) * planGrid
  const { stretch, day } = longestTimes(site, manner)
  if (wanted === 'none' && each <= stretch) return 'none'
  return each <= day ? 'break' : 'night'
}

/** The longest stretch between breaks, and the longest day, of anybody with the skill, chores taken off. */
function longestTimes(site: Site, manner: Manner): { readonly stretch: number; readonly day: number } {
  const { setUpMinutes, cleanUpMinutes } = site.job.houseRules
  const alarms = 2 * siteRuleNumber(site.job, siteRules.alarms, 'minutes')
  const chores = setUpMinutes + cleanUpMinutes + alarms + 2 * planGrid
  let stretch = 0
  let day = 0
  for (const person of site.people) {
    if (!hasSkills(person, manner)) continue
    for (const windows of weekOf(site, person)) {
      const lengths = windows.map(({ from, to }) => to - from)
      stretch = Math.max(stretch, ...lengths.map((length) => length - chores))
      day = Math.max(day, lengths.reduce((sum, length) => sum + length, 0) - chores)
    }
  }
  return { stretch, day }
}

function weekOf(site: Site, person: Person) {
  // Any plain week shows the person's hours: 2001-01-07 was a Sunday, long before any day off of a job.
  const sunday = Date.UTC(2001, 0, 7) / 86_400_000
  return Array.from({ length: 7 }, (_, day) => presentWindows(site.clock, person, sunday + day))
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

function roomsOf(site: Site, tasks: readonly Task[], relaxed: Relaxed[]): readonly ScheduleRoom[] {
  const { job, clock } = site
  const open = openNeighbours(job)
  const halls = hallsOnTheWay(job)
  return records(job.rooms).map((room) => ({
    id: room.id,
    openTo: open.get(room.id) ?? [],
    sleeping: job.header.occupied && room.use === 'bedroom',
    reachedThrough: halls.get(room.id) ?? [],
    backBy: room.backBy === null ? null : localInstant(room.backBy, clock.timeZone),
    neededDaily: eveningsOf(site, room, tasks, relaxed),
    alarm: hasCoveredAlarm(job, room.id),
    tasksAtOnce: null,
    peopleAtOnce: peopleInRoom(job, room.id),
  }))
}

function hasCoveredAlarm(job: Job, roomId: RoomId): boolean {
  return records(job.keptItems).some((item) => item.roomId === roomId && item.handling === 'coverDaily')
}

/** A bath or kitchen there is only one of is needed every evening, unless something in it must stay closed for longer than a day's work. */
function eveningsOf(
  site: Site,
  room: Room,
  tasks: readonly Task[],
  relaxed: Relaxed[],
): ScheduleRoom['neededDaily'] {
  const { job } = site
  if (!job.header.occupied || !isSiteRuleOn(job, siteRules.evenings)) return null
  if (room.use !== 'bath' && room.use !== 'kitchen') return null
  if (records(job.rooms).filter((other) => other.use === room.use).length > 1) return null
  const from = siteRuleNumber(job, siteRules.evenings, 'from')
  const to = siteRuleNumber(job, siteRules.evenings, 'to')
  const opens = site.clock.siteHours[1]?.[0]?.from ?? 0
  const longest = Math.max(0, ...tasks.map((task) => closedMinutes(task, room.id)))
  if (opens + longest > from) {
    relaxed.push({ what: 'eveningsLost', id: room.id })
    return null
  }
  return { from, to }
}

function closedMinutes(task: Task, roomId: RoomId): number {
  const { closedFor } = task.effects
  if (task.room !== roomId || closedFor === null || task.state.kind === 'done') return 0
  return task.work / Math.max(1, task.crew.max) + closedFor
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
