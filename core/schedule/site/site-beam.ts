import { slotAtTick } from '../axis.ts'
import { countBits, type NetTask, never, type SiteNet } from '../net/site-net.ts'
import type { RandomStream } from '../random.ts'
import { type PartialPlan, stepsOf } from './beam-plans.ts'
import { createBeamRooms } from './beam-rooms.ts'
import type { RoomHolds } from './room-holds.ts'
import { emptyChoices } from './site-choices.ts'
import { createSiteForecast } from './site-forecast.ts'
import { createSiteLedger } from './site-ledger.ts'
import type { SitePlacements } from './site-placements.ts'
import { createSitePlacing, crewOption } from './site-placing.ts'

/** What a beam is to find: all done before a tick, with rooms out of use for so many days at most (never: however many). */
export interface BeamAim {
  readonly deadline: number
  readonly roomDays: number
  /** Crew option of each task. */
  readonly sizes: Uint8Array
}

/** How partial plans are chosen. */
export interface BeamManner {
  /** Partial plans kept of those with equal work in them, and how many of these may hold the same tasks. */
  readonly width: number
  readonly alike: number
  /** Weight of days rooms are out of use against working time lost. */
  readonly roomWeight: number
  /** How far chance may change the order of two plans: 1 is as much as all the time that may be lost. */
  readonly noise: number
}

export interface SiteBeam {
  begin(aim: BeamAim, manner: BeamManner, fixed: SitePlacements): void
  /** Extends one partial plan in every way; true when a plan is complete and in `placements`. */
  step(): boolean
  isOver(): boolean
  readonly placements: SitePlacements
}

/** Weight of rooms whose last end is urgent against working time lost. */
const urgencyWeight = 0.3

/**
 * Beam search: plans grow in the order of their starts, each by every task that can come next, and of those with equal work in them
 * only the most promising are kept. Plans that cannot reach the aim are left out: too much time lost, a room that comes back too late,
 * more room-days than may be. A task with a maximum wait before it is a step of its own, as long as its wait can still hold.
 */
