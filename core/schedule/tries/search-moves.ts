import type { Net, NetRoom } from '../fitting/net.ts'
import { countBits, none, openTask, type PeopleBits } from '../fitting/numbers.ts'
import { type RandomStream, randomBelow } from '../random.ts'
import { asKept, byBoth, byHelper, byLead, type Genes, mayHelp, nextDay, soonest } from './genes.ts'

/** The plan that is being changed, as its genes gave it. */
export interface Changed {
  readonly net: Net
  readonly genes: Genes
  readonly start: Int32Array
  readonly end: Int32Array
  readonly team: Int32Array
  readonly random: RandomStream
  /** Rooms with open tasks, and for each its open tasks. */
  readonly rooms: readonly number[]
  readonly tasks: readonly (readonly number[])[]
  /** All open tasks. */
  readonly open: readonly number[]
}

/** Changes genes in place. */
type Move = (changed: Changed) => void

function oneOf<Item>(random: RandomStream, list: readonly Item[]): Item {
  return list[randomBelow(random, list.length)] as Item
}

/** Ticks of a day. */
function dayTicks({ net }: Changed): number {
  return 1440 / net.axis.grid
}

/** About so many days either way, mostly few. */
function someDays(random: RandomStream, most: number): number {
  return (random() < 0.5 ? -1 : 1) * random() * random() * most
}

const shiftRoom: Move = (changed) => {
  const { random, genes, tasks } = changed
  const by = someDays(random, 8) * dayTicks(changed)
  for (const task of tasks[oneOf(random, changed.rooms)] as readonly number[])
    genes.key[task] = (genes.key[task] as number) + by
}

/** Begins a room about when something else is done, however far away that is; half of the times pressed together. */
const moveRoom: Move = ({ random, genes, rooms, tasks, open }) => {
  const room = oneOf(random, rooms)
  const members = tasks[room] as readonly number[]
  const first = members.reduce(
    (least, task) => Math.min(least, genes.key[task] as number),
    Number.POSITIVE_INFINITY,
  )
  const to = (genes.key[oneOf(random, open)] as number) - 1 / 128
  const factor = random() < 0.5 ? 1 : random()
  for (const task of members) {
    genes.key[task] = to + ((genes.key[task] as number) - first) * factor
    if (genes.rather[task] === asKept) genes.rather[task] = soonest
  }
  genes.opens[room] = 0
}

/** Presses a room, or what is left of it from some task on, towards its end or its begin. */
const pressRoom: Move = (changed) => {
  const { random, genes, tasks } = changed
  const members = tasks[oneOf(random, changed.rooms)] as readonly number[]
  const keys = members.map((task) => genes.key[task] as number)
  const towards = random() < 0.7 ? Math.max(...keys) : Math.min(...keys)
  const factor = random()
  for (const task of members) genes.key[task] = towards + ((genes.key[task] as number) - towards) * factor
}

const swapRooms: Move = (changed) => {
  const { random, genes, tasks } = changed
  const [one, other] = [oneOf(random, changed.rooms), oneOf(random, changed.rooms)]
  const first = (room: number): number =>
    (tasks[room] as readonly number[]).reduce(
      (least, task) => Math.min(least, genes.key[task] as number),
      Number.POSITIVE_INFINITY,
    )
  const by = first(other) - first(one)
  for (const task of tasks[one] as readonly number[]) genes.key[task] = (genes.key[task] as number) + by
  for (const task of tasks[other] as readonly number[]) genes.key[task] = (genes.key[task] as number) - by
}

const openLater: Move = ({ net, random, genes, rooms, tasks, start }) => {
  const room = oneOf(random, rooms)
  const { axis } = net
  const first = (tasks[room] as readonly number[]).reduce(
    (least, task) => Math.min(least, start[task] as number),
    axis.horizon,
  )
  const day = axis.dayOfTick[Math.max(0, first)] as number
  const wanted = random() < 0.3 ? 0 : day + 1 + randomBelow(random, 4) - randomBelow(random, 4)
  genes.opens[room] = Math.max(0, Math.min(axis.dayStart.length - 2, wanted))
}

function anyBit(random: RandomStream, bits: PeopleBits): number {
  let skip = randomBelow(random, countBits(bits))
  for (let rest = bits; rest !== 0; rest &= rest - 1, skip--)
    if (skip === 0) return 31 - Math.clz32(rest & -rest)
  return none
}

