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
  const runs = evenRuns(from, to, problem.clock.timeZone)
  const ahead = new Int32Array((to - from) / quarter)
  for (const run of runs) ahead.fill(run.ahead, (run.from - from) / quarter, (run.to - from) / quarter)
  return { from, to, ahead, stretches: stretchesOf(runs) }
}

/** Stretches (minutes, `to` excluded) in which the clock goes on evenly, `ahead` of UTC. */
interface Run {
  readonly from: number
  to: number
  readonly ahead: number
}

/** No clock is changed there and back within half a week, so that where two moments that near agree, all between them does too. */
const halfWeek = 336 * quarter

function evenRuns(from: number, to: number, timeZone: string): readonly Run[] {
  const shown = shownClock(timeZone)
  const runs: Run[] = []
  function add(begin: number, ahead: number, end: number, aheadThen: number): void {
    if (ahead !== aheadThen && end - begin > quarter) {
      const middle = begin + Math.floor((end - begin) / 2 / quarter) * quarter
      const aheadHalfway = shown(middle) - middle
      add(begin, ahead, middle, aheadHalfway)
      add(middle, aheadHalfway, end, aheadThen)
      return
    }
    const last = runs[runs.length - 1]
    if (last?.ahead === ahead) last.to = end
    else runs.push({ from: begin, to: end, ahead })
  }
  let ahead = shown(from) - from
  for (let begin = from; begin < to; begin += halfWeek) {
    const end = Math.min(to, begin + halfWeek)
    const aheadThen = shown(end) - end
    add(begin, ahead, end, aheadThen)
    ahead = aheadThen
  }
  return runs
}

function stretchesOf(runs: readonly Run[]): readonly Stretch[] {
  const stretches: Stretch[] = []
  for (const { from, to, ahead } of runs) {
    for (let begin = from; begin < to; ) {
      const day = Math.floor((begin + ahead) / 1440)
      const end = Math.min(to, (day + 1) * 1440 - ahead)
      stretches.push({ day, from: begin, to: end, minute: begin + ahead - day * 1440 })
      begin = end
    }
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
