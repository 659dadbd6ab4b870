import type { Axis } from '../axis.ts'
import { minutesUntilUsable, type ScheduleProblem, type Task } from '../model.ts'
import { roomsNear } from './rooms-near.ts'
import type { StartLimits } from './site-arcs.ts'
import { type Conflict, countBits, type NetTask, never, type Reach, type TeamCalendar } from './site-net.ts'
import type { QuietHours } from './site-quiet-hours.ts'

export interface Pools {
  readonly capacities: readonly number[]
  /** Index of the pooled resource that stands for tasks, or for people, at once in a room. */
  readonly tasksPool: ReadonlyMap<string | null, number>
  readonly peoplePool: ReadonlyMap<string | null, number>
}

export interface NetParts {
  readonly problem: ScheduleProblem
  readonly axis: Axis
  readonly firstTick: number
  readonly calendars: readonly TeamCalendar[]
  readonly pools: Pools
  readonly quietHours: QuietHours
  /** By task. */
  readonly conflicts: readonly (readonly Conflict[])[]
  readonly limits: readonly StartLimits[]
}

/** Every task of the problem in ticks, slots and bits. */
export function netTasks(parts: NetParts): readonly NetTask[] {
  const look = createLookUp(parts)
  return parts.problem.tasks.map((task, index) => netTask(parts, look, task, index))
}

type LookUp = ReturnType<typeof createLookUp>

/** Indices and bits of everything that tasks name. */
function createLookUp({ problem, calendars }: NetParts) {
  const bits = new Map(problem.people.map((person, index) => [person.id, 1 << index]))
  const products = new Map<string | null, number>([[null, -1]])
  for (const [index, { product }] of problem.tasks.entries())
    if (!products.has(product)) products.set(product, index)
  const near = roomsNear(problem.rooms)
  const sleeping = new Set(problem.rooms.flatMap((room) => (room.sleeping ? [room.id] : [])))
  const usable = new Map<string, readonly number[]>()
  const skilled = new Map<string, number>()
  return {
    products,
    rooms: new Map<string | null, number>(problem.rooms.map((room, index) => [room.id, index])),
    resources: new Map(problem.resources.map((resource, index) => [resource.id, index])),
    promises: new Map(problem.promises.map((promise) => [promise.task, promise])),
    bySleeper: new Set(
      [...near].flatMap(([id, rooms]) => (rooms.some((room) => sleeping.has(room)) ? [id] : [])),
    ),
    /** Somebody who has left the crew is a bit of nobody's. */
    bitsOf: (people: readonly string[]) => people.reduce((mask, id) => mask | (bits.get(id) ?? 1 << 31), 0),
    skilledFor(skills: readonly string[]): number {
      const key = JSON.stringify(skills)
      const known = skilled.get(key) ?? skilledBits(problem, skills)
      skilled.set(key, known)
      return known
    },
    calendarsFor(mostPeople: number, skilled: number, team: number): readonly number[] {
      const key = `${mostPeople} ${skilled} ${team}`
      const known = usable.get(key) ?? usableCalendars(calendars, mostPeople, skilled, team)
      usable.set(key, known)
      return known
    },
  }
}

function netTask(parts: NetParts, look: LookUp, task: Task, index: number): NetTask {
  const { axis } = parts
  const team = task.state.kind === 'open' || task.state.people === null ? 0 : look.bitsOf(task.state.people)
  const skilled = team === 0 ? look.skilledFor(task.skills) : team
  const sizes = crewSizes(task, team, countBits(skilled))
  const work = task.state.kind === 'started' ? task.state.remainingWork : task.work
  const limits = parts.limits[index] as StartLimits
  const promise = look.promises.get(task.id)
  const { fixed, factStart, factEnd } = factTicks(axis, task)
  const earliest = Math.ceil(((task.earliestStart ?? axis.origin) - axis.origin) / axis.grid)
  return {
    index,
    sizes,
    durations: sizes.map((size) => Math.ceil(work / Math.max(1, size) / axis.grid)),
    pausing: task.splitting,
    skilled,
    team,
    calendars: look.calendarsFor(Math.max(...sizes), skilled, team),
    release: Math.max(parts.firstTick, earliest, limits.release),
    startBy: limits.startBy,
    endFrom: -never,
    endBy: Math.min(axis.horizon, roomDeadline(parts, look, task)),
    fixed,
    factStart,
    factEnd,
    room: look.rooms.get(task.room) ?? -1,
    outOfUse:
      task.room === null || task.work === 0 ? null : reachAfter(minutesUntilUsable(task.effects), axis),
    forbidden: forbiddenFor(parts, look, task),
    conflicts: parts.conflicts[index] ?? [],
    demands: demandsOf(parts, look, task),
    product: look.products.get(task.product) ?? -1,
    promisedStart: promise === undefined ? -never : (promise.start - axis.origin) / axis.grid,
    promisedTeam: promise === undefined ? 0 : look.bitsOf(promise.people),
  }
}

