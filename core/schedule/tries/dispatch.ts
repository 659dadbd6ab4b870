import type { Decoder } from '../fitting/decoder.ts'
import type { Net, NetRoom } from '../fitting/net.ts'
import { none, openTask, type PeopleBits } from '../fitting/numbers.ts'
import { byBoth, byHelper, byLead, type Genes, keysFromOrder, mayHelp } from './genes.ts'

/** How a foreman gives out work. */
export interface ForemanRule {
  /** Ticks that each room may wait for the others. */
  readonly rank: Float64Array
  /** Begins within so many ticks count as one. */
  readonly granularity: number
  /** Rooms begun and not finished at once. */
  readonly mostOpen: number
  /** Ticks that it is worth waiting rather than going to another room, and rather than opening one. */
  readonly moving: number
  readonly opening: number
  /** Ticks that it is worth waiting rather than going into a room somebody else works in. */
  readonly sharing: number
  /** Rooms that one person does alone. */
  readonly alone: Uint8Array
  /** Rooms in which two go at a task together where both are free by then. */
  readonly together: Uint8Array
}

/**
 * Gives out work as a foreman does, and writes down the plan as genes: whoever is free first takes the task that may go soonest, rather in
 * the room they are in, else in the first room by rank. False where no plan comes out of it.
 */
export function dispatch(decoder: Decoder, rule: ForemanRule, genes: Genes): boolean {
  const state = begin(decoder, rule, genes)
  const { net } = decoder
  const openTasks = net.kind.reduce((sum, kind) => sum + (kind === openTask ? 1 : 0), 0)
  let mostOpen = rule.mostOpen
  while (decoder.placedCount < openTasks) {
    const person = nextPerson(state)
    if (person === none) {
      // Everybody waits for a room that may not be opened yet.
      if (mostOpen > net.rooms.length) return false
      mostOpen++
      state.waits.fill(0)
      continue
    }
    const choice = choose(state, person, mostOpen)
    if (choice === null) {
      state.waits[person] = 1
      continue
    }
    give(state, choice)
    state.waits.fill(0)
  }
  keysFromOrder(decoder, genes)
  return true
}

interface State {
  readonly decoder: Decoder
  /** Open tasks that wait for nothing that is not placed. */
  readonly ready: number[]
  readonly rule: ForemanRule
  readonly genes: Genes
  readonly waits: Uint8Array
  /** Open tasks left in each room. */
  readonly leftIn: Int32Array
  readonly helpers: readonly PeopleBits[]
  /** Room each person was put into last. */
  readonly at: Int32Array
}

interface Choice {
  readonly task: number
  readonly team: PeopleBits
  /** Nobody may begin it before this tick. */
  readonly from: number
}

function begin(decoder: Decoder, rule: ForemanRule, genes: Genes): State {
  const { net } = decoder
  decoder.begin()
  genes.opens.fill(0)
  genes.rather.fill(0)
  genes.later.fill(0)
  genes.mode.fill(byLead)
  genes.lead.fill(none)
  genes.helper.fill(none)
  const leftIn = new Int32Array(net.rooms.length)
  const ready: number[] = []
  for (let task = 0; task < net.count; task++) {
    const room = net.room[task] as number
    if (net.kind[task] !== openTask) continue
    if (room !== none) leftIn[room] = (leftIn[room] as number) + 1
    if (decoder.waitsFor[task] === 0) ready.push(task)
  }
  return {
    decoder,
    ready,
    rule,
    genes,
    waits: new Uint8Array(net.people.length + 1),
    leftIn,
    helpers: net.rooms.map((_, room) => mayHelp(net, room)),
    at: new Int32Array(net.people.length).fill(none),
  }
}

/** Whoever is free first of those who have something to do; work without people has a place of its own. */
function nextPerson({ decoder, waits }: State): number {
  let best = none
  const count = decoder.net.people.length
  for (let person = 0; person <= count; person++) {
    if (waits[person] === 1) continue
    if (person === count) return best === none ? count : best
    if (best === none || (decoder.freeFrom[person] as number) < (decoder.freeFrom[best] as number))
      best = person
  }
  return best
}

function choose(state: State, person: number, mostOpen: number): Choice | null {
  const { decoder, rule, leftIn } = state
  const { net } = decoder
  const isNobody = person === net.people.length
  const team = isNobody ? 0 : 1 << person
  const openFrom = openableFrom(decoder, leftIn, mostOpen)
  let best: Choice | null = null
  let least = Number.POSITIVE_INFINITY
  for (const task of state.ready) {
    if (isNobody !== (net.unmanned[task] === 1)) continue
    if (!isNobody && ((net.ablePeople[task] as number) & team) === 0) continue
    const room = net.room[task] as number
    if (room !== none && !isNobody && !mayEnter(state, room, person)) continue
    const isNew = room !== none && !isRoomOpen(net, decoder, room)
    if (isNew && openFrom === none) continue
    if (!decoder.look(task, team, isNew ? openFrom : 0)) continue
    const stays = room === none || isNobody || state.at[person] === room || state.at[person] === none
    const isShared = room !== none && !isNew && ((decoder.roomTeam[room] as number) & ~team) !== 0
    const score =
      Math.floor(decoder.fitStart / rule.granularity) * rule.granularity +
      decoder.fitStart * 1e-3 +
      (stays ? 0 : rule.moving) +
      (isNew ? rule.opening : 0) +
      (isShared && !stays ? rule.sharing : 0) +
      (room === none ? 0 : (rule.rank[room] as number)) +
      task * 1e-7
    if (score < least) {
      least = score
      best = { task, team, from: isNew ? openFrom : 0 }
    }
  }
  return best
}

