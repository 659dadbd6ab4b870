import type { Relaxed } from '../schedule/job/planning-site.ts'
import type { Hold, HoldKind } from '../specification/types.ts'
import { dateWords, dateWordsWithYear } from '../time/date-words.ts'
import type { LengthUnitSystem } from '../units/length.ts'

/** A hold as it stands on paper and on the screen. */
export interface HoldLine {
  readonly key: string
  /** `sample for asbestos`: what has to happen, in a few words. */
  readonly short: string
  readonly reason: string
  readonly source: string
  readonly who: string
  readonly expected: string
  /** The same without the usual number of days. */
  readonly expectedShort: string
  /** Said loudly: the plan had to assume a day. Null where a day is known and to come. */
  readonly alarm: string | null
  /** `Mon Apr 5, 2027, B. Client`; null while it is open. */
  readonly cleared: string | null
}

const shortWords: Readonly<Record<HoldKind, string>> = {
  asbestos: 'sample for asbestos',
  leak: 'fix the leak',
  mildewCause: 'find and fix what feeds the mildew',
  newPlaster: 'let the new plaster dry, measure it',
  movingCrack: 'find out why the crack moves',
  loosePlaster: 'have the loose plaster looked at',
  dewPoint: 'surface 5 °F (3 °C) above the dew point',
  unknownCoat: 'find out what coat is there',
}

/** A hold as papers say it, with an alarm where the plan needs the surface sooner than it is expected to be free. */
export function holdLine(hold: Hold, relaxed: readonly Relaxed[], system: LengthUnitSystem): HoldLine {
  const { key, reason, source, cleared } = hold
  return {
    key,
    short: shortWords[hold.kind],
    reason,
    source,
    who: hold.whoSeesToIt,
    expected: expectedWords(hold, system),
    expectedShort: expectedDay(hold, system),
    alarm: cleared === null ? alarmWords(hold, relaxed) : null,
    cleared: cleared === null ? null : `${dateWordsWithYear(cleared.on, system)}, ${cleared.by}`,
  }
}

function expectedWords(hold: Hold, system: LengthUnitSystem): string {
  const { expectedOn, expectedIsAssumed, usualDays } = hold
  if (expectedOn === null || !expectedIsAssumed) return expectedDay(hold, system)
  return `${dateWords(expectedOn, system)} (assumed: ${days(usualDays)})`
}

function expectedDay({ expectedOn, expectedIsAssumed }: Hold, system: LengthUnitSystem): string {
  if (expectedOn === null) return 'no date known'
  return `${dateWords(expectedOn, system)}${expectedIsAssumed ? ' (assumed)' : ''}`
}

function alarmWords({ key, usualDays }: Hold, relaxed: readonly Relaxed[]): string | null {
  const [found] = relaxed.filter((each) => each.id === key)
  if (found?.what === 'holdOverdue') {
    return 'OVERDUE: its day has passed and nobody cleared it. The plan assumes it is cleared tomorrow.'
  }
  return found?.what === 'holdNoDate'
    ? `NO DATE: nobody knows when. The plan assumes the usual ${days(usualDays)} from today.`
    : null
}

function days(count: number): string {
  return count === 1 ? '1 day' : `${count} days`
}
