import { never, type SiteNet } from '../net/site-net.ts'
import { blocksOf, isOrdering } from './site-blocks.ts'
import type { Fit } from './site-ledger.ts'

/** A plan as far as it is made: its last task and the plan before. */
export interface PartialPlan {
  readonly parent: PartialPlan | undefined
  readonly task: number
  readonly fit: Fit
  readonly team: number
  readonly size: number
  readonly isPlaced: Uint8Array
  /** Equal for plans that hold the same tasks. */
  readonly content: number
  /** Start of the last task: none starts sooner from here on. */
  readonly now: number
  /** People's slots before now in which nobody works. */
  readonly lost: number
  readonly work: number
  /** Of each room: tick from which it is out of use, last end in it and until when it is out of use at least, and tasks still to come. */
  readonly roomFirst: Int32Array
  readonly roomEnd: Int32Array
  readonly roomBack: Int32Array
  readonly roomWaiting: Int32Array
  rank: number
}

/** Only what is fixed, its rooms not looked at yet. `membersOf`: tasks to come by room. */
export function emptyPlan(net: SiteNet, membersOf: readonly (readonly number[])[]): PartialPlan {
  return {
    parent: undefined,
    task: -1,
    fit: { start: 0, end: 0, people: 0, calendar: 0, index: 0, duration: 0 },
    team: 0,
    size: 0,
    isPlaced: Uint8Array.from(net.tasks, (task) => (task.fixed === 0 ? 0 : 1)),
    content: 0,
    now: net.firstTick,
    lost: 0,
    work: 0,
    roomFirst: new Int32Array(net.roomCount).fill(never),
    roomEnd: new Int32Array(net.roomCount).fill(-never),
    roomBack: new Int32Array(net.roomCount).fill(-never),
    roomWaiting: Int32Array.from(membersOf, (members) => members.length),
    rank: 0,
  }
}

export interface Step {
  readonly task: number
  /** Tasks that must be placed before. */
  readonly before: readonly number[]
  /** Comes after one that it may follow at once but not long after. */
  readonly isFollower: boolean
  /** What must find a place together with it: for the first of a block the rest of it. */
  readonly members: readonly number[]
}

export function stepsOf(net: SiteNet): readonly Step[] {
  const steps: Step[] = []
  const blocks = blocksOf(net)
  for (const { members, before } of blocks) {
    for (const [at, task] of members.entries()) {
      const earlier = net.arcs.filter((arc) => arc.to === task && isOrdering(arc)).map((arc) => arc.from)
      const outside = before.flatMap((block) => blocks[block]?.members ?? [])
      steps[task] =
        at === 0
          ? { task, before: outside, isFollower: false, members }
          : { task, before: [...earlier, ...members.slice(0, 1)], isFollower: true, members: [task] }
    }
  }
  return steps
}
