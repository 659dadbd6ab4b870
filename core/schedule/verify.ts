import type {
  DayWindow,
  Person,
  PersonId,
  Plan,
  PlannedTask,
  ScheduleProblem,
  ScheduleRoom,
  ScheduleRoomId,
  Task,
  TaskId,
} from './model.ts'

/** A rule the plan breaks. `at` is the first minute (epoch) where it shows. */
export type Violation =
  | { readonly rule: 'everyTaskPlanned'; readonly task: TaskId }
  | { readonly rule: 'segmentsInOrder'; readonly task: TaskId }
  | { readonly rule: 'onGrid'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'workDone'; readonly task: TaskId; readonly planned: number; readonly needed: number }
  | { readonly rule: 'crewSize'; readonly task: TaskId; readonly people: readonly PersonId[] }
  | { readonly rule: 'skills'; readonly task: TaskId; readonly person: PersonId }
  | { readonly rule: 'personPresent'; readonly task: TaskId; readonly person: PersonId; readonly at: number }
  | {
      readonly rule: 'oneTaskPerPerson'
      readonly person: PersonId
      readonly tasks: readonly TaskId[]
      readonly at: number
    }
  | { readonly rule: 'pauses'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'notBefore'; readonly task: TaskId; readonly at: number }
  | { readonly rule: 'factsKept'; readonly task: TaskId }
  | {
      readonly rule: 'minimumWait'
      readonly from: TaskId
      readonly to: TaskId
      readonly wait: number
      readonly atLeast: number
    }
  | {
      readonly rule: 'maximumWait'
      readonly from: TaskId
      readonly to: TaskId
      readonly wait: number
      readonly atMost: number
    }
  | {
      readonly rule: 'resourceCapacity'
      readonly resource: string
      readonly at: number
      readonly used: number
    }
  | { readonly rule: 'roomCapacity'; readonly room: ScheduleRoomId; readonly at: number }
  | { readonly rule: 'noDustNearWet'; readonly dusty: TaskId; readonly wet: TaskId; readonly at: number }
  | {
      readonly rule: 'noFumesWhileSleeping'
      readonly task: TaskId
      readonly room: ScheduleRoomId
      readonly at: number
    }
  | { readonly rule: 'roomsOutOfUse'; readonly rooms: readonly ScheduleRoomId[]; readonly at: number }
  | {
      readonly rule: 'roomBackInTime'
      readonly task: TaskId
      readonly room: ScheduleRoomId
      readonly at: number
    }
  | { readonly rule: 'wayOutKeptOpen'; readonly behind: TaskId; readonly hall: TaskId; readonly at: number }
  | { readonly rule: 'hallsLast'; readonly task: TaskId; readonly hall: TaskId }
  | {
      readonly rule: 'choresAtDaysEnds'
      readonly task: TaskId
      readonly person: PersonId
      readonly at: number
    }

/**
 * Judges a plan from scratch, on the wall clock, minute by minute, knowing only the problem and the plan. It shares no code
 * with calendar, search or bounds on purpose. An empty list means every rule holds. Rules are not held against facts alone:
 * at least one of the tasks concerned must still be open.
 */
export function verifyPlan(problem: ScheduleProblem, plan: Plan): readonly Violation[] {
  const found: Violation[] = []
  const entries = pairUp(problem, plan, found)
  if (found.length > 0) return found
  const clock = wallClock(problem, entries)
  for (const entry of entries) {
    verifyShape(problem, entry, found)
    verifyFacts(problem, entry, found)
    if (entry.task.state.kind !== 'done') verifyCrew(problem, clock, entry, found)
  }
  if (found.length > 0) return found
  verifyPeople(problem, entries, found)
  verifyLinks(problem, entries, found)
  verifyCapacities(problem, entries, found)
  verifyDust(problem, entries, found)
  verifyQuietHours(problem, clock, entries, found)
  verifyRoomsOutOfUse(problem, entries, found)
  verifyWayOut(problem, entries, found)
  return found
}

