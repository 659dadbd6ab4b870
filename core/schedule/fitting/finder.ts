import { dayOf, type Windows } from './axis.ts'
import type { FixedPiece } from './fixed.ts'
import type { Net, NetRoom } from './net.ts'
import { countBits, none, type PeopleBits } from './numbers.ts'
import { mostPieces, PlanTables } from './plan-tables.ts'

/** So long a task is put off for hours that should be quiet; then it breaks them. */
const daysOfPatience = 21

/** Looks where a task would go. */
export class Finder extends PlanTables {
  /** The earliest tick that waits, people and the room leave for a task. */
  protected earliest(task: number, team: PeopleBits, from: number): number {
    const { net } = this
    const { arcs } = net
    let est = Math.max(from, net.release[task] as number, this.raised[task] as number)
    for (let at = arcs.intoAt[task] as number; at < (arcs.intoAt[task + 1] as number); at++) {
      const before = arcs.before[at] as number
      const since = arcs.fromStart[at] === 1 ? this.start : this.end
      const tick = (since[before] as number) + (arcs.ticks[at] as number)
      if (tick > est) est = tick
    }
    for (let rest = team; rest !== 0; rest &= rest - 1) {
      const free = this.freeFrom[31 - Math.clz32(rest & -rest)] as number
      if (free > est) est = free
    }
    const room = net.room[task] as number
    if (room === none) return est
    est = Math.max(est, this.roomStart[room] as number)
    const { most } = net.rooms[room] as NetRoom
    if (most >= 30) return est
    const isAlone = countBits(team) + 1 > most || !net.problem.rules.leadAndOneMore
    return Math.max(est, (isAlone ? this.roomEnd : this.crowdEnd)[room] as number)
  }

  /** Looks where a task would go for these people, from a tick on; false where there is no place for it. */
  look(task: number, team: PeopleBits, from: number): boolean {
    const { net } = this
    const size = Math.max(1, countBits(team))
    const length = Math.ceil((net.work[task] as number) / size / net.axis.grid)
    let est = this.earliest(task, team, from)
    this.fitTeam = team
    for (const limit of net.arcs.latest[task] as Net['arcs']['latest'][number]) {
      if (limit.earlier !== task || this.isPlaced[limit.later] === 0) continue
      const needed = (this.start[limit.later] as number) - limit.ticks - (limit.fromStart ? 0 : length)
      if (needed > est) est = needed
    }
    if (length === 0) {
      this.fitStart = est
      this.fitEnd = est
      this.fitPieces = 0
      return est <= net.axis.horizon
    }
    const windows = net.windowsOf(team)
    const first = est
    const patience = daysOfPatience * (1440 / net.axis.grid)
    this.fitIsLoud = false
    let at = windows.firstOfDay[dayOf(net.axis, est)] as number
    while (at < windows.from.length) {
      if ((windows.to[at] as number) <= est) {
        at++
        continue
      }
      const begin = Math.max(est, windows.from[at] as number)
      if (!this.layFrom(task, windows, at, begin, length)) {
        // What goes on over a night is not begun right before a break either, but after it.
        const isShort =
          net.natural[task] === 1 && (windows.to[at] as number) - begin < (net.smallestPart[task] as number)
        at = isShort ? at + 1 : (windows.stretchLast[at] as number) + 1
        continue
      }
      const later = this.blockedUntil(task, size, begin - first > patience)
      if (later <= begin) return true
      est = later
    }
    return false
  }

  /** Lays a task from a tick of a window on: whole within the stretch, or over nights where it may stop at one. */
  protected layFrom(task: number, windows: Windows, at: number, begin: number, length: number): boolean {
    const { net } = this
    this.fitPieces = 0
    const lead = this.leadIn(task, begin)
    const need = lead + length
    const room = available(windows, at, begin, need)
    if (room >= need) {
      this.lay(windows, at, begin, need)
      return true
    }
    if (this.fitSetUp > 0 && room >= lead && this.setUpTheDayBefore(windows, at, begin, lead, length))
      return true
    const part = net.smallestPart[task] as number
    if (net.natural[task] === 0 || net.quiet[task] !== null || length < 2 * part) return false
    if ((windows.to[at] as number) - begin < part) return false
    return this.layOverNights(windows, at, begin, need, lead, part)
  }

  /** Sets a room up once more at the end of a day and does all the work on the next. */
  protected setUpTheDayBefore(
    windows: Windows,
    at: number,
    begin: number,
    lead: number,
    length: number,
  ): boolean {
    const next = this.nextMorning(windows, at, begin)
    if (next < 0 || available(windows, next, windows.from[next] as number, length) < length) return false
    this.lay(windows, at, begin, lead)
    this.lay(windows, next, windows.from[next] as number, length)
    return true
  }

  /** The window in which the team goes on first thing on their next day; -1 where they do not. */
  protected nextMorning(windows: Windows, at: number, begin: number): number {
    const { axis } = this.net
    const next = (windows.stretchLast[at] as number) + 1
    if (next >= windows.from.length) return none
    const from = windows.from[next] as number
    const day = dayOf(axis, from)
    return day === dayOf(axis, begin) || this.isHeldBefore(day, from) ? none : next
  }

