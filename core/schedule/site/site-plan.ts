import { epochMinutes, type Plan, type PlannedTask, type PlanSegment, type PlanValue } from '../model.ts'
import type { SiteNet } from '../net/site-net.ts'
import type { SitePlacements } from './site-placements.ts'
import type { SiteValue } from './site-value.ts'

/** Turns complete placements of a forward net, and their value, into a plan with instants and names. */
export function planFromPlacements(net: SiteNet, placements: SitePlacements, value: SiteValue): Plan {
  const tasks = net.problem.tasks.map((_, index) => plannedTask(net, placements, index))
  const open = tasks.filter((_, index) => net.tasks[index]?.fixed !== 1)
  return {
    tasks,
    value: planValue(net, value),
    finishInstant: epochMinutes(Math.max(net.problem.clock.start, ...open.map((task) => task.end))),
  }
}

export function planValue(net: SiteNet, value: SiteValue): PlanValue {
  return {
    finish: value[2] as number,
    roomDaysOutOfUse: value[3] as number,
    idleMinutes: (value[4] as number) * net.axis.grid,
    productChanges: value[5] as number,
    movedPromises: value[1] as number,
  }
}

function plannedTask(net: SiteNet, placements: SitePlacements, index: number): PlannedTask {
  const task = net.problem.tasks[index] as SiteNet['problem']['tasks'][number]
  const { state } = task
  if (state.kind === 'done') {
    const segments = state.start < state.end ? [{ start: state.start, end: state.end }] : []
    return { task: task.id, segments, start: state.start, end: state.end, people: state.people }
  }
  const team = placements.team[index] as number
  const people = net.problem.people.flatMap((person, bit) => ((team >> bit) & 1 ? [person.id] : []))
  const start = instantAt(net, placements.start[index] as number)
  return {
    task: task.id,
    segments: segmentsOf(net, placements, index),
    start: state.kind === 'started' ? state.start : start,
    end: instantAt(net, placements.end[index] as number),
    people: state.kind === 'started' ? state.people : people,
  }
}

function instantAt(net: SiteNet, tick: number) {
  return epochMinutes(net.axis.origin + tick * net.axis.grid)
}

function segmentsOf(net: SiteNet, placements: SitePlacements, index: number): readonly PlanSegment[] {
  const calendar = net.calendars[placements.calendar[index] as number]
  const first = placements.index[index] as number
  const to = first + (placements.duration[index] as number)
  const segments: PlanSegment[] = []
  if (calendar === undefined) return segments
  for (let at = first; at < to; ) {
    const end = Math.min(to, calendar.runEnd[at] as number)
    const last = (calendar.ticks[end - 1] as number) + 1
    segments.push({ start: instantAt(net, calendar.ticks[at] as number), end: instantAt(net, last) })
    at = end
  }
  return segments
}