interface Entry {
  readonly task: Task
  readonly planned: PlannedTask
  readonly isFact: boolean
}

function pairUp(problem: ScheduleProblem, plan: Plan, found: Violation[]): readonly Entry[] {
  const byId = new Map(plan.tasks.map((planned) => [planned.task, planned]))
  if (byId.size !== plan.tasks.length || plan.tasks.length !== problem.tasks.length) {
    for (const planned of plan.tasks) {
      if (!problem.tasks.some((task) => task.id === planned.task))
        found.push({ rule: 'everyTaskPlanned', task: planned.task })
    }
  }
  return problem.tasks.flatMap((task) => {
    const planned = byId.get(task.id)
    if (planned !== undefined) return [{ task, planned, isFact: task.state.kind === 'done' }]
    found.push({ rule: 'everyTaskPlanned', task: task.id })
    return []
  })
}

/** What the clock on the wall shows at each minute of the plan. */
interface WallClock {
  readonly from: number
  readonly to: number
  /** Minute of the local day, and number of the local day, for each minute from..to. */
  readonly minute: Int16Array
  readonly day: Int32Array
  /** Filled as people are asked for. */
  readonly presence: Map<Person | null, Uint8Array>
}

function wallClock(problem: ScheduleProblem, entries: readonly Entry[]): WallClock {
  if (problem.clock.kind === 'unbroken') {
    return { from: 0, to: 0, minute: new Int16Array(0), day: new Int32Array(0), presence: new Map() }
  }
  const edges = entries.flatMap(({ task, planned }) => {
    const { fumesFor, closedFor } = task.effects
    return [planned.start, planned.end + Math.max(0, fumesFor ?? 0, closedFor ?? 0)]
  })
  const quarter = 15
  const from = Math.floor(Math.min(problem.clock.start, ...edges) / quarter) * quarter - 2880
  const to = Math.ceil(Math.max(problem.clock.start, ...edges) / quarter) * quarter + 2880
  const minute = new Int16Array(to - from)
  const day = new Int32Array(to - from)
  const localAt = localMinutes(problem.clock.timeZone)
  const stride = 12 * quarter
  for (let at = from; at < to; at += stride) {
    // Where the clocks change within these three hours every quarter is looked at, else their first minute tells all.
    const isEven = localAt(at + stride) - localAt(at) === stride
    for (let step = 0; step < stride && at + step < to; step++) {
      const local = isEven ? localAt(at) + step : localAt(at + step - (step % quarter)) + (step % quarter)
      day[at + step - from] = Math.floor(local / 1440)
      minute[at + step - from] = local - Math.floor(local / 1440) * 1440
    }
  }
  return { from, to, minute, day, presence: new Map() }
}

/** What a clock in the zone shows at a quarter of an hour, as minutes since 1970 on that clock. */
function localMinutes(timeZone: string): (at: number) => number {
  const known = new Map<number, number>()
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    dateStyle: 'short',
    timeStyle: 'short',
    hourCycle: 'h23',
  })
  return (at) => {
    const cached = known.get(at)
    if (cached !== undefined) return cached
    const shown = format.format(at * 60_000)
    const part = (start: number, end: number): number => Number(shown.slice(start, end))
    const local = Date.UTC(part(6, 10), part(3, 5) - 1, part(0, 2), part(12, 14), part(15, 17)) / 60_000
    known.set(at, local)
    return local
  }
}

function verifyShape(problem: ScheduleProblem, { task, planned, isFact }: Entry, found: Violation[]): void {
  const { segments } = planned
  const first = segments[0]?.start ?? planned.start
  const last = segments[segments.length - 1]?.end ?? planned.end
  const isOrdered = segments.every((segment, index) => {
    return segment.start < segment.end && (index === 0 || (segments[index - 1]?.end ?? 0) < segment.start)
  })
  const startsRight =
    task.state.kind === 'started' ? planned.start === task.state.start : planned.start === first
  if (!isOrdered || !startsRight || planned.end !== last || planned.end < planned.start) {
    found.push({ rule: 'segmentsInOrder', task: task.id })
  }
  if (isFact) return
  const base = problem.clock.kind === 'unbroken' ? problem.clock.start : 0
  for (const { start, end } of segments) {
    for (const at of [start, end]) {
      if ((at - base) % problem.gridMinutes !== 0) found.push({ rule: 'onGrid', task: task.id, at })
    }
  }
}

