import { present } from '../lists/lists.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Bundle, BundleEdge } from './bundles.ts'
import type { PassTemplate } from './template.ts'

/** The bundles of one pass, in the order they are worked. */
export interface Part {
  readonly bundles: readonly number[]
  /** Of parts of one place, from 1; 1 of 1 where it is whole. */
  readonly number: number
  readonly of: number
}

/** What is gone round together: one group of like surfaces in one room, `bedroom-1/sash`. */
export function unitOf({ lead }: Bundle): string {
  return `${lead.roomId}/${lead.groupKey}`
}

/** What a place is parted by. */
interface PartInput {
  readonly bundles: readonly Bundle[]
  readonly edges: readonly BundleEdge[]
  /** Until when a bundle is held, in words that sort: what comes later is never held less. Those with other words are never one pass. */
  readonly heldUntil: (index: number) => string
  /** Bundles with other words here are never one pass either. */
  readonly apartBy: (index: number) => string
  readonly template: PassTemplate
  /** Its groups may go to different parts; a closet stays whole. */
  readonly mainRoomId: RoomId
}

/** Person-minutes; less is no part of its own. */
const smallestShare = 45
/** A part may be larger than asked for by this before there is one part more. */
export const overflow = 1.04

/**
 * One place of a room set as passes: never what is held with what is free, and none much larger than the template says where it
 * can be parted between two groups of surfaces. No two parts wait for one another.
 */
export function partsOf(place: readonly number[], input: PartInput): readonly Part[] {
  const ordered = roundOrder(place, input)
  const runs = runsOf(ordered, (index) => `${input.heldUntil(index)} ${input.apartBy(index)}`)
  const parts = runs.flatMap((run) => cut(run, input))
  return parts.map((list, index) => ({ bundles: list, number: index + 1, of: parts.length }))
}

/** Round the room by group, what is kept apart in runs; a valid order of work. */
function roundOrder(place: readonly number[], input: PartInput): readonly number[] {
  const { bundles, edges, heldUntil, apartBy } = input
  const here = new Set(place)
  const inside = edges.filter(({ before, after }) => here.has(before) && here.has(after))
  const open = new Map(place.map((index) => [index, inside.filter(({ after }) => after === index).length]))
  const ordered: number[] = []
  const rank = (index: number) => {
    const [bundle, lastIndex] = [present(bundles[index]), ordered.at(-1)]
    if (lastIndex === undefined) return roundRank(bundle)
    const last = present(bundles[lastIndex])
    const isBeside =
      (bundle.lead.roomId === last.lead.roomId ? 0 : 1000) + (unitOf(bundle) === unitOf(last) ? 0 : 500)
    return (apartBy(index) === apartBy(lastIndex) ? 0 : 2000) + isBeside + roundRank(bundle)
  }
  while (ordered.length < place.length) {
    const ready = [...open].filter(([, left]) => left === 0).map(([index]) => index)
    const soonest = ready.map(heldUntil).toSorted()[0]
    const next = present(
      ready
        .filter((index) => heldUntil(index) === soonest)
        .toSorted((one, other) => rank(one) - rank(other) || one - other)[0],
    )
    ordered.push(next)
    open.delete(next)
    for (const { before, after } of inside) {
      if (before === next) open.set(after, (open.get(after) ?? 1) - 1)
    }
  }
  return ordered
}

const roundOfClasses = [
  'sash',
  'doors',
  'trim',
  'wainscot',
  'builtWork',
  'radiators',
  'ceiling',
  'walls',
  'stairs',
]

/**
 * Windows, doors, trim: the same round in every pass, so that the first thing wet is the first thing dry; broad surfaces after, the room as a
 * whole last.
 */
function roundRank({ lead }: Bundle): number {
  return lead.surfaceClass === null ? 5000 : roundOfClasses.indexOf(lead.surfaceClass)
}

function runsOf(list: readonly number[], labelOf: (index: number) => string): readonly (readonly number[])[] {
  const runs: number[][] = []
  for (const index of list) {
    const last = runs.at(-1)
    if (last !== undefined && labelOf(present(last[0])) === labelOf(index)) last.push(index)
    else runs.push([index])
  }
  return runs
}

