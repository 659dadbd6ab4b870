import type { SiteChoices } from './site-placing.ts'
import { type SiteValue, worstValue } from './site-value.ts'

/** What one decoding was told, with the starts (ticks) and the value it led to. */
export interface Choices extends SiteChoices {
  readonly starts: Int32Array
  readonly value: SiteValue
}

export function emptyChoices(count: number): Choices {
  return {
    keys: new Float64Array(count),
    sizes: new Uint8Array(count),
    taste: new Int32Array(count),
    delays: new Int32Array(count),
    keep: new Uint8Array(count),
    starts: new Int32Array(count),
    value: worstValue(),
  }
}

export function copyChoices(from: Choices, to: Choices): void {
  to.keys.set(from.keys)
  to.sizes.set(from.sizes)
  to.taste.set(from.taste)
  to.delays.set(from.delays)
  to.keep.set(from.keep)
  to.starts.set(from.starts)
  to.value.set(from.value)
}
