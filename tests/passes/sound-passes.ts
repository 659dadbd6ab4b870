import { expect } from 'vitest'
import { forwardOrder } from '../../core/passes/bundles.ts'
import type { MinutesByStep, Passes } from '../../core/passes/pass-types.ts'
import type { Specification } from '../../core/specification/types.ts'

/** Elapsed minutes; what is coated inside its open time is worked batch by batch in one pass. */
const openTime = 8 * 60

/** What holds of passes whatever the work is; read from the steps and their order, not from how they were gathered. */
export function expectSound(passes: Passes, specification: Specification, minutes: MinutesByStep): void {
  const order = forwardOrder(specification.steps, specification.order)
  const passOf = new Map(
    passes.passes.flatMap((pass) => pass.stepKeys.map((key) => [key, pass.key] as const)),
  )
  expect(passes.passes.flatMap(({ stepKeys }) => stepKeys).toSorted()).toEqual(
    specification.steps.map(({ key }) => key).toSorted(),
  )
  expect(new Set(passes.passes.map(({ key }) => key)).size).toBe(passes.passes.length)
  for (const pass of passes.passes) {
    expect(pass.lines.flatMap(({ stepKeys }) => stepKeys).toSorted()).toEqual(pass.stepKeys.toSorted())
    const once = specification.steps.filter(({ key, daily }) => pass.stepKeys.includes(key) && !daily)
    const work = once.reduce((sum, { key }) => sum + (minutes.get(key) ?? 0), 0)
    expect(pass.personMinutes).toBeCloseTo(work, 6)
    expect(pass.lines.reduce((sum, { personMinutes }) => sum + personMinutes, 0)).toBeCloseTo(work, 6)
    for (const edge of order) {
      const [from, to] = [pass.stepKeys.indexOf(edge.before), pass.stepKeys.indexOf(edge.after)]
      if (from < 0 || to < 0) continue
      expect(from).toBeLessThan(to)
      const isWindow = edge.maximumWait !== null && edge.maximumWait <= openTime
      if (!isWindow) expect(edge.minimumWait).toBeLessThanOrEqual(0)
    }
  }
  const place = new Map(passes.passes.map(({ key }, index) => [key, index]))
  for (const { before, after } of passes.order) {
    expect(place.get(before)).toBeLessThan(place.get(after) ?? -1)
  }
  const reached = reachable(passes)
  for (const { before, after } of order) {
    const [from, to] = [passOf.get(before) ?? '', passOf.get(after) ?? '']
    if (from !== to) expect(reached.get(from)?.has(to), `${from} before ${to}`).toBe(true)
  }
}

/** What comes after each pass, over any number of others. Passes stand in a valid order. */
function reachable({ passes, order }: Passes): ReadonlyMap<string, ReadonlySet<string>> {
  const reached = new Map<string, Set<string>>(passes.map(({ key }) => [key, new Set()]))
  for (const { key } of passes.toReversed()) {
    for (const { before, after } of order) {
      if (before !== key) continue
      reached.get(key)?.add(after)
      for (const further of reached.get(after) ?? []) reached.get(key)?.add(further)
    }
  }
  return reached
}