  protected layOverNights(
    windows: Windows,
    at: number,
    begin: number,
    need: number,
    lead: number,
    part: number,
  ): boolean {
    let left = need
    let window = at
    let from = begin
    let least = lead + part
    for (;;) {
      const room = available(windows, window, from, left)
      const taken = room >= left ? left : Math.min(room, left - part)
      if (taken < least && taken < left) return false
      this.lay(windows, window, from, taken)
      left -= taken
      if (left === 0) return true
      const next = this.nextMorning(windows, window, from)
      if (next < 0 || this.fitPieces > mostPieces - 8) return false
      window = next
      from = windows.from[next] as number
      least = part
    }
  }

  protected lay(windows: Windows, at: number, begin: number, length: number): void {
    let left = length
    for (let window = at; left > 0; window++) {
      const from = Math.max(begin, windows.from[window] as number)
      const to = Math.min(windows.to[window] as number, from + left)
      if (this.fitPieces === 0) this.fitStart = from
      this.fitFrom[this.fitPieces] = from
      this.fitTo[this.fitPieces++] = to
      this.fitEnd = to
      left -= to - from
    }
  }

  /** Does somebody of the team do something at a fixed time on a day, before a tick? */
  protected isHeldBefore(day: number, tick: number): boolean {
    const { net } = this
    if (net.fixed.length === 0) return false
    return net.people.some(({ fixed }, person) => {
      if (((this.fitTeam >> person) & 1) === 0) return false
      return fixed.some(({ pieces }) =>
        pieces.some(({ from }) => dayOf(net.axis, from) === day && from < tick),
      )
    })
  }

  /** Ticks that go by before the work itself: moving in, washing out, setting up a room that was given back. */
  protected leadIn(task: number, begin: number): number {
    const { net, fitTeam } = this
    const room = net.room[task] as number
    const day = dayOf(net.axis, begin)
    let most = 0
    for (let rest = fitTeam; rest !== 0; rest &= rest - 1) {
      const lead = this.leadOfPerson(
        31 - Math.clz32(rest & -rest),
        room,
        net.product[task] as number,
        day,
        begin,
      )
      if (lead > most) most = lead
    }
    this.fitSetUp = 0
    if (room === none || fitTeam === 0) return most
    const { setUpAgain } = net.rooms[room] as NetRoom
    if (setUpAgain === 0 || !this.ledger.isGivenBackBefore(room, day)) return most
    this.fitSetUp = Math.ceil(setUpAgain / countBits(fitTeam) / net.axis.grid)
    return most + this.fitSetUp
  }

  protected leadOfPerson(person: number, room: number, product: number, day: number, begin: number): number {
    const { net } = this
    let beforeRoom = none - 1
    let beforeProduct = none
    let since = -1
    if (this.lastDay[person] === day) {
      beforeRoom = this.lastRoom[person] as number
      beforeProduct = this.lastProduct[person] as number
      since = this.freeFrom[person] as number
    }
    const { fixed } = net.people[person] as Net['people'][number]
    for (const each of fixed) {
      for (const { from, to } of each.pieces) {
        if (to > begin || from < since || dayOf(net.axis, from) !== day) continue
        beforeRoom = each.room
        if (each.product !== none) beforeProduct = each.product
        since = to
      }
    }
    if (since < 0) return 0
    const change = product !== none && beforeProduct !== none && product !== beforeProduct
    return (beforeRoom === room ? 0 : net.moving) + (change ? net.changing : 0)
  }

  /** The tick from which nothing that is in the way of the last fit is any more; its own begin where nothing is. */
  protected blockedUntil(task: number, size: number, isLoud: boolean): number {
    const { net, fitStart, fitEnd } = this
    for (const { other, ownTail, otherTail } of net.conflicts[task] as Net['conflicts'][number]) {
      if (this.isPlaced[other] === 0) continue
      const until = (this.end[other] as number) + otherTail
      if (fitStart < until && (this.start[other] as number) < fitEnd + ownTail) return until
    }
    const quiet = net.quiet[task]
    if (quiet) {
      const until = quietUntil(net, quiet, fitStart, fitEnd)
      if (until > fitStart && !isLoud) return until
      this.fitIsLoud = until > fitStart
    }
    const room = net.room[task] as number
    if (room !== none) {
      const { most } = net.rooms[room] as NetRoom
      for (const each of this.fixedInRoom[room] as readonly FixedPiece[]) {
        const isFull = size + countBits(each.team) > most
        if (isFull && fitStart < each.end && each.start < fitEnd) return each.end
      }
    }
    return this.levels.freeFrom(task, fitStart, fitEnd)
  }
}

/** Ticks of a stretch from one on, up to as many as are wanted. */
function available({ from, to, stretchLast }: Windows, at: number, begin: number, wanted: number): number {
  let sum = 0
  const last = stretchLast[at] as number
  for (let window = at; window <= last && sum < wanted; window++)
    sum += (to[window] as number) - Math.max(begin, from[window] as number)
  return sum
}

/** When the hours that a task and what it leaves behind touch are over; its begin where they touch none. */
function quietUntil(
  net: Net,
  quiet: { tail: number; from: number; to: number },
  start: number,
  end: number,
): number {
  const { axis } = net
  for (let day = dayOf(axis, start) - 1; day <= dayOf(axis, end + quiet.tail); day++) {
    if (day + 2 >= axis.dayStart.length) return axis.horizon
    const midnight =
      day < 0
        ? -((axis.dayStart[1] as number) - (axis.dayStart[0] as number))
        : (axis.dayStart[day] as number)
    const from = midnight + quiet.from
    const to = (quiet.from < quiet.to ? midnight : (axis.dayStart[day + 1] as number)) + quiet.to
    if (from < end + quiet.tail && start < to) return to
  }
  return start
}