function reachAfter(minutes: number, axis: Axis): Reach {
  return { before: 0, after: Math.ceil(minutes / axis.grid) }
}

function skilledBits(problem: ScheduleProblem, skills: readonly string[]): number {
  return problem.people.reduce((mask, person, index) => {
    return skills.every((skill) => person.skills.includes(skill)) ? mask | (1 << index) : mask
  }, 0)
}

/** No more people than have the skill. */
function crewSizes(task: Task, team: number, skilled: number): readonly number[] {
  if (task.crew.max === 0) return [0]
  if (team !== 0) return [countBits(team)]
  const { min } = task.crew
  const max = Math.max(min, Math.min(task.crew.max, skilled))
  return Array.from({ length: max - min + 1 }, (_, step) => min + step)
}

/** Calendars of every group of people that can give the team somebody: all of the team where it is set, else some with the skill. */
function usableCalendars(
  calendars: readonly TeamCalendar[],
  mostPeople: number,
  skilled: number,
  team: number,
): readonly number[] {
  return calendars.flatMap(({ peopleOfGroup }, index) => {
    const shares = peopleOfGroup.map((people) => people & skilled)
    if (mostPeople === 0) return peopleOfGroup.length === 0 ? [index] : []
    if (peopleOfGroup.length === 0 || peopleOfGroup.length > mostPeople) return []
    if (shares.some((share) => share === 0)) return []
    return team !== 0 && shares.reduce((mask, share) => mask | share, 0) !== team ? [] : [index]
  })
}

function roomDeadline({ problem, axis }: NetParts, look: LookUp, task: Task): number {
  const backBy = problem.rooms[look.rooms.get(task.room) ?? -1]?.backBy ?? null
  if (!problem.rules.roomBackInTime || backBy === null) return never
  return Math.floor((backBy - minutesUntilUsable(task.effects) - axis.origin) / axis.grid)
}

function factTicks(axis: Axis, { state }: Task) {
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

function demandsOf({ pools }: NetParts, look: LookUp, task: Task): NetTask['demands'] {
  const demands = task.demands.map(({ resource, amount }) => {
    return { resource: look.resources.get(resource) as number, amount, perPerson: false }
  })
  const tasks = pools.tasksPool.get(task.room)
  const people = pools.peoplePool.get(task.room)
  if (tasks !== undefined) demands.push({ resource: tasks, amount: 1, perPerson: false })
  if (people !== undefined) demands.push({ resource: people, amount: 1, perPerson: true })
  return demands
}

function forbiddenFor({ axis, quietHours }: NetParts, look: LookUp, task: Task): NetTask['forbidden'] {
  const { fumesFor, closedFor } = task.effects
  if (task.work === 0 || task.room === null) return []
  const { sleep } = quietHours
  const needed = quietHours.needed.get(task.room)
  return [
    ...(sleep !== null && fumesFor !== null && look.bySleeper.has(task.room)
      ? [{ ticks: sleep, reach: reachAfter(fumesFor, axis) }]
      : []),
    ...(needed !== undefined && closedFor !== null
      ? [{ ticks: needed, reach: reachAfter(closedFor, axis) }]
      : []),
  ]
}
