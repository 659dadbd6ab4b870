import type { Windows } from './axis.ts'
import { dayOf } from './axis.ts'
import type { FixedPiece, Piece } from './fixed.ts'
import { createKept, type Kept } from './kept.ts'
import { createLedger, type Ledger } from './ledger.ts'
import { createLevels, type Levels } from './levels.ts'
import { countBits, type Net, type NetRoom, none, openTask, type PeopleBits } from './net.ts'

/** What a plan that was put together costs. */
export interface DecodedCost {
  /** 0 where everything holds; else ticks and room-days beyond what can be bought. */
  readonly broken: number
  /** Money, and what the plan it should keep to is worth, in cents. */
  readonly cents: number
}

/** Work over so many nights in one task at most. */
const mostPieces = 64

/** So long a task is put off for hours that should be quiet; then it breaks them, and the plan counts as broken by so much. */
const daysOfPatience = 21
const loudness = 100

/** Longest waits of up to so many days are mended while a plan is put together; missing a longer one counts as broken. */
const daysRepaired = 2

/**
 * Puts a plan together task by task, each behind what its people did before: nobody goes back into a gap. Begins of a room's tasks follow
 * one another in the order they are put there, so that what a task spends on moving in and setting up is known at once.
 */
export class Decoder {
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
  private readonly fitFrom = new Int32Array(mostPieces)
  private readonly fitTo = new Int32Array(mostPieces)
  private fitPieces = 0
  fitTeam: PeopleBits = 0
  /** Ticks to set a room up once more before the task. */
  private fitSetUp = 0
  /** Nothing else was found than a place in hours that should be quiet. */
  private fitIsLoud = false
  private readonly openBefore: Int32Array
  private readonly deadline: Int32Array
  private readonly raised: Int32Array
  private readonly longestRepaired: number
  private readonly pieceFrom: Int32Array[]
  private readonly pieceTo: Int32Array[]
  private readonly pieceCount: Int32Array
  private readonly lastDay: Int32Array
  private readonly lastRoom: Int32Array
  private readonly lastProduct: Int32Array
  private readonly roomEnd: Int32Array
  private readonly crowdEnd: Int32Array
  /** Who began something in each room last, and who did before that. */
  private readonly roomLastTeam: Int32Array
  private readonly roomTeamBefore: Int32Array
  private readonly groupStart: Int32Array
  private readonly fixedInRoom: readonly (readonly FixedPiece[])[]
  private readonly ledger: Ledger
  private readonly levels: Levels
  private readonly kept: Kept
  private handOvers = 0
  private broken = 0
  private firstWork = 0
  private lastWork = 0
  /** A latest wait that was missed: the task that has to come later, and when. */
  private missedTask = none
  private missedFrom = 0

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
    this.broken = 0
    this.missedTask = none
    this.firstWork = net.axis.horizon
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

