import { mirrorNet } from './mirror.ts'
import { type RandomStream, randomBelow, randomStream } from './random.ts'
import { createSiteDecoder, type SiteChoices, type SiteDecoder, type Stuck } from './site-decoder.ts'
import { copyPlacements, emptyPlacements, type SitePlacements } from './site-ledger.ts'
import { never, type SiteNet } from './site-net.ts'
import { compareValues, createSiteValuer, isBetter, type SiteValue, worstValue } from './site-value.ts'

/** The search over one site net, in single steps; each step decodes one plan. */
export interface SiteSearch {
  /** One decoding; true when it gave a new best plan. */
  step(): boolean
  readonly best: SitePlacements
  readonly bestValue: SiteValue
  hasPlan(): boolean
  /** Tasks on which decodings failed, with how often and why; for naming the clash. */
  readonly stuck: ReadonlyMap<number, { readonly count: number; readonly why: Stuck['why'] }>
}

interface Choices extends SiteChoices {
  readonly value: SiteValue
}

function emptyChoices(count: number): Choices {
  return {
    keys: new Float64Array(count),
    sizes: new Uint8Array(count),
    taste: new Int32Array(count),
    value: worstValue(),
  }
}

function copyChoices(from: Choices, to: Choices): void {
  to.keys.set(from.keys)
  to.sizes.set(from.sizes)
  to.taste.set(from.taste)
  to.value.set(from.value)
}

/**
 * Alternates forward and mirrored decodings. A forward plan gives the keys of the mirrored one (latest end first) and back, so
 * that each pass also justifies; between passes a few keys, crew sizes or people are changed and kept when nothing gets worse.
 */
export function createSiteSearch(net: SiteNet, seed: number, heads: readonly number[]): SiteSearch {
  const count = net.tasks.length
  const random = randomStream(seed)
  const forward = createSiteDecoder(net)
  const backward = createSiteDecoder(mirrorNet(net))
  const valuer = createSiteValuer(net)
  const fixed = emptyPlacements(count)
  const mirroredFixed = emptyPlacements(count)
  const best = emptyPlacements(count)
  const bestValue = worstValue()
  const scratch = emptyPlacements(count)
  const stuck = new Map<number, { count: number; why: Stuck['why'] }>()
  const current = emptyChoices(count)
  const trial = emptyChoices(count)
  const tries = createTries(net, random, heads)
  let isFixedPlaced = false
  let round = 0
  let sinceBetter = 0
  let mirrorNext = false

  function note(problem: Stuck): void {
    const known = stuck.get(problem.task)
    stuck.set(problem.task, { count: (known?.count ?? 0) + 1, why: problem.why })
  }

  function keep(placements: SitePlacements): boolean {
    valuer(placements, trial.value)
    if (!isBetter(trial.value, bestValue)) return false
    copyPlacements(placements, best)
    bestValue.set(trial.value)
    return true
  }

  function decodeForward(): boolean {
    const problem = forward.decode(trial, net.firstTick, fixed)
    if (problem !== undefined) {
      note(problem)
      trial.value.fill(Number.POSITIVE_INFINITY)
      return false
    }
    return keep(forward.placements)
  }

  /** Decodes backwards from the end of the day (or the moment) to be held; the keys become the order of the ends found. */
  function decodeBackward(): boolean {
    const deadline = latestEnd(net, bestValue)
    const problem = backward.decode(trial, net.axis.horizon - deadline, mirroredFixed)
    if (problem !== undefined) {
      trial.value.fill(Number.POSITIVE_INFINITY)
      return false
    }
    unmirror(backward, net, scratch)
    return keep(scratch)
  }

  function step(): boolean {
    if (!isFixedPlaced) {
      const problem = forward.placeFixed()
      if (problem !== undefined) {
        note(problem)
        return false
      }
      copyPlacements(forward.placements, fixed)
      mirrorFixed(net, fixed, mirroredFixed)
      isFixedPlaced = true
    }
    round++
    const found = mirrorNext ? justify() : explore()
    if (found) sinceBetter = 0
    else sinceBetter++
    return found
  }

  function explore(): boolean {
    if (round <= tries.startCount) tries.start(trial, round - 1)
    else if (sinceBetter > 400 && random() < 0.02) tries.restart(current, trial)
    else {
      copyChoices(current, trial)
      tries.change(trial)
    }
    const found = decodeForward()
    mirrorNext = Number.isFinite(trial.value[0] as number) && (found || random() < 0.35)
    accept()
    return found
  }

  function justify(): boolean {
    mirrorNext = false
    const { placements } = forward
    for (let task = 0; task < count; task++) trial.keys[task] = -(placements.end[task] as number)
    tries.nudge(trial)
    const found = decodeBackward()
    if (!Number.isFinite(trial.value[0] as number)) return found
    for (let task = 0; task < count; task++) trial.keys[task] = scratch.start[task] as number
    accept()
    return found
  }

  function accept(): void {
    const difference = compareValues(trial.value, current.value)
    if (difference <= 0 || (Number.isFinite(trial.value[0] as number) && random() < 0.002))
      copyChoices(trial, current)
    if (sinceBetter > 3000) {
      current.value.fill(Number.POSITIVE_INFINITY)
      sinceBetter = 0
    }
  }

  return { step, best, bestValue, stuck, hasPlan: () => Number.isFinite(bestValue[0] as number) }
}

