import type { Step } from '../../specification/types.ts'
import type { MinutesByStep } from './step-facts.ts'
import type { StepLink } from './step-links.ts'
import { joinManners, type Manner, mannerOf, mannersFit, sameSkills } from './step-manner.ts'

/** Steps that one crew does in one go. The key is that of the first, so that pins and promises outlive a new grouping. */
export interface StepGroup {
  readonly key: string
  readonly steps: readonly Step[]
}

/** Person-minutes. Small jobs in a room are done in one go; shop assumption, so that a day is not confetti. */
export interface GroupingLimits {
  /** A step below this joins its neighbour when both want the same skills. */
  readonly smallMinutes: number
  /** A step below this joins a neighbour that wants another skill: the painter dusts off before the coat. */
  readonly tinyMinutes: number
  /** No task made of several steps grows beyond this. */
  readonly largestMinutes: number
}

export const usualGrouping: GroupingLimits = { smallMinutes: 45, tinyMinutes: 5, largestMinutes: 120 }

/**
 * Joins small steps that follow one another in a room and can be done by the same hands without dust on wet paint. Steps with a
 * wait between them or a latest start stay alone, a step never joins one that has more drying behind it (it would wait for what it
 * does not need), and nothing is joined that would make two tasks wait for one another. What waits for a hold (`heldFrom`, a day by step
 * key) never joins what does not, or waits for another day.
 * `steps` are in a valid order of work.
 */
export function groupSteps(
  steps: readonly Step[],
  links: readonly StepLink[],
  minutes: MinutesByStep,
  limits: GroupingLimits = usualGrouping,
  heldFrom: ReadonlyMap<string, string> = new Map(),
): readonly StepGroup[] {
  const follow = followers(links)
  const nodes = new Map<string, Node>(
    steps.map((step) => [
      step.key,
      {
        steps: [step],
        links: follow.get(step.key)?.slice() ?? [],
        minutes: minutes.get(step.key) ?? 0,
        manner: mannerOf(step),
      },
    ]),
  )
  const timed = new Set(links.flatMap((link) => (link.atMost === null ? [] : [link.before, link.after])))
  const dried = dryingBehind(steps, follow)
  const lastOfRoom = new Map<string, Node>()
  for (const step of steps) {
    const node = nodes.get(step.key) as Node
    const last = lastOfRoom.get(step.roomId)
    const isTimed = last === undefined || timed.has(step.key) || last.steps.some((one) => timed.has(one.key))
    const isHeldApart = heldFrom.get(last?.steps[0]?.key ?? '') !== heldFrom.get(step.key)
    const isLater = dried.get(last?.steps[0]?.key ?? '') !== dried.get(step.key)
    if (
      !isTimed &&
      !isHeldApart &&
      !isLater &&
      mayJoin(last, node, limits) &&
      !isKeptApart(last, node, nodes)
    ) {
      last.steps.push(step)
      last.links.push(...node.links)
      last.minutes += node.minutes
      last.manner = joinManners(last.manner, node.manner)
      nodes.set(step.key, last)
    } else {
      lastOfRoom.set(step.roomId, node)
    }
  }
  return [...new Set(nodes.values())].map((node) => ({ key: (node.steps[0] as Step).key, steps: node.steps }))
}

interface Node {
  readonly steps: Step[]
  /** To what follows any of the steps. */
  readonly links: StepLink[]
  minutes: number
  manner: Manner
}

function mayJoin(last: Node, node: Node, limits: GroupingLimits): boolean {
  const smaller = Math.min(last.minutes, node.minutes)
  const limit = sameSkills(last.manner, node.manner) ? limits.smallMinutes : limits.tinyMinutes
  return (
    smaller < limit &&
    last.minutes + node.minutes <= limits.largestMinutes &&
    mannersFit(last.manner, node.manner)
  )
}

function followers(links: readonly StepLink[]): ReadonlyMap<string, readonly StepLink[]> {
  const byStep = new Map<string, StepLink[]>()
  for (const link of links) {
    const known = byStep.get(link.before)
    if (known) known.push(link)
    else byStep.set(link.before, [link])
  }
  return byStep
}

/** The longest sum of waits on any way to each step, in elapsed minutes. */
function dryingBehind(
  steps: readonly Step[],
  follow: ReadonlyMap<string, readonly StepLink[]>,
): ReadonlyMap<string, number> {
  const dried = new Map(steps.map((step) => [step.key, 0]))
  for (const { key } of steps) {
    for (const { after, atLeast } of follow.get(key) ?? []) {
      dried.set(after, Math.max(dried.get(after) ?? 0, (dried.get(key) ?? 0) + atLeast))
    }
  }
  return dried
}

/** Whether a wait, or a way through other tasks, leads from the one to the other. */
function isKeptApart(last: Node, node: Node, nodes: ReadonlyMap<string, Node>): boolean {
  const seen = new Set<Node>([last])
  const waiting: Node[] = []
  for (const { after, atLeast } of last.links) {
    const next = nodes.get(after)
    if (next === node && atLeast > 0) return true
    if (next !== undefined && next !== node && !seen.has(next)) {
      seen.add(next)
      waiting.push(next)
    }
  }
  for (let here = waiting.pop(); here !== undefined; here = waiting.pop()) {
    for (const { after } of here.links) {
      const next = nodes.get(after)
      if (next === node) return true
      if (next !== undefined && !seen.has(next)) {
        seen.add(next)
        waiting.push(next)
      }
    }
  }
  return false
}
