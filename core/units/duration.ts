import type { Brand } from './brand.ts'

/** Minutes of somebody working; they stop at breaks and nights. */
export type WorkingMinutes = Brand<number, 'WorkingMinutes'>

/** Minutes on the wall clock; drying and open times run on these, day and night. */
export type ElapsedMinutes = Brand<number, 'ElapsedMinutes'>

/** Time of somebody at work, in minutes; two people for an hour are 120. */
export function workingMinutes(value: number): WorkingMinutes {
  return value as WorkingMinutes
}

/** Time on the clock, in minutes, nights counted; drying runs on it. */
export function elapsedMinutes(value: number): ElapsedMinutes {
  return value as ElapsedMinutes
}

/** `45 min`, `2 h`, `3 h 20 min`; what is more than nothing is at least `1 min`. */
export function formatMinutes(minutes: number): string {
  const rounded = Math.round(minutes)
  const whole = minutes > 0 ? Math.max(1, rounded) : rounded
  const hours = Math.floor(whole / 60)
  const rest = whole - hours * 60
  if (hours === 0) return `${rest} min`
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`
}

/** What is more or less: `+ 2 h`, `− 45 min`. */
export function signedMinutes(minutes: number): string {
  return `${minutes < 0 ? '−' : '+'} ${formatMinutes(Math.abs(minutes))}`
}
