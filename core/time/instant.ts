import type { Brand } from '../units/brand.ts'

/** Whole minutes since 1970-01-01T00:00Z. Every instant in a problem or a plan is one of these. */
export type EpochMinutes = Brand<number, 'EpochMinutes'>

/** @param value whole minutes since 1970 began, UTC */
export function epochMinutes(value: number): EpochMinutes {
  return value as EpochMinutes
}
