import type { NetRoom } from '../../fitting/net.ts'
import { countBits, none, type PeopleBits } from '../../fitting/numbers.ts'
import { type RandomStream, randomBelow } from '../../random.ts'
import { byBoth, byHelper, byLead, mayHelp } from '../genes.ts'
import { type Move, oneOf } from './changed-plan.ts'

function anyBit(random: RandomStream, bits: PeopleBits): number {
  let skip = randomBelow(random, countBits(bits))
  for (let rest = bits; rest !== 0; rest &= rest - 1, skip--)
    if (skip === 0) return 31 - Math.clz32(rest & -rest)
  return none
}

/** Another lead or helper for a room, or the two change places. */
export const otherPeople: Move = ({ net, random, genes, rooms }) => {
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
export const otherTeam: Move = (changed) => {
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
export const giveRest: Move = ({ random, genes, rooms, tasks, start }) => {
  const members = tasks[oneOf(random, rooms)] as readonly number[]
  const since = random() < 0.5 ? 0 : (start[oneOf(random, members)] as number)
  const mode = random() < 0.75 ? byLead : byHelper
  for (const task of members) if ((start[task] as number) >= since) genes.mode[task] = mode
}

/** All that somebody does on a day goes to who shares the rooms with them. */
export const giveDay: Move = ({ net, random, genes, open, start, team }) => {
  const about = oneOf(random, open)
  const person = team[about] as number
  const day = net.axis.dayOfTick[Math.max(0, start[about] as number)]
  for (const task of open) {
    if (team[task] !== person || net.axis.dayOfTick[Math.max(0, start[task] as number)] !== day) continue
    genes.mode[task] = genes.mode[task] === byLead ? byHelper : byLead
  }
}

/** A task is done by the lead, the helper or both, otherwise than before. */
export const otherMode: Move = ({ random, genes, open }) => {
  const task = oneOf(random, open)
  genes.mode[task] = ((genes.mode[task] as number) + 1 + randomBelow(random, 2)) % 3
}

/** A second person for everything somebody alone does in a room on a day, or nobody any more. */
export const togetherOnDay: Move = ({ net, random, genes, open, start }) => {
  const about = oneOf(random, open)
  const day = net.axis.dayOfTick[Math.max(0, start[about] as number)]
  const mode = genes.mode[about] === byBoth ? byLead : byBoth
  for (const task of open) {
    const isSame = net.room[task] === net.room[about]
    if (isSame && net.axis.dayOfTick[Math.max(0, start[task] as number)] === day) genes.mode[task] = mode
  }
}
