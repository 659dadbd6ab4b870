import { choreMinutes } from '../calendar.ts'
import { dayOf, type Windows } from '../fitting/axis.ts'
import { buildNet, type Net, type NetRoom } from '../fitting/net.ts'
import { doneTask } from '../fitting/numbers.ts'
import type { ScheduleProblem } from '../model.ts'
import { leastDaysByWaits, widestDay } from './room-chain.ts'

/** What no plan can beat. */
export interface PlanBound {
  /** Whole days after the clock's first day on which the last task ends; grid steps on an unbroken clock. */
  readonly finish: number
  /** Pay, site days and room-days together, in whole cents. */
  readonly cents: number
}

/** Needs a problem without faults. Leaves out whom tasks share and what rooms share, so that it is never above any plan. */
export function boundOf(problem: ScheduleProblem): PlanBound {
  const net = buildNet(problem)
  const lastTick = Math.max(criticalPath(net), lastByWork(net))
  if (problem.clock.kind === 'unbroken')
    return { finish: lastTick, cents: Math.ceil(lastTick * problem.prices.siteDay) }
  const today = dayOf(net.axis, net.axis.firstTick)
  const finish = Math.max(0, dayOf(net.axis, Math.max(0, lastTick - 1)) - today)
  return { finish, cents: Math.floor(payAndSiteDays(net) + roomDays(net)) }
}

function tasksLeft(net: Net): readonly number[] {
  return Array.from({ length: net.count }, (_, task) => task).filter((task) => net.kind[task] !== doneTask)
}

/** Ticks a task takes at least, with as many people as may work on it. */
function leastTicks(net: Net, task: number): number {
  const size = net.unmanned[task] === 1 ? 1 : Math.max(1, net.mostPeople[task] as number)
  return Math.ceil((net.work[task] as number) / size / net.axis.grid)
}

/** The end of all tasks if only waits held them up, in hours in which anybody works. */
function criticalPath(net: Net): number {
  const { arcs, axis } = net
  const hours = hoursOfAnybody(net)
  const start = new Int32Array(net.count)
  const end = new Int32Array(net.count)
  const isFixed = new Uint8Array(net.count)
  for (const each of net.fixed) {
    start[each.task] = each.start
    end[each.task] = each.end
    isFixed[each.task] = 1
  }
  const waits = Int32Array.from(
    start,
    (_, task) => (arcs.intoAt[task + 1] as number) - (arcs.intoAt[task] as number),
  )
  const ready = [...waits.keys()].filter((task) => waits[task] === 0)
  let last = 0
  for (let task = ready.pop(); task !== undefined; task = ready.pop()) {
    if (isFixed[task] === 0) {
      start[task] = earliest(net, task, start, end)
      end[task] = endOfWork(hours, axis.horizon, start[task] as number, leastTicks(net, task))
    }
    if (net.kind[task] !== doneTask) last = Math.max(last, end[task] as number)
    for (const after of arcs.outOf[task] as readonly number[]) {
      waits[after] = (waits[after] as number) - 1
      if (waits[after] === 0) ready.push(after)
    }
  }
  return last
}

function earliest({ arcs, release }: Net, task: number, start: Int32Array, end: Int32Array): number {
  let from = release[task] as number
  for (let at = arcs.intoAt[task] as number; at < (arcs.intoAt[task + 1] as number); at++) {
    const since = (arcs.fromStart[at] === 1 ? start : end)[arcs.before[at] as number] as number
    from = Math.max(from, since + (arcs.ticks[at] as number))
  }
  return from
}

/** 1 for each tick in which somebody works. */
function hoursOfAnybody(net: Net): Uint8Array {
  const { axis, people } = net
  const hours = new Uint8Array(axis.horizon)
  if (people.length === 0) return hours.fill(1)
  const nobody = net.unmanned.includes(1) ? [net.windowsOf(0)] : []
  for (const { from, to } of [...people.map((person) => person.hours), ...nobody])
    for (const [at, begin] of from.entries()) hours.fill(1, begin, to[at])
  return hours
}

function endOfWork(hours: Uint8Array, horizon: number, from: number, ticks: number): number {
  let left = ticks
  let at = from
  for (; left > 0 && at < horizon; at++) left -= hours[at] as number
  return at
}

/** Person-ticks of work left. */
function workLeft(net: Net, tasks: readonly number[]): number {
  const manned = tasks.filter((task) => net.unmanned[task] === 0)
  return manned.reduce((sum, task) => sum + (net.work[task] as number) / net.axis.grid, 0)
}