function verifyFacts(problem: ScheduleProblem, { task, planned }: Entry, found: Violation[]): void {
  const { state } = task
  const samePeople = (people: readonly PersonId[]): boolean =>
    people.length === planned.people.length && people.every((person) => planned.people.includes(person))
  if (state.kind === 'done') {
    const kept = planned.start === state.start && planned.end === state.end && samePeople(state.people)
    if (!kept) found.push({ rule: 'factsKept', task: task.id })
    return
  }
  if (state.kind === 'started' && !samePeople(state.people)) found.push({ rule: 'factsKept', task: task.id })
  if (state.kind === 'pinned') {
    const kept = planned.start === state.start && (state.people === null || samePeople(state.people))
    if (!kept) found.push({ rule: 'factsKept', task: task.id })
  }
  const firstNew = planned.segments[0]?.start ?? planned.end
  if (firstNew < problem.clock.start) found.push({ rule: 'notBefore', task: task.id, at: firstNew })
  if (state.kind !== 'started' && task.earliestStart !== null && planned.start < task.earliestStart) {
    found.push({ rule: 'notBefore', task: task.id, at: planned.start })
  }
}

function verifyCrew(problem: ScheduleProblem, clock: WallClock, entry: Entry, found: Violation[]): void {
  const { task, planned } = entry
  const people = planned.people.map((id) => problem.people.find((person) => person.id === id))
  const work = task.state.kind === 'started' ? task.state.remainingWork : task.work
  const size = people.length
  const isNamed = task.state.kind !== 'open' && task.state.people !== null
  const hasSize = isNamed || (size >= task.crew.min && size <= task.crew.max)
  const isRepeated = new Set(planned.people).size !== size
  if ((work > 0 && !hasSize) || isRepeated || people.includes(undefined)) {
    found.push({ rule: 'crewSize', task: task.id, people: planned.people })
  }
  const grid = problem.gridMinutes
  const needed = Math.ceil(work / Math.max(1, size) / grid) * grid
  const worked = planned.segments.reduce((sum, { start, end }) => sum + end - start, 0)
  if (worked !== needed) found.push({ rule: 'workDone', task: task.id, planned: worked, needed })
  for (const person of people) {
    if (person === undefined || isNamed) continue
    if (!task.skills.every((skill) => person.skills.includes(skill))) {
      found.push({ rule: 'skills', task: task.id, person: person.id })
    }
  }
  if (problem.clock.kind === 'unbroken') {
    if (planned.segments.length > 1) found.push({ rule: 'pauses', task: task.id, at: planned.start })
    return
  }
  const crew = people.filter((person) => person !== undefined)
  verifyPresence(problem, clock, entry, crew, found)
}

/** Every worked minute everybody is there; every minute of a pause somebody is not, and the pause is one the task allows. */
function verifyPresence(
  problem: ScheduleProblem,
  clock: WallClock,
  { task, planned }: Entry,
  crew: readonly Person[],
  found: Violation[],
): void {
  const { segments } = planned
  if (segments.length === 0) return
  const everybody = (crew.length === 0 ? [null] : crew).map((person) => presenceOf(problem, clock, person))
  for (const [index, { start, end }] of segments.entries()) {
    for (const [who, there] of everybody.entries()) {
      for (let at = start as number; at < end; at++) {
        const state = there[at - clock.from]
        if (state === here) continue
        const person = crew[who]?.id ?? ''
        const rule = state === atChores ? 'choresAtDaysEnds' : 'personPresent'
        found.push({ rule, task: task.id, person, at })
        break
      }
    }
    const next = segments[index + 1]
    if (next !== undefined) verifyPause(clock, task, end, next.start, everybody, found)
  }
}

