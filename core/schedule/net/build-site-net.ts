import { buildAxis } from '../axis.ts'
import type { ScheduleProblem } from '../model.ts'
import { neighboursOf, siteArcs } from './site-arcs.ts'
import { teamCalendars } from './site-calendars.ts'
import { conflictsOf } from './site-conflicts.ts'
import { never, type SiteNet } from './site-net.ts'
import { netTasks, type Pools } from './site-net-tasks.ts'
import { quietHoursOf } from './site-quiet-hours.ts'

/** Needs a problem without faults. */
export function buildSiteNet(problem: ScheduleProblem): SiteNet {
  const axis = buildAxis(problem)
  const firstTick = Math.ceil((problem.clock.start - axis.origin) / axis.grid)
  const calendars = teamCalendars(axis, problem)
  const pools = poolsOf(problem)
  const { arcs, limits } = siteArcs(problem, axis)
  const tasks = netTasks({
    problem,
    axis,
    firstTick,
    calendars,
    pools,
    quietHours: quietHoursOf(problem, axis),
    conflicts: conflictsOf(problem, axis.grid),
    limits,
  })
  return {
    problem,
    mirrored: false,
    axis,
    firstTick,
    calendars,
    tasks,
    arcs,
    neighbours: neighboursOf(tasks.length, arcs),
    roomCount: problem.rooms.length,
    roomLimit: problem.rules.roomsOutOfUse ?? never,
    capacities: pools.capacities,
  }
}

/** The pooled resources of the problem, and one more for each limit of tasks or people at once in a room. */
function poolsOf(problem: ScheduleProblem): Pools {
  const capacities = problem.resources.map((resource) => resource.capacity)
  const tasksPool = new Map<string | null, number>()
  const peoplePool = new Map<string | null, number>()
  for (const room of problem.rooms) {
    if (room.tasksAtOnce !== null) tasksPool.set(room.id, capacities.push(room.tasksAtOnce) - 1)
    if (room.peopleAtOnce !== null) peoplePool.set(room.id, capacities.push(room.peopleAtOnce) - 1)
  }
  return { capacities, tasksPool, peoplePool }
}
