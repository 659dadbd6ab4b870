import { mirrorNet } from './mirror.ts'
import { type Direction, type Stock, searchPopulations } from './plain-population.ts'
import { failedCost } from './plain-windows.ts'
import { type RandomStream, randomBelow, randomStream } from './random.ts'
import { createSiteDecoder, type SiteChoices, type SiteDecoder, type Stuck } from './site-decoder.ts'
import { copyPlacements, emptyPlacements, type SitePlacements } from './site-ledger.ts'
import { never, type SiteNet } from './site-net.ts'
import {
  compareValues,
  createSiteValuer,
  guideTerm,
  isBetter,
  type SiteValue,
  worstValue,
} from './site-value.ts'

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
    delays: new Int32Array(count),
    keep: new Uint8Array(count),
    value: worstValue(),
  }
}

function copyChoices(from: Choices, to: Choices): void {
  to.keys.set(from.keys)
  to.sizes.set(from.sizes)
  to.taste.set(from.taste)
  to.delays.set(from.delays)
  to.keep.set(from.keep)
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
  let mirrored: SiteDecoder | undefined
  const backwardDecoder = (): SiteDecoder => {
    mirrored ??= createSiteDecoder(mirrorNet(net))
    return mirrored
  }
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
  const bestChoices = emptyChoices(count)
  const waveLength = 80 * count + 400
  let wave = 0
  let waves = 0
  let samples = 0
  let isNewBest = false
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
    const problem = backwardDecoder().decode(trial, net.axis.horizon - deadline, mirroredFixed)
    if (problem !== undefined) {
      trial.value.fill(Number.POSITIVE_INFINITY)
      return false
    }
    unmirror(backwardDecoder(), net, scratch)
    return keep(scratch)
  }

  /** Waves take turns: one looks for an earlier finish from new first tries, the next closes rooms later in the best plan. */
  function isRefining(): boolean {
    return waves % 2 === 1
  }

  /** Directions of the population search: cost is the working time until the last end, in slots. */
  const breeding: readonly [Direction, Direction] = [
    {
      sample: (keys) => {
        tries.start(trial, samples++)
        for (let task = 0; task < count; task++) keys[task] = Math.round(trial.keys[task] as number)
      },
      decode: (keys, starts) => {
        setForBreeding(keys)
        isNewBest = decodeForward()
        return costOf(forward, starts)
      },
    },
    {
      sample: () => undefined,
      decode: (keys, starts) => {
        setForBreeding(keys)
        isNewBest = decodeBackward()
        return costOf(backwardDecoder(), starts)
      },
    },
  ]

  function setForBreeding(keys: Int32Array): void {
    for (let task = 0; task < count; task++) trial.keys[task] = keys[task] as number
    trial.delays.fill(0)
    if (samples <= tries.startCount) return
    trial.sizes.set((random() < 0.5 && isFound() ? bestChoices : trial).sizes)
    trial.taste.set(bestChoices.taste)
    trial.keep.set(bestChoices.keep)
    tries.varySizes(trial)
  }

  function isFound(): boolean {
    return Number.isFinite(bestChoices.value[0] as number)
  }

  /** Unplaced tasks cost most; else promises first, then the last end. Ticks of both sides are those of the decoder. */
  function costOf(decoder: SiteDecoder, starts: Int32Array): number {
    const { axis, tasks } = decoder.net
    const { placements } = decoder
    let unplaced = 0
    let last = 0
    for (const { index, fixed: isFixed } of tasks) {
      const isPlaced = placements.start[index] !== -never
      if (!isPlaced) unplaced++
      starts[index] = isPlaced ? (placements.start[index] as number) : (heads[index] as number)
      if (isPlaced && isFixed !== 1) last = Math.max(last, placements.end[index] as number)
    }
    const slot = axis.slotAt[Math.max(0, Math.min(axis.horizon, last))] as number
    if (unplaced > 0) return failedCost + unplaced * axis.horizon + slot
    const broken = 1_000_000 * (trial.value[0] as number) + 10_000 * (trial.value[1] as number)
    return (Number.isFinite(broken) ? broken : 0) + slot
  }

  const population = searchPopulations(breedingStock(net), breeding, random, 24, () => {
    if (isNewBest) rememberFound()
    return isNewBest
  })

  /** The choices that lead to the plan just decoded: its own starts as keys. */
  function rememberFound(): void {
    for (let task = 0; task < count; task++) trial.keys[task] = best.start[task] as number
    tries.delayRooms(trial, best)
    copyChoices(trial, bestChoices)
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
    if (isRefining()) return mirrorNext ? justify() : vary()
    countWave()
    return population.next().value === true
  }

  function vary(): boolean {
    copyChoices(current, trial)
    tries.change(trial)
    const found = decodeForward()
    mirrorNext = Number.isFinite(trial.value[0] as number) && (found || random() < 0.2)
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
    tries.delayRooms(trial, scratch)
    accept()
    return found
  }

  function countWave(): void {
    wave++
    if (wave <= waveLength) return
    wave = 0
    waves++
    if (isRefining()) copyChoices(bestChoices, current)
  }

  /** Annealing in waves: early in a wave somewhat worse plans are taken too, at its end only better ones. */
  function accept(): void {
    countWave()
    if (!Number.isFinite(trial.value[guideTerm] as number)) return
    if (compareValues(trial.value, bestChoices.value) <= 0) copyChoices(trial, bestChoices)
    const warmth = 100 * (1 - wave / waveLength) ** 2
    const worse = (trial.value[guideTerm] as number) - (current.value[guideTerm] as number)
    if (!(worse > 0) || random() < Math.exp(-worse / Math.max(0.01, warmth))) copyChoices(trial, current)
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

/** Lengths in ticks without pauses; work counts people, since they are what is short. */
function breedingStock(net: SiteNet): Stock {
  const durations = Int32Array.from(net.tasks, (task) => task.durations[0] ?? 0)
  const weights = Float64Array.from(net.tasks, (task) => (task.durations[0] ?? 0) * (task.sizes[0] ?? 0))
  return { count: net.tasks.length, durations, weights }
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
    choices.delays.fill(0)
    keepPromises(choices, number)
    const ranks = number < 2 ? rooms.map((_, rank) => rank) : shuffled(rooms.length)
    const roomRank = new Map(rooms.map((room, at) => [room, ranks[at] ?? 0]))
    const grouping = number % 4 === 0 ? 0 : number % 4 === 1 ? 1 : random() * random()
    const noise = number < 4 ? 0 : random() * random() * 0.5
    for (let task = 0; task < count; task++) {
      const promised = net.tasks[task]?.promisedStart as number
      const rank = roomRank.get(net.tasks[task]?.room ?? -1) ?? 0
      const head = heads[task] as number
      choices.keys[task] = head + (rank * grouping + random() * noise) * spread
      if (number === 0 && hasPromises && promised !== -never) choices.keys[task] = promised
    }
    if (number === 0 && hasPromises) promisedSizes(choices)
    else if (number < 8) setSizes(choices, (options) => (number < 4 ? options - 1 : 0))
    else setSizes(choices, (options) => randomBelow(random, options))
  }

  function shuffled(length: number): readonly number[] {
    const order = Array.from({ length }, (_, at) => at)
    for (let at = length - 1; at > 0; at--) {
      const other = randomBelow(random, at + 1)
      const kept = order[at] as number
      order[at] = order[other] as number
      order[other] = kept
    }
    return order
  }

  /** The first try keeps all promises, later ones let go of more and more. */
  function keepPromises(choices: Choices, number: number): void {
    const share = number === 0 ? 1 : random()
    for (const task of open) choices.keep[task] = hasPromises && random() <= share ? 1 : 0
  }

  function promisedSizes(choices: Choices): void {
    for (const task of net.tasks) {
      let size = 0
      for (let rest = task.promisedTeam; rest !== 0; rest &= rest - 1) size++
      choices.sizes[task.index] = Math.max(0, task.sizes.indexOf(size))
    }
  }

  /** Gives a task the key of another one, just before or after it. */
  function moveKey(choices: Choices, task: number): void {
    const other = open[randomBelow(random, open.length)] as number
    choices.keys[task] = (choices.keys[other] as number) + (random() - 0.5) * 0.01 * spread
  }

  function change(choices: Choices): void {
    if (open.length === 0) return
    const kind = random()
    if (kind < 0.15) swapRooms(choices)
    else if (kind < 0.4) shiftRoom(choices)
    else {
      const times = 1 + randomBelow(random, 4)
      for (let time = 0; time < times; time++)
        moveKey(choices, open[randomBelow(random, open.length)] as number)
    }
    if (random() < 0.15) changeDelay(choices)
    if (hasPromises) changeKept(choices)
    if (random() < 0.3) {
      const task = open[randomBelow(random, open.length)] as number
      choices.sizes[task] = randomBelow(random, net.tasks[task]?.sizes.length ?? 1)
    }
    if (random() < 0.3)
      choices.taste[open[randomBelow(random, open.length)] as number] = randomBelow(random, 1 << 20)
  }

  function changeKept(choices: Choices): void {
    const times = randomBelow(random, 3)
    for (let time = 0; time < times; time++) {
      const task = open[randomBelow(random, open.length)] as number
      choices.keep[task] = random() < 0.7 ? 1 : 0
    }
  }

  /** Two rooms change places: their tasks trade the middle of their keys. */
  function swapRooms(choices: Choices): void {
    const one = rooms[randomBelow(random, rooms.length)]
    const other = rooms[randomBelow(random, rooms.length)]
    const shift = middleKey(choices, other) - middleKey(choices, one)
    for (const task of open) {
      const room = net.tasks[task]?.room
      if (one === other || (room !== one && room !== other)) continue
      choices.keys[task] = (choices.keys[task] as number) + (room === one ? shift : -shift)
    }
  }

  function middleKey(choices: Choices, room: number | undefined): number {
    let least = Number.POSITIVE_INFINITY
    let most = Number.NEGATIVE_INFINITY
    for (const task of open) {
      if (net.tasks[task]?.room !== room) continue
      least = Math.min(least, choices.keys[task] as number)
      most = Math.max(most, choices.keys[task] as number)
    }
    return most < least ? 0 : (least + most) / 2
  }

  function shiftRoom(choices: Choices): void {
    const room = net.tasks[open[randomBelow(random, open.length)] as number]?.room
    const shift = (random() - 0.5) * spread
    for (const task of open)
      if (net.tasks[task]?.room === room) choices.keys[task] = (choices.keys[task] as number) + shift
  }

  /** Keeps each room closed until the time found by the backward decoding, now and then leaving one free. */
  function delayRooms(choices: Choices, found: SitePlacements): void {
    for (const room of rooms) {
      const isFree = room < 0 || random() < 0.3
      let first = never
      for (const task of net.tasks)
        if (task.room === room) first = Math.min(first, found.start[task.index] as number)
      for (const task of net.tasks) if (task.room === room) choices.delays[task.index] = isFree ? 0 : first
    }
  }

  function changeDelay(choices: Choices): void {
    const room = net.tasks[open[randomBelow(random, open.length)] as number]?.room
    const known = choices.delays[net.tasks.find((task) => task.room === room)?.index ?? 0] as number
    const day = Math.round(1440 / net.axis.grid)
    const delay = random() < 0.5 ? 0 : Math.max(0, known + (randomBelow(random, 5) - 2) * day)
    for (const task of net.tasks) if (task.room === room) choices.delays[task.index] = delay
  }

  function varySizes(choices: Choices): void {
    for (const task of open) {
      const options = net.tasks[task]?.sizes.length as number
      if (options > 1 && random() < 0.05) choices.sizes[task] = randomBelow(random, options)
      if (hasPromises && random() < 0.05) choices.keep[task] = 1 - (choices.keep[task] as number)
      if (random() < 0.02) choices.taste[task] = randomBelow(random, 1 << 20)
    }
  }

  function nudge(choices: Choices): void {
    if (open.length > 0 && random() < 0.5) moveKey(choices, open[randomBelow(random, open.length)] as number)
  }

  return { startCount: 16, start, change, nudge, delayRooms, varySizes }
}
