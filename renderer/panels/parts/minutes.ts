import { formatMinutes } from '../../../core/units/duration.ts'

/** As `formatMinutes`, but a little work is not shown as none. */
export function minutesText(minutes: number): string {
  return minutes > 0 && minutes < 0.5 ? 'under 1 min' : formatMinutes(minutes)
}
