import { dayOf } from './axis.ts'
import { Finder } from './finder.ts'
import type { Piece } from './fixed.ts'
import type { Net, NetRoom } from './net.ts'
import { countBits, none, openTask } from './numbers.ts'

/** What a plan that was put together costs. */
interface DecodedCost {
  /** 0 where everything holds; else ticks and room-days beyond what can be bought. */
  readonly broken: number
  /** Money, and what the plan it should keep to is worth, in cents. */
  readonly cents: number
}

/** A task that was put into hours that should be quiet counts as broken by so much. */
const loudness = 100

/**
 * Puts a plan together task by task, each behind what its people did before: nobody goes back into a gap. Begins of a room's tasks follow
 * one another in the order they are put there, so that what a task spends on moving in and setting up is known at once.
 */
export class Decoder extends Finder {
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
    if (net.wet[task] === 1 && fitTeam !== 0) this.takenUp += this.nightsOfFit()
    this.roomTeam[room] = (this.roomTeam[room] as number) | fitTeam
    this.roomStart[room] = fitStart
    if (fitEnd > (this.roomEnd[room] as number)) this.roomEnd[room] = fitEnd
    if (countBits(fitTeam) + 1 > most && fitEnd > (this.crowdEnd[room] as number))
      this.crowdEnd[room] = fitEnd
    this.dry(room, fitEnd, net.tail[task] as number)
    this.broken += Math.max(0, fitEnd + Math.max(0, net.tail[task] as number) - backBy)
  }

  /** Nights that the last fit goes on over. */
  private nightsOfFit(): number {
    let nights = 0
    for (let piece = 1; piece < this.fitPieces; piece++) {
      const [before, from] = [this.fitFrom[piece - 1] as number, this.fitFrom[piece] as number]
      if (dayOf(this.net.axis, before) !== dayOf(this.net.axis, from)) nights++
    }
    return nights
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
        this.takenUp * prices.takeUp +
        late * net.problem.keeping.centsPerLateDay +
        this.kept.moved() * net.problem.keeping.centsPerMove,
    }
  }

  private siteDays(): number {
    const { axis, problem, workingDays } = this.net
    if (problem.clock.kind === 'unbroken') return this.lastWork
    if (this.lastWork === 0) return 0
    const until = workingDays[dayOf(axis, this.lastWork - 1) + 1] as number
    return until - (workingDays[dayOf(axis, axis.firstTick)] as number)
  }

  piecesOf(task: number): readonly Piece[] {
    const count = this.pieceCount[task] as number
    return Array.from({ length: count }, (_, piece) => ({
      from: this.pieceFrom[task]?.[piece] as number,
      to: this.pieceTo[task]?.[piece] as number,
    }))
  }
}
