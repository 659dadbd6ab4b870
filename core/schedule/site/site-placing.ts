import { countBits, endSide, type NetTask, never, type SiteNet } from '../net/site-net.ts'
import type { Fit, SiteLedger, StartLimits } from './site-ledger.ts'
import type { SitePlacements } from './site-placements.ts'
import { createTeamChooser } from './team-chooser.ts'

/** What the search varies: which ready block comes first (small keys first), which crew size, which of equal people. */
export interface SiteChoices {
  readonly keys: Float64Array
  readonly sizes: Uint8Array
  readonly taste: Int32Array
  /** Ticks before which a task is not to start, to put a room out of use no sooner than needed (mirrored: no longer). */
  readonly delays: Int32Array
  /** 1 where the promised start and people are tried before anything else (forward decodings only). */
  readonly keep: Uint8Array
}

/** Why the last decoding failed: the task that found no place, and what stood in its way. */
export interface Stuck {
  readonly task: number
  readonly why: 'noPlace' | 'wait' | 'rooms'
}

/** Finds places in the books of a ledger for tasks, with the waits between them and all that is placed already. */
export interface SitePlacing {
  /** Forgets who did what last and enters what is fixed into an empty ledger. */
  begin(fixed: SitePlacements): void
  /** Each of the tasks as early as it can go, those of a block moved until their waits hold; nothing is placed where one finds none. */
  place(members: readonly number[], choices: SiteChoices, notBefore: number): Stuck | undefined
  /** Takes back those of the tasks, placed last, from one position on. */
  takeBack(members: readonly number[], last: number, first: number): void
  /** A task that is fixed, where it is fixed to or as early as it can go on. */
  placeFixed(task: NetTask): boolean
}

const mostMoves = 400

