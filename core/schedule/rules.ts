import { localTimeIn, workingWindows } from './calendar.ts'
import type {
  HouseRules,
  Person,
  PersonId,
  Plan,
  PlannedTask,
  PooledResource,
  ScheduleProblem,
  ScheduleRoom,
  ScheduleRoomId,
  Task,
  TaskId,
} from './model.ts'

/**
 * One function per scheduling rule, for live verdicts while a task is dragged. Each looks at the whole plan and answers with
 * what breaks; stretches are compared as intervals of epoch minutes. Whether a plan may be kept is `verifyPlan`'s to say.
 */
export type RuleBreak =
  | { readonly rule: 'crewCapacity'; readonly task: TaskId; readonly people: readonly PersonId[] }
  | { readonly rule: 'crewCalendar'; readonly task: TaskId; readonly person: PersonId; readonly at: number }
  | {
      readonly rule: 'onePlaceAtATime'
      readonly person: PersonId
      readonly tasks: readonly [TaskId, TaskId]
      readonly at: number
    }
  | { readonly rule: 'drying'; readonly from: TaskId; readonly to: TaskId; readonly missing: number }
  | { readonly rule: 'openTime'; readonly from: TaskId; readonly to: TaskId; readonly late: number }
  | {
      readonly rule: 'pooledResource'
      readonly resource: string
      readonly tasks: readonly TaskId[]
      readonly at: number
    }
  | {
      readonly rule: 'roomCapacity'
      readonly room: ScheduleRoomId
      readonly tasks: readonly TaskId[]
      readonly at: number
    }
  | { readonly rule: 'dustNearWet'; readonly dusty: TaskId; readonly wet: TaskId; readonly at: number }
  | { readonly rule: 'fumesWhileSleeping'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'roomsOutOfUse'; readonly rooms: readonly ScheduleRoomId[]; readonly at: number }
  | { readonly rule: 'roomBack'; readonly task: TaskId; readonly room: ScheduleRoomId; readonly at: number }
  | { readonly rule: 'wayOut'; readonly behind: TaskId; readonly hall: TaskId; readonly at: number }
  | { readonly rule: 'hallsLast'; readonly task: TaskId; readonly hall: TaskId }
  | { readonly rule: 'pinned'; readonly task: TaskId }
  | { readonly rule: 'done'; readonly task: TaskId }

interface Placed {
  readonly task: Task
  readonly planned: PlannedTask
}

function placedTasks(problem: ScheduleProblem, plan: Plan): readonly Placed[] {
  const byId = new Map(plan.tasks.map((planned) => [planned.task, planned]))
  return problem.tasks.flatMap((task) => {
    const planned = byId.get(task.id)
    return planned === undefined ? [] : [{ task, planned }]
  })
}

function isOpen({ task }: Placed): boolean {
  return task.state.kind !== 'done'
}

/** First instant two stretches share, or undefined. */
function overlap(oneFrom: number, oneTo: number, otherFrom: number, otherTo: number): number | undefined {
  const from = Math.max(oneFrom, otherFrom)
  return from < Math.min(oneTo, otherTo) ? from : undefined
}

/** Crew sizes within the task's range, and everybody with the skills it asks for. */
export function crewCapacityRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return placedTasks(problem, plan)
    .filter((placed) => placed.task.state.kind === 'open' && placed.task.work > 0)
    .filter(({ task, planned }) => {
      const isSized = planned.people.length >= task.crew.min && planned.people.length <= task.crew.max
      return !isSized || !planned.people.every((id) => hasSkills(problem.people, id, task))
    })
    .map(({ task, planned }) => ({ rule: 'crewCapacity', task: task.id, people: planned.people }))
}

function hasSkills(people: readonly Person[], id: PersonId, task: Task): boolean {
  const person = people.find((entry) => entry.id === id)
  return person !== undefined && task.skills.every((skill) => person.skills.includes(skill))
}

/** Work only within each person's windows, chores at both ends of the day kept free. */
export function crewCalendarRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  if (problem.clock.kind === 'unbroken') return []
  const local = localTimeIn(problem.clock.timeZone)
  return placedTasks(problem, plan)
    .filter(isOpen)
    .flatMap(({ task, planned }) => {
      return planned.people.flatMap((id): readonly RuleBreak[] => {
        const person = problem.people.find((entry) => entry.id === id)
        if (person === undefined) return []
        const off = planned.segments.find(({ start, end }) => {
          const day = local.dayAt(start)
          return !workingWindows(problem, person, day).some((window) => {
            return local.instantOf(day, window.from) <= start && end <= local.instantOf(day, window.to)
          })
        })
        return off === undefined ? [] : [{ rule: 'crewCalendar', task: task.id, person: id, at: off.start }]
      })
    })
}

