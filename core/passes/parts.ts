import type { Bundle, BundleEdge } from './bundles.ts'
import type { PassTemplate } from './template.ts'

/** The bundles of one pass, in the order they are worked. */
export interface Part {
  readonly bundles: readonly number[]
  /** Of parts of one place, from 1; 1 of 1 where it is whole. */
  readonly number: number
  readonly of: number
}

/** What stays together when a pass is parted: one group of like surfaces in one room, `bedroom-1/sash`. */
export function unitOf({ lead }: Bundle): string {
  return `${lead.roomId}/${lead.groupKey}`
}

/**
 * One place of a room set as passes: never what is held together with what is free, and none larger than the template says where it
 * can be parted between two groups of surfaces. Each part is a run of a valid order of work, so that no two wait for one another.
 */
export function partsOf(
  place: readonly number[],
  bundles: readonly Bundle[],
  edges: readonly BundleEdge[],
  heldBy: (bundle: Bundle) => string,
  template: PassTemplate,
): readonly Part[] {
  const ordered = roundOrder(place, bundles, edges, heldBy)
  const runs = runsOf(ordered, (index) => heldBy(bundles[index] as Bundle))
  const parts = runs.flatMap((run) => cut(run, bundles, template.largestPassMinutes))
  return parts.map((list, index) => ({ bundles: list, number: index + 1, of: parts.length }))
}

/** Round the room by group, what is held together; a valid order of work. */
function roundOrder(
  place: readonly number[],
  bundles: readonly Bundle[],
  edges: readonly BundleEdge[],
  heldBy: (bundle: Bundle) => string,
): readonly number[] {
  const here = new Set(place)
  const inside = edges.filter(({ before, after }) => here.has(before) && here.has(after))
  const open = new Map(place.map((index) => [index, inside.filter(({ after }) => after === index).length]))
  const ordered: number[] = []
  let [held, unit] = ['', '']
  while (ordered.length < place.length) {
    const ready = [...open].filter(([, left]) => left === 0).map(([index]) => index)
    const rank = (index: number) => {
      const bundle = bundles[index] as Bundle
      return (heldBy(bundle) === held ? 0 : 2000) + (unitOf(bundle) === unit ? 0 : 1000) + roundRank(bundle)
    }
    const next = ready.toSorted((one, other) => rank(one) - rank(other) || one - other)[0] as number
    ordered.push(next)
    open.delete(next)
    for (const { before, after } of inside) {
      if (before === next) open.set(after, (open.get(after) ?? 1) - 1)
    }
    held = heldBy(bundles[next] as Bundle)
    unit = unitOf(bundles[next] as Bundle)
  }
  return ordered
}

const roundOfClasses = [
  'ceiling',
  'walls',
  'sash',
  'doors',
  'trim',
  'wainscot',
  'builtWork',
  'radiators',
  'stairs',
]

/** Windows, doors, trim: the same round in every pass, so that the first thing wet is the first thing dry. */
function roundRank({ lead }: Bundle): number {
  return lead.surfaceClass === null ? 500 : roundOfClasses.indexOf(lead.surfaceClass)
}

function runsOf(list: readonly number[], labelOf: (index: number) => string): readonly (readonly number[])[] {
  const runs: number[][] = []
  for (const index of list) {
    const last = runs.at(-1)
    if (last !== undefined && labelOf(last[0] as number) === labelOf(index)) last.push(index)
    else runs.push([index])
  }
  return runs
}

/** Equal shares as far as whole groups allow; a single group is never cut. */
function cut(
  run: readonly number[],
  bundles: readonly Bundle[],
  largest: number,
): readonly (readonly number[])[] {
  const units = runsOf(run, (index) => unitOf(bundles[index] as Bundle))
  const minutes = units.map((unit) =>
    unit.reduce((sum, index) => sum + (bundles[index]?.personMinutes ?? 0), 0),
  )
  const total = minutes.reduce((sum, each) => sum + each, 0)
  const parts = Math.min(units.length, Math.max(1, Math.ceil(total / largest - 1e-9)))
  return shares(minutes, parts).map(([from, to]) => units.slice(from, to).flat())
}

/** Cuts a row of minutes into so many runs that the longest is as short as can be; ends excluded. */
function shares(minutes: readonly number[], parts: number): readonly (readonly [number, number])[] {
  if (parts === 1) return [[0, minutes.length]]
  let best: { readonly longest: number; readonly cuts: readonly (readonly [number, number])[] } | undefined
  for (let first = 1; first <= minutes.length - parts + 1; first += 1) {
    const head = minutes.slice(0, first).reduce((sum, each) => sum + each, 0)
    if (best !== undefined && head >= best.longest) break
    const rest = shares(minutes.slice(first), parts - 1).map(
      ([from, to]) => [from + first, to + first] as const,
    )
    const longest = Math.max(head, ...rest.map(([from, to]) => sumOf(minutes.slice(from, to))))
    if (best === undefined || longest < best.longest) best = { longest, cuts: [[0, first], ...rest] }
  }
  return best?.cuts ?? [[0, minutes.length]]
}

function sumOf(minutes: readonly number[]): number {
  return minutes.reduce((sum, each) => sum + each, 0)
}
