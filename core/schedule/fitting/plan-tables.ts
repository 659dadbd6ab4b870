import type { FixedPiece } from './fixed.ts'
import { createKept, type Kept } from './kept.ts'
import { createLedger, type Ledger } from './ledger.ts'
import { createLevels, type Levels } from './levels.ts'
import type { Net, NetRoom } from './net.ts'
import { none, openTask, type PeopleBits } from './numbers.ts'

/** Work over so many nights in one task at most. */
export const mostPieces = 64

/** Longest waits of up to so many days are mended while a plan is put together; missing a longer one counts as broken. */
const daysRepaired = 2

/** What is known of a plan while it is put together: where tasks lie, when people and rooms are free, what it costs so far. */
export class PlanTables {
  readonly net: Net
  readonly start: Int32Array
  readonly end: Int32Array
  readonly team: Int32Array
  readonly isPlaced: Uint8Array
  /** Open tasks in the order they were placed. */
  readonly order: Int32Array
  placedCount = 0
  /** Open tasks that each task still waits for. */
  readonly waitsFor: Int32Array
  /** When each person is done with what they were given. */
  readonly freeFrom: Int32Array
  /** Who works in each room. */
  readonly roomTeam: Int32Array
  /** Begin of the last task put into each room. */
  readonly roomStart: Int32Array
  /** When each room is dry and open after what was put there. */
  readonly roomUsable: Int32Array
  /** Found by the last `look`: begin and end of the task, and its pieces. */
  fitStart = 0
  fitEnd = 0
  protected readonly fitFrom = new Int32Array(mostPieces)
  protected readonly fitTo = new Int32Array(mostPieces)
  protected fitPieces = 0
  fitTeam: PeopleBits = 0
  /** Ticks to set a room up once more before the task. */
  protected fitSetUp = 0
  /** Nothing else was found than a place in hours that should be quiet. */
  protected fitIsLoud = false
  protected readonly openBefore: Int32Array
  protected readonly deadline: Int32Array
  protected readonly raised: Int32Array
  protected readonly longestRepaired: number
  protected readonly pieceFrom: Int32Array[]
  protected readonly pieceTo: Int32Array[]
  protected readonly pieceCount: Int32Array
  protected readonly lastDay: Int32Array
  protected readonly lastRoom: Int32Array
  protected readonly lastProduct: Int32Array
  protected readonly roomEnd: Int32Array
  protected readonly crowdEnd: Int32Array
  /** Who began something in each room last, and who did before that. */
  protected readonly roomLastTeam: Int32Array
  protected readonly roomTeamBefore: Int32Array
  protected readonly groupStart: Int32Array
  protected readonly fixedInRoom: readonly (readonly FixedPiece[])[]
  protected readonly ledger: Ledger
  protected readonly levels: Levels
  protected readonly kept: Kept
  protected handOvers = 0
  /** Coats that go on after a night, once for each. */
  protected takenUp = 0
  protected broken = 0
  protected lastWork = 0
  /** A latest wait that was missed: the task that has to come later, and when. */
  protected missedTask = none
  protected missedFrom = 0

  constructor(net: Net) {
    const { count, people, rooms } = net
    const table = (size: number): Int32Array => new Int32Array(size)
    this.net = net
    this.start = table(count)
    this.end = table(count)
    this.team = table(count)
    this.isPlaced = new Uint8Array(count)
    this.order = table(count)
    this.waitsFor = table(count)
    this.freeFrom = table(people.length)
    this.roomTeam = table(rooms.length)
    this.roomStart = table(rooms.length)
    this.roomUsable = table(rooms.length)
    this.raised = table(count)
    this.pieceFrom = Array.from({ length: count }, () => table(0))
    this.pieceTo = Array.from({ length: count }, () => table(0))
    this.pieceCount = table(count)
    this.lastDay = table(people.length)
    this.lastRoom = table(people.length)
    this.lastProduct = table(people.length)
    this.roomEnd = table(rooms.length)
    this.crowdEnd = table(rooms.length)
    this.roomLastTeam = table(rooms.length)
    this.roomTeamBefore = table(rooms.length)
    this.groupStart = table(rooms.length)
    this.fixedInRoom = rooms.map((_, room) => net.fixed.filter((each) => each.room === room && !each.isFact))
    this.ledger = createLedger(net)
    this.levels = createLevels(net)
    this.kept = createKept(net)
    this.openBefore = openTasksBefore(net)
    this.deadline = deadlinesOf(net)
    const isUnbroken = net.problem.clock.kind === 'unbroken'
    this.longestRepaired = isUnbroken ? net.axis.horizon : (daysRepaired * 1440) / net.axis.grid
  }

