import {
  choreMinutes,
  type LocalTime,
  localTimeIn,
  siteWindows,
  withoutChores,
  workingWindows,
} from './calendar.ts'
import type { Person, ScheduleProblem } from './model.ts'

/**
 * The two clocks on one grid. A *tick* is a grid step of the wall clock counted from `origin`; drying and open times are
 * constants in ticks. A *slot* is a tick in which somebody may work; slots are numbered without gaps, so that work runs on
 * consecutive slots. `slotTick` and `slotAt` are the two monotone tables between them: work that fills slots x..y starts at
 * tick slotTick[x] and ends at tick slotTick[y] + 1, which differ from slotTick[y + 1] at every break and night.
 */
export interface Axis {
  readonly origin: number
  readonly grid: number
  /** Ticks on the axis; nothing may end after it. */
  readonly horizon: number
  readonly slotTick: Int32Array
  /** For each tick 0..horizon the first slot that starts at or after it. */
  readonly slotAt: Int32Array
  /** Local day (0 is the first) at each tick 0..horizon. */
  readonly dayOfTick: Int32Array
  /** For each slot the people (bits) whose own calendar has it. */
  readonly present: Int32Array
  /** Groups of people with the same calendar (bits of people); the first group is the site itself with nobody in it. */
  readonly groups: readonly number[]
  /** For each group, which slots it works. */
  readonly works: readonly Uint8Array[]
}

const mostDays = 730

/** Needs a problem without faults. `days` local days from the clock's start on, or as many as any sensible plan could need. */
export function buildAxis(problem: ScheduleProblem): Axis {
  return problem.clock.kind === 'unbroken' ? unbrokenAxis(problem) : siteAxis(problem, problem.clock)
}

function slotsOfWork(problem: ScheduleProblem): number {
  return problem.tasks.reduce((sum, task) => {
    const work = task.state.kind === 'started' ? task.state.remainingWork : task.work
    return sum + Math.ceil(work / Math.max(1, task.crew.min) / problem.gridMinutes)
  }, 0)
}

function minutesOfWaiting(problem: ScheduleProblem): number {
  const lags = problem.links.reduce((sum, link) => sum + Math.max(0, link.atLeast ?? 0, link.atMost ?? 0), 0)
  const effects = problem.tasks.reduce((sum, { effects }) => {
    return sum + Math.max(effects.wetFor ?? 0, effects.closedFor ?? 0, effects.fumesFor ?? 0)
  }, 0)
  return lags + effects
}

function latestMention(problem: ScheduleProblem): number {
  return problem.tasks.reduce((latest, task) => {
    const pinned = task.state.kind === 'pinned' ? task.state.start : problem.clock.start
    return Math.max(latest, task.earliestStart ?? problem.clock.start, pinned)
  }, problem.clock.start as number)
}

function unbrokenAxis(problem: ScheduleProblem): Axis {
  const grid = problem.gridMinutes
  const origin = problem.clock.start
  const wait =
    Math.ceil(minutesOfWaiting(problem) / grid) + Math.ceil((latestMention(problem) - origin) / grid)
  const horizon = slotsOfWork(problem) + wait + problem.links.length + 1
  const slotTick = Int32Array.from({ length: horizon }, (_, tick) => tick)
  const slotAt = Int32Array.from({ length: horizon + 1 }, (_, tick) => tick)
  const everywhere = new Uint8Array(horizon).fill(1)
  const dayOfTick = slotAt
  return {
    origin,
    grid,
    horizon,
    slotTick,
    slotAt,
    dayOfTick,
    present: new Int32Array(horizon),
    groups: [0],
    works: [everywhere],
  }
}

interface Stretch {
  readonly fromTick: number
  readonly toTick: number
  readonly group: number
}