export function createSiteBeam(net: SiteNet, holds: RoomHolds, random: RandomStream): SiteBeam {
  const { tasks, axis } = net
  const ledger = createSiteLedger(net)
  const placing = createSitePlacing(net, ledger)
  const forecast = createSiteForecast(net)
  const rooms = createBeamRooms(net, holds, forecast, ledger, workOf)
  const { placements, free } = ledger
  const choices = emptyChoices(tasks.length)
  const steps = stepsOf(net)
  const open = tasks.filter((task) => task.fixed === 0).map((task) => task.index)
  const marks = Int32Array.from(tasks, () => Math.floor(random() * 2 ** 31))
  const path: PartialPlan[] = []
  let deadline = never
  let mostDays = never
  let leastDays = 0
  let spare = 0
  let manner: BeamManner = { width: 1, alike: 1, roomWeight: 1, noise: 0 }
  let levels: (PartialPlan[] | undefined)[] = []
  let level = 0
  let kept: PartialPlan[] = []

  const slotOf = (tick: number): number => slotAtTick(axis, tick)

  function workOf(task: number): number {
    const { sizes, durations } = tasks[task] as NetTask
    const option = crewOption(tasks[task] as NetTask, choices)
    return (sizes[option] as number) * (durations[option] as number)
  }

  function freeBetween(from: number, to: number): number {
    let sum = 0
    for (let slot = slotOf(from); slot < slotOf(to); slot++) sum += countBits(free[slot] as number)
    return sum
  }

  function begin(aim: BeamAim, how: BeamManner, fixed: SitePlacements): void {
    deadline = aim.deadline
    mostDays = aim.roomDays
    manner = how
    choices.sizes.set(aim.sizes)
    ledger.clear()
    placing.begin(fixed)
    path.length = 0
    spare = freeBetween(net.firstTick, deadline) - open.reduce((sum, task) => sum + workOf(task), 0)
    const root = rooms.begin(deadline)
    leastDays = rooms.days(root)
    levels = leastDays > mostDays || spare < 0 ? [] : [[root]]
    level = 0
    kept = []
  }

  /** Brings the books to the state of a plan, from that of another one. */
  function goTo(plan: PartialPlan): void {
    const way: PartialPlan[] = []
    let at: PartialPlan = plan
    for (; at.parent !== undefined && path[at.size - 1] !== at; at = at.parent) way.push(at)
    while (path.length > at.size) ledger.remove(tasks[path.pop()?.task as number] as NetTask)
    for (const next of way.reverse()) {
      ledger.enter(tasks[next.task] as NetTask, next.fit, next.team)
      path.push(next)
    }
  }

  function step(): boolean {
    while (kept.length === 0 && level < levels.length) kept = mostPromising(levels[level++] ?? [])
    const plan = kept.pop()
    if (plan === undefined) return false
    levels[level - 1] = undefined
    goTo(plan)
    if (plan.size === open.length) {
      levels = kept = []
      return true
    }
    for (const task of open) if (canCome(plan, task)) extend(plan, task)
    return false
  }

  function mostPromising(plans: PartialPlan[]): PartialPlan[] {
    plans.sort((one, other) => one.rank - other.rank)
    const found: PartialPlan[] = []
    const alike = new Map<number, number>()
    for (const plan of plans) {
      const same = alike.get(plan.content) ?? 0
      if (same >= manner.alike) continue
      alike.set(plan.content, same + 1)
      if (found.push(plan) === manner.width) break
    }
    return found.reverse()
  }

  function canCome({ isPlaced }: PartialPlan, task: number): boolean {
    return isPlaced[task] === 0 && steps[task]?.before.every((early) => isPlaced[early] === 1) === true
  }

  /** Adds the plans that go on with a task: as soon as it can start, and where it puts its room out of use, on the next day. */
  function extend(plan: PartialPlan, task: number): void {
    const { room, outOfUse } = tasks[task] as NetTask
    const isOpener = mostDays < never && outOfUse !== null && plan.roomFirst[room] === never
    const start = add(plan, task, -never, isOpener || steps[task]?.isFollower === true)
    if (isOpener && start < deadline) add(plan, task, holds.dayAfter(start, 1), true)
  }

  /** A task that could have come before the last one belongs into another plan, unless it `mayWait`. Returns its start. */
  function add(plan: PartialPlan, task: number, notBefore: number, mayWait: boolean): number {
    const members = steps[task]?.members as readonly number[]
    if (placing.place(members, choices, notBefore) !== undefined) return never
    placing.takeBack(members, members.length - 1, 1)
    const start = placements.start[task] as number
    if (start >= plan.now) consider(plan, task)
    placing.takeBack(members, 0, 0)
    return start < plan.now && mayWait ? add(plan, task, plan.now, false) : start
  }

  /** Keeps the plan with the task just placed when it can reach the aim. */
  function consider(plan: PartialPlan, task: number): void {
    const start = placements.start[task] as number
    const end = placements.end[task] as number
    if (forecast.endAfter(task, start, end) > deadline) return
    const lost = plan.lost + freeBetween(plan.now, start)
    if (lost > spare) return
    const work = workOf(task)
    const next: PartialPlan = {
      parent: plan,
      task,
      fit: {
        start,
        end,
        people: 0,
        calendar: placements.calendar[task] as number,
        index: placements.index[task] as number,
        duration: placements.duration[task] as number,
      },
      team: placements.team[task] as number,
      size: plan.size + 1,
      isPlaced: plan.isPlaced.slice(),
      content: plan.content ^ (marks[task] as number),
      now: start,
      lost,
      work: plan.work + work,
      roomFirst: plan.roomFirst.slice(),
      roomEnd: plan.roomEnd.slice(),
      roomBack: plan.roomBack.slice(),
      roomWaiting: plan.roomWaiting.slice(),
      rank: 0,
    }
    next.isPlaced[task] = 1
    rooms.note(next, task)
    const days = rooms.days(next)
    const urgency = rooms.urgency(next)
    if (days > mostDays || urgency === never || !canFollow(next)) return
    const share = mostDays === never ? 0 : (days - leastDays) / (mostDays - leastDays + 1)
    next.rank =
      lost / Math.max(1, spare) +
      manner.roomWeight * share +
      urgencyWeight * urgency +
      manner.noise * random()
    const place = next.work + next.size
    levels[place] ??= []
    levels[place]?.push(next)
  }

  /** Can each task with a maximum wait running still come in time? */
  function canFollow({ isPlaced, now }: PartialPlan): boolean {
    for (const { task, isFollower, members, before } of steps) {
      if (!isFollower || isPlaced[task] === 1 || !before.every((early) => isPlaced[early] === 1)) continue
      if (placing.place(members, choices, now) !== undefined) return false
      placing.takeBack(members, 0, 0)
    }
    return true
  }

  return { begin, step, isOver: () => kept.length === 0 && level >= levels.length, placements }
}
