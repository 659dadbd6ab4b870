import { present } from '../lists/lists.ts'
import { reduceOrder } from '../specification/order.ts'
import type { Step, StepOrder } from '../specification/types.ts'
import { elapsedMinutes } from '../units/duration.ts'
import { minutesOnce } from './bundles.ts'
import type { MinutesByStep, Pass, PassOrder } from './pass-types.ts'

/** Where a step, or the group of like surfaces it belongs to, stands in the time of its pass; elapsed minutes from its start. */
interface Stretch {
  readonly from: number
  readonly to: number
}

/** What the order of passes is worked out from. */
interface OrderInput {
  /** In a valid order of work. */
  readonly passes: readonly Pass[]
  readonly steps: ReadonlyMap<string, Step>
  /** Pointing forwards only. */
  readonly order: readonly StepOrder[]
  readonly minutes: MinutesByStep
}

/** A night and a day on either side: a longest wait between passes leaves room for both to last over one. */
const longestPass = 2 * 1440

/** One order for every two passes that steps put in order, those left out that others imply. */
export function passOrder(input: OrderInput): readonly PassOrder[] {
  const passOf = new Map(input.passes.flatMap((pass) => pass.stepKeys.map((key) => [key, pass] as const)))
  const byPair = new Map<string, PassOrder>()
  const rounds = new Map(input.passes.map((pass) => [pass.key, roundsOf(pass, input)]))
  for (const edge of input.order) {
    const [before, after] = [passOf.get(edge.before), passOf.get(edge.after)]
    if (before === undefined || after === undefined || before === after) continue
    const pair = `${before.key}\n${after.key}`
    const found = orderBetween(before, after, edge, input, rounds)
    const known = byPair.get(pair)
    byPair.set(pair, known === undefined ? found : tighter(known, found))
  }
  return reduced(input.passes, [...byPair.values()])
}

function tighter(one: PassOrder, other: PassOrder): PassOrder {
  const longer = other.atLeast > one.atLeast ? other : one
  const limits = [one.atMost, other.atMost].filter((limit) => limit !== null)
  const atMost = limits.length === 0 ? null : elapsedMinutes(Math.min(...limits))
  return { ...longer, atMost }
}

function orderBetween(
  before: Pass,
  after: Pass,
  edge: StepOrder,
  { steps }: OrderInput,
  rounds: ReadonlyMap<string, ReadonlyMap<string, Stretch>>,
): PassOrder {
  const [first, second] = [present(steps.get(edge.before)), present(steps.get(edge.after))]
  const meanwhile = minutesMeanwhile(before, after, first, second, rounds)
  const shortened = Math.max(first.touchDry, edge.minimumWait - meanwhile)
  const atLeast = edge.minimumWait > 0 ? Math.min(edge.minimumWait, shortened) : 0
  return {
    before: before.key,
    after: after.key,
    atLeast: elapsedMinutes(Math.ceil(atLeast)),
    atMost:
      edge.maximumWait === null ? null : elapsedMinutes(Math.max(atLeast, edge.maximumWait - longestPass)),
    sameOrder: atLeast < edge.minimumWait,
    reason: edge.reason,
  }
}

/**
 * How long any surface of a wait has at least dried when `before` is over and once `after` reaches it, both going round in the order of
 * their steps with all the hands they may have. The wait asked between the passes is shorter by this.
 */
function minutesMeanwhile(
  before: Pass,
  after: Pass,
  first: Step,
  second: Step,
  rounds: ReadonlyMap<string, ReadonlyMap<string, Stretch>>,
): number {
  const one = rounds.get(before.key)?.get(unitOf(first))
  const other = rounds.get(after.key)?.get(unitOf(second))
  if (one === undefined || other === undefined) return 0
  const length = Math.max(0, ...[...(rounds.get(before.key)?.values() ?? [])].map(({ to }) => to))
  const pieces = unitOf(first) === unitOf(second) ? piecesOf(first, second) : 1
  const driedOf = (piece: number) =>
    length -
    (one.from + ((one.to - one.from) * (piece + 1)) / pieces) +
    other.from +
    ((other.to - other.from) * piece) / pieces
  return Math.max(0, Math.min(driedOf(0), driedOf(pieces - 1)))
}

function unitOf({ roomId, groupKey }: Step): string {
  return `${roomId}/${groupKey}`
}

/** Surfaces gone round one after the other; a ceiling is one. */
function piecesOf(first: Step, second: Step): number {
  return Math.max(1, Math.min(first.surfaceKeys.length, second.surfaceKeys.length))
}

/** From the first to the last step of each group of surfaces in a pass. */
function roundsOf(pass: Pass, { steps, minutes }: OrderInput): ReadonlyMap<string, Stretch> {
  const rounds = new Map<string, Stretch>()
  let at = 0
  for (const key of pass.stepKeys) {
    const step = present(steps.get(key))
    const to = at + minutesOnce(step, minutes) / pass.people.max
    rounds.set(unitOf(step), { from: rounds.get(unitOf(step))?.from ?? at, to })
    at = to
  }
  return rounds
}

function reduced(passes: readonly Pass[], orders: readonly PassOrder[]): readonly PassOrder[] {
  const keys = passes.map(({ key }) => key)
  const byEdge = new Map(
    orders.map((order) => [
      {
        before: order.before,
        after: order.after,
        minimumWait: order.atLeast,
        maximumWait: order.atMost,
        ruleId: '',
        reason: order.reason,
        source: '',
        special: false,
      },
      order,
    ]),
  )
  return reduceOrder(keys, [...byEdge.keys()]).flatMap((edge) => byEdge.get(edge as never) ?? [])
}