function verifyPause(
  clock: WallClock,
  task: Task,
  from: number,
  to: number,
  everybody: readonly Uint8Array[],
  found: Violation[],
): void {
  const isOverNight = clock.day[from - 1 - clock.from] !== clock.day[to - clock.from]
  const isAllowed = task.splitting === 'night' || (task.splitting === 'break' && !isOverNight)
  if (!isAllowed) found.push({ rule: 'pauses', task: task.id, at: from })
  for (let at = from; at < to; at++) {
    if (!everybody.every((there) => there[at - clock.from] === here)) continue
    found.push({ rule: 'pauses', task: task.id, at })
    return
  }
}

const away = 0
const here = 1
const atChores = 2

/** For each minute of the clock whether the person (null: the site itself) can work, is away, or sets up and cleans up. */
function presenceOf(problem: ScheduleProblem, clock: WallClock, person: Person | null): Uint8Array {
  const known = clock.presence.get(person)
  if (known !== undefined) return known
  const there = new Uint8Array(clock.to - clock.from)
  let windows: readonly DayWindow[] = []
  for (let at = 0; at < there.length; at++) {
    if (at === 0 || clock.day[at] !== clock.day[at - 1])
      windows = windowsOn(problem, person, clock.day[at] as number)
    const minute = clock.minute[at] as number
    const isAtWork = windows.some((window) => window.from <= minute && minute < window.to)
    if (isAtWork && person?.breaks.some((pause) => pause.from <= minute && minute < pause.to) !== true)
      there[at] = here
  }
  markChores(problem, clock, there)
  clock.presence.set(person, there)
  return there
}

/** Where site hours and the person's own windows of the day overlap; breaks not yet taken out. */
function windowsOn(problem: ScheduleProblem, person: Person | null, day: number): readonly DayWindow[] {
  if (problem.clock.kind !== 'site') return []
  const date = new Date(day * 86_400_000)
  const name = date.toISOString().slice(0, 10)
  const weekday = date.getUTCDay()
  if (problem.clock.holidays.includes(name) || person?.daysOff.includes(name) === true) return []
  const site = problem.clock.siteHours[weekday] ?? []
  if (person === null) return site
  const own = person.partDays.find((part) => part.date === name)?.windows ?? person.week[weekday] ?? []
  return site.flatMap((open) => {
    return own.map((window) => ({ from: Math.max(open.from, window.from), to: Math.min(open.to, window.to) }))
  })
}

function markChores(problem: ScheduleProblem, clock: WallClock, there: Uint8Array): void {
  const { dailyChores, alarmsRestoredDaily } = problem.rules
  const alarms = problem.rooms.some((room) => room.alarm) ? (alarmsRestoredDaily?.minutes ?? 0) : 0
  const before = (dailyChores?.setUp ?? 0) + alarms
  const after = (dailyChores?.cleanUp ?? 0) + alarms
  if (before + after === 0) return
  for (let start = 0; start < there.length; ) {
    const day = clock.day[start]
    let end = start
    while (end < there.length && clock.day[end] === day) end++
    let left = before
    for (let at = start; at < end && left > 0; at++) {
      if (there[at] === away) continue
      there[at] = atChores
      left--
    }
    left = after
    for (let at = end - 1; at >= start && left > 0; at--) {
      if (there[at] === away) continue
      there[at] = atChores
      left--
    }
    start = end
  }
}

function verifyPeople(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  for (const person of problem.people) {
    const own = entries.filter(({ planned, isFact }) => !isFact && planned.people.includes(person.id))
    const segments = own.flatMap(({ task, planned }) =>
      planned.segments.map((segment) => ({ task: task.id, ...segment })),
    )
    segments.sort((one, other) => one.start - other.start)
    for (const [index, { task, start }] of segments.entries()) {
      const before = segments[index - 1]
      if (before === undefined || before.end <= start) continue
      found.push({ rule: 'oneTaskPerPerson', person: person.id, tasks: [before.task, task], at: start })
    }
  }
}