function siteAxis(
  problem: ScheduleProblem,
  clock: Extract<ScheduleProblem['clock'], { kind: 'site' }>,
): Axis {
  const local = localTimeIn(clock.timeZone)
  const grid = problem.gridMinutes
  const firstDay = local.dayAt(clock.start)
  const origin = local.instantOf(firstDay, 0)
  const members = groupPeople(problem.people)
  const enough = 1.5 * slotsOfWork(problem) + 20
  const waitingDays = Math.ceil((minutesOfWaiting(problem) + latestMention(problem) - origin) / 1440) + 7
  const stretches: Stretch[] = []
  const slotsOf = members.map(() => 0)
  let day = 0
  for (; day < mostDays; day++) {
    if (day >= waitingDays && slotsOf.every((slots) => slots >= enough || (slots === 0 && day >= 35))) break
    collectDay({ problem, clock, local, members, origin, slotsOf, stretches }, firstDay + day)
  }
  const horizon = Math.round((local.instantOf(firstDay + day, 0) - origin) / grid)
  const tables = slotTables(stretches, horizon, members.length, Math.ceil((clock.start - origin) / grid))
  const groups = members.map((group) =>
    group.reduce((mask, person) => mask | (1 << problem.people.indexOf(person)), 0),
  )
  const present = new Int32Array(tables.slotTick.length)
  for (const [group, works] of tables.works.entries()) {
    const bits = groups[group] as number
    for (let slot = 0; slot < present.length; slot++)
      if (works[slot] === 1) present[slot] = (present[slot] as number) | bits
  }
  return {
    origin,
    grid,
    horizon,
    ...tables,
    dayOfTick: dayTable(local, firstDay, day, origin, grid, horizon),
    present,
    groups,
  }
}

/** The first group is the site itself, for work that needs nobody. */
function groupPeople(people: readonly Person[]): readonly (readonly Person[])[] {
  const groups = new Map<string, Person[]>()
  for (const person of people) {
    const key = JSON.stringify([person.week, person.breaks, person.daysOff, person.partDays])
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [person])
    else group.push(person)
  }
  return [[], ...groups.values()]
}

interface DayCollector {
  readonly problem: ScheduleProblem
  readonly clock: Extract<ScheduleProblem['clock'], { kind: 'site' }>
  readonly local: LocalTime
  readonly members: readonly (readonly Person[])[]
  readonly origin: number
  readonly slotsOf: number[]
  readonly stretches: Stretch[]
}

function collectDay(into: DayCollector, day: number): void {
  const { problem, clock, local, members, origin } = into
  for (const [group, people] of members.entries()) {
    const person = people[0]
    const windows =
      person === undefined
        ? withoutChores(siteWindows(clock, day), choreMinutes(problem))
        : workingWindows(problem, person, day)
    for (const { from, to } of windows) {
      const fromTick = Math.round((local.instantOf(day, from) - origin) / problem.gridMinutes)
      const toTick = Math.round((local.instantOf(day, to) - origin) / problem.gridMinutes)
      if (fromTick >= toTick) continue
      into.stretches.push({ fromTick, toTick, group })
      into.slotsOf[group] = (into.slotsOf[group] ?? 0) + toTick - fromTick
    }
  }
}

function slotTables(stretches: readonly Stretch[], horizon: number, groupCount: number, firstTick: number) {
  const groupsAt = new Int32Array(horizon)
  for (const { fromTick, toTick, group } of stretches) {
    for (let tick = Math.max(fromTick, firstTick); tick < toTick; tick++)
      groupsAt[tick] = (groupsAt[tick] ?? 0) | (1 << group)
  }
  const slotAt = new Int32Array(horizon + 1)
  const ticks: number[] = []
  for (let tick = 0; tick < horizon; tick++) {
    slotAt[tick] = ticks.length
    if (groupsAt[tick] !== 0) ticks.push(tick)
  }
  slotAt[horizon] = ticks.length
  const slotTick = Int32Array.from(ticks)
  const works = Array.from({ length: groupCount }, (_, group) => {
    const worked = new Uint8Array(slotTick.length)
    for (const [slot, tick] of ticks.entries()) worked[slot] = ((groupsAt[tick] as number) >> group) & 1
    return worked
  })
  return { slotTick, slotAt, works }
}

function dayTable(
  local: LocalTime,
  firstDay: number,
  days: number,
  origin: number,
  grid: number,
  horizon: number,
): Int32Array {
  const table = new Int32Array(horizon + 1).fill(days)
  for (let day = 0; day < days; day++) {
    const from = Math.round((local.instantOf(firstDay + day, 0) - origin) / grid)
    const to = Math.round((local.instantOf(firstDay + day + 1, 0) - origin) / grid)
    table.fill(day, from, to)
  }
  return table
}
