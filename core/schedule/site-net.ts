import { type Axis, buildAxis } from './axis.ts'
import { localTimeIn } from './calendar.ts'
import type { ScheduleProblem, ScheduleRoom, Task } from './model.ts'

/** No limit, for ticks. Far from overflow when lags are added. */
export const never = 1_000_000_000

export type TaskSide = 0 | 1
export const startSide: TaskSide = 0
export const endSide: TaskSide = 1

/** `atLeast <= side(to) - side(from) <= atMost`, all in ticks. Without a limit: -never, never. */
export interface Arc {
  readonly from: number
  readonly fromSide: TaskSide
  readonly to: number
  readonly toSide: TaskSide
  readonly atLeast: number
  readonly atMost: number
}

/** The time a task claims reaches `before` ticks before its start to `after` ticks after its end. */
export interface Reach {
  readonly before: number
  readonly after: number
}

/** From each tick the next one that is forbidden, and the next one that is not. */
export interface ForbiddenTicks {
  readonly nextForbidden: Int32Array
  readonly nextClear: Int32Array
}

export interface Conflict {
  readonly other: number
  readonly mine: Reach
  readonly others: Reach
}

/** Slots on which everybody of some calendar groups works, with where a pause would begin. */
export interface TeamCalendar {
  readonly groups: number
  /** People of each group involved; one word per group. */
  readonly peopleOfGroup: readonly number[]
  readonly slots: Int32Array
  readonly ticks: Int32Array
  /** Index after the last one of the same unbroken run, and of the same local day. */
  readonly runEnd: Int32Array
  readonly dayEnd: Int32Array
  /** For each slot of the axis the first index at or after it. */
  readonly indexAt: Int32Array
}

export interface NetTask {
  readonly index: number
  /** Crew sizes that may be chosen and the slots the task then takes. */
  readonly sizes: readonly number[]
  readonly durations: readonly number[]
  readonly pausing: Task['splitting']
  readonly skilled: number
  /** The only team that may do it, or 0. */
  readonly team: number
  readonly calendars: readonly number[]
  /** Ticks: start not before, start not after, end not before, end not after. */
  readonly release: number
  readonly startBy: number
  readonly endFrom: number
  readonly endBy: number
  /** Placed before all others, in this order of urgency: 1 done, 2 started, 3 pinned; 0 is open. */
  readonly fixed: 0 | 1 | 2 | 3
  readonly factStart: number
  readonly factEnd: number
  readonly room: number
  readonly closing: Reach | null
  readonly forbidden: readonly { readonly ticks: ForbiddenTicks; readonly reach: Reach }[]
  readonly conflicts: readonly Conflict[]
  readonly demands: readonly {
    readonly resource: number
    readonly amount: number
    readonly perPerson: boolean
  }[]
  readonly product: number
  readonly promisedStart: number
  readonly promisedTeam: number
}

/** A problem translated to ticks, slots and bits. `mirrored` nets run time backwards, so that one decoder serves both directions. */
export interface SiteNet {
  readonly problem: ScheduleProblem
  readonly mirrored: boolean
  readonly axis: Axis
  readonly firstTick: number
  readonly calendars: readonly TeamCalendar[]
  readonly tasks: readonly NetTask[]
  readonly arcs: readonly Arc[]
  readonly roomCount: number
  readonly roomLimit: number
  readonly capacities: readonly number[]
}

/** Needs a problem without faults. */
export function buildSiteNet(problem: ScheduleProblem): SiteNet {
  const axis = buildAxis(problem)
  const firstTick = Math.ceil((problem.clock.start - axis.origin) / axis.grid)
  const calendars = teamCalendars(axis, problem)
  const context: Context = {
    problem,
    axis,
    firstTick,
    calendars,
    ...forbiddenTables(problem, axis),
    ...pools(problem),
  }
  const conflicts = conflictsOf(problem, axis.grid)
  const tasks = problem.tasks.map((task, index) => netTask(context, task, index, conflicts[index] ?? []))
  const { arcs, bounded } = boundedByFacts(problem, axis, tasks)
  return {
    problem,
    mirrored: false,
    axis,
    firstTick,
    calendars,
    tasks: bounded,
    arcs,
    roomCount: problem.rooms.length,
    roomLimit: problem.rules.roomsOutOfUse ?? never,
    capacities: context.capacities,
  }
}