function isRoomOpen(net: Net, decoder: Decoder, room: number): boolean {
  return (
    decoder.roomTeam[room] !== 0 ||
    (net.rooms[room] as NetRoom).tasks.some((task) => net.kind[task] !== openTask)
  )
}

/** The tick from which one more room may be begun: on a day on which few enough are out of use; none while too many are not done. */
function openableFrom({ net, roomUsable, roomTeam }: Decoder, leftIn: Int32Array, mostOpen: number): number {
  const { axis } = net
  let places = mostOpen
  const doneDays: number[] = []
  for (let room = 0; room < net.rooms.length; room++) {
    if ((leftIn[room] as number) > 0) {
      const isBegun = roomTeam[room] !== 0 || (roomUsable[room] as number) > 0
      if (isBegun) places--
    } else if (roomUsable[room] !== 0)
      doneDays.push(axis.dayOfTick[Math.min(axis.horizon, roomUsable[room] as number)] as number)
  }
  if (places <= 0) return none
  if (doneDays.length < places) return 0
  doneDays.sort((one, other) => other - one)
  return axis.dayStart[(doneDays[places - 1] as number) + 1] ?? none
}

/** A room has a lead and one more; the lead has every skill asked for there. */
function mayEnter({ decoder, genes, helpers, rule }: State, room: number, person: number): boolean {
  const { leads } = decoder.net.rooms[room] as NetRoom
  if (leads === 0) return true
  const lead = genes.lead[room] as number
  const helper = genes.helper[room] as number
  if (person === lead || person === helper) return true
  const mayLead = ((leads >> person) & 1) === 1
  if (lead === none) return mayLead || (helper === none && rule.alone[room] === 0)
  return helper === none && rule.alone[room] === 0 && (((helpers[room] as number) >> person) & 1) === 1
}

function give(state: State, { task, team, from }: Choice): void {
  const { decoder, genes, leftIn } = state
  const { net } = decoder
  const pair = pairFor(state, task, team, from)
  decoder.look(task, pair, from)
  decoder.place(task)
  noteReady(state, task)
  const room = net.room[task] as number
  if (room === none) return
  leftIn[room] = (leftIn[room] as number) - 1
  if (from > 0) genes.opens[room] = net.axis.dayOfTick[from] as number
  if (team === 0) return
  const person = 31 - Math.clz32(team)
  state.at[person] = room
  const { leads } = net.rooms[room] as NetRoom
  const mayLead = leads === 0 || ((leads >> person) & 1) === 1
  if (genes.lead[room] === none && mayLead && genes.helper[room] !== person) genes.lead[room] = person
  else if (genes.lead[room] !== person && genes.helper[room] === none) genes.helper[room] = person
  const other = pair & ~team
  if (other === 0) {
    genes.mode[task] = genes.lead[room] === person ? byLead : byHelper
    return
  }
  const partner = 31 - Math.clz32(other)
  if (genes.lead[room] === person) genes.helper[room] = partner
  else genes.lead[room] = partner
  genes.mode[task] = byBoth
  state.at[partner] = room
}

function noteReady({ ready, decoder }: State, placed: number): void {
  const { net, waitsFor } = decoder
  ready.splice(ready.indexOf(placed), 1)
  for (const after of net.arcs.outOf[placed] as readonly number[])
    if (net.kind[after] === openTask && waitsFor[after] === 0 && !ready.includes(after)) ready.push(after)
}

/** Somebody to help who is free by then and may: the team together, or the one person alone. */
function pairFor(state: State, task: number, team: PeopleBits, from: number): PeopleBits {
  const { decoder, rule, genes, helpers } = state
  const { net } = decoder
  const room = net.room[task] as number
  decoder.look(task, team, from)
  if (room === none || team === 0 || rule.together[room] === 0 || (net.mostPeople[task] as number) < 2)
    return team
  const { leads, most } = net.rooms[room] as NetRoom
  if (most < 2 || leads === 0) return team
  const alone = decoder.fitStart
  const person = 31 - Math.clz32(team)
  const lead = genes.lead[room] as number
  const helper = genes.helper[room] as number
  for (let other = 0; other < net.people.length; other++) {
    const isOwn = other === lead || other === helper
    const isPlace = lead === none ? ((leads >> other) & 1) === 1 : helper === none && lead === person
    if (other === person || !(isOwn || isPlace) || (decoder.freeFrom[other] as number) > alone + patience)
      continue
    if (
      (((net.helpers[task] as number) >> other) & 1) === 0 ||
      (((helpers[room] as number) >> other) & 1) === 0
    )
      continue
    if (lead !== none && helper !== none && !isOwn) continue
    if (decoder.look(task, team | (1 << other), from) && decoder.fitStart <= alone + patience)
      return team | (1 << other)
  }
  return team
}

/** Ticks that are waited for somebody to help. */
const patience = 6
