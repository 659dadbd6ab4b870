import { slotAtTick } from '../axis.ts'
import { type Heads, propagateHeads } from '../net/heads.ts'
import { neighboursOf } from '../net/site-arcs.ts'
import { endSide, type NetTask, never, type SiteNet } from '../net/site-net.ts'

/** Says that no plan can end by a tick; false proves nothing. */
export type Refuter = (deadline: number) => boolean

type RefuterOf = (net: SiteNet, heads: Extract<Heads, { kind: 'heads' }>) => Refuter

/** All subsets of the rooms are gone through; of more rooms than this those that take longest are looked at. */
const mostRooms = 10

/** How soon a room of more tasks than this can be given back is not refuted, only worked out along its waits. */
const mostTasks = 20

/**
 * The limit on rooms out of use as machines: each room with open tasks is a job that holds one of `roomLimit` machines from its
 * first task to its last. A room that may not be out of use before some tick has its tasks done no sooner than they
 * could be if it were the only room in the house. Whether all rooms fit on the machines by a deadline is decided exactly, subset by
 * subset (as for bins, after Held and Karp 1962). `starts`: earliest starts; `refuterOf`: proves for one room's tasks.
 */
export function createRoomRefuter(net: SiteNet, starts: readonly number[], refuterOf: RefuterOf): Refuter {
  const rooms = tasksByRoom(net)
  if (rooms.length <= net.roomLimit) return () => false
  const stays = rooms
    .map((tasks) => roomStay(oneRoomNet(net, tasks, starts), refuterOf))
    .map((stay) => ({ stay, first: stay.endAfter(net.firstTick) }))
    .sort((one, other) => other.first - one.first)
    .slice(0, mostRooms)
    .map(({ stay }) => stay)
  return (deadline) => machinesFor(stays, net.firstTick, deadline) > net.roomLimit
}

/** How soon a room can be given back when it is not out of use before a tick. */
interface RoomStay {
  readonly endAfter: (tick: number) => number
  /** Ticks that it stays out of use after its last task at least. */
  readonly outAfter: number
}

/** The open tasks of each room that has any. */
function tasksByRoom(net: SiteNet): readonly (readonly NetTask[])[] {
  return Array.from({ length: net.roomCount }, (_, room) =>
    net.tasks.filter((task) => task.room === room && task.outOfUse !== null && task.fixed === 0),
  ).filter((tasks) => tasks.length > 0)
}

function oneRoomNet(net: SiteNet, members: readonly NetTask[], starts: readonly number[]): SiteNet {
  const place = new Map(members.map((task, at) => [task.index, at]))
  const tasks = members.map((task, index) => ({
    ...task,
    index,
    release: Math.max(task.release, starts[task.index] as number),
    conflicts: [],
  }))
  const arcs = net.arcs.flatMap((arc) => {
    const [from, to] = [place.get(arc.from), place.get(arc.to)]
    return from === undefined || to === undefined ? [] : [{ ...arc, from, to }]
  })
  return { ...net, tasks, arcs, neighbours: neighboursOf(tasks.length, arcs), roomLimit: never }
}

function roomStay(room: SiteNet, refuterOf: RefuterOf): RoomStay {
  const { axis } = room
  const known = new Map<number, number>()
  function endAfter(tick: number): number {
    const from = axis.slotTick[slotAtTick(axis, tick)] ?? axis.horizon
    const found = known.get(from) ?? earliestEnd(room, refuterOf, from)
    known.set(from, found)
    return found
  }
  return { endAfter, outAfter: Math.min(...lastTasks(room).map((task) => task.outOfUse?.after ?? 0)) }
}

/** The tasks of which one is the last to end: no other of the room has to wait for their end. */
function lastTasks({ tasks, arcs }: SiteNet): readonly NetTask[] {
  const early = new Set(
    arcs.filter((arc) => arc.fromSide === endSide && arc.atLeast >= 0).map((arc) => arc.from),
  )
  return tasks.filter((task) => !early.has(task.index))
}

/** The first tick that is not refuted as the end of all tasks of the room, none of them starting before `from`. */
function earliestEnd(room: SiteNet, refuterOf: RefuterOf, from: number): number {
  const heads = propagateHeads(room, from)
  if (heads.kind !== 'heads') return never
  let low = Math.max(...heads.end)
  if (room.tasks.length > mostTasks) return low
  const refutes = refuterOf(room, heads)
  const { horizon } = room.axis
  let step = 1
  while (refutes(Math.min(horizon, low + step - 1))) {
    if (low + step > horizon) return never
    low += step
    step *= 2
  }
  let high = Math.min(horizon, low + step - 1)
  while (low < high) {
    const middle = (low + high) >> 1
    if (refutes(middle)) low = middle + 1
    else high = middle
  }
  return low
}

/** Fewest machines on which all stays end by the deadline; never when one of them cannot. */
function machinesFor(stays: readonly RoomStay[], firstTick: number, deadline: number): number {
  const subsets = 2 ** stays.length
  const machines = new Int32Array(subsets).fill(never)
  const freeFrom = new Int32Array(subsets).fill(never)
  machines[0] = 0
  for (let subset = 0; subset < subsets; subset++) {
    const used = machines[subset] as number
    if (used >= never) continue
    for (const [at, { endAfter, outAfter }] of stays.entries()) {
      const next = subset | (1 << at)
      if (next === subset) continue
      const onLast = used === 0 ? never : endAfter(freeFrom[subset] as number)
      const isOnLast = onLast <= deadline
      const end = isOnLast ? onLast : endAfter(firstTick)
      if (end > deadline) return never
      const count = isOnLast ? used : used + 1
      const isBetter =
        count < (machines[next] as number) ||
        (count === machines[next] && end + outAfter < (freeFrom[next] as number))
      if (!isBetter) continue
      machines[next] = count
      freeFrom[next] = end + outAfter
    }
  }
  return machines[subsets - 1] as number
}