const otherPeople: Move = ({ net, random, genes, rooms }) => {
  const room = oneOf(random, rooms)
  const { leads } = net.rooms[room] as NetRoom
  const everybody = leads === 0 ? 2 ** net.people.length - 1 : leads
  const [lead, helper] = [genes.lead[room] as number, genes.helper[room] as number]
  const swaps = random() < 0.3 && helper !== none && ((everybody >> helper) & 1) === 1
  if (swaps) {
    genes.lead[room] = helper
    genes.helper[room] = lead
  } else if (random() < 0.5) {
    genes.lead[room] = anyBit(random, everybody)
    if (genes.lead[room] === helper) genes.helper[room] = lead
  } else {
    const others = mayHelp(net, room) & (2 ** net.people.length - 1) & ~(1 << (genes.lead[room] as number))
    genes.helper[room] = others === 0 ? none : anyBit(random, others)
  }
}

/** Other people for a room, and anew who of them does what. */
const otherTeam: Move = (changed) => {
  const { random, genes, rooms, tasks, net } = changed
  const room = oneOf(random, rooms)
  const { leads } = net.rooms[room] as NetRoom
  const everybody = 2 ** net.people.length - 1
  if (net.people.length === 0) return
  const lead = anyBit(random, leads === 0 ? everybody : leads)
  const others = mayHelp(net, room) & everybody & ~(1 << lead)
  genes.lead[room] = lead
  genes.helper[room] = others === 0 ? none : anyBit(random, others)
  const usual = randomBelow(random, 3)
  for (const task of tasks[room] as readonly number[])
    genes.mode[task] = random() < 0.6 ? usual : randomBelow(random, 3)
}

/** One person does a whole room, or all of it from some time on. */
const giveRest: Move = ({ random, genes, rooms, tasks, start }) => {
  const members = tasks[oneOf(random, rooms)] as readonly number[]
  const since = random() < 0.5 ? 0 : (start[oneOf(random, members)] as number)
  const mode = random() < 0.75 ? byLead : byHelper
  for (const task of members) if ((start[task] as number) >= since) genes.mode[task] = mode
}

/** All that somebody does on a day goes to who shares the rooms with them. */
const giveDay: Move = ({ net, random, genes, open, start, team }) => {
  const about = oneOf(random, open)
  const person = team[about] as number
  const day = net.axis.dayOfTick[Math.max(0, start[about] as number)]
  for (const task of open) {
    if (team[task] !== person || net.axis.dayOfTick[Math.max(0, start[task] as number)] !== day) continue
    genes.mode[task] = genes.mode[task] === byLead ? byHelper : byLead
  }
}

const otherMode: Move = ({ random, genes, open }) => {
  const task = oneOf(random, open)
  genes.mode[task] = ((genes.mode[task] as number) + 1 + randomBelow(random, 2)) % 3
}

/** A second person for everything somebody alone does in a room on a day, or nobody any more. */
const togetherOnDay: Move = ({ net, random, genes, open, start }) => {
  const about = oneOf(random, open)
  const day = net.axis.dayOfTick[Math.max(0, start[about] as number)]
  const mode = genes.mode[about] === byBoth ? byLead : byBoth
  for (const task of open) {
    const isSame = net.room[task] === net.room[about]
    if (isSame && net.axis.dayOfTick[Math.max(0, start[task] as number)] === day) genes.mode[task] = mode
  }
}

const ratherNextDay: Move = ({ random, genes, open }) => {
  const task = oneOf(random, open)
  genes.rather[task] = genes.rather[task] === soonest ? nextDay : soonest
}

/** Open tasks of a day that share people with one of them, or its room too, by begin. */
function dayOfWork(
  { net, open, start, team }: Changed,
  about: number,
  isWholeRoom: boolean,
): readonly number[] {
  const dayOf = (task: number): number => net.axis.dayOfTick[Math.max(0, start[task] as number)] as number
  return open
    .filter((task) => {
      const isTheirs = ((team[task] as number) & (team[about] as number)) !== 0
      const isThere = isTheirs || (isWholeRoom && net.room[task] === net.room[about])
      return isThere && dayOf(task) === dayOf(about)
    })
    .sort((one, other) => (start[one] as number) - (start[other] as number))
}

/** The longest time between tasks that follow one another; ticks. */
function longestGap({ start, end }: Changed, tasks: readonly number[]): number {
  let free = Number.POSITIVE_INFINITY
  let gap = 0
  for (const task of tasks) {
    gap = Math.max(gap, (start[task] as number) - free)
    free = Math.max(free === Number.POSITIVE_INFINITY ? 0 : free, end[task] as number)
  }
  return gap
}