interface Context {
  readonly problem: ScheduleProblem
  readonly axis: Axis
  readonly firstTick: number
  readonly calendars: readonly TeamCalendar[]
  readonly sleep: ForbiddenTicks | null
  readonly needed: ReadonlyMap<string, ForbiddenTicks>
  readonly capacities: readonly number[]
  /** Index of the pooled resource that stands for tasks or people at once in a room. */
  readonly tasksPool: ReadonlyMap<string, number>
  readonly peoplePool: ReadonlyMap<string, number>
}

function pools(problem: ScheduleProblem) {
  const capacities = problem.resources.map((resource) => resource.capacity)
  const tasksPool = new Map<string, number>()
  const peoplePool = new Map<string, number>()
  for (const room of problem.rooms) {
    if (room.tasksAtOnce !== null) tasksPool.set(room.id, capacities.push(room.tasksAtOnce) - 1)
    if (room.peopleAtOnce !== null) peoplePool.set(room.id, capacities.push(room.peopleAtOnce) - 1)
  }
  return { capacities, tasksPool, peoplePool }
}

function netTask(context: Context, task: Task, index: number, conflicts: readonly Conflict[]): NetTask {
  const { problem, axis } = context
  const team = teamBits(problem, task)
  const skilled = skilledBits(problem, task)
  const sizes = crewSizes(task, team)
  const work = task.state.kind === 'started' ? task.state.remainingWork : task.work
  const lasting = sizes.map((size) => Math.ceil(work / Math.max(1, size) / axis.grid))
  const room = problem.rooms.findIndex((entry) => entry.id === task.room)
  const promise = problem.promises.find((entry) => entry.task === task.id)
  const closed = task.effects.closedFor
  return {
    index,
    sizes,
    durations: lasting,
    pausing: task.splitting,
    skilled: team === 0 ? skilled : team,
    team,
    calendars: usableCalendars(context, sizes, skilled, team),
    release: Math.max(
      context.firstTick,
      Math.ceil(((task.earliestStart ?? axis.origin) - axis.origin) / axis.grid),
    ),
    endBy: Math.min(axis.horizon, roomDeadline(problem, axis, room, task)),
    startBy: never,
    endFrom: -never,
    ...factTicks(axis, task),
    room,
    closing: closed === null || work === 0 ? null : { before: 0, after: Math.ceil(closed / axis.grid) },
    forbidden: forbiddenFor(context, task),
    conflicts,
    demands: demandsOf(context, task),
    product: task.product === null ? -1 : productNumber(problem, task.product),
    promisedStart: promise === undefined ? -never : (promise.start - axis.origin) / axis.grid,
    promisedTeam: promise === undefined ? 0 : bitsOf(problem, promise.people),
  }
}

function productNumber(problem: ScheduleProblem, product: string): number {
  return problem.tasks.findIndex((task) => task.product === product)
}

function bitsOf(problem: ScheduleProblem, people: readonly string[]): number {
  return people.reduce((mask, id) => mask | (1 << problem.people.findIndex((person) => person.id === id)), 0)
}

function teamBits(problem: ScheduleProblem, task: Task): number {
  return task.state.kind === 'open' || task.state.people === null ? 0 : bitsOf(problem, task.state.people)
}

function skilledBits(problem: ScheduleProblem, task: Task): number {
  return problem.people.reduce((mask, person, index) => {
    return task.skills.every((skill) => person.skills.includes(skill)) ? mask | (1 << index) : mask
  }, 0)
}

function crewSizes(task: Task, team: number): readonly number[] {
  if (task.crew.max === 0) return [0]
  if (team !== 0) return [countBits(team)]
  return Array.from({ length: task.crew.max - task.crew.min + 1 }, (_, step) => task.crew.min + step)
}

export function countBits(mask: number): number {
  let rest = mask
  let count = 0
  while (rest !== 0) {
    rest &= rest - 1
    count++
  }
  return count
}

function usableCalendars(
  context: Context,
  sizes: readonly number[],
  skilled: number,
  team: number,
): readonly number[] {
  const mostPeople = Math.max(...sizes)
  return context.calendars.flatMap((calendar, index) => {
    const shares = calendar.peopleOfGroup.map((people) => people & (team === 0 ? skilled : team))
    if (mostPeople === 0) return calendar.peopleOfGroup.length === 0 ? [index] : []
    if (calendar.peopleOfGroup.length === 0 || calendar.peopleOfGroup.length > mostPeople) return []
    if (shares.some((share) => share === 0)) return []
    return team !== 0 && shares.reduce((mask, share) => mask | share, 0) !== team ? [] : [index]
  })
}

