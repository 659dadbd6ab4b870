import type { Job } from '../../../core/project/job.ts'
import type { Relaxed } from '../../../core/schedule/job/planning-site.ts'
import { finishOf } from '../../../core/schedule/model.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { localTimeIn } from '../../../core/time/local-time.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { gapWords } from '../../../core/work-order/gap-words.ts'
import type { SearchState } from '../../state/planner.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'

/** Days between the last day of a plan and the earliest possible one; 0 is proved best, null not worked out yet. */
export function gapDays(found: FoundPlan, { bound }: SearchState): number | null {
  if (bound === null) return null
  const { clock } = found.problem
  if (clock.kind === 'unbroken') return 0
  const local = localTimeIn(clock.timeZone)
  return Math.max(0, local.dayAt(finishOf(found.plan) - 1) - local.dayAt(clock.start) - bound.finish)
}

/** How good a plan is known to be. */
export function verdictWords(found: FoundPlan, search: SearchState): string {
  const gap = gapDays(found, search)
  if (gap === null) return 'How much better it could be is being worked out.'
  return gapWords(gap)
}

/** How long a neighbour could wait or be late; long stretches in days, for they run through nights. */
export function spareWords(minutes: number): string {
  if (minutes <= 0) return 'no time to spare: it holds'
  const days = Math.floor(minutes / 1440)
  if (days === 0) return `${formatMinutes(minutes)} to spare`
  return days === 1 ? 'more than a day to spare' : `more than ${days} days to spare`
}

/** `out of use Mar 29 – Apr 9`, a single day named once. */
export function outOfUseWords(from: string, to: string, system: LengthUnitSystem): string {
  const [first, last] = [from, to].map((moment) => dateWords(moment.slice(0, 10), system).slice(4))
  return first === last ? `out of use ${first}` : `out of use ${first} – ${last}`
}

/** What could not be asked of the plan as it was written down, in sentences; a plan never drops a wish in silence. */
export function relaxedSentences(job: Job, relaxed: readonly Relaxed[]): readonly string[] {
  const count = (what: Relaxed['what']) => relaxed.filter((each) => each.what === what).length
  const rooms = relaxed
    .filter((each) => each.what === 'eveningsLost')
    .map(
      ({ id }) =>
        `${job.rooms[id]?.name ?? id} cannot be given back every evening: work there dries for longer.`,
    )
  const begun = count('roomBegun')
  const pins = count('pinLost')
  const overNights = count('splitOverNight')
  return [
    ...rooms,
    ...(begun === 0
      ? []
      : [
          `${begun} rooms are begun, more than may be out of use at once: no other one is begun until one of them is done.`,
        ]),
    ...(pins === 0 ? [] : [`${some(pins, 'pin')} left out: the task is gone, done, or the moment is past.`]),
    ...(overNights === 0
      ? []
      : [`${some(overNights, 'coat')} longer than anybody’s day: gone on with the next day.`]),
  ]
}

function some(count: number, noun: string): string {
  return count === 1 ? `1 ${noun} is` : `${count} ${noun}s are`
}
