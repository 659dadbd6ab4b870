import type { Pass } from '../../passes/pass-types.ts'
import { passOfPin } from '../../passes/pins.ts'
import { records } from '../../project/job.ts'
import type { Pin } from '../../project/progress-records.ts'
import { type EpochMinutes, epochMinutes } from '../../time/instant.ts'
import { instantOf } from '../../time/site-moment.ts'
import { elapsedMinutes, workingMinutes } from '../../units/duration.ts'
import type { RoomEffects, Task, TaskState } from '../model.ts'
import { longestDay } from './longest-day.ts'
import { type PassTask, planGrid, type Site } from './planning-site.ts'
import { peopleAtOnce } from './rooms-of-job.ts'
import { siteRuleNumber, siteRules } from './site-rules.ts'
import type { StepFact } from './step-facts.ts'

/** On either side of a night at least so long; shop assumption. */
const leastPart = 60
const mostPart = 120

/** The passes that get a place in the plan. What is done of a pass while the rest is not is a fact of its own; what was dropped is gone. */
export function passTasks({ passes, facts }: Site): readonly PassTask[] {
  return passes.passes.flatMap((pass) => {
    const kept = pass.stepKeys.filter((key) => facts.get(key)?.kind !== 'dropped')
    const done = kept.filter((key) => facts.get(key)?.kind === 'done')
    const left = kept.filter((key) => facts.get(key)?.kind !== 'done')
    if (kept.length === 0) return []
    if (done.length === 0 || left.length === 0) return [{ id: pass.key, pass, stepKeys: kept }]
    return [
      { id: `${pass.key}#done`, pass, stepKeys: done },
      { id: pass.key, pass, stepKeys: left },
    ]
  })
}

/** A pass as the engine places it, less what was done of it. */
export function taskOf(site: Site, one: PassTask, pins: ReadonlyMap<string, Pin>): Task {
  const { job } = site
  const { pass } = one
  const facts = one.stepKeys.flatMap((key) => site.facts.get(key) ?? [])
  const left = facts.reduce((sum, fact) => sum + ('leftMinutes' in fact ? fact.leftMinutes : 0), 0)
  const work = Math.max(planGrid, Math.ceil(left - 1e-6))
  const able = site.people.filter(({ skills }) => pass.skills.every((skill) => skills.includes(skill)))
  const helpers = site.people.filter(({ skills }) => pass.skills.some((skill) => skills.includes(skill)))
  const room = peopleAtOnce(
    job,
    pass.roomIds.flatMap((id) => job.rooms[id] ?? []),
  )
  const most = Math.max(1, Math.min(pass.people.max, room, helpers.length))
  const mustStop = pass.breaking === 'never' && work > longestDay(site, able)
  if (mustStop) site.relaxed.push({ what: 'splitOverNight', id: pass.key })
  return {
    id: one.id,
    work: workingMinutes(work),
    crew: { min: 1, max: most },
    skills: pass.skills,
    room: pass.roomSetId,
    breaking: mustStop ? 'natural' : pass.breaking,
    smallestPart: workingMinutes(onGrid(Math.min(mostPart, Math.max(leastPart, pass.smallestPart ?? 0)))),
    effects: effectsOf(site, pass, work),
    product: pass.paint,
    earliestStart: heldUntilInstant(site, one),
    state: stateOf(site, facts, pins.get(one.id)),
    demands: [],
  }
}

/** When the last of what its open steps wait for is expected; what was begun waits no more. */
function heldUntilInstant(site: Site, { pass, stepKeys }: PassTask): EpochMinutes | null {
  const open = stepKeys.filter((key) => site.facts.get(key)?.kind === 'open')
  const days = [pass.notBefore, ...open.map((key) => site.heldFrom.get(key))].filter((day) => day != null)
  const last = days.toSorted().at(-1)
  return last === undefined || open.length === 0 ? null : instantOf(`${last}T00:00`, site.clock.timeZone)
}

function onGrid(minutes: number): EpochMinutes {
  return epochMinutes(Math.round(minutes / planGrid) * planGrid)
}

/** Fumes that never go by before the night are said to stay; what is closed for days cannot be open in the evening. */
function effectsOf(site: Site, { effects, key }: Pass, work: number): RoomEffects {
  const up = (minutes: number | null) => (minutes === null ? null : elapsedMinutes(Math.ceil(minutes)))
  const opens = site.clock.siteHours[1]?.[0]?.from ?? 0
  const sleep = siteRuleNumber(site.job, siteRules.fumes, 'from')
  const lastsIntoNight = effects.fumesFor !== null && opens + 60 + work + effects.fumesFor > sleep
  if (lastsIntoNight) site.relaxed.push({ what: 'fumesOverNight', id: key })
  return {
    touchDry: up(effects.touchDry),
    dusty: effects.dusty,
    fumesFor: lastsIntoNight ? null : up(effects.fumesFor),
    closedFor: up(effects.closedFor),
  }
}

function stateOf(site: Site, facts: readonly StepFact[], pin: Pin | undefined): TaskState {
  const instant = (moment: string): EpochMinutes => instantOf(moment, site.clock.timeZone)
  const done = facts.filter((fact) => fact.kind === 'done')
  const started = facts.filter((fact) => fact.kind === 'started')
  const people = [...new Set([...done, ...started].flatMap((fact) => fact.crewMemberIds))]
  if (done.length > 0 && done.length === facts.length) {
    const start = Math.min(...done.map((fact) => instant(fact.startedAt)))
    const end = Math.max(...done.map((fact) => instant(fact.endedAt)))
    return { kind: 'done', start: epochMinutes(start), end: epochMinutes(end), people }
  }
  if (started.length > 0) {
    const start = Math.min(site.clock.start, ...started.map((fact) => instant(fact.startedAt)))
    const left = facts.reduce((sum, fact) => sum + ('leftMinutes' in fact ? fact.leftMinutes : 0), 0)
    return {
      kind: 'started',
      start: epochMinutes(start),
      people: people.length > 0 ? people : site.people.slice(0, 1).map(({ id }) => id),
      remainingWork: workingMinutes(Math.max(planGrid, Math.ceil(left))),
    }
  }
  if (pin === undefined) return { kind: 'open' }
  return {
    kind: 'pinned',
    start: onGrid(instant(pin.startsAt)),
    people: pin.crewMemberIds.length > 0 ? pin.crewMemberIds : null,
  }
}

/** Pins hold tasks that are still open, in the future and not before what they wait for; others are said to be lost. The last pin of a task counts. */
export function usablePins(site: Site, tasks: readonly PassTask[]): ReadonlyMap<string, Pin> {
  const byTask = new Map<string, Pin>()
  for (const pin of records(site.job.pins)) {
    const key = passOfPin(site.passes, pin)?.key
    const task = tasks.find(({ id }) => id === key)
    const isOpen = task?.stepKeys.every((key) => site.facts.get(key)?.kind === 'open') ?? false
    const start = onGrid(instantOf(pin.startsAt, site.clock.timeZone))
    const least = task === undefined ? null : heldUntilInstant(site, task)
    if (task !== undefined && isOpen && start >= Math.max(site.clock.start, least ?? 0))
      byTask.set(task.id, pin)
    else if (task === undefined || isOpen) site.relaxed.push({ what: 'pinLost', id: pin.id })
  }
  return byTask
}
