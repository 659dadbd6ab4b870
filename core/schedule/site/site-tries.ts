import { countBits, never, type SiteNet } from '../net/site-net.ts'
import { type RandomStream, randomBelow } from '../random.ts'
import type { RoomHolds } from './room-holds.ts'
import type { Choices } from './site-choices.ts'

/** First tries and small changes of the choices. */
export interface SiteTries {
  /** After so many first tries a population also varies crews, and a search starts anew with any order of rooms. */
  readonly startCount: number
  start(choices: Choices, number: number): void
  change(choices: Choices): void
  /** At most one key moved, for a justified plan. */
  nudge(choices: Choices): void
  /** A few other crews, people and promises, for a bred plan. */
  varyCrews(choices: Choices): void
}

export function createSiteTries(
  net: SiteNet,
  random: RandomStream,
  heads: readonly number[],
  holds: RoomHolds,
): SiteTries {
  const count = net.tasks.length
  const open = net.tasks.filter((task) => task.fixed === 0).map((task) => task.index)
  const rooms = [...new Set(net.tasks.map((task) => task.room))]
  const membersOf = new Map(
    rooms.map((room) => [room, net.tasks.filter((task) => task.room === room && task.fixed === 0)]),
  )
  const spread = Math.max(1, ...heads.map((head) => Math.abs(head)))
  const ticksPerDay = Math.round(1440 / net.axis.grid)
  const hasPromises = net.tasks.some((task) => task.promisedStart !== -never)

  const someTask = (): number => open[randomBelow(random, open.length)] as number
  const someRoom = (): number => net.tasks[someTask()]?.room as number
  const keyOf = (choices: Choices, task: number): number => choices.keys[task] as number

  /** Rooms promised back by a day go before all others, the soonest first: below 0, one apart. */
  const turns = turnsOfPromisedRooms(net)

  function setSizes(choices: Choices, pick: (options: number) => number): void {
    for (const task of net.tasks) choices.sizes[task.index] = pick(task.sizes.length)
  }

  /** Where few rooms may be out of use at once, room after room comes first, else the earliest tasks of all. */
  const first = net.roomLimit < net.roomCount ? 1 : 0

  function start(choices: Choices, number: number): void {
    choices.taste.fill(0)
    choices.delays.fill(0)
    keepPromises(choices, number)
    const ranks = number < 2 ? rooms.map((_, rank) => rank) : shuffled(rooms.length)
    const roomRank = new Map(rooms.map((room, at) => [room, ranks[at] ?? 0]))
    const isHurried = number < 4 || random() < 0.7
    const grouping = number % 4 === 0 ? first : number % 4 === 1 ? 1 - first : random() * random()
    const noise = number < 4 ? 0 : random() * random() * 0.5
    for (let task = 0; task < count; task++) {
      const promised = net.tasks[task]?.promisedStart as number
      const rank = roomRank.get(net.tasks[task]?.room ?? -1) ?? 0
      const head = heads[task] as number
      const turn = isHurried ? (turns.get(net.tasks[task]?.room ?? -1) ?? 0) : 0
      choices.keys[task] = head + (rank * grouping + random() * noise + turn) * spread
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
      choices.sizes[task.index] = Math.max(0, task.sizes.indexOf(countBits(task.promisedTeam)))
    }
  }

  /** Gives a task the key of another one, every other time of one near by, just before or after it. */
  function moveKey(choices: Choices, task: number): void {
    let other = someTask()
    const isFar = (): boolean => Math.abs(keyOf(choices, other) - keyOf(choices, task)) > 1.5 * ticksPerDay
    if (random() < 0.5) for (let tries = 0; tries < 8 && isFar(); tries++) other = someTask()
    choices.keys[task] = keyOf(choices, other) + (random() - 0.5) * 0.01 * spread
  }

  function change(choices: Choices): void {
    if (open.length === 0) return
    const kind = random()
    if (kind < 0.15) swapRooms(choices)
    else if (kind < 0.4) shiftRoom(choices)
    else {
      const times = 1 + randomBelow(random, 4)
      for (let time = 0; time < times; time++) moveKey(choices, someTask())
    }
    if (random() < 0.2) delayRoom(choices)
    if (hasPromises) changeKept(choices)
    if (random() < 0.3) {
      const task = someTask()
      choices.sizes[task] = randomBelow(random, net.tasks[task]?.sizes.length ?? 1)
    }
    if (random() < 0.3) choices.taste[someTask()] = randomBelow(random, 1 << 20)
  }

  function changeKept(choices: Choices): void {
    const times = randomBelow(random, 3)
    for (let time = 0; time < times; time++) choices.keep[someTask()] = random() < 0.7 ? 1 : 0
  }

  /** Two rooms change places: their tasks trade the middle of their keys, and their delays. */
  function swapRooms(choices: Choices): void {
    const [one, other] = [someRoom(), rooms[randomBelow(random, rooms.length)] as number]
    if (one === other) return
    const shift = middleKey(choices, other) - middleKey(choices, one)
    const isFree = random() < 0.3
    const [delay, otherDelay] = [delayOf(choices, one), delayOf(choices, other)]
    shiftKeys(choices, one, shift)
    setDelay(choices, one, isFree ? 0 : otherDelay)
    shiftKeys(choices, other, -shift)
    setDelay(choices, other, isFree ? 0 : delay)
  }

  function middleKey(choices: Choices, room: number): number {
    let least = Number.POSITIVE_INFINITY
    let most = Number.NEGATIVE_INFINITY
    for (const { index } of membersOf.get(room) ?? []) {
      least = Math.min(least, keyOf(choices, index))
      most = Math.max(most, keyOf(choices, index))
    }
    return most < least ? 0 : (least + most) / 2
  }

  function shiftKeys(choices: Choices, room: number, shift: number): void {
    for (const { index } of membersOf.get(room) ?? []) choices.keys[index] = keyOf(choices, index) + shift
  }

  function delayOf(choices: Choices, room: number): number {
    const held = membersOf.get(room)?.find((task) => task.outOfUse !== null)
    return held === undefined ? 0 : (choices.delays[held.index] as number)
  }

  function setDelay(choices: Choices, room: number, delay: number): void {
    for (const { index, outOfUse } of membersOf.get(room) ?? [])
      choices.delays[index] = outOfUse === null ? 0 : delay
  }

  function shiftRoom(choices: Choices): void {
    const room = someRoom()
    shiftKeys(choices, room, (random() - 0.5) * spread)
    setDelay(choices, room, 0)
  }

  /** Closes a room a day or so later than it was, or as soon as may be. */
  function delayRoom(choices: Choices): void {
    const room = someRoom()
    let first = never
    for (const { index, outOfUse } of membersOf.get(room) ?? [])
      if (outOfUse !== null) first = Math.min(first, choices.starts[index] as number)
    const kind = random()
    const some = Math.max(0, first + Math.round((random() * 1.5 - 0.5) * ticksPerDay))
    const isFree = kind < 0.3 || first === never
    setDelay(
      choices,
      room,
      isFree ? 0 : kind < 0.65 ? holds.dayAfter(first, 1 + randomBelow(random, 2)) : some,
    )
  }

  function varyCrews(choices: Choices): void {
    for (const task of open) {
      const options = net.tasks[task]?.sizes.length as number
      if (options > 1 && random() < 0.05) choices.sizes[task] = randomBelow(random, options)
      if (hasPromises && random() < 0.05) choices.keep[task] = 1 - (choices.keep[task] as number)
      if (random() < 0.02) choices.taste[task] = randomBelow(random, 1 << 20)
    }
  }

  function nudge(choices: Choices): void {
    if (open.length > 0 && random() < 0.5) moveKey(choices, someTask())
  }

  return { startCount: 16, start, change, nudge, varyCrews }
}

function turnsOfPromisedRooms(net: SiteNet): ReadonlyMap<number, number> {
  const backBy = new Map<number, number>()
  for (const { room, endBy, fixed } of net.tasks) {
    if (fixed === 0 && endBy < net.axis.horizon) backBy.set(room, Math.min(endBy, backBy.get(room) ?? never))
  }
  const soonestFirst = [...backBy.keys()].sort(
    (one, other) => (backBy.get(one) as number) - (backBy.get(other) as number),
  )
  return new Map(soonestFirst.map((room, at) => [room, at - soonestFirst.length]))
}
