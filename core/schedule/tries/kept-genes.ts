import { tickOf } from '../fitting/axis.ts'
import type { Net, NetRoom } from '../fitting/net.ts'
import { bitsOf, none, openTask } from '../fitting/numbers.ts'
import { asKept, byBoth, byHelper, byLead, type Genes, newGenes, soonest } from './genes.ts'

/** Genes that come near to the plan that is to be kept: its order, and who was where. Null where there is none. */
export function keptGenes(net: Net): Genes | null {
  const { problem, axis } = net
  const { keeping } = problem
  if (keeping.tasks.length === 0) return null
  const people = new Map(problem.people.map(({ id }, person) => [id, person]))
  const kept = new Map(keeping.tasks.map((each) => [each.task, each]))
  const genes = newGenes(net)
  const teams = problem.tasks.map(({ id }) =>
    bitsOf(
      (kept.get(id)?.people ?? []).filter((name) => people.has(name)),
      people,
    ),
  )
  for (const [room, each] of net.rooms.entries()) chooseTeam(genes, room, each, teams)
  for (const [task, { id }] of problem.tasks.entries()) {
    const start = kept.get(id)?.start
    genes.key[task] = start === undefined ? Number.POSITIVE_INFINITY : tickOf(axis, start)
    genes.rather[task] = start === undefined ? soonest : asKept
    genes.mode[task] = modeOf(net, genes, task, teams[task] as number)
  }
  putNewTasksBehind(net, genes)
  return genes
}

/** The two who were in a room most, the one who may lead it first. */
function chooseTeam(genes: Genes, room: number, { tasks, leads }: NetRoom, teams: readonly number[]): void {
  const count = (person: number): number =>
    tasks.filter((task) => ((teams[task] as number) >> person) & 1).length
  const there = Array.from({ length: 31 }, (_, person) => person)
    .filter((person) => count(person) > 0)
    .toSorted((one, other) => count(other) - count(one))
  const lead = there.find((person) => leads === 0 || (leads >> person) & 1)
  genes.lead[room] = lead ?? (leads === 0 ? 0 : 31 - Math.clz32(leads & -leads))
  genes.helper[room] = there.find((person) => person !== lead) ?? none
}

function modeOf({ room }: Net, genes: Genes, task: number, team: number): number {
  const at = room[task] as number
  const isBoth = team !== 0 && (team & (team - 1)) !== 0
  if (isBoth) return byBoth
  return at !== none && team !== 0 && team === 1 << (genes.helper[at] as number) ? byHelper : byLead
}

/** What the older plan did not know comes right behind the last of what it waits for. */
function putNewTasksBehind({ arcs, count, kind }: Net, genes: Genes): void {
  for (let turn = 0; turn < count; turn++) {
    let isSettled = true
    for (let task = 0; task < count; task++) {
      if (kind[task] !== openTask || genes.key[task] !== Number.POSITIVE_INFINITY) continue
      const before = arcs.before.subarray(arcs.intoAt[task], arcs.intoAt[task + 1])
      const last = before.reduce((latest, each) => Math.max(latest, genes.key[each] as number), 0)
      if (last === Number.POSITIVE_INFINITY) continue
      genes.key[task] = last + 1 / 64
      isSettled = false
    }
    if (isSettled) return
  }
}