/** The tick by which all people together, or all of a pooled resource, have given as much as is taken. */
function lastByWork(net: Net): number {
  const tasks = tasksLeft(net)
  const pooled = net.capacities.map((capacity, resource) => {
    const taken = tasks.reduce((sum, task) => {
      const demands = net.demands[task] as Net['demands'][number]
      const amount = demands.reduce(
        (held, demand) => held + (demand.resource === resource ? demand.amount : 0),
        0,
      )
      return sum + amount * leastTicks(net, task)
    }, 0)
    return Math.ceil(taken / Math.max(1, capacity))
  })
  const work = workLeft(net, tasks)
  return Math.max(0, ...pooled, work === 0 || net.people.length === 0 ? 0 : dayOfWork(net, work))
}

/** A tick of the first day by which everybody together has worked so much. */
function dayOfWork({ people, axis }: Net, work: number): number {
  let given = 0
  for (let day = 0; day + 1 < axis.dayStart.length; day++) {
    for (const { hours } of people) given += ticksOn(hours, axis.dayStart, day)
    if (given >= work) return (axis.dayStart[day] as number) + 1
  }
  return axis.horizon
}

function ticksOn({ from, to, firstOfDay }: Windows, dayStart: Int32Array, day: number): number {
  let ticks = 0
  const end = dayStart[day + 1] ?? Number.POSITIVE_INFINITY
  for (let at = firstOfDay[day] as number; at < from.length && (from[at] as number) < end; at++)
    ticks += (to[at] as number) - (from[at] as number)
  return ticks
}

/**
 * For so many working days in a row: the cheapest hours that people could give in any such stretch, each with its share of setting up and
 * leaving on a day as long as they ever have; and those days on site. The least over all numbers of days.
 */
function payAndSiteDays(net: Net): number {
  const { problem, axis, people } = net
  const work = workLeft(net, tasksLeft(net))
  if (work === 0 || people.length === 0) return 0
  const { before, after } = choreMinutes(problem)
  const chores = (before + after) / axis.grid
  const least = problem.spending.leastPaid / axis.grid
  const worked = [...net.workingDays.keys()].filter(
    (day) => (net.workingDays[day + 1] ?? 0) > (net.workingDays[day] as number),
  )
  const crew = people
    .map(({ hours, price }) => {
      const daily = worked.map((day) => ticksOn(hours, axis.dayStart, day))
      const longest = Math.max(1, ...daily)
      return { daily, price: (price * Math.max(least, longest + chores)) / longest }
    })
    .toSorted((one, other) => one.price - other.price)
  let best = Number.POSITIVE_INFINITY
  for (let days = 1; days <= worked.length && days * problem.prices.siteDay < best; days++) {
    const pay = cheapestPay(crew, days, work)
    if (pay !== null) best = Math.min(best, pay + days * problem.prices.siteDay)
  }
  return best === Number.POSITIVE_INFINITY ? 0 : best
}

interface Hours {
  /** Ticks on each working day. */
  readonly daily: readonly number[]
  /** Cents for a tick of work. */
  readonly price: number
}

/** Null where so many days are not enough. */
function cheapestPay(crew: readonly Hours[], days: number, work: number): number | null {
  let rest = work
  let pay = 0
  for (const { daily, price } of crew) {
    const taken = Math.min(rest, mostInARow(daily, days))
    pay += taken * price
    rest -= taken
    if (rest <= 0) return pay
  }
  return null
}

function mostInARow(daily: readonly number[], days: number): number {
  let sum = 0
  let most = 0
  for (let at = 0; at < daily.length; at++) {
    sum += (daily[at] as number) - (at >= days ? (daily[at - days] as number) : 0)
    most = Math.max(most, sum)
  }
  return most
}

/** Each room on as many days as its work takes when those with the longest days fill it, and as its waits take. */
function roomDays(net: Net): number {
  const { axis, people, rooms } = net
  const longest = people
    .map(({ hours }) =>
      axis.dayStart.reduce((most, _, day) => Math.max(most, ticksOn(hours, axis.dayStart, day)), 0),
    )
    .sort((one, other) => other - one)
  const widest = widestDay(net)
  return rooms.reduce((sum, room, index) => {
    const work = workLeft(
      net,
      room.tasks.filter((task) => net.kind[task] !== doneTask),
    )
    const perDay = longest.slice(0, mostInRoom(net, room)).reduce((ticks, each) => ticks + each, 0)
    const byWork = work === 0 || perDay === 0 ? 0 : Math.ceil(work / perDay - 1e-9)
    const days = Math.max(
      byWork,
      leastDaysByWaits(net, index, widest, (task) => leastTicks(net, task)),
    )
    return sum + days * room.centsPerDay
  }, 0)
}

function mostInRoom({ problem, people }: Net, { most }: NetRoom): number {
  return Math.min(people.length, problem.rules.leadAndOneMore ? Math.min(2, most) : most)
}
