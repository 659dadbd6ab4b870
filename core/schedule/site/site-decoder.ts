import type { SiteNet } from '../net/site-net.ts'
import { blocksOf } from './site-blocks.ts'
import { createSiteLedger } from './site-ledger.ts'
import type { SitePlacements } from './site-placements.ts'
import { createSitePlacing, type SiteChoices, type Stuck } from './site-placing.ts'

export interface SiteDecoder {
  readonly net: SiteNet
  readonly placements: SitePlacements
  /** Places what is fixed: facts, work under way, pinned starts. Undefined when all of them have their place. */
  placeFixed(): Stuck | undefined
  /** Serial decoding: each block in turn as early as it can go, not before `notBefore`. Undefined when all are placed. */
  decode(choices: SiteChoices, notBefore: number, fixed: SitePlacements): Stuck | undefined
}

export function createSiteDecoder(net: SiteNet): SiteDecoder {
  const { tasks } = net
  const blocks = blocksOf(net)
  const ledger = createSiteLedger(net)
  const { placements } = ledger
  const placing = createSitePlacing(net, ledger)
  const after: number[][] = blocks.map(() => [])
  for (const [index, block] of blocks.entries()) for (const early of block.before) after[early]?.push(index)
  const waiting = new Int32Array(blocks.length)
  const ready: number[] = []
  /** Blocks that found no room to spare, until a room is given back. */
  const isPutOff = new Uint8Array(blocks.length)

  function placeFixed(): Stuck | undefined {
    ledger.clear()
    for (const urgency of [1, 2, 3]) {
      for (const task of tasks) {
        if (task.fixed === urgency && !placing.placeFixed(task)) return { task: task.index, why: 'noPlace' }
      }
    }
    return undefined
  }

  function decode(choices: SiteChoices, notBefore: number, fixed: SitePlacements): Stuck | undefined {
    ledger.clear()
    placing.begin(fixed)
    ready.length = 0
    for (const [index, block] of blocks.entries()) {
      waiting[index] = block.before.length
      if (block.before.length === 0) ready.push(index)
    }
    let stuck: Stuck | undefined
    isPutOff.fill(0)
    while (ready.length > 0) {
      const at = nextReady(choices.keys)
      if (at < 0) return stuck
      const number = ready[at] as number
      const given = ledger.roomsGivenBack()
      const problem = placing.place(blocks[number]?.members ?? [], choices, notBefore)
      if (problem === undefined) {
        ready.splice(at, 1)
        release(number)
        if (ledger.roomsGivenBack() !== given) isPutOff.fill(0)
      } else if (problem.why === 'rooms') {
        stuck = problem
        isPutOff[number] = 1
      } else return problem
    }
    return undefined
  }

  function release(number: number): void {
    for (const later of after[number] ?? []) {
      waiting[later] = (waiting[later] as number) - 1
      if (waiting[later] === 0) ready.push(later)
    }
  }

  /** Place among the ready blocks, or -1 where all of them wait for some room to be given back. */
  function nextReady(keys: Float64Array): number {
    let best = -1
    let bestKey = Number.POSITIVE_INFINITY
    for (let at = 0; at < ready.length; at++) {
      const number = ready[at] as number
      const key = keys[blocks[number]?.members[0] as number] as number
      if (key < bestKey && isPutOff[number] === 0) {
        best = at
        bestKey = key
      }
    }
    return best
  }

  return { net, placements, placeFixed, decode }
}
