import type { Decoder } from '../fitting/decoder.ts'
import type { Net, NetRoom } from '../fitting/net.ts'
import { none, openTask, type PeopleBits } from '../fitting/numbers.ts'

/** Who of the two people of a room does a task. */
export const byLead = 0
export const byHelper = 1
export const byBoth = 2

/** When a task is put. */
export const soonest = 0
export const nextDay = 1
export const asKept = 2

/** What a plan is made from: an order of tasks, and for each room and task who does it and from when on. */
export interface Genes {
  /** Of the tasks that may go, the one with the smallest key goes next. About the tick it begins at. */
  readonly key: Float64Array
  readonly mode: Uint8Array
  /** `nextDay`: not on the day its people come to it, but on the next. `asKept`: not before it begins in the plan to be kept. */
  readonly rather: Uint8Array
  /** So many ticks later than it could begin on its day: whoever comes later waits less for what dries. */
  readonly later: Int16Array
  /** People of each room by index; the helper may be nobody. */
  readonly lead: Int8Array
  readonly helper: Int8Array
  /** Nothing goes into a room before this day. */
  readonly opens: Int16Array
}

/** Genes of nothing: every number 0. The arrays are changed in place. */
export function newGenes(net: Net): Genes {
  return {
    key: new Float64Array(net.count),
    mode: new Uint8Array(net.count),
    rather: new Uint8Array(net.count),
    later: new Int16Array(net.count),
    lead: new Int8Array(net.rooms.length),
    helper: new Int8Array(net.rooms.length).fill(none),
    opens: new Int16Array(net.rooms.length),
  }
}

/** Overwrites `to`; both have to be of one problem. */
export function copyGenes(from: Genes, to: Genes): void {
  to.key.set(from.key)
  to.mode.set(from.mode)
  to.rather.set(from.rather)
  to.later.set(from.later)
  to.lead.set(from.lead)
  to.helper.set(from.helper)
  to.opens.set(from.opens)
}

function bit(person: number): PeopleBits {
  return person === none ? 0 : 1 << person
}

/** Who does a task by its genes, as far as their skills go; 0 for work without people. */
function teamOf(net: Net, genes: Genes, task: number): PeopleBits {
  if (net.unmanned[task] === 1) return 0
  const able = net.ablePeople[task] as number
  const room = net.room[task] as number
  const lead = room === none ? 0 : bit(genes.lead[room] as number)
  const helper = room === none ? 0 : bit(genes.helper[room] as number) & ~lead
  const mode = genes.mode[task] as number
  const most = Math.min(
    net.mostPeople[task] as number,
    room === none ? 30 : (net.rooms[room] as NetRoom).most,
  )
  const both = lead | helper
  if (mode === byBoth && most >= 2 && helper !== 0 && (both & able) !== 0) {
    if ((both & ~able & ~(net.helpers[task] as number)) === 0) return both
  }
  const [first, second] = mode === byHelper ? [helper, lead] : [lead, helper]
  if ((first & able) !== 0) return first
  if ((second & able) !== 0) return second
  return able & -able
}

/** So many times a task that came too early for what follows it is put later before a plan is given up. */
const mostRepairs = 60

/**
 * Puts a plan together by its genes; false where a task found no place. `fills`: time that somebody would lose before a task is given to
 * another one that can begin by then. The plan is then that of the order it was put together in (`keysFromOrder`).
 */
export function decode(decoder: Decoder, genes: Genes, fills = false): boolean {
  const { net } = decoder
  if (net.arcs.latest.every((limits) => limits.length === 0)) return decodeOnce(decoder, genes, fills)
  decoder.forgetRepairs()
  let isWhole = decodeOnce(decoder, genes, fills)
  for (let repairs = 0; decoder.isLate() && repairs < mostRepairs; repairs++) {
    decoder.repair()
    isWhole = decodeOnce(decoder, genes, fills)
  }
  return isWhole
}

const eligible: { tasks: Int32Array } = { tasks: new Int32Array(0) }

function decodeOnce(decoder: Decoder, genes: Genes, fills: boolean): boolean {
  const { net } = decoder
  if (eligible.tasks.length < net.count) eligible.tasks = new Int32Array(net.count)
  const { tasks } = eligible
  const { key } = genes
  decoder.begin()
  let count = 0
  for (let task = 0; task < net.count; task++)
    if (net.kind[task] === openTask && decoder.waitsFor[task] === 0) tasks[count++] = task
  while (count > 0) {
    let best = 0
    for (let at = 1; at < count; at++)
      if ((key[tasks[at] as number] as number) < (key[tasks[best] as number] as number)) best = at
    const first = tasks[best] as number
    if (!lookByGenes(decoder, genes, first)) return false
    if (fills && genes.rather[first] === soonest && idleBefore(decoder) >= leastGap) {
      const filler = fillerFor(decoder, genes, tasks, count, first)
      if (filler !== none) best = filler
      if (!lookByGenes(decoder, genes, tasks[best] as number)) return false
    }
    const task = tasks[best] as number
    tasks[best] = tasks[--count] as number
    decoder.place(task)
    if (decoder.isLate()) return false
    for (const after of net.arcs.outOf[task] as readonly number[])
      if (net.kind[after] === openTask && decoder.waitsFor[after] === 0 && !isListed(tasks, count, after))
        tasks[count++] = after
  }
  return true
}