function verifyLinks(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  const byId = new Map(entries.map((entry) => [entry.task.id, entry]))
  for (const { from, to, measuredFrom, atLeast, atMost } of problem.links) {
    const early = byId.get(from)
    const late = byId.get(to)
    if (early === undefined || late === undefined) continue
    if (late.isFact || late.task.state.kind === 'started') continue
    const wait = late.planned.start - (measuredFrom === 'end' ? early.planned.end : early.planned.start)
    if (atLeast !== null && wait < atLeast) found.push({ rule: 'minimumWait', from, to, wait, atLeast })
    if (atMost !== null && wait > atMost) found.push({ rule: 'maximumWait', from, to, wait, atMost })
  }
}

function verifyCapacities(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  for (const { id, capacity } of problem.resources) {
    const over = firstOverload(entries, capacity, ({ task }) => {
      return task.demands.reduce((sum, demand) => (demand.resource === id ? sum + demand.amount : sum), 0)
    })
    if (over !== undefined)
      found.push({ rule: 'resourceCapacity', resource: id, at: over.at, used: over.used })
  }
  for (const room of problem.rooms) {
    const inRoom = entries.filter(({ task }) => task.room === room.id)
    const tasks = room.tasksAtOnce === null ? undefined : firstOverload(inRoom, room.tasksAtOnce, () => 1)
    const people =
      room.peopleAtOnce === null
        ? undefined
        : firstOverload(inRoom, room.peopleAtOnce, ({ planned }) => planned.people.length)
    const over = tasks ?? people
    if (over !== undefined) found.push({ rule: 'roomCapacity', room: room.id, at: over.at })
  }
}

function firstOverload(entries: readonly Entry[], capacity: number, amountOf: (entry: Entry) => number) {
  const used = new Map<number, number>()
  for (const entry of entries) {
    const amount = entry.isFact ? 0 : amountOf(entry)
    if (amount === 0) continue
    for (const { start, end } of entry.planned.segments) {
      for (let at = start as number; at < end; at++) {
        const sum = (used.get(at) ?? 0) + amount
        used.set(at, sum)
        if (sum > capacity) return { at, used: sum }
      }
    }
  }
  return undefined
}

/** First common minute of two stretches of time. */
function firstCommon(oneFrom: number, oneTo: number, otherFrom: number, otherTo: number): number | undefined {
  const at = Math.max(oneFrom, otherFrom)
  return at < Math.min(oneTo, otherTo) ? at : undefined
}

function areOpenTogether(
  rooms: readonly ScheduleRoom[],
  one: ScheduleRoomId | null,
  other: ScheduleRoomId | null,
): boolean {
  if (one === null || other === null) return false
  if (one === other) return true
  const leads = (from: ScheduleRoomId, to: ScheduleRoomId): boolean =>
    rooms.find((room) => room.id === from)?.openTo.includes(to) === true
  return leads(one, other) || leads(other, one)
}

function verifyDust(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  if (!problem.rules.noDustNearWet) return
  for (const dusty of entries) {
    if (!dusty.task.effects.dusty || dusty.planned.segments.length === 0) continue
    for (const wet of entries) {
      const { wetFor } = wet.task.effects
      if (
        wet === dusty ||
        wetFor === null ||
        wet.planned.segments.length === 0 ||
        (wet.isFact && dusty.isFact)
      )
        continue
      if (!areOpenTogether(problem.rooms, dusty.task.room, wet.task.room)) continue
      const at = firstCommon(
        dusty.planned.start,
        dusty.planned.end,
        wet.planned.start,
        wet.planned.end + wetFor,
      )
      if (at !== undefined) found.push({ rule: 'noDustNearWet', dusty: dusty.task.id, wet: wet.task.id, at })
    }
  }
}

function isWithinHours(minute: number, hours: { readonly from: number; readonly to: number }): boolean {
  if (hours.from < hours.to) return hours.from <= minute && minute < hours.to
  return minute >= hours.from || minute < hours.to
}

