import { heldUntil } from '../../specification/holds.ts'
import type { Hold } from '../../specification/types.ts'
import type { LocalDate } from '../../time/local-date.ts'
import type { Relaxed } from './planning-site.ts'

interface HeldSteps {
  /** The day before which a step may not be planned, by step key; steps that wait for nothing are left out. */
  readonly from: ReadonlyMap<string, LocalDate>
  /** Holds whose day had to be assumed: nobody knows it, or it has passed. */
  readonly relaxed: readonly Relaxed[]
}

/** Which steps wait for what has to be cleared first, as seen on a day. A step under several holds waits for the last of them. */
export function heldSteps(holds: readonly Hold[], today: LocalDate): HeldSteps {
  const from = new Map<string, LocalDate>()
  const relaxed: Relaxed[] = []
  for (const hold of holds) {
    const held = heldUntil(hold, today)
    if (held.kind === 'free') continue
    if (held.kind === 'noDate')
      relaxed.push({ what: held.isOverdue ? 'holdOverdue' : 'holdNoDate', id: hold.key })
    const on = held.kind === 'until' ? held.on : held.assumedOn
    for (const key of hold.stepKeys) {
      const known = from.get(key)
      if (known === undefined || known < on) from.set(key, on)
    }
  }
  return { from, relaxed }
}