/** Where these people never have a day long enough, one of the room's own does it. */
function lookForOthers(decoder: Decoder, genes: Genes, task: number, from: number): boolean {
  const { net } = decoder
  const room = net.room[task] as number
  const own = room === none ? 0 : bit(genes.lead[room] as number) | bit(genes.helper[room] as number)
  for (let rest = own & (net.ablePeople[task] as number); rest !== 0; rest &= rest - 1)
    if (decoder.look(task, rest & -rest, from)) return true
  return false
}

/** Where a task goes by its genes. */
function lookByGenes(decoder: Decoder, genes: Genes, task: number): boolean {
  if (!lookForDay(decoder, genes, task)) return false
  const later = genes.later[task] as number
  if (later === 0) return true
  const { fitStart, fitTeam } = decoder
  const { dayOfTick } = decoder.net.axis
  const isSameDay =
    decoder.look(task, fitTeam, fitStart + later) && dayOfTick[decoder.fitStart] === dayOfTick[fitStart]
  return isSameDay || decoder.look(task, fitTeam, fitStart)
}

/** The first place on the day that a task goes to. */
function lookForDay(decoder: Decoder, genes: Genes, task: number): boolean {
  const { net } = decoder
  const { axis } = net
  const room = net.room[task] as number
  const opens = room === none ? 0 : (axis.dayStart[genes.opens[room] as number] as number)
  const from = genes.rather[task] === asKept ? Math.max(opens, net.keptStart[task] as number) : opens
  const isFound =
    decoder.look(task, teamOf(net, genes, task), from) || lookForOthers(decoder, genes, task, from)
  if (!isFound || genes.rather[task] !== nextDay) return isFound
  const { fitStart, fitTeam } = decoder
  const next = axis.dayStart[(axis.dayOfTick[fitStart] as number) + 1]
  return (next !== undefined && decoder.look(task, fitTeam, next)) || decoder.look(task, fitTeam, from)
}

/** Time of somebody that is worth filling; ticks. */
const leastGap = 9
/** What is filled in comes this much later by its key at most; ticks. */
const mostAhead = 288 * 6

/** Ticks of their hours that the people of the last look would lose before it, of whoever loses most. */
function idleBefore(decoder: Decoder): number {
  const { net, fitStart } = decoder
  let most = 0
  for (let rest = decoder.fitTeam; rest !== 0; rest &= rest - 1) {
    const person = 31 - Math.clz32(rest & -rest)
    const { from, to, firstOfDay } = (net.people[person] as Net['people'][number]).windows
    const free = decoder.freeFrom[person] as number
    let idle = 0
    let at = firstOfDay[net.axis.dayOfTick[free] as number] as number
    for (; at < from.length && (from[at] as number) < fitStart && idle < leastGap; at++)
      idle += Math.max(0, Math.min(to[at] as number, fitStart) - Math.max(from[at] as number, free))
    if (idle > most) most = idle
  }
  return most
}

/** Another task that one of the people of the last look can begin before it; its place in the list. */
function fillerFor(decoder: Decoder, genes: Genes, tasks: Int32Array, count: number, first: number): number {
  const { net, fitTeam, fitStart } = decoder
  const latest = (genes.key[first] as number) + mostAhead
  let best = none
  let least = fitStart
  for (let at = 0; at < count; at++) {
    const task = tasks[at] as number
    if (task === first || (genes.key[task] as number) > latest) continue
    if ((teamOf(net, genes, task) & ~fitTeam) !== 0) continue
    if (!lookByGenes(decoder, genes, task) || decoder.fitStart >= least) continue
    least = decoder.fitStart
    best = at
  }
  return best
}

/** Two arcs between the same tasks would list the later one twice. */
function isListed(tasks: Int32Array, count: number, task: number): boolean {
  for (let at = count - 1; at >= 0; at--) if (tasks[at] === task) return true
  return false
}

/**
 * Sets keys to the order just placed, so that they give the same plan again: about the begins, never falling. (Begins alone do not: what
 * was placed later may begin earlier.)
 */
export function keysFromOrder(decoder: Decoder, genes: Genes): void {
  let latest = 0
  for (let at = 0; at < decoder.placedCount; at++) {
    const task = decoder.order[at] as number
    latest = Math.max(latest + 1 / 256, decoder.start[task] as number)
    genes.key[task] = latest
  }
}

/** Who may work in a room together with its lead. */
export function mayHelp(net: Net, room: number): PeopleBits {
  const { tasks } = net.rooms[room] as NetRoom
  return tasks.reduce(
    (bits, task) => bits | (net.helpers[task] as number) | (net.ablePeople[task] as number),
    0,
  )
}