function roomDeadline(problem: ScheduleProblem, axis: Axis, room: number, task: Task): number {
  const backBy = problem.rooms[room]?.backBy ?? null
  if (!problem.rules.roomBackInTime || backBy === null || task.effects.closedFor === null) return never
  return Math.floor((backBy - task.effects.closedFor - axis.origin) / axis.grid)
}

function factTicks(axis: Axis, task: Task) {
  const { state } = task
  const floor = (instant: number): number => Math.floor((instant - axis.origin) / axis.grid)
  const ceil = (instant: number): number => Math.ceil((instant - axis.origin) / axis.grid)
  switch (state.kind) {
    case 'open':
      return { fixed: 0, factStart: -never, factEnd: -never } as const
    case 'done':
      return { fixed: 1, factStart: floor(state.start), factEnd: ceil(state.end) } as const
    case 'started':
      return { fixed: 2, factStart: floor(state.start), factEnd: -never } as const
    case 'pinned':
      return { fixed: 3, factStart: ceil(state.start), factEnd: -never } as const
  }
}

function demandsOf(context: Context, task: Task): NetTask['demands'] {
  const { problem, tasksPool, peoplePool } = context
  const named = task.demands.map(({ resource, amount }) => {
    return {
      resource: problem.resources.findIndex((entry) => entry.id === resource),
      amount,
      perPerson: false,
    }
  })
  const tasks = task.room === null ? undefined : tasksPool.get(task.room)
  const people = task.room === null ? undefined : peoplePool.get(task.room)
  if (tasks !== undefined) named.push({ resource: tasks, amount: 1, perPerson: false })
  if (people !== undefined) named.push({ resource: people, amount: 1, perPerson: true })
  return named
}

function forbiddenFor(context: Context, task: Task): NetTask['forbidden'] {
  const { axis, problem, sleep, needed } = context
  const { fumesFor, closedFor } = task.effects
  const found: { ticks: ForbiddenTicks; reach: Reach }[] = []
  if (task.work === 0 || task.room === null) return found
  if (sleep !== null && fumesFor !== null && reachesSleeper(problem, task.room)) {
    found.push({ ticks: sleep, reach: { before: 0, after: Math.ceil(fumesFor / axis.grid) } })
  }
  const hours = needed.get(task.room)
  if (hours !== undefined && closedFor !== null) {
    found.push({ ticks: hours, reach: { before: 0, after: Math.ceil(closedFor / axis.grid) } })
  }
  return found
}

function reachesSleeper(problem: ScheduleProblem, room: string): boolean {
  return problem.rooms.some((other) => other.sleeping && isSameOrOpen(problem.rooms, room, other.id))
}

function isSameOrOpen(rooms: readonly ScheduleRoom[], one: string, other: string): boolean {
  if (one === other) return true
  return rooms.some((room) => {
    return (
      (room.id === one && room.openTo.includes(other)) || (room.id === other && room.openTo.includes(one))
    )
  })
}

function forbiddenTables(problem: ScheduleProblem, axis: Axis) {
  const needed = new Map<string, ForbiddenTicks>()
  if (problem.clock.kind === 'unbroken') return { sleep: null, needed }
  const local = localTimeIn(problem.clock.timeZone)
  const first = local.dayAt(problem.clock.start)
  const table = (hours: { readonly from: number; readonly to: number }): ForbiddenTicks => {
    const forbidden = new Uint8Array(axis.horizon)
    const days = (axis.dayOfTick[axis.horizon] ?? 0) + 1
    for (let day = -1; day <= days; day++) {
      const from = (local.instantOf(first + day, hours.from) - axis.origin) / axis.grid
      const lastDay = hours.from < hours.to ? day : day + 1
      const to = (local.instantOf(first + lastDay, hours.to) - axis.origin) / axis.grid
      forbidden.fill(1, Math.max(0, Math.floor(from)), Math.max(0, Math.ceil(to)))
    }
    return scanForbidden(forbidden)
  }
  const sleeping = problem.rules.noFumesWhileSleeping
  for (const room of problem.rooms) {
    if (problem.rules.roomBackInTime && room.neededDaily !== null)
      needed.set(room.id, table(room.neededDaily))
  }
  return { sleep: sleeping === null ? null : table(sleeping), needed }
}