export function createSitePlacing(net: SiteNet, ledger: SiteLedger): SitePlacing {
  const { tasks, neighbours: rows } = net
  const { placements } = ledger
  const fit: Fit = { start: 0, end: 0, people: 0, calendar: 0, index: 0, duration: 0 }
  const from: StartLimits = { start: 0, end: 0 }
  const pushedStart = new Int32Array(tasks.length)
  const pushedEnd = new Int32Array(tasks.length)
  const promisedTasks = net.mirrored ? [] : tasks.map(promisedTask)
  const chooser = createTeamChooser(net, placements)

  function sideOf(task: number, side: number): number {
    return (side === endSide ? placements.end[task] : placements.start[task]) as number
  }

  function limitsFor(task: number, notBefore: number): void {
    from.start = Math.max(notBefore, pushedStart[task] as number)
    from.end = pushedEnd[task] as number
    for (let row = rows.rowStart[task] as number; row < (rows.rowStart[task + 1] as number); row++) {
      const other = rows.other[row] as number
      if (placements.start[other] === -never || (rows.least[row] as number) === -never) continue
      const earliest = sideOf(other, rows.otherSide[row] as number) + (rows.least[row] as number)
      if (rows.mySide[row] === endSide) from.end = Math.max(from.end, earliest)
      else from.start = Math.max(from.start, earliest)
    }
  }

  /** The row of a placed neighbour that the found place keeps waiting too long, or -1. */
  function brokenRow(task: number): number {
    for (let row = rows.rowStart[task] as number; row < (rows.rowStart[task + 1] as number); row++) {
      const other = rows.other[row] as number
      if (placements.start[other] === -never || (rows.most[row] as number) === never) continue
      const mine = rows.mySide[row] === endSide ? fit.end : fit.start
      if (mine - sideOf(other, rows.otherSide[row] as number) > (rows.most[row] as number)) return row
    }
    return -1
  }

  function place(members: readonly number[], choices: SiteChoices, notBefore: number): Stuck | undefined {
    for (const member of members) pushedStart[member] = pushedEnd[member] = -never
    let moves = 0
    for (let position = 0; position < members.length; position++) {
      const index = members[position] as number
      const task = tasks[index] as NetTask
      if (task.fixed !== 0) continue
      limitsFor(index, Math.max(notBefore, choices.delays[index] as number))
      if (choices.keep[index] === 1 && placePromised(index)) continue
      const option = crewOption(task, choices)
      const size = task.sizes[option] as number
      const outcome = ledger.find(task, size, task.durations[option] as number, from, fit)
      const broken = outcome === 'found' ? brokenRow(index) : -1
      if (outcome === 'found' && broken < 0) {
        ledger.enter(task, fit, chooser.choose(task, size, fit, choices.taste[index] as number))
        continue
      }
      const other = broken < 0 ? -1 : (rows.other[broken] as number)
      const isMovable = broken >= 0 && tasks[other]?.fixed === 0 && members.includes(other)
      if (!isMovable || ++moves > mostMoves) {
        takeBack(members, position - 1, 0)
        return { task: index, why: outcome === 'found' ? 'wait' : outcome }
      }
      position = push(members, position, other, broken) - 1
    }
    return undefined
  }

  /** Puts a task exactly where it was promised, with the same people, when every rule lets it. */
  function placePromised(index: number): boolean {
    const promised = promisedTasks[index]
    if (promised === undefined) return false
    if (from.start > promised.startBy) return false
    const [size, duration] = [promised.sizes[0] as number, promised.durations[0] as number]
    if (ledger.find(promised, size, duration, from, fit) !== 'found' || brokenRow(index) >= 0) return false
    ledger.enter(tasks[index] as NetTask, fit, promised.team)
    return true
  }

  /** Moves the partner that imposes the wait later, by as much as the found place needs; returns its position. */
  function push(members: readonly number[], position: number, other: number, row: number): number {
    const mine = rows.mySide[row] === endSide ? fit.end : fit.start
    const needed = mine - (rows.most[row] as number)
    if (rows.otherSide[row] === endSide) pushedEnd[other] = needed
    else pushedStart[other] = needed
    const target = members.indexOf(other)
    takeBack(members, position - 1, target)
    return target
  }

  function takeBack(members: readonly number[], last: number, first: number): void {
    for (let position = last; position >= first; position--) {
      const task = tasks[members[position] as number] as NetTask
      if (task.fixed === 0) ledger.remove(task)
    }
  }

  function placeFixed(task: NetTask): boolean {
    if (task.fixed === 1) {
      enterFact(task, task.factStart, task.factEnd)
      return true
    }
    from.start = task.fixed === 3 ? task.factStart : -never
    from.end = -never
    const limited = task.fixed === 3 ? { ...task, startBy: Math.min(task.startBy, task.factStart) } : task
    for (const [option, size] of task.sizes.entries()) {
      const outcome = ledger.find(limited, size, task.durations[option] as number, from, fit)
      if (outcome !== 'found' || !holdsWaits(task.index)) continue
      ledger.enter(task, fit, chooser.choose(task, size, fit, 0))
      return true
    }
    return false
  }

  /** Do the waits between a fixed task at the found place and those placed already or pinned hold? */
  function holdsWaits(task: number): boolean {
    for (let row = rows.rowStart[task] as number; row < (rows.rowStart[task + 1] as number); row++) {
      const other = rows.other[row] as number
      const side = rows.otherSide[row] as number
      const isPlaced = placements.start[other] !== -never
      if (!isPlaced && (tasks[other]?.fixed !== 3 || side === endSide)) continue
      const theirs = isPlaced ? sideOf(other, side) : (tasks[other]?.factStart as number)
      const wait = (rows.mySide[row] === endSide ? fit.end : fit.start) - theirs
      if (wait < (rows.least[row] as number) || wait > (rows.most[row] as number)) return false
    }
    return true
  }

  function enterFact(task: NetTask, start: number, end: number): void {
    Object.assign(fit, { start, end, people: 0, calendar: 0, index: 0, duration: 0 })
    ledger.enter(task, fit, 0)
  }

  function begin(fixed: SitePlacements): void {
    chooser.clear()
    for (const task of tasks) {
      if (task.fixed === 0) continue
      const { index } = task
      fit.start = fixed.start[index] as number
      fit.end = fixed.end[index] as number
      fit.calendar = fixed.calendar[index] as number
      fit.index = fixed.index[index] as number
      fit.duration = fixed.duration[index] as number
      ledger.enter(task, fit, fixed.team[index] as number)
    }
  }

  return { begin, place, takeBack, placeFixed }
}

/** Which of its crew sizes a task is to have. */
export function crewOption({ index, sizes }: NetTask, choices: Pick<SiteChoices, 'sizes'>): number {
  return Math.min(choices.sizes[index] as number, sizes.length - 1)
}

/** The task as promised: that start, that team and no other. */
function promisedTask(task: NetTask): NetTask | undefined {
  if (task.promisedStart === -never || task.fixed !== 0) return undefined
  const option = task.sizes.indexOf(countBits(task.promisedTeam))
  if (option < 0 && task.durations[0] !== 0) return undefined
  const at = Math.max(0, option)
  return {
    ...task,
    sizes: [task.sizes[at] as number],
    durations: [task.durations[at] as number],
    skilled: task.promisedTeam & task.skilled,
    team: task.promisedTeam,
    release: Math.max(task.release, task.promisedStart),
    startBy: Math.min(task.startBy, task.promisedStart),
  }
}
