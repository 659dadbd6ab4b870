import type { ScheduleProblem } from '../model.ts'
import type { Entry } from './entry.ts'

/** What the clock on the wall shows at each minute of the plan. */
export interface WallClock {
  /** First minute (epoch) looked at, and the first one after the last. */
  readonly from: number
  readonly to: number
  /** Minutes the clock is ahead of UTC in each quarter of an hour from `from` on. */
  readonly ahead: Int32Array
  /** Stretches of the same local day in which the clock goes on evenly, in order; two or more on days it is changed. */
  readonly stretches: readonly Stretch[]
}

export interface Stretch {
  readonly day: number
  /** Minutes (epoch), `to` excluded. */
  readonly from: number
  readonly to: number
  /** Minute of the local day at `from`. */
  readonly minute: number
}

const quarter = 15

/** Minutes since 1970 as the clock on the wall shows them. */
export function localMinute(clock: WallClock, at: number): number {
  return at + (clock.ahead[Math.floor((at - clock.from) / quarter)] as number)
}

export function localDay(clock: WallClock, at: number): number {
  return Math.floor(localMinute(clock, at) / 1440)
}

/** From two days before the first moment of the plan to two days after the last, on a site's clock. */
export function wallClock(problem: ScheduleProblem, entries: readonly Entry[]): WallClock {
  if (problem.clock.kind === 'unbroken') return { from: 0, to: 0, ahead: new Int32Array(0), stretches: [] }
  let first: number = problem.clock.start
  let last: number = problem.clock.start
  for (const { task, planned } of entries) {
    const { fumesFor, closedFor } = task.effects
    first = Math.min(first, planned.start)
    last = Math.max(last, planned.start, planned.end + Math.max(0, fumesFor ?? 0, closedFor ?? 0))
  }
  const from = Math.floor(first / quarter) * quarter - 2880
  const to = Math.ceil(last / quarter) * quarter + 2880
  const ahead = aheadByQuarter(from, to, problem.clock.timeZone)
  return { from, to, ahead, stretches: stretchesOf(from, ahead) }
}

/** Twelve hours at a time: where the clock is changed within them every quarter is looked at, else their ends tell all. */
function aheadByQuarter(from: number, to: number, timeZone: string): Int32Array {
  const shown = shownClock(timeZone)
  const ahead = new Int32Array((to - from) / quarter)
  const stride = 48
  let next = shown(from) - from
  for (let index = 0; index < ahead.length; index += stride) {
    const first = next
    const end = from + (index + stride) * quarter
    next = shown(end) - end
    ahead.fill(first, index, index + stride)
    if (next === first) continue
    for (let each = index; each < Math.min(ahead.length, index + stride); each++)
      ahead[each] = shown(from + each * quarter) - (from + each * quarter)
  }
  return ahead
}

function stretchesOf(from: number, ahead: Int32Array): readonly Stretch[] {
  const stretches: Stretch[] = []
  let start = 0
  for (let index = 1; index <= ahead.length; index++) {
    const before = Math.floor((from + (index - 1) * quarter + (ahead[index - 1] as number)) / 1440)
    const here = Math.floor((from + index * quarter + (ahead[index] as number)) / 1440)
    if (index < ahead.length && here === before && ahead[index] === ahead[index - 1]) continue
    const begin = from + start * quarter
    const minute = begin + (ahead[start] as number) - before * 1440
    stretches.push({ day: before, from: begin, to: from + index * quarter, minute })
    start = index
  }
  return stretches
}

/** Making a format costs more than hundreds of uses. */
const formats = new Map<string, Intl.DateTimeFormat>()

/** What a clock in the zone shows at a quarter of an hour, as minutes since 1970 on that clock. */
function shownClock(timeZone: string): (at: number) => number {
  const format =
    formats.get(timeZone) ??
    new Intl.DateTimeFormat('en-GB', { timeZone, dateStyle: 'short', timeStyle: 'short', hourCycle: 'h23' })
  formats.set(timeZone, format)
  return (at) => {
    const shown = format.format(at * 60_000)
    const part = (start: number, end: number): number => Number(shown.slice(start, end))
    return Date.UTC(part(6, 10), part(3, 5) - 1, part(0, 2), part(12, 14), part(15, 17)) / 60_000
  }
}