export function scanForbidden(forbidden: Uint8Array): ForbiddenTicks {
  const nextForbidden = new Int32Array(forbidden.length + 1).fill(never)
  const nextClear = new Int32Array(forbidden.length + 1).fill(forbidden.length)
  for (let tick = forbidden.length - 1; tick >= 0; tick--) {
    const isForbidden = forbidden[tick] === 1
    nextForbidden[tick] = isForbidden ? tick : (nextForbidden[tick + 1] ?? never)
    nextClear[tick] = isForbidden ? (nextClear[tick + 1] ?? tick) : tick
  }
  return { nextForbidden, nextClear }
}

/** For each room the rooms that dust reaches from it, itself included. */
function nearness(problem: ScheduleProblem): ReadonlyMap<string, ReadonlySet<string>> {
  return new Map(
    problem.rooms.map(({ id }) => {
      const near = problem.rooms.filter((other) => isSameOrOpen(problem.rooms, id, other.id))
      return [id, new Set(near.map((room) => room.id))]
    }),
  )
}

function conflictsOf(problem: ScheduleProblem, grid: number): readonly Conflict[][] {
  const lists: Conflict[][] = problem.tasks.map(() => [])
  const forbid = (one: number, oneAfter: number, other: number, otherAfter: number): void => {
    const mine = { before: 0, after: Math.ceil(oneAfter / grid) }
    const others = { before: 0, after: Math.ceil(otherAfter / grid) }
    lists[one]?.push({ other, mine, others })
    lists[other]?.push({ other: one, mine: others, others: mine })
  }
  const near = nearness(problem)
  const { noDustNearWet, wayOutKeptOpen } = problem.rules
  if (!noDustNearWet && !wayOutKeptOpen) return lists
  for (const [one, task] of problem.tasks.entries()) {
    if (task.room === null || task.work === 0) continue
    const through = problem.rooms.find((room) => room.id === task.room)?.reachedThrough ?? []
    const isDusty = noDustNearWet && task.effects.dusty
    if (!isDusty && !(wayOutKeptOpen && through.length > 0)) continue
    for (const [other, second] of problem.tasks.entries()) {
      if (one === other || second.room === null || second.work === 0) continue
      const { wetFor, closedFor } = second.effects
      if (isDusty && wetFor !== null && near.get(task.room)?.has(second.room)) forbid(one, 0, other, wetFor)
      if (wayOutKeptOpen && closedFor !== null && through.includes(second.room))
        forbid(one, 0, other, closedFor)
    }
  }
  return lists
}

function teamCalendars(axis: Axis, problem: ScheduleProblem): readonly TeamCalendar[] {
  const widest = problem.tasks.reduce((most, task) => {
    return Math.max(most, task.crew.max, countBits(teamBits(problem, task)))
  }, 0)
  const people = axis.groups.length - 1
  const subsets = Array.from({ length: 2 ** Math.min(people, 12) }, (_, subset) => subset)
  return subsets
    .filter((subset) => countBits(subset) <= widest && (people <= 6 || countBits(subset) <= 2))
    .map((subset) => teamCalendar(axis, subset))
    .filter((calendar) => calendar.slots.length > 0)
}

function teamCalendar(axis: Axis, subset: number): TeamCalendar {
  const groups = axis.groups.flatMap((_, group) => (group > 0 && (subset >> (group - 1)) & 1 ? [group] : []))
  const working = (subset === 0 ? [0] : groups).map((group) => axis.works[group] as Uint8Array)
  const common: number[] = []
  for (let slot = 0; slot < axis.slotTick.length; slot++) {
    if (working.every((works) => works[slot] === 1)) common.push(slot)
  }
  const slots = Int32Array.from(common)
  return {
    groups: subset,
    peopleOfGroup: groups.map((group) => axis.groups[group] ?? 0),
    slots,
    ...pauseTables(axis, slots),
  }
}

