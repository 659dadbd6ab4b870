import type { Axis } from './axis.ts'
import { localTimeIn } from './calendar.ts'
import type { ScheduleProblem } from './model.ts'
import { type ForbiddenTicks, never } from './site-net.ts'

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
    const forbidden = new Uint8Array(axis.horizon)
    const days = (axis.dayOfTick[axis.horizon] ?? 0) + 1
    for (let day = -1; day <= days; day++) {
      const begin = (local.instantOf(first + day, from) - axis.origin) / axis.grid
      const end = (local.instantOf(first + day + (from < to ? 0 : 1), to) - axis.origin) / axis.grid
      forbidden.fill(1, Math.max(0, Math.floor(begin)), Math.max(0, Math.ceil(end)))
    }
    const table = scanForbidden(forbidden)
    tables.set(from * 1441 + to, table)
    return table
  }
  for (const room of rooms) {
    if (rules.roomBackInTime && room.neededDaily !== null) needed.set(room.id, tableOf(room.neededDaily))
  }
  return { sleep: rules.noFumesWhileSleeping && tableOf(rules.noFumesWhileSleeping), needed }
}

export function scanForbidden(forbidden: Uint8Array): ForbiddenTicks {
  const { length } = forbidden
  const nextForbidden = new Int32Array(length + 1)
  const nextClear = new Int32Array(length + 1)
  let lastForbidden = never
  let lastClear = length
  nextForbidden[length] = lastForbidden
  nextClear[length] = lastClear
  for (let tick = length - 1; tick >= 0; tick--) {
    if (forbidden[tick] === 1) lastForbidden = tick
    else lastClear = tick
    nextForbidden[tick] = lastForbidden
    nextClear[tick] = lastClear
  }
  return { nextForbidden, nextClear }
}
