import { isBegun, type ScheduleProblem, type Task } from '../model.ts'
import { roomsNear } from './rooms-near.ts'
import type { Conflict, Reach } from './site-net.ts'

/** Pairs of tasks that may not claim time together: dust with something wet near by, work with a closed way to it. */
export function conflictsOf(problem: ScheduleProblem, grid: number): readonly Conflict[][] {
  const lists: Conflict[][] = problem.tasks.map(() => [])
  const { noDustNearWet, wayOutKeptOpen, hallsLast } = problem.rules
  const near = noDustNearWet ? roomsNear(problem.rooms) : new Map<string, readonly string[]>()
  const halls = new Map(problem.rooms.map((room) => [room.id, wayOutKeptOpen ? room.reachedThrough : []]))
  const wet = claimsByRoom(problem, grid, (task) => task.effects.wetFor)
  const closed = claimsByRoom(problem, grid, (task) => task.effects.closedFor)
  const closedAlready = problem.tasks.some(isBegun)
    ? claimsByRoom(problem, grid, (task) => (isBegun(task) ? task.effects.closedFor : null))
    : new Map<string, readonly Claim[]>()
  function forbid(one: number, claims: readonly Claim[] | undefined): void {
    for (const { task: other, reach } of claims ?? []) {
      if (one === other) continue
      lists[one]?.push({ other, mine: atWork, others: reach })
      lists[other]?.push({ other: one, mine: reach, others: atWork })
    }
  }
  for (const [index, { room, work, effects, state }] of problem.tasks.entries()) {
    if (room === null || work === 0) continue
    if (effects.dusty) for (const place of near.get(room) ?? []) forbid(index, wet.get(place))
    // Where halls come last, what closes one later on comes after all open work behind it anyway.
    const closing = hallsLast && state.kind !== 'done' ? closedAlready : closed
    for (const hall of halls.get(room) ?? []) forbid(index, closing.get(hall))
  }
  return lists
}

const atWork: Reach = { before: 0, after: 0 }

interface Claim {
  readonly task: number
  readonly reach: Reach
}

/** The tasks of each room that claim time beyond their end, `lastingFor` minutes of it. */
function claimsByRoom(
  problem: ScheduleProblem,
  grid: number,
  lastingFor: (task: Task) => number | null,
): ReadonlyMap<string, readonly Claim[]> {
  const found = new Map<string, Claim[]>(problem.rooms.map((room) => [room.id, []]))
  for (const [index, task] of problem.tasks.entries()) {
    const lasting = lastingFor(task)
    if (task.room === null || task.work === 0 || lasting === null) continue
    found.get(task.room)?.push({ task: index, reach: { before: 0, after: Math.ceil(lasting / grid) } })
  }
  return found
}
