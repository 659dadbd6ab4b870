import type { Specification, StepOrder } from '../../specification/types.ts'

/** The order between two steps that are planned, whatever stood between them. Whole elapsed minutes. */
export interface StepLink {
  readonly before: string
  readonly after: string
  readonly atLeast: number
  readonly atMost: number | null
}

/**
 * The specification's order among the steps that get a place in the plan. Daily steps stand in no order. Where a step was
 * dropped, what came after it follows what came before it, as long after as the dropped step had to (a coat still dries
 * although nobody sanded it).
 */
export function stepLinks(
  specification: Specification,
  isPlanned: (stepKey: string) => boolean,
  isDaily: (stepKey: string) => boolean,
): readonly StepLink[] {
  const orders = specification.order.filter(({ before, after }) => !isDaily(before) && !isDaily(after))
  const links = orders.map(linkOf)
  const gone = specification.steps.filter(({ key }) => !isDaily(key) && !isPlanned(key))
  return gone.reduce<readonly StepLink[]>((left, { key }) => bridge(left, key), tightest(links))
}

function linkOf({ before, after, minimumWait, maximumWait }: StepOrder): StepLink {
  const atMost = maximumWait === null ? null : Math.floor(maximumWait)
  return { before, after, atLeast: Math.ceil(minimumWait), atMost }
}

function bridge(links: readonly StepLink[], dropped: string): readonly StepLink[] {
  const into = links.filter((link) => link.after === dropped)
  const from = links.filter((link) => link.before === dropped)
  const over = into.flatMap(({ before, atLeast }) =>
    from.map(({ after }) => ({ before, after, atLeast, atMost: null })),
  )
  return tightest([...links.filter((link) => link.after !== dropped && link.before !== dropped), ...over])
}

/** One link for each pair: the longest minimum and the shortest maximum of all that was said of it. */
export function tightest(links: readonly StepLink[]): readonly StepLink[] {
  const byPair = new Map<string, StepLink>()
  for (const link of links) {
    const pair = `${link.before.length} ${link.before} ${link.after}`
    const known = byPair.get(pair)
    byPair.set(pair, known === undefined ? link : tighter(known, link))
  }
  return [...byPair.values()]
}

function tighter(one: StepLink, other: StepLink): StepLink {
  const limits = [one.atMost, other.atMost].filter((limit) => limit !== null)
  return {
    ...one,
    atLeast: Math.max(one.atLeast, other.atLeast),
    atMost: limits.length === 0 ? null : Math.min(...limits),
  }
}
