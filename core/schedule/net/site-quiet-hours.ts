import type { Axis } from '../axis.ts'
import { localTimeIn } from '../calendar.ts'
import type { ScheduleProblem } from '../model.ts'
import type { ForbiddenTicks, NetTask } from './site-net.ts'

/** When nothing may fume near a sleeper, and when a room is needed each day, by room. */
export interface QuietHours {
  readonly sleep: ForbiddenTicks | null
  readonly needed: ReadonlyMap<string, ForbiddenTicks>
}

export function quietHoursOf(problem: ScheduleProblem, axis: Axis): QuietHours {
  const { clock, rooms, rules } = problem
  const needed = new Map<string, ForbiddenTicks>()
  if (clock.kind === 'unbroken') return { sleep: null, needed }
  const local = localTimeIn(clock.timeZone)
  const first = local.dayAt(clock.start)
  const tables = new Map<number, ForbiddenTicks>()
  function tableOf({ from, to }: { readonly from: number; readonly to: number }): ForbiddenTicks {
    const known = tables.get(from * 1441 + to)
    if (known !== undefined) return known
    const froms: number[] = []
    const tos: number[] = []
    const days = axis.dayOfTick[axis.horizon] as number
    for (let day = -1; day <= days; day++) {
      const begin = (local.instantOf(first + day, from) - axis.origin) / axis.grid
      const end = (local.instantOf(first + day + (from < to ? 0 : 1), to) - axis.origin) / axis.grid
      if (Math.max(0, begin) >= Math.min(axis.horizon, end)) continue
      froms.push(Math.max(0, Math.floor(begin)))
      tos.push(Math.min(axis.horizon, Math.ceil(end)))
    }
    const table = { from: Int32Array.from(froms), to: Int32Array.from(tos) }
    tables.set(from * 1441 + to, table)
    return table
  }
  for (const room of rooms) {
    if (rules.roomBackInTime && room.neededDaily !== null) needed.set(room.id, tableOf(room.neededDaily))
  }
  return { sleep: rules.noFumesWhileSleeping && tableOf(rules.noFumesWhileSleeping), needed }
}

/** The tick before which a task cannot start because of quiet hours; `start` itself where it can lie from there to `end`. */
export function quietUntil({ forbidden }: NetTask, start: number, end: number): number {
  for (let index = 0; index < forbidden.length; index++) {
    const { ticks, reach } = forbidden[index] as NetTask['forbidden'][number]
    const stretch = firstAfter(ticks.to, start - reach.before)
    if (stretch < ticks.to.length && (ticks.from[stretch] as number) < end + reach.after)
      return (ticks.to[stretch] as number) + reach.before
  }
  return start
}

/** Index of the first of the rising ticks that comes after a tick. */
function firstAfter(ticks: Int32Array, tick: number): number {
  let low = 0
  let high = ticks.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((ticks[middle] as number) > tick) high = middle
    else low = middle + 1
  }
  return low
}