/** Nobody on two tasks at once. */
export function onePlaceAtATimeRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const placed = placedTasks(problem, plan).filter(isOpen)
  return problem.people.flatMap(({ id }) => {
    const own = placed.filter(({ planned }) => planned.people.includes(id))
    return pairsOf(own).flatMap(([one, other]): readonly RuleBreak[] => {
      const at = sharedMinute(one.planned, other.planned)
      return at === undefined
        ? []
        : [{ rule: 'onePlaceAtATime', person: id, tasks: [one.task.id, other.task.id], at }]
    })
  })
}

function pairsOf<Entry>(entries: readonly Entry[]): readonly (readonly [Entry, Entry])[] {
  return entries.flatMap((one, index) => entries.slice(index + 1).map((other) => [one, other] as const))
}

function sharedMinute(one: PlannedTask, other: PlannedTask): number | undefined {
  for (const a of one.segments) {
    for (const b of other.segments) {
      const at = overlap(a.start, a.end, b.start, b.end)
      if (at !== undefined) return at
    }
  }
  return undefined
}

function waits(problem: ScheduleProblem, plan: Plan) {
  const byId = new Map(placedTasks(problem, plan).map((placed) => [placed.task.id, placed]))
  return problem.links.flatMap((link) => {
    const from = byId.get(link.from)
    const to = byId.get(link.to)
    if (from === undefined || to === undefined) return []
    if (to.task.state.kind === 'done' || to.task.state.kind === 'started') return []
    const since = link.measuredFrom === 'end' ? from.planned.end : from.planned.start
    return [{ link, wait: to.planned.start - since }]
  })
}

/** Drying and mere order: at least the link's elapsed minutes, nights included. */
export function dryingRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return waits(problem, plan).flatMap(({ link, wait }): readonly RuleBreak[] => {
    if (link.atLeast === null || wait >= link.atLeast) return []
    return [{ rule: 'drying', from: link.from, to: link.to, missing: link.atLeast - wait }]
  })
}

/** Open time: at most the link's elapsed minutes until the next coat is begun. */
export function openTimeRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return waits(problem, plan).flatMap(({ link, wait }): readonly RuleBreak[] => {
    if (link.atMost === null || wait <= link.atMost) return []
    return [{ rule: 'openTime', from: link.from, to: link.to, late: wait - link.atMost }]
  })
}

/** Pooled resources, for instance one sprayer. */
export function pooledResourceRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const placed = placedTasks(problem, plan).filter(isOpen)
  return problem.resources.flatMap(({ id, capacity }: PooledResource): readonly RuleBreak[] => {
    const over = firstOver(placed, capacity, ({ task }) => {
      return task.demands.reduce((sum, demand) => (demand.resource === id ? sum + demand.amount : sum), 0)
    })
    return over === undefined ? [] : [{ rule: 'pooledResource', resource: id, ...over }]
  })
}

/** Tasks and people at once in one room. */
export function roomCapacityRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const placed = placedTasks(problem, plan).filter(isOpen)
  return problem.rooms.flatMap((room): readonly RuleBreak[] => {
    const inRoom = placed.filter(({ task }) => task.room === room.id)
    const over =
      firstOver(inRoom, room.tasksAtOnce ?? Number.POSITIVE_INFINITY, () => 1) ??
      firstOver(inRoom, room.peopleAtOnce ?? Number.POSITIVE_INFINITY, ({ planned }) => planned.people.length)
    return over === undefined ? [] : [{ rule: 'roomCapacity', room: room.id, ...over }]
  })
}