  /** A new plan with nothing in it but what is fixed. */
  begin(): void {
    const { net } = this
    this.placedCount = 0
    this.handOvers = 0
    this.takenUp = 0
    this.broken = 0
    this.missedTask = none
    this.lastWork = 0
    this.isPlaced.fill(0)
    this.waitsFor.set(this.openBefore)
    this.freeFrom.fill(net.axis.firstTick)
    this.lastDay.fill(none)
    this.roomTeam.fill(0)
    this.roomLastTeam.fill(0)
    this.roomTeamBefore.fill(0)
    this.groupStart.fill(none)
    this.roomStart.fill(0)
    this.roomEnd.fill(0)
    this.crowdEnd.fill(0)
    this.roomUsable.fill(0)
    this.ledger.clear()
    this.levels.clear()
    this.kept.clear()
    for (const each of net.fixed) this.settle(each)
  }

  protected settle(each: FixedPiece): void {
    const { task, room, team, start, end, pieces, isFact } = each
    this.isPlaced[task] = 1
    this.start[task] = start
    this.end[task] = end
    this.team[task] = team
    if (each.isMisfit) this.broken += 1
    if (room !== none) {
      if (isFact && end > start) this.ledger.occupy(room, start, end - 1)
      else this.ledger.occupy(room, start, start)
      const [first] = pieces
      if (first !== undefined) this.ledger.occupy(room, first.from, end - 1)
      this.dry(room, end, this.net.tail[task] as number)
      if (!isFact) this.broken += Math.max(0, end - (this.net.rooms[room] as NetRoom).backBy)
    }
    if (isFact) return
    for (const { from, to } of pieces) this.attend(team, from, to)
    this.levels.take(task, pieces)
  }

  protected dry(room: number, end: number, tail: number): void {
    if (end > 0 && tail >= 0) this.ledger.occupy(room, end - 1, end + tail)
    const usable = end + Math.max(0, tail)
    if (usable > (this.roomUsable[room] as number)) this.roomUsable[room] = usable
  }

  protected attend(team: PeopleBits, from: number, to: number): void {
    for (let rest = team; rest !== 0; rest &= rest - 1)
      this.ledger.attend(31 - Math.clz32(rest & -rest), from, to)
    if (to > this.lastWork) this.lastWork = to
  }
}

function openTasksBefore({ count, arcs, kind }: Net): Int32Array {
  return Int32Array.from({ length: count }, (_, task) => {
    const into = arcs.before.subarray(arcs.intoAt[task], arcs.intoAt[task + 1])
    return into.reduce((sum, before) => sum + (kind[before] === openTask ? 1 : 0), 0)
  })
}

/** When a task has to be over for the pins behind it. */
function deadlinesOf({ count, arcs, fixed, axis, problem }: Net): Int32Array {
  const latest = new Int32Array(count).fill(axis.horizon)
  for (const each of fixed) {
    if (each.isFact || problem.tasks[each.task]?.state.kind === 'started') continue
    for (let at = arcs.intoAt[each.task] as number; at < (arcs.intoAt[each.task + 1] as number); at++) {
      const before = arcs.before[at] as number
      latest[before] = Math.min(latest[before] as number, each.start - (arcs.ticks[at] as number))
    }
  }
  return latest
}
