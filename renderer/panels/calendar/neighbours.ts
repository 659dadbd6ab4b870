import type { Link, Plan, PlannedTask, ScheduleProblem } from '../../../core/schedule/model.ts'

/** A task that stands right before or after another one, by the order of work or by who does it. */
export interface Neighbour {
  readonly id: string
  /** Null where only the person joins the two. */
  readonly link: Link | null
  /** Minutes between the earliest moment it allows and the start; 0 holds the task exactly there. */
  readonly spare: number
}

interface Neighbours {
  /** What the task waits for, the tightest first. */
  readonly before: readonly Neighbour[]
  /** What it holds up, the tightest first. */
  readonly after: readonly Neighbour[]
}

interface Planned {
  readonly problem: ScheduleProblem
  readonly plan: Plan
}

/** A person's work this close before or after counts as a neighbour, in minutes. */
const atOnce = 60

export function neighboursOf({ problem, plan }: Planned, taskId: string): Neighbours {
  const byId = new Map(plan.tasks.map((planned) => [planned.task, planned]))
  const own = byId.get(taskId)
  if (own === undefined) return { before: [], after: [] }
  const linked = (link: Link, id: string): readonly Neighbour[] => {
    const [from, to] = [byId.get(link.from), byId.get(link.to)]
    if (from === undefined || to === undefined || link.atLeast === null) return []
    const since = link.measuredFrom === 'end' ? from.end : from.start
    return [{ id, link, spare: to.start - since - link.atLeast }]
  }
  const before = problem.links.flatMap((link) => (link.to === taskId ? linked(link, link.from) : []))
  const after = problem.links.flatMap((link) => (link.from === taskId ? linked(link, link.to) : []))
  return {
    before: tightestFirst(before, besideInTime(plan, own, 'before')),
    after: tightestFirst(after, besideInTime(plan, own, 'after')),
  }
}

/** A neighbour by order of work is not named again for its person. */
function tightestFirst(byLink: readonly Neighbour[], byPerson: readonly Neighbour[]): readonly Neighbour[] {
  const known = new Set(byLink.map(({ id }) => id))
  return [...byLink, ...byPerson.filter(({ id }) => !known.has(id))].toSorted(
    (one, other) => one.spare - other.spare,
  )
}

/** The tasks the people of a task come from or go to, where that leaves them no long time between. */
function besideInTime(plan: Plan, own: PlannedTask, side: 'before' | 'after'): readonly Neighbour[] {
  const near = own.people.flatMap((person) => {
    const others = plan.tasks
      .filter((each) => each !== own && each.people.includes(person) && each.segments.length > 0)
      .map((each) => ({
        id: each.task,
        link: null,
        spare: side === 'before' ? own.start - each.end : each.start - own.end,
      }))
      .filter(({ spare }) => spare >= 0 && spare <= atOnce)
    return others.toSorted((one, other) => one.spare - other.spare).slice(0, 1)
  })
  return near.filter(({ id }, index) => near.findIndex((each) => each.id === id) === index)
}
