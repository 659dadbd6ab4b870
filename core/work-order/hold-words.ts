import type { Relaxed } from '../schedule/job/planning-site.ts'
import type { Hold } from '../specification/types.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { dateWords, dateWordsWithYear } from './date-words.ts'

/** A hold as it stands on paper and on the screen. */
export interface HoldLine {
  readonly key: string
  readonly reason: string
  readonly source: string
  readonly who: string
  readonly expected: string
  /** Said loudly: the plan had to assume a day. Null where a day is known and to come. */
  readonly alarm: string | null
  /** `Mon Apr 5, 2027, B. Client`; null while it is open. */
  readonly cleared: string | null
}

export function holdLine(hold: Hold, relaxed: readonly Relaxed[], system: LengthUnitSystem): HoldLine {
  const { key, reason, source, cleared } = hold
  return {
    key,
    reason,
    source,
    who: hold.whoSeesToIt,
    expected: expectedWords(hold, system),
    alarm: cleared === null ? alarmWords(hold, relaxed) : null,
    cleared: cleared === null ? null : `${dateWordsWithYear(cleared.on, system)}, ${cleared.by}`,
  }
}

function expectedWords({ expectedOn, expectedIsAssumed, usualDays }: Hold, system: LengthUnitSystem): string {
  if (expectedOn === null) return 'no date known'
  const date = dateWords(expectedOn, system)
  return expectedIsAssumed ? `${date} (assumed: ${days(usualDays)})` : date
}

function alarmWords({ key, usualDays }: Hold, relaxed: readonly Relaxed[]): string | null {
  const [found] = relaxed.filter((each) => each.id === key)
  if (found?.what === 'holdOverdue') {
    return 'OVERDUE: its day has passed and nobody cleared it. The plan takes it to be cleared tomorrow.'
  }
  return found?.what === 'holdNoDate'
    ? `NO DATE: nobody knows when. The plan takes the usual ${days(usualDays)} from today.`
    : null
}

function days(count: number): string {
  return count === 1 ? '1 day' : `${count} days`
}
