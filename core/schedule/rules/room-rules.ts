import { localTimeIn } from '../calendar.ts'
import {
  minutesUntilUsable,
  type Plan,
  type ScheduleProblem,
  type ScheduleRoom,
  type ScheduleRoomId,
} from '../model.ts'
import { stretchOutOfUse } from './out-of-use.ts'
import { isOpen, overlap, type Placed, placedTasks, type RuleBreak } from './rule-parts.ts'

/** No sanding or scraping from its start to its end while something is wet in the same or an openly connected room. */
export function dustNearWetRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  if (!problem.rules.noDustNearWet) return []
  const placed = placedTasks(problem, plan).filter(({ planned }) => planned.segments.length > 0)
  return placed.flatMap((dusty) => {
    if (!dusty.task.effects.dusty) return []
    return placed.flatMap((wet): readonly RuleBreak[] => {
      const { wetFor } = wet.task.effects
      if (wet === dusty || wetFor === null || !(isOpen(wet) || isOpen(dusty))) return []
      if (!areOpen(problem.rooms, dusty.task.room, wet.task.room)) return []
      const at = overlap(dusty.planned.start, dusty.planned.end, wet.planned.start, wet.planned.end + wetFor)
      return at === undefined ? [] : [{ rule: 'dustNearWet', dusty: dusty.task.id, wet: wet.task.id, at }]
    })
  })
}

/** No fumes in or openly next to a sleeping room in the hours of sleep. */
export function fumesWhileSleepingRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const hours = problem.rules.noFumesWhileSleeping
  if (hours === null) return []
  return placedTasks(problem, plan)
    .filter(isOpen)
    .flatMap(({ task, planned }): readonly RuleBreak[] => {
      const { fumesFor } = task.effects
      const isNear = problem.rooms.some((room) => room.sleeping && areOpen(problem.rooms, task.room, room.id))
      const first = planned.segments[0]
      if (fumesFor === null || !isNear || first === undefined) return []
      const at = firstWithin(problem, hours, first.start, planned.end + fumesFor)
      return at === undefined ? [] : [{ rule: 'fumesWhileSleeping', task: task.id, at }]
    })
}

/** At most N rooms at once between the first task in them and the end of the last, drying included. */
export function roomsOutOfUseRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const limit = problem.rules.roomsOutOfUse
  if (limit === null) return []
  const placed = placedTasks(problem, plan)
  const spans = problem.rooms.flatMap((room) => {
    const inside = placed.filter(({ task }) => task.room === room.id)
    const stretch = stretchOutOfUse(inside)
    if (stretch === undefined) return []
    const from = Math.max(stretch.start, problem.clock.start)
    return [{ room: room.id, from, to: stretch.end, isFact: !inside.some(isOpen) }]
  })
  return spans.flatMap(({ from }): readonly RuleBreak[] => {
    const out = spans.filter((span) => span.from <= from && from < span.to)
    if (out.length <= limit || out.every((span) => span.isFact)) return []
    return [{ rule: 'roomsOutOfUse', rooms: out.map(({ room }) => room), at: from }]
  })
}

/** A room done with and dry by the moment it is promised back, and free of closing work in the hours it is needed every day. */
export function roomBackRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  if (!problem.rules.roomBackInTime) return []
  return placedTasks(problem, plan)
    .filter(isOpen)
    .flatMap(({ task, planned }): readonly RuleBreak[] => {
      const room = problem.rooms.find((entry) => entry.id === task.room)
      const { closedFor } = task.effects
      const first = planned.segments[0]
      if (room === undefined || first === undefined) return []
      const freeFrom = planned.end + minutesUntilUsable(task.effects)
      const late = room.backBy !== null && freeFrom > room.backBy ? room.backBy : undefined
      const needed =
        room.neededDaily === null || closedFor === null
          ? undefined
          : firstWithin(problem, room.neededDaily, first.start, planned.end + closedFor)
      const at = late ?? needed
      return at === undefined ? [] : [{ rule: 'roomBack', task: task.id, room: room.id, at }]
    })
}

/** Nobody is at work behind a hall or stair that is closed. */
export function wayOutRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  if (!problem.rules.wayOutKeptOpen) return []
  return hallPairs(problem, plan).flatMap(({ hall, behind }): readonly RuleBreak[] => {
    const { closedFor } = hall.task.effects
    if (closedFor === null || !(isOpen(hall) || isOpen(behind))) return []
    const at = overlap(
      behind.planned.start,
      behind.planned.end,
      hall.planned.start,
      hall.planned.end + closedFor,
    )
    return at === undefined ? [] : [{ rule: 'wayOut', behind: behind.task.id, hall: hall.task.id, at }]
  })
}

/** Wet or closing work in halls and stairs after everything behind them. */
export function hallsLastRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  if (!problem.rules.hallsLast) return []
  return hallPairs(problem, plan).flatMap(({ hall, behind }): readonly RuleBreak[] => {
    const { wetFor, closedFor } = hall.task.effects
    const isJudged = hall.task.state.kind === 'open' || hall.task.state.kind === 'pinned'
    const isLast = (wetFor === null && closedFor === null) || hall.planned.start >= behind.planned.end
    return !isJudged || isLast ? [] : [{ rule: 'hallsLast', task: behind.task.id, hall: hall.task.id }]
  })
}

function areOpen(
  rooms: readonly ScheduleRoom[],
  one: ScheduleRoomId | null,
  other: ScheduleRoomId | null,
): boolean {
  if (one === null || other === null) return false
  if (one === other) return true
  return rooms.some(({ id, openTo }) => {
    return (id === one && openTo.includes(other)) || (id === other && openTo.includes(one))
  })
}

/** First instant of a stretch that lies within daily hours (over midnight when from > to). */
function firstWithin(
  problem: ScheduleProblem,
  hours: { readonly from: number; readonly to: number },
  from: number,
  to: number,
): number | undefined {
  if (problem.clock.kind === 'unbroken') return undefined
  const local = localTimeIn(problem.clock.timeZone)
  for (let day = local.dayAt(from) - 1; day <= local.dayAt(to); day++) {
    const begin = local.instantOf(day, hours.from)
    const end = local.instantOf(hours.from < hours.to ? day : day + 1, hours.to)
    const at = overlap(from, to, begin, end)
    if (at !== undefined) return at
  }
  return undefined
}

function hallPairs(
  problem: ScheduleProblem,
  plan: Plan,
): readonly { readonly hall: Placed; readonly behind: Placed }[] {
  const placed = placedTasks(problem, plan).filter(({ planned }) => planned.segments.length > 0)
  return placed.flatMap((hall) => {
    return placed.flatMap((behind) => {
      const room = problem.rooms.find((entry) => entry.id === behind.task.room)
      const isBehind = hall.task.room !== null && room?.reachedThrough.includes(hall.task.room) === true
      return isBehind && hall !== behind ? [{ hall, behind }] : []
    })
  })
}