function latestEnd(net: SiteNet, value: SiteValue): number {
  if (net.problem.clock.kind === 'unbroken') return value[6] as number
  const day = value[2] as number
  let tick = value[6] as number
  while (tick < net.axis.horizon && net.axis.dayOfTick[tick] === day) tick++
  return tick
}

function unmirror(decoder: SiteDecoder, net: SiteNet, into: SitePlacements): void {
  const { placements } = decoder
  const { horizon } = net.axis
  copyPlacements(placements, into)
  for (let task = 0; task < net.tasks.length; task++) {
    into.start[task] = horizon - (placements.end[task] as number)
    into.end[task] = horizon - (placements.start[task] as number)
    const slots = net.calendars[placements.calendar[task] as number]?.slots.length ?? 0
    into.index[task] = slots - (placements.index[task] as number) - (placements.duration[task] as number)
  }
}

function mirrorFixed(net: SiteNet, fixed: SitePlacements, into: SitePlacements): void {
  const { horizon } = net.axis
  copyPlacements(fixed, into)
  for (const task of net.tasks) {
    const { index } = task
    if (fixed.start[index] === -never) continue
    into.start[index] = horizon - (fixed.end[index] as number)
    into.end[index] = horizon - (fixed.start[index] as number)
    const slots = net.calendars[fixed.calendar[index] as number]?.slots.length ?? 0
    into.index[index] = slots - (fixed.index[index] as number) - (fixed.duration[index] as number)
  }
}

/** First tries and small changes of the choices. */
function createTries(net: SiteNet, random: RandomStream, heads: readonly number[]) {
  const count = net.tasks.length
  const open = net.tasks.filter((task) => task.fixed === 0).map((task) => task.index)
  const rooms = [...new Set(net.tasks.map((task) => task.room))]
  const spread = Math.max(1, ...heads.map((head) => Math.abs(head)))
  const hasPromises = net.tasks.some((task) => task.promisedStart !== -never)

  function setSizes(choices: Choices, pick: (options: number) => number): void {
    for (const task of net.tasks) choices.sizes[task.index] = pick(task.sizes.length)
  }

  function start(choices: Choices, number: number): void {
    choices.taste.fill(0)
    const roomRank = new Map(rooms.map((room, rank) => [room, rank]))
    for (let task = 0; task < count; task++) {
      const head = heads[task] as number
      const promised = net.tasks[task]?.promisedStart as number
      const rank = roomRank.get(net.tasks[task]?.room ?? -1) ?? 0
      if (number === 0 && hasPromises) choices.keys[task] = promised === -never ? head : promised
      else if (number % 4 === 0) choices.keys[task] = head
      else if (number % 4 === 1) choices.keys[task] = rank * spread + head
      else if (number % 4 === 2) choices.keys[task] = -rank * spread + head
      else choices.keys[task] = head + random() * spread * 0.5
    }
    if (number === 0 && hasPromises) promisedSizes(choices)
    else if (number < 8) setSizes(choices, (options) => (number < 4 ? options - 1 : 0))
    else setSizes(choices, (options) => randomBelow(random, options))
  }

  function promisedSizes(choices: Choices): void {
    for (const task of net.tasks) {
      let size = 0
      for (let rest = task.promisedTeam; rest !== 0; rest &= rest - 1) size++
      choices.sizes[task.index] = Math.max(0, task.sizes.indexOf(size))
    }
  }

  function restart(current: Choices, choices: Choices): void {
    copyChoices(current, choices)
    for (let task = 0; task < count; task++) choices.keys[task] = (heads[task] as number) + random() * spread
  }

  /** Gives a task the key of another one, just before or after it. */
  function moveKey(choices: Choices, task: number): void {
    const other = open[randomBelow(random, open.length)] as number
    choices.keys[task] = (choices.keys[other] as number) + (random() - 0.5) * 0.01 * spread
  }

  function change(choices: Choices): void {
    if (open.length === 0) return
    const kind = random()
    if (kind < 0.35) shiftRoom(choices)
    else {
      const times = 1 + randomBelow(random, 4)
      for (let time = 0; time < times; time++)
        moveKey(choices, open[randomBelow(random, open.length)] as number)
    }
    if (random() < 0.3) {
      const task = open[randomBelow(random, open.length)] as number
      choices.sizes[task] = randomBelow(random, net.tasks[task]?.sizes.length ?? 1)
    }
    if (random() < 0.3)
      choices.taste[open[randomBelow(random, open.length)] as number] = randomBelow(random, 1 << 20)
  }

  function shiftRoom(choices: Choices): void {
    const room = net.tasks[open[randomBelow(random, open.length)] as number]?.room
    const shift = (random() - 0.5) * spread
    for (const task of open)
      if (net.tasks[task]?.room === room) choices.keys[task] = (choices.keys[task] as number) + shift
  }

  function nudge(choices: Choices): void {
    if (open.length > 0 && random() < 0.5) moveKey(choices, open[randomBelow(random, open.length)] as number)
  }

  return { startCount: 16, start, restart, change, nudge }
}
