import { groupedBy, present } from '../lists/lists.ts'
import type { Operation, Step, StepOrder } from '../specification/types.ts'
import type { MinutesByStep } from './pass-types.ts'

/** Elapsed minutes; a step whose window is no longer is worked in one go with what has to follow it in time. */
const longestOpenTime = 8 * 60

/** Steps that are never parted: a coat with the scuffing, dusting and masking before it, a deglosser with what coats it in its window. */
export interface Bundle {
  /** In a valid order of work. */
  readonly steps: readonly Step[]
  /** The step the others serve; it says what the bundle is. */
  readonly lead: Step
  readonly personMinutes: number
}

/** `after` starts at least so many elapsed minutes after the end of `before`; indexes of bundles, always forwards. */
export interface BundleEdge {
  readonly before: number
  readonly after: number
  readonly wait: number
}

export interface Bundled {
  /** In a valid order of work. */
  readonly bundles: readonly Bundle[]
  readonly edges: readonly BundleEdge[]
}

const films: ReadonlySet<Operation> = new Set([
  'coat',
  'prime',
  'spotPrime',
  'sealChalk',
  'sealBare',
  'blockStain',
])

/** It leaves a film of sealer, primer or paint that has to dry before the next one. */
export function isFilm(operation: Operation): boolean {
  return films.has(operation)
}

const alwaysServing: ReadonlySet<Operation> = new Set(['dustOff', 'degloss', 'maskOff'])
const servingBetweenCoats: ReadonlySet<Operation> = new Set(['sand', 'vacuum'])

/** The order that points forwards in the specification's own order; what a clash of rules turned round is left out. */
export function forwardOrder(steps: readonly Step[], order: readonly StepOrder[]): readonly StepOrder[] {
  const place = new Map(steps.map((step, index) => [step.key, index]))
  return order.filter(({ before, after }) => {
    const [from, to] = [place.get(before), place.get(after)]
    return from !== undefined && to !== undefined && from < to
  })
}

/** An open time: what was wiped is coated within it, so both are one pass. */
function isWindow({ maximumWait }: StepOrder): boolean {
  return maximumWait !== null && maximumWait <= longestOpenTime
}

/** Puts steps that one hand never parts together. `order` points forwards only; `steps` are in a valid order of work. */
export function bundleSteps(
  steps: readonly Step[],
  order: readonly StepOrder[],
  minutes: MinutesByStep,
): Bundled {
  const leads = leadsOf(steps, order)
  const leadOf = (key: string) => leads.get(key) ?? key
  const driesInside = order.some(
    (edge) => edge.minimumWait > 0 && !isWindow(edge) && leadOf(edge.before) === leadOf(edge.after),
  )
  const joined = bundledBy(steps, order, minutes, ({ key }) => leadOf(key))
  return isForward(joined) && !driesInside ? joined : bundledBy(steps, order, minutes, (step) => step.key)
}

/** Of each step the key of the step it serves, its own where it serves none. */
function leadsOf(steps: readonly Step[], order: readonly StepOrder[]): ReadonlyMap<string, string> {
  const after = groupedBy(order, ({ before }) => before)
  const byKey = new Map(steps.map((step) => [step.key, step]))
  const coated = afterCoats(steps, order)
  const leads = new Map<string, string>()
  for (const step of steps.toReversed()) {
    const next = after.get(step.key) ?? []
    const timed = next.find(isWindow)
    leads.set(step.key, timed === undefined ? served(step, next) : (leads.get(timed.after) ?? step.key))
  }
  return chainBatches(order, leads)

  function served(step: Step, next: readonly StepOrder[]): string {
    const serves =
      alwaysServing.has(step.operation) || (servingBetweenCoats.has(step.operation) && coated.has(step.key))
    if (!serves || step.groupKey === 'room') return step.key
    const first = next
      .filter(({ minimumWait }) => minimumWait === 0)
      .map((edge) => leads.get(edge.after) ?? edge.after)
      .find((lead) => isServable(byKey.get(lead), step))
    const behind = new Set((after.get(first ?? '') ?? []).map((edge) => edge.after))
    const allServe = next.every((edge) => leads.get(edge.after) === first || behind.has(edge.after))
    return first !== undefined && allServe ? first : step.key
  }
}

function isServable(lead: Step | undefined, step: Step): boolean {
  return (
    lead !== undefined &&
    isFilm(lead.operation) &&
    lead.roomId === step.roomId &&
    lead.groupKey === step.groupKey
  )
}

/** Batches of one window follow one another: wipe, coat, wipe the next, coat it; all of them are one bundle. */
function chainBatches(
  order: readonly StepOrder[],
  leads: ReadonlyMap<string, string>,
): ReadonlyMap<string, string> {
  const timed = order.filter(isWindow)
  const wipes = new Set(timed.map(({ before }) => before))
  const coats = new Set(timed.map(({ after }) => after))
  const chained = new Map(leads)
  for (const { before, after } of order.toReversed()) {
    if (!coats.has(before) || !wipes.has(after)) continue
    const [own, next] = [chained.get(before) ?? before, chained.get(after) ?? after]
    for (const [key, lead] of chained) if (lead === own) chained.set(key, next)
  }
  return chained
}

/** Steps that come after a finish coat of their own group. */
function afterCoats(steps: readonly Step[], order: readonly StepOrder[]): ReadonlySet<string> {
  const byKey = new Map(steps.map((step) => [step.key, step]))
  const place = new Map(steps.map((step, index) => [step.key, index]))
  const coated = new Set<string>()
  const forwards = order.toSorted((a, b) => (place.get(a.before) ?? 0) - (place.get(b.before) ?? 0))
  for (const { before, after } of forwards) {
    const [one, other] = [byKey.get(before), byKey.get(after)]
    if (one?.roomId !== other?.roomId || one?.groupKey !== other?.groupKey) continue
    if (one?.operation === 'coat' || coated.has(before)) coated.add(after)
  }
  return coated
}

function bundledBy(
  steps: readonly Step[],
  order: readonly StepOrder[],
  minutes: MinutesByStep,
  leadOf: (step: Step) => string,
): Bundled {
  const byLead = groupedBy(steps, leadOf)
  const place = new Map(steps.map((step, index) => [step.key, index]))
  const bundles = [...byLead]
    .toSorted(([one], [other]) => (place.get(one) ?? 0) - (place.get(other) ?? 0))
    .map(
      ([lead, list]): Bundle => ({
        steps: list,
        lead: present(list.find((step) => step.key === lead)),
        personMinutes: list.reduce((sum, step) => sum + minutesOnce(step, minutes), 0),
      }),
    )
  const bundleOf = new Map(bundles.flatMap(({ steps: list }, index) => list.map(({ key }) => [key, index])))
  const longest = new Map<string, BundleEdge>()
  for (const { before, after, minimumWait } of order) {
    const [from, to] = [present(bundleOf.get(before)), present(bundleOf.get(after))]
    if (from === to) continue
    const pair = `${from} ${to}`
    longest.set(pair, { before: from, after: to, wait: Math.max(longest.get(pair)?.wait ?? 0, minimumWait) })
  }
  return { bundles, edges: [...longest.values()] }
}

/** Daily steps are the chores of each day and take no time of a pass. */
export function minutesOnce(step: Step, minutes: MinutesByStep): number {
  return step.daily ? 0 : (minutes.get(step.key) ?? 0)
}

/** Whether every edge points forwards, so that bundles can be placed one after the other. */
function isForward({ edges }: Bundled): boolean {
  return edges.every(({ before, after }) => before < after)
}