  private settle(each: FixedPiece): void {
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

  private dry(room: number, end: number, tail: number): void {
    if (end > 0 && tail >= 0) this.ledger.occupy(room, end - 1, end + tail)
    const usable = end + Math.max(0, tail)
    if (usable > (this.roomUsable[room] as number)) this.roomUsable[room] = usable
  }

  private attend(team: PeopleBits, from: number, to: number): void {
    for (let rest = team; rest !== 0; rest &= rest - 1)
      this.ledger.attend(31 - Math.clz32(rest & -rest), from, to)
    if (from < this.firstWork) this.firstWork = from
    if (to > this.lastWork) this.lastWork = to
  }

  /** The earliest tick that waits, people and the room leave for a task. */
  private earliest(task: number, team: PeopleBits, from: number): number {
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
  private layFrom(task: number, windows: Windows, at: number, begin: number, length: number): boolean {
    const { net } = this
    this.fitPieces = 0
    const lead = this.leadIn(task, begin)
    const need = lead + length
    const room = available(windows, at, begin, need)
    if (room >= need) {
      this.lay(windows, at, begin, need)
      return true
    }
    if (this.fitSetUp > 0 && room >= lead) return this.setUpTheDayBefore(windows, at, begin, lead, length)
    const part = net.smallestPart[task] as number
    if (net.natural[task] === 0 || net.quiet[task] !== null || length < 2 * part) return false
    if ((windows.to[at] as number) - begin < part) return false
    return this.layOverNights(windows, at, begin, need, lead, part)
  }

  /** Sets a room up once more at the end of a day and does all the work on the next. */
  private setUpTheDayBefore(
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
  private nextMorning(windows: Windows, at: number, begin: number): number {
    const { axis } = this.net
    const next = (windows.stretchLast[at] as number) + 1
    if (next >= windows.from.length) return none
    const from = windows.from[next] as number
    const day = dayOf(axis, from)
    return day === dayOf(axis, begin) || this.isHeldBefore(day, from) ? none : next
  }

  private layOverNights(
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

  private lay(windows: Windows, at: number, begin: number, length: number): void {
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
  private isHeldBefore(day: number, tick: number): boolean {
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
  private leadIn(task: number, begin: number): number {
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

  private leadOfPerson(person: number, room: number, product: number, day: number, begin: number): number {
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
  private blockedUntil(task: number, size: number, isLoud: boolean): number {
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

  /** Places a task where the last look found it. */
  place(task: number): void {
    const { net, fitTeam, fitStart, fitEnd, fitPieces } = this
    this.isPlaced[task] = 1
    this.order[this.placedCount++] = task
    this.start[task] = fitStart
    this.end[task] = fitEnd
    this.team[task] = fitTeam
    this.keepPieces(task)
    for (const after of net.arcs.outOf[task] as readonly number[])
      if (net.kind[after] === openTask) this.waitsFor[after] = (this.waitsFor[after] as number) - 1
    const room = net.room[task] as number
    for (let piece = 0; piece < fitPieces; piece++) {
      const from = this.fitFrom[piece] as number
      const to = this.fitTo[piece] as number
      this.attend(fitTeam, from, to)
    }
    if (room !== none && fitPieces > 0) this.ledger.occupy(room, fitStart, fitEnd - 1)
    if ((net.demands[task] as readonly unknown[]).length > 0) this.levels.take(task, this.piecesOf(task))
    if (fitPieces === 0) this.lastWork = Math.max(this.lastWork, fitEnd)
    this.follow(task, room)
    if (room !== none) this.enter(task, room)
    this.broken += Math.max(0, fitEnd - (this.deadline[task] as number)) + (this.fitIsLoud ? loudness : 0)
    this.kept.place(task, fitStart, fitTeam)
    this.checkLatest(task)
  }

  private keepPieces(task: number): void {
    const { fitPieces } = this
    if ((this.pieceFrom[task] as Int32Array).length < fitPieces) {
      this.pieceFrom[task] = new Int32Array(fitPieces + 2)
      this.pieceTo[task] = new Int32Array(fitPieces + 2)
    }
    const from = this.pieceFrom[task] as Int32Array
    const to = this.pieceTo[task] as Int32Array
    for (let piece = 0; piece < fitPieces; piece++) {
      from[piece] = this.fitFrom[piece] as number
      to[piece] = this.fitTo[piece] as number
    }
    this.pieceCount[task] = fitPieces
  }

  private follow(task: number, room: number): void {
    const { net, fitEnd } = this
    const product = net.product[task] as number
    const day = dayOf(net.axis, fitEnd - 1)
    for (let rest = this.fitTeam; rest !== 0; rest &= rest - 1) {
      const person = 31 - Math.clz32(rest & -rest)
      const isSameDay = this.lastDay[person] === day
      if (product !== none) this.lastProduct[person] = product
      else if (!isSameDay) this.lastProduct[person] = none
      this.lastDay[person] = day
      this.lastRoom[person] = room
      this.freeFrom[person] = fitEnd
    }
  }

  private enter(task: number, room: number): void {
    const { net, fitTeam, fitStart, fitEnd } = this
    const { most, backBy } = net.rooms[room] as NetRoom
    this.handOver(room)
    this.roomTeam[room] = (this.roomTeam[room] as number) | fitTeam
    this.roomStart[room] = fitStart
    if (fitEnd > (this.roomEnd[room] as number)) this.roomEnd[room] = fitEnd
    if (countBits(fitTeam) + 1 > most && fitEnd > (this.crowdEnd[room] as number))
      this.crowdEnd[room] = fitEnd
    this.dry(room, fitEnd, net.tail[task] as number)
    this.broken += Math.max(0, fitEnd + Math.max(0, net.tail[task] as number) - backBy)
  }

  /** What begins at once goes together. */
  private handOver(room: number): void {
    const { fitTeam, fitStart } = this
    if (fitTeam === 0) return
    if (fitStart !== this.groupStart[room]) {
      this.groupStart[room] = fitStart
      this.roomTeamBefore[room] = this.roomLastTeam[room] as number
      this.roomLastTeam[room] = 0
    }
    const before = this.roomTeamBefore[room] as number
    if (before !== 0 && (before & fitTeam) === 0) this.handOvers++
    this.roomLastTeam[room] = (this.roomLastTeam[room] as number) | fitTeam
  }

  private checkLatest(task: number): void {
    for (const { earlier, later, ticks, fromStart } of this.net.arcs.latest[
      task
    ] as Net['arcs']['latest'][number]) {
      if (this.isPlaced[earlier] === 0 || this.isPlaced[later] === 0) continue
      const since = (fromStart ? this.start : this.end)[earlier] as number
      const late = (this.start[later] as number) - since - ticks
      if (late <= 0) continue
      this.broken += late
      const isRepaired = this.net.kind[earlier] === openTask && ticks <= this.longestRepaired
      if (!isRepaired || this.missedTask !== none) continue
      this.missedTask = earlier
      this.missedFrom = (this.start[earlier] as number) + late
    }
  }

  /** Did a task come too late after another, so that the other has to be begun later? */
  isLate(): boolean {
    return this.missedTask !== none
  }

  /** From now on the task that was too early for what follows it is begun later. */
  repair(): void {
    this.raised[this.missedTask] = this.missedFrom
  }

  forgetRepairs(): void {
    this.raised.fill(0)
  }

  /** All that is not placed breaks the plan. */
  cost(): DecodedCost {
    const { net } = this
    const { prices } = net.problem
    const missing = net.count - net.fixed.length - this.placedCount
    const { cents, beyond } = this.ledger.roomDays()
    const late = this.kept.lateDays(this.roomUsable)
    return {
      broken: this.broken + beyond + missing * 1000,
      cents:
        this.ledger.pay() +
        cents +
        this.siteDays() * prices.siteDay +
        this.handOvers * prices.handOver +
        late * net.problem.keeping.centsPerLateDay +
        this.kept.moved() * net.problem.keeping.centsPerMove,
    }
  }

  private siteDays(): number {
    const { axis, problem, workingDays } = this.net
    if (problem.clock.kind === 'unbroken') return this.lastWork
    if (this.lastWork === 0) return 0
    const until = workingDays[dayOf(axis, this.lastWork - 1) + 1] as number
    return until - (workingDays[dayOf(axis, this.firstWork)] as number)
  }

  piecesOf(task: number): readonly Piece[] {
    const count = this.pieceCount[task] as number
    return Array.from({ length: count }, (_, piece) => ({
      from: this.pieceFrom[task]?.[piece] as number,
      to: this.pieceTo[task]?.[piece] as number,
    }))
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