/** So many days are looked at for one on which somebody waits. */
const daysLookedAt = 6

/** Somebody who waits for something on a day comes later by some of that time, sometimes everybody in that room; or as soon as they can again. */
const comeLater: Move = (changed) => {
  const { random, genes, open, start } = changed
  for (let turn = 0; turn < daysLookedAt; turn++) {
    const stops = dayOfWork(changed, oneOf(random, open), random() < 0.5)
    const gap = longestGap(changed, stops)
    const isLater = stops.some((task) => genes.later[task] !== 0)
    if (isLater && (gap === 0 || random() < 0.3)) {
      for (const task of stops) genes.later[task] = 0
      return
    }
    if (gap === 0) continue
    const by = random() < 0.6 ? gap : 1 + randomBelow(random, gap)
    const first = start[stops[0] as number]
    for (const task of stops)
      if (start[task] === first) genes.later[task] = (genes.later[task] as number) + by
    return
  }
}

/** Right before or after another task of the same people, or of any. */
const besideAnother: Move = ({ random, genes, open, team, start }) => {
  const task = oneOf(random, open)
  const isNear = (other: number): boolean =>
    ((team[other] as number) & (team[task] as number)) !== 0 &&
    Math.abs((start[other] as number) - (start[task] as number)) < 2000
  let other = oneOf(random, open)
  for (let turn = 0; turn < 6 && !isNear(other); turn++) other = oneOf(random, open)
  genes.key[task] = (genes.key[other] as number) + (random() - 0.5) / 64
}

const besideInRoom: Move = ({ random, genes, rooms, tasks }) => {
  const members = tasks[oneOf(random, rooms)] as readonly number[]
  genes.key[oneOf(random, members)] = (genes.key[oneOf(random, members)] as number) + (random() - 0.5) / 64
}

/** Opens a room a day later and lets one person do it. */
const laterByOne: Move = (changed) => {
  openLater(changed)
  giveRest(changed)
}

const nudge: Move = (changed) => {
  const { random, genes, open } = changed
  const task = oneOf(random, open)
  genes.key[task] = (genes.key[task] as number) + someDays(random, 3) * dayTicks(changed)
}

/** All changes with how often each is tried. */
const siteMoves: readonly (readonly [Move, number])[] = [
  [shiftRoom, 10],
  [moveRoom, 6],
  [pressRoom, 8],
  [swapRooms, 4],
  [openLater, 6],
  [laterByOne, 3],
  [otherPeople, 8],
  [otherTeam, 3],
  [giveRest, 8],
  [giveDay, 6],
  [otherMode, 10],
  [togetherOnDay, 5],
  [ratherNextDay, 6],
  [comeLater, 3],
  [besideAnother, 12],
  [besideInRoom, 6],
  [nudge, 8],
]

const moveWeight = siteMoves.reduce((sum, [, weight]) => sum + weight, 0)

/** Where there are neither rooms nor people, only the order can be changed: a task goes right before or after another. */
function changeOrder({ random, genes, open, start }: Changed): void {
  const turns = random() < 0.75 ? 1 : 2
  for (let turn = 0; turn < turns; turn++) {
    const task = oneOf(random, open)
    let other = oneOf(random, open)
    for (
      let tries = 0;
      tries < 4 && Math.abs((start[other] as number) - (start[task] as number)) > 20;
      tries++
    )
      other = oneOf(random, open)
    genes.key[task] = (genes.key[other] as number) + (random() - 0.5) / 64
  }
}

/** So often one more change is made at once. */
const shareOfMore = 0.15

/** A change chosen by chance, sometimes several at once. Needs an open task. */
export function change(changed: Changed): void {
  if (changed.rooms.length === 0) {
    changeOrder(changed)
    return
  }
  do changeOnce(changed)
  while (changed.random() < shareOfMore)
}

function changeOnce(changed: Changed): void {
  let left = changed.random() * moveWeight
  for (const [move, weight] of siteMoves) {
    left -= weight
    if (left > 0) continue
    move(changed)
    return
  }
}

/** Rooms and tasks that can be changed. */
export function changeable(net: Net): Pick<Changed, 'rooms' | 'tasks' | 'open'> {
  const isOpen = (task: number): boolean => net.kind[task] === openTask
  const tasks = net.rooms.map((room) => room.tasks.filter(isOpen))
  return {
    tasks,
    rooms: [...tasks.keys()].filter((room) => (tasks[room] as readonly number[]).length > 0),
    open: Array.from({ length: net.count }, (_, task) => task).filter(isOpen),
  }
}