/** As few parts as the largest pass allows, as equal as whole groups of surfaces allow. */
function cut(run: readonly number[], input: PartInput): readonly (readonly number[])[] {
  const { bundles, template } = input
  const minutesOf = (list: readonly number[]) =>
    list.reduce((sum, index) => sum + (bundles[index]?.personMinutes ?? 0), 0)
  const largest = template.largestPassMinutes
  const total = minutesOf(run)
  if (total <= largest * overflow) return [run]
  const units = unitsOf(run, input)
  const shares = isRound(units, input) ? packed : inARow
  const tries = Array.from({ length: units.length - 1 }, (_, more) => more + 2).map((parts) =>
    shares(units, parts, minutesOf),
  )
  const large = tries.filter((parts) => parts.every((part) => minutesOf(part) >= smallestShare))
  const fitting = large.find((parts) => parts.every((part) => minutesOf(part) <= largest * overflow))
  return fitting ?? large.at(-1) ?? [run]
}

/** Groups of surfaces, and closets whole, in the order of the run; one that is too large for a pass falls into its own steps. */
function unitsOf(
  run: readonly number[],
  { bundles, template, mainRoomId }: PartInput,
): readonly (readonly number[])[] {
  const whole = (bundle: Bundle) => (bundle.lead.roomId === mainRoomId ? unitOf(bundle) : bundle.lead.roomId)
  return runsOf(run, (index) => whole(present(bundles[index]))).flatMap((unit) => {
    const minutes = unit.reduce((sum, index) => sum + (bundles[index]?.personMinutes ?? 0), 0)
    return minutes > template.largestPassMinutes ? unit.map((index) => [index]) : [unit]
  })
}

/** Whether no group waits for another, so that they may be shared out in any order. */
function isRound(units: readonly (readonly number[])[], { edges }: PartInput): boolean {
  const unitAt = new Map(units.flatMap((unit, at) => unit.map((index) => [index, at] as const)))
  return edges.every(({ before, after }) => {
    const [one, other] = [unitAt.get(before), unitAt.get(after)]
    return one === undefined || other === undefined || one === other
  })
}

type Shares = (
  units: readonly (readonly number[])[],
  parts: number,
  minutesOf: (list: readonly number[]) => number,
) => readonly (readonly number[])[]

/** The largest group first, always to the part that has least so far; parts in the order of the round. */
const packed: Shares = (units, parts, minutesOf) => {
  const shares = Array.from({ length: parts }, (): number[] => [])
  const largestFirst = [...units.keys()].toSorted(
    (one, other) => minutesOf(units[other] ?? []) - minutesOf(units[one] ?? []) || one - other,
  )
  const load = (share: readonly number[]) =>
    share.reduce((sum, unit) => sum + minutesOf(units[unit] ?? []), 0)
  for (const unit of largestFirst) {
    const least = present(shares.toSorted((one, other) => load(one) - load(other))[0])
    least.push(unit)
  }
  return shares
    .map((share) => share.toSorted((one, other) => one - other))
    .toSorted((one, other) => (one[0] ?? 0) - (other[0] ?? 0))
    .map((share) => share.flatMap((unit) => units[unit] ?? []))
}

/** Runs of the valid order, the longest as short as can be; for groups that wait for one another. */
const inARow: Shares = (units, parts, minutesOf) => {
  const minutes = units.map(minutesOf)
  return bestCuts(minutes, parts).map(([from, to]) => units.slice(from, to).flat())
}

/** Cuts a row of minutes into so many runs that the longest is as short as can be; ends excluded. */
function bestCuts(minutes: readonly number[], parts: number): readonly (readonly [number, number])[] {
  if (parts === 1) return [[0, minutes.length]]
  let best: { readonly longest: number; readonly cuts: readonly (readonly [number, number])[] } | undefined
  for (let first = 1; first <= minutes.length - parts + 1; first += 1) {
    const head = sumOf(minutes.slice(0, first))
    if (best !== undefined && head >= best.longest) break
    const rest = bestCuts(minutes.slice(first), parts - 1).map(
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