function firstOver(placed: readonly Placed[], capacity: number, amountOf: (placed: Placed) => number) {
  for (const { planned } of placed) {
    for (const { start } of planned.segments) {
      const busy = placed.filter((other) => {
        return (
          amountOf(other) > 0 &&
          other.planned.segments.some((segment) => segment.start <= start && start < segment.end)
        )
      })
      const used = busy.reduce((sum, other) => sum + amountOf(other), 0)
      if (used > capacity) return { tasks: busy.map(({ task }) => task.id), at: start as number }
    }
  }
  return undefined
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

/** At most N rooms at once between the first and the last task that closes them. */
export function roomsOutOfUseRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  const limit = problem.rules.roomsOutOfUse
  if (limit === null) return []
  const placed = placedTasks(problem, plan)
  const spans = problem.rooms.flatMap((room) => {
    const closing = placed.filter(({ task, planned }) => {
      return task.room === room.id && task.effects.closedFor !== null && planned.segments.length > 0
    })
    if (closing.length === 0) return []
    const from = Math.min(...closing.map(({ planned }) => planned.start))
    const to = Math.max(...closing.map(({ task, planned }) => planned.end + (task.effects.closedFor ?? 0)))
    return [{ room: room.id, from: Math.max(from, problem.clock.start), to, isFact: !closing.some(isOpen) }]
  })
  return spans.flatMap(({ from }): readonly RuleBreak[] => {
    const out = spans.filter((span) => span.from <= from && from < span.to)
    if (out.length <= limit || out.every((span) => span.isFact)) return []
    return [{ rule: 'roomsOutOfUse', rooms: out.map(({ room }) => room), at: from }]
  })
}

/** A room given back by its day, and free of closing work in the hours it is needed every day. */
export function roomBackRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  if (!problem.rules.roomBackInTime) return []
  return placedTasks(problem, plan)
    .filter(isOpen)
    .flatMap(({ task, planned }): readonly RuleBreak[] => {
      const room = problem.rooms.find((entry) => entry.id === task.room)
      const { closedFor } = task.effects
      const first = planned.segments[0]
      if (room === undefined || closedFor === null || first === undefined) return []
      const until = planned.end + closedFor
      const late = room.backBy !== null && until > room.backBy ? room.backBy : undefined
      const needed =
        room.neededDaily === null ? undefined : firstWithin(problem, room.neededDaily, first.start, until)
      const at = late ?? needed
      return at === undefined ? [] : [{ rule: 'roomBack', task: task.id, room: room.id, at }]
    })
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

/** Pinned tasks start when they are pinned, with the people pinned. */
export function pinnedRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return placedTasks(problem, plan).flatMap(({ task, planned }): readonly RuleBreak[] => {
    if (task.state.kind !== 'pinned') return []
    const isKept =
      planned.start === task.state.start && isSameTeam(task.state.people ?? planned.people, planned.people)
    return isKept ? [] : [{ rule: 'pinned', task: task.id }]
  })
}

/** What is done stays as it was done. */
export function doneRule(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return placedTasks(problem, plan).flatMap(({ task, planned }): readonly RuleBreak[] => {
    if (task.state.kind !== 'done') return []
    const isKept = planned.start === task.state.start && planned.end === task.state.end
    return isKept ? [] : [{ rule: 'done', task: task.id }]
  })
}

function isSameTeam(one: readonly PersonId[], other: readonly PersonId[]): boolean {
  return one.length === other.length && one.every((person) => other.includes(person))
}

const rules: readonly ((problem: ScheduleProblem, plan: Plan) => readonly RuleBreak[])[] = [
  crewCapacityRule,
  crewCalendarRule,
  onePlaceAtATimeRule,
  dryingRule,
  openTimeRule,
  pooledResourceRule,
  roomCapacityRule,
  dustNearWetRule,
  fumesWhileSleepingRule,
  roomsOutOfUseRule,
  roomBackRule,
  wayOutRule,
  hallsLastRule,
  pinnedRule,
  doneRule,
]

/** Everything that breaks, rule by rule; partial plans are judged by what they hold. */
export function brokenRules(problem: ScheduleProblem, plan: Plan): readonly RuleBreak[] {
  return rules.flatMap((rule) => rule(problem, plan))
}

/** The alarms to cover at the begin and restore at the end of a local day: rooms with an alarm where dust or fumes are made that day. */
export function alarmRooms(
  problem: ScheduleProblem,
  plan: Plan,
  from: number,
  to: number,
): readonly ScheduleRoomId[] {
  const rule: HouseRules['alarmsRestoredDaily'] = problem.rules.alarmsRestoredDaily
  if (rule === null) return []
  return problem.rooms.flatMap((room) => {
    const isDisturbed = placedTasks(problem, plan).some(({ task, planned }) => {
      const isDisturbing = task.room === room.id && (task.effects.dusty || task.effects.fumesFor !== null)
      return (
        isDisturbing && planned.segments.some(({ start, end }) => overlap(start, end, from, to) !== undefined)
      )
    })
    return room.alarm && isDisturbed ? [room.id] : []
  })
}