export function pauseTables(axis: Axis, slots: Int32Array) {
  const ticks = new Int32Array(slots.length)
  for (let index = 0; index < slots.length; index++)
    ticks[index] = axis.slotTick[slots[index] as number] as number
  const runEnd = new Int32Array(slots.length + 1).fill(slots.length)
  const dayEnd = new Int32Array(slots.length + 1).fill(slots.length)
  for (let index = slots.length - 2; index >= 0; index--) {
    const tick = ticks[index] ?? 0
    const next = ticks[index + 1] ?? 0
    runEnd[index] = next === tick + 1 ? (runEnd[index + 1] ?? 0) : index + 1
    dayEnd[index] = axis.dayOfTick[next] === axis.dayOfTick[tick] ? (dayEnd[index + 1] ?? 0) : index + 1
  }
  const indexAt = new Int32Array(axis.slotTick.length + 1).fill(slots.length)
  for (let slot = axis.slotTick.length - 1, index = slots.length; slot >= 0; slot--) {
    if (index > 0 && slots[index - 1] === slot) index--
    indexAt[slot] = index
  }
  return { ticks, runEnd, dayEnd, indexAt }
}

/** Links in ticks: minimum waits rounded up, maximum waits down. Links from facts become bounds, exact to the minute. */
function boundedByFacts(problem: ScheduleProblem, axis: Axis, tasks: readonly NetTask[]) {
  const release = tasks.map((task) => task.release)
  const latest = tasks.map(() => never)
  const arcs: Arc[] = []
  const indexOf = new Map(problem.tasks.map((task, index) => [task.id, index]))
  for (const link of problem.links) {
    const from = indexOf.get(link.from) ?? -1
    const to = indexOf.get(link.to) ?? -1
    const fact = factInstant(problem.tasks[from], link.measuredFrom)
    const toState = problem.tasks[to]?.state.kind
    if (toState === 'done' || toState === 'started') continue
    if (fact === null) {
      arcs.push(...tickArcs(axis.grid, from, to, link.measuredFrom, link.atLeast, link.atMost))
      continue
    }
    const earliest = (fact + (link.atLeast ?? -never) - axis.origin) / axis.grid
    const last = (fact + (link.atMost ?? never) - axis.origin) / axis.grid
    release[to] = Math.max(release[to] ?? 0, Math.ceil(earliest))
    latest[to] = Math.min(latest[to] ?? never, Math.floor(last))
  }
  arcs.push(...hallsLastArcs(problem))
  const bounded = tasks.map((task, index) => ({
    ...task,
    release: release[index] ?? 0,
    startBy: latest[index] ?? never,
  }))
  return { arcs, bounded }
}

function factInstant(task: Task | undefined, side: 'start' | 'end'): number | null {
  if (task === undefined) return null
  if (task.state.kind === 'done') return side === 'end' ? task.state.end : task.state.start
  return task.state.kind === 'started' && side === 'start' ? task.state.start : null
}

function tickArcs(
  grid: number,
  from: number,
  to: number,
  measuredFrom: 'start' | 'end',
  atLeast: number | null,
  atMost: number | null,
): readonly Arc[] {
  const fromSide = measuredFrom === 'end' ? endSide : startSide
  const least = atLeast === null ? -never : Math.ceil(atLeast / grid)
  const most = atMost === null ? never : Math.floor(atMost / grid)
  if (least >= 0 || least === -never)
    return [{ from, fromSide, to, toSide: startSide, atLeast: least, atMost: most }]
  const backwards = {
    from: to,
    fromSide: startSide,
    to: from,
    toSide: fromSide,
    atLeast: -never,
    atMost: -least,
  }
  if (most === never) return [backwards]
  return [backwards, { from, fromSide, to, toSide: startSide, atLeast: -never, atMost: most }]
}

function hallsLastArcs(problem: ScheduleProblem): readonly Arc[] {
  if (!problem.rules.hallsLast) return []
  return problem.tasks.flatMap((hall, to) => {
    const blocks = hall.effects.wetFor !== null || hall.effects.closedFor !== null
    if (!blocks || hall.room === null || hall.state.kind === 'done' || hall.state.kind === 'started')
      return []
    return problem.tasks.flatMap((task, from) => {
      const room = problem.rooms.find((entry) => entry.id === task.room)
      if (
        from === to ||
        task.state.kind === 'done' ||
        room?.reachedThrough.includes(hall.room ?? '') !== true
      )
        return []
      return [{ from, fromSide: endSide, to, toSide: startSide, atLeast: 0, atMost: never }]
    })
  })
}
