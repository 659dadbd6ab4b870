import {
  minutesUntilUsable,
  type Person,
  type ScheduleProblem,
  type Task,
} from '../../../core/schedule/model.ts'
import type { ModelData } from './solver.ts'

/** Minutes of a day. */
const dayLength = 1440

/** The hours in which somebody may be at work, as slots of the grid without breaks, alike on each day. */
export interface SlotCalendar {
  /** Days after the clock's first day on which anybody comes. */
  readonly dates: readonly number[]
  /** Minute of the day at which each slot begins. */
  readonly minutes: readonly number[]
  /** For each person and day the slots in which they can be put on tasks; `to` not included. */
  readonly here: readonly (readonly { readonly from: number; readonly to: number }[])[]
}

/** A problem as `passes.mzn` wants it told. */
export interface Statement {
  readonly data: ModelData
  readonly calendar: SlotCalendar
  /** People of each team, by index. */
  readonly teams: readonly (readonly number[])[]
  /** Cents of one unit of the model's cost. */
  readonly unit: number
}

/**
 * Tells a problem on so many working days, for plans of at most so many cents. The model is narrower than the problem: throws where the
 * problem has something that the model does not know.
 */
export function statementOf(problem: ScheduleProblem, workingDays: number, atMostCents: number): Statement {
  refuse(problem)
  const { tasks, people, rooms, gridMinutes: grid, prices, spending } = problem
  const calendar = calendarOf(problem, workingDays)
  const teams = subsets(people.length).filter(
    (team) => team.length > 0 && team.length <= Math.max(...tasks.map(({ crew }) => crew.max)),
  )
  const wages = people.map(({ centsPerHour }) => whole((centsPerHour * grid) / 60))
  const unit = [
    ...wages,
    prices.siteDay,
    prices.handOver,
    ...rooms.flatMap(({ centsPerDay, centsPerDayWaiting }) => [centsPerDay, centsPerDayWaiting]),
  ].reduce(commonPart)
  const units = (cents: number): number => cents / unit
  const ticks = (minutes: number): number => whole(minutes / grid)
  const midnight = problem.clock.start - (problem.clock.start % dayLength)
  const tick = (instant: number): number => whole((instant - midnight) / grid)
  const waits = waitsOf(problem)
  const aparts = apartsOf(problem)
  const last = calendar.dates.at(-1) ?? 0
  const tails = tasks.map(({ effects }) => ticks(minutesUntilUsable(effects)))
  const calendarDays = last + 1 + Math.ceil(Math.max(...tails) / (dayLength / grid))
  const end = (calendarDays * dayLength) / grid
  const roomIndex = new Map(rooms.map(({ id }, index) => [id, index + 1]))
  const products = [...new Set(tasks.flatMap(({ product }) => product ?? []))]
  const data = {
    passes: tasks.length,
    people: people.length,
    rooms: rooms.length,
    teams: teams.length,
    days: calendar.dates.length,
    slots: calendar.minutes.length,
    calendarDays,
    dayLength: dayLength / grid,
    dateOf: calendar.dates,
    wallOfStart: wallTimes(calendar, grid, 0),
    wallOfEnd: wallTimes(calendar, grid, 1),
    hereFrom: calendar.here.map((days) => days.map(({ from }) => from)),
    hereTo: calendar.here.map((days) => days.map(({ to }) => to)),
    roomOf: tasks.map(({ room }) => roomIndex.get(room ?? '')),
    productOf: tasks.map(({ product }) => (product === null ? 0 : products.indexOf(product) + 1)),
    tail: tails,
    notBefore: tasks.map(({ earliestStart }) =>
      tick(Math.max(problem.clock.start, earliestStart ?? problem.clock.start)),
    ),
    dueBy: tasks.map(({ room }) => {
      const backBy = rooms.find(({ id }) => id === room)?.backBy ?? null
      return backBy === null || !problem.rules.roomBackInTime ? end : Math.floor((backBy - midnight) / grid)
    }),
    mayDo: tasks.map((task) =>
      setOf(teams.flatMap((team, index) => (mayDo(problem, task, team) ? [index + 1] : []))),
    ),
    isIn: teams.map((team) => people.map((_, person) => team.includes(person))),
    length: tasks.map(({ work }) => teams.map((team) => Math.ceil(work / team.length / grid))),
    isBefore: orderOf(problem, waits),
    waits: waits.length,
    waitFrom: waits.map(({ from }) => from + 1),
    waitTo: waits.map(({ to }) => to + 1),
    sinceStart: waits.map(({ sinceStart }) => sinceStart),
    atLeast: waits.map(({ atLeast }) => (atLeast === null ? -end : Math.ceil(atLeast / grid))),
    atMost: waits.map(({ atMost }) => (atMost === null ? end : Math.floor(atMost / grid))),
    aparts: aparts.length,
    apartWet: aparts.map(({ wet }) => wet + 1),
    apartDry: aparts.map(({ dry }) => dry + 1),
    apartTail: aparts.map(({ tail }) => ticks(tail)),
    peopleAtOnce: rooms.map(({ peopleAtOnce }) => peopleAtOnce ?? people.length),
    mayWorkIn: rooms.map(({ id }) => setOf(crewsOf(problem, id))),
    roomsOutOfUse: problem.rules.roomsOutOfUse ?? rooms.length,
    moving: Math.ceil(spending.moving / grid),
    changing: Math.ceil(spending.changingProduct / grid),
    chores: ticks(choresOf(problem).setUp + choresOf(problem).cleanUp),
    leastPaid: ticks(spending.leastPaid),
    wage: wages.map(units),
    roomDay: rooms.map(({ centsPerDay }) => units(centsPerDay)),
    waitingDay: rooms.map(({ centsPerDayWaiting }) => units(centsPerDayWaiting)),
    siteDay: units(prices.siteDay),
    handOver: units(prices.handOver),
    atMostCost: Math.floor(units(atMostCents)),
  }
  return { data, calendar, teams, unit }
}

