import { groupedByEach } from '../lists/lists.ts'
import type { Hold, Specification } from '../specification/types.ts'
import type { LocalDate } from '../time/local-date.ts'
import type { Bundle } from './bundles.ts'
import { partOf } from './families.ts'
import type { PassKind } from './pass-types.ts'
import type { PassTemplate } from './template.ts'

/** Holds that are not cleared, by the step that waits for them. */
export type HoldsByStep = ReadonlyMap<string, readonly Hold[]>

/** Holds that are not cleared, by the key of each step that waits for them. */
export function holdsByStep({ holds }: Specification): HoldsByStep {
  return groupedByEach(
    holds.filter(({ cleared }) => cleared === null),
    ({ stepKeys }) => stepKeys,
  )
}

/** What a bundle waits for, each hold once. */
export function holdsOfBundle({ steps }: Bundle, holds: HoldsByStep): readonly Hold[] {
  return [...new Set(steps.flatMap(({ key }) => holds.get(key) ?? []))]
}

/** The latest expected day; null where one of the days is not known, or there is no hold. */
export function expectedOn(holds: readonly Hold[]): LocalDate | null {
  const days = holds.flatMap((hold) => hold.expectedOn ?? [])
  return days.length < holds.length ? null : (days.toSorted().at(-1) ?? null)
}

/** Sorts after every date. */
export const nobodyKnows = 'unknown'

/** Until when a bundle is held, in words that sort; a day that nobody knows comes after all others. */
export function heldUntilWords(bundle: Bundle, holds: HoldsByStep): string {
  const held = holdsOfBundle(bundle, holds)
  return held.length === 0 ? '' : (expectedOn(held) ?? nobodyKnows)
}

/** What the house rules keep apart in one place: woodwork from broad surfaces when priming, ceiling, walls and woodwork when repairing. */
export function apartByRule({ lead }: Bundle, kind: PassKind, template: PassTemplate): string {
  const part = partOf(lead.surfaceClass)
  if (kind === 'repair' && template.repairs === 'apart') return part
  if (kind !== 'prime' || template.primed === 'together') return ''
  return part === 'woodwork' ? part : 'broad'
}