function verifyQuietHours(
  problem: ScheduleProblem,
  clock: WallClock,
  entries: readonly Entry[],
  found: Violation[],
): void {
  const sleep = problem.rules.noFumesWhileSleeping
  for (const { task, planned, isFact } of entries) {
    if (isFact || planned.segments.length === 0 || task.room === null) continue
    const { fumesFor, closedFor } = task.effects
    const firstNew = planned.segments[0]?.start ?? planned.start
    if (sleep !== null && fumesFor !== null) {
      const sleeper = problem.rooms.find(
        (room) => room.sleeping && areOpenTogether(problem.rooms, task.room, room.id),
      )
      const at = firstMinuteWithin(clock, firstNew, planned.end + fumesFor, sleep)
      if (sleeper !== undefined && at !== undefined) {
        found.push({ rule: 'noFumesWhileSleeping', task: task.id, room: sleeper.id, at })
      }
    }
    const room = problem.rooms.find((entry) => entry.id === task.room)
    if (!problem.rules.roomBackInTime || room === undefined || closedFor === null) continue
    const isLate = room.backBy !== null && planned.end + closedFor > room.backBy
    const needed = room.neededDaily
    const at = isLate
      ? (room.backBy ?? undefined)
      : needed === null
        ? undefined
        : firstMinuteWithin(clock, firstNew, planned.end + closedFor, needed)
    if (at !== undefined) found.push({ rule: 'roomBackInTime', task: task.id, room: room.id, at })
  }
}

function firstMinuteWithin(
  clock: WallClock,
  from: number,
  to: number,
  hours: { readonly from: number; readonly to: number },
): number | undefined {
  for (let at = from; at < to; at++) {
    if (isWithinHours(clock.minute[at - clock.from] as number, hours)) return at
  }
  return undefined
}

function verifyRoomsOutOfUse(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  const limit = problem.rules.roomsOutOfUse
  if (limit === null) return
  const spans = new Map<ScheduleRoomId, { from: number; to: number; isFact: boolean }>()
  for (const { task, planned, isFact } of entries) {
    const { closedFor } = task.effects
    if (task.room === null || closedFor === null || planned.segments.length === 0) continue
    const known = spans.get(task.room)
    const to = planned.end + closedFor
    spans.set(task.room, {
      from: Math.min(known?.from ?? planned.start, planned.start),
      to: Math.max(known?.to ?? to, to),
      isFact: isFact && (known?.isFact ?? true),
    })
  }
  for (const { from } of spans.values()) {
    const at = Math.max(from, problem.clock.start)
    const out = [...spans].filter(([, span]) => span.from <= at && at < span.to)
    if (out.length <= limit || out.every(([, span]) => span.isFact)) continue
    found.push({ rule: 'roomsOutOfUse', rooms: out.map(([room]) => room), at })
    return
  }
}

function verifyWayOut(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  for (const hall of entries) {
    const { wetFor, closedFor } = hall.task.effects
    if (hall.task.room === null || hall.planned.segments.length === 0) continue
    for (const other of entries) {
      if (other === hall || other.task.room === null || other.planned.segments.length === 0) continue
      const room = problem.rooms.find((entry) => entry.id === other.task.room)
      if (room?.reachedThrough.includes(hall.task.room) !== true || (hall.isFact && other.isFact)) continue
      if (problem.rules.wayOutKeptOpen && closedFor !== null) {
        const at = firstCommon(
          other.planned.start,
          other.planned.end,
          hall.planned.start,
          hall.planned.end + closedFor,
        )
        if (at !== undefined)
          found.push({ rule: 'wayOutKeptOpen', behind: other.task.id, hall: hall.task.id, at })
      }
      const isJudged = hall.task.state.kind !== 'done' && hall.task.state.kind !== 'started'
      const isBlocking = wetFor !== null || closedFor !== null
      if (problem.rules.hallsLast && isBlocking && isJudged && hall.planned.start < other.planned.end) {
        found.push({ rule: 'hallsLast', task: other.task.id, hall: hall.task.id })
      }
    }
  }
}