function refuse({ clock, tasks, people, rooms, rules, keeping, resources }: ScheduleProblem): void {
  const unknown = [
    clock.kind !== 'site' || clock.timeZone !== 'UTC' || clock.holidays.length > 0,
    tasks.some(
      ({ state, room, crew, demands }) =>
        state.kind !== 'open' || room === null || crew.min === 0 || demands.length > 0,
    ),
    tasks.some(({ breaking, work, smallestPart }) => breaking === 'natural' && work >= 2 * smallestPart),
    people.some(({ partDays, busy, daysOff }) => partDays.length + busy.length + daysOff.length > 0),
    rooms.some(({ setUpAgain, neededDaily, alarm }) => setUpAgain > 0 || neededDaily !== null || alarm),
    rules.noFumesWhileSleeping !== null || rules.alarmsRestoredDaily !== null,
    keeping.tasks.length + keeping.rooms.length + resources.length > 0,
  ]
  if (unknown.some((each) => each)) throw new Error(`the model does not know this: ${unknown.indexOf(true)}`)
}

function whole(value: number): number {
  if (!Number.isInteger(value)) throw new Error(`${value} does not lie on the grid`)
  return value
}

function commonPart(one: number, other: number): number {
  return other === 0 ? one : commonPart(other, one % other)
}

function subsets(count: number): readonly (readonly number[])[] {
  return Array.from({ length: 2 ** count }, (_, bits) =>
    Array.from({ length: count }, (_, index) => index).filter((index) => (bits >> index) & 1),
  )
}

function setOf(values: readonly number[]): unknown {
  return { set: values }
}

function choresOf({ rules }: ScheduleProblem): { readonly setUp: number; readonly cleanUp: number } {
  return rules.dailyChores ?? { setUp: 0, cleanUp: 0 }
}

function calendarOf(problem: ScheduleProblem, workingDays: number): SlotCalendar {
  const { clock, people, gridMinutes: grid } = problem
  if (clock.kind !== 'site') throw new Error('the model has no clock without nights')
  const first = Math.floor(clock.start / dayLength)
  const dates = Array.from({ length: 7 * workingDays }, (_, date) => date)
    .filter((date) => people.some((person) => presence(problem, person, first + date).length > 0))
    .slice(0, workingDays)
  const weekday = dates.map((date) => people.map((person) => presence(problem, person, first + date)))
  const everyday = weekday.map((crew) => [...new Set(crew.flat())].toSorted((one, other) => one - other))
  const minutes = everyday[0] ?? []
  if (everyday.some((each) => each.join() !== minutes.join())) throw new Error('the days differ')
  const { setUp, cleanUp } = choresOf(problem)
  const here = people.map((_, person) =>
    weekday.map((crew) => {
      const present = crew[person] ?? []
      const worked = present.slice(setUp / grid, present.length - cleanUp / grid)
      const from = worked[0] === undefined ? 0 : minutes.indexOf(worked[0])
      if (worked.some((minute, index) => minutes[from + index] !== minute)) throw new Error('breaks differ')
      return { from, to: from + worked.length }
    }),
  )
  return { dates, minutes, here }
}

/** The minutes at which slots begin in which a person is at the site, chores counted. */
function presence({ clock, gridMinutes }: ScheduleProblem, person: Person, day: number): readonly number[] {
  if (clock.kind !== 'site') return []
  const weekday = new Date(day * dayLength * 60_000).getUTCDay()
  const lies = (windows: readonly { from: number; to: number }[], minute: number): boolean =>
    windows.some(({ from, to }) => from <= minute && minute < to)
  return Array.from({ length: dayLength / gridMinutes }, (_, slot) => slot * gridMinutes).filter(
    (minute) =>
      lies(clock.siteHours[weekday] ?? [], minute) &&
      lies(person.week[weekday] ?? [], minute) &&
      !lies(person.breaks, minute),
  )
}

/** For each slot of all days when it begins, or for each that something may end with when that is; steps of the grid. */
function wallTimes({ dates, minutes }: SlotCalendar, grid: number, after: 0 | 1): readonly number[] {
  return dates.flatMap((date) => minutes.map((minute) => whole((date * dayLength + minute) / grid) + after))
}

function mayDo({ people, rooms }: ScheduleProblem, task: Task, team: readonly number[]): boolean {
  const has = (person: number, skill: string): boolean => people[person]?.skills.includes(skill) === true
  const { skills, crew } = task
  const isAble =
    skills.length === 0 ||
    (team.some((person) => skills.every((skill) => has(person, skill))) &&
      team.every((person) => skills.some((skill) => has(person, skill))))
  const most = rooms.find(({ id }) => id === task.room)?.peopleAtOnce ?? crew.max
  return isAble && team.length >= crew.min && team.length <= Math.min(crew.max, most)
}

/** The sets of people who may together do all that is done in a room, as bits. */
function crewsOf({ tasks, people, rules }: ScheduleProblem, room: string): readonly number[] {
  const skills = new Set(tasks.filter((task) => task.room === room).flatMap((task) => task.skills))
  const canLead = people.map((person) => [...skills].every((skill) => person.skills.includes(skill)))
  const isFree = !rules.leadAndOneMore || !canLead.includes(true)
  return subsets(people.length)
    .filter(
      (crew) => isFree || crew.length <= 1 || (crew.length === 2 && crew.some((person) => canLead[person])),
    )
    .map((crew) => crew.reduce((bits, person) => bits + 2 ** person, 0))
}

interface Wait {
  readonly from: number
  readonly to: number
  readonly sinceStart: boolean
  readonly atLeast: number | null
  readonly atMost: number | null
}

/** The links, and halls behind what they lead to. */
function waitsOf({ tasks, links, rooms, rules }: ScheduleProblem): readonly Wait[] {
  const index = new Map(tasks.map(({ id }, at) => [id, at]))
  const linked = links.map(({ from, to, measuredFrom, atLeast, atMost }) => ({
    from: index.get(from) as number,
    to: index.get(to) as number,
    sinceStart: measuredFrom === 'start',
    atLeast,
    atMost,
  }))
  const ways = new Set(rooms.flatMap(({ reachedThrough }) => reachedThrough))
  const behind = rules.hallsLast
    ? rooms
        .filter(({ id }) => !ways.has(id))
        .flatMap(({ id, reachedThrough }) => reachedThrough.map((hall) => [id, hall] as const))
    : []
  const halls = behind.flatMap(([room, hall]) =>
    [...tasks.keys()]
      .filter((from) => tasks[from]?.room === room)
      .flatMap((from) =>
        [...tasks.keys()]
          .filter((to) => tasks[to]?.room === hall)
          .map((to) => ({ from, to, sinceStart: false, atLeast: 0, atMost: null })),
      ),
  )
  return [...linked, ...halls]
}

/** Dust and what is wet near it; work behind a hall and what closes the hall. */
function apartsOf({
  tasks,
  rooms,
  rules,
}: ScheduleProblem): readonly { wet: number; dry: number; tail: number }[] {
  const roomOf = (task: Task) => rooms.find(({ id }) => id === task.room)
  const meets = (one: Task, other: Task): boolean =>
    one.room === other.room ||
    roomOf(one)?.openTo.includes(other.room ?? '') === true ||
    roomOf(other)?.openTo.includes(one.room ?? '') === true
  return tasks.flatMap((one, wet) =>
    tasks.flatMap((other, dry) => {
      const { touchDry, closedFor } = one.effects
      const isDust =
        rules.noDustNearWet && touchDry !== null && other.effects.dusty && wet !== dry && meets(one, other)
      const isShut =
        rules.wayOutKeptOpen && closedFor !== null && roomOf(other)?.reachedThrough.includes(one.room ?? '')
      return [
        ...(isDust ? [{ wet, dry, tail: touchDry }] : []),
        ...(isShut ? [{ wet, dry, tail: closedFor }] : []),
      ]
    }),
  )
}

/** Which pass is done before which, by waits from its end. */
function orderOf({ tasks }: ScheduleProblem, waits: readonly Wait[]): readonly (readonly boolean[])[] {
  const isBefore = tasks.map((_, from) =>
    tasks.map((_, to) =>
      waits.some(
        (wait) => wait.from === from && wait.to === to && !wait.sinceStart && (wait.atLeast ?? -1) >= 0,
      ),
    ),
  )
  for (const [middle] of tasks.entries())
    for (const [from] of tasks.entries())
      for (const [to] of tasks.entries()) {
        const row = isBefore[from] as boolean[]
        if (row[middle] && isBefore[middle]?.[to]) row[to] = true
      }
  return isBefore
}
