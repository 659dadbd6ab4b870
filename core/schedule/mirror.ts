import type { Axis } from './axis.ts'
import {
  type Arc,
  type ForbiddenTicks,
  type NetTask,
  never,
  pauseTables,
  type Reach,
  type SiteNet,
  scanForbidden,
  type TaskSide,
  type TeamCalendar,
} from './site-net.ts'

/**
 * The same problem with time running backwards: tick t becomes horizon - t, starts become ends. Placing every task as early
 * as possible in the mirrored net places it as late as possible in the original one.
 */
export function mirrorNet(net: SiteNet): SiteNet {
  const axis = mirrorAxis(net.axis)
  const { horizon } = net.axis
  const tables = new Map<ForbiddenTicks, ForbiddenTicks>()
  return {
    ...net,
    mirrored: !net.mirrored,
    axis,
    firstTick: 0,
    calendars: net.calendars.map((calendar) => mirrorCalendar(axis, calendar)),
    tasks: net.tasks.map((task) => mirrorTask(task, horizon, tables)),
    arcs: net.arcs.map(mirrorArc),
  }
}

function mirrorAxis(axis: Axis): Axis {
  const { horizon } = axis
  const count = axis.slotTick.length
  const slotTick = Int32Array.from(
    { length: count },
    (_, slot) => horizon - 1 - (axis.slotTick[count - 1 - slot] ?? 0),
  )
  const slotAt = new Int32Array(horizon + 1).fill(count)
  for (let tick = horizon - 1, slot = count; tick >= 0; tick--) {
    if (slot > 0 && slotTick[slot - 1] === tick) slot--
    slotAt[tick] = slot
  }
  return {
    ...axis,
    slotTick,
    slotAt,
    dayOfTick: Int32Array.from(
      { length: horizon + 1 },
      (_, tick) => -(axis.dayOfTick[Math.max(0, horizon - 1 - tick)] ?? 0),
    ),
    present: axis.present.slice().reverse(),
    works: axis.works.map((works) => works.slice().reverse()),
  }
}

function mirrorCalendar(axis: Axis, calendar: TeamCalendar): TeamCalendar {
  const slots = Int32Array.from(calendar.slots, (slot) => axis.slotTick.length - 1 - slot).reverse()
  return { ...calendar, slots, ...pauseTables(axis, slots) }
}

function mirrorTask(task: NetTask, horizon: number, tables: Map<ForbiddenTicks, ForbiddenTicks>): NetTask {
  const mirrorLimit = (tick: number): number => (Math.abs(tick) === never ? -tick : horizon - tick)
  return {
    ...task,
    release: mirrorLimit(task.endBy),
    startBy: mirrorLimit(task.endFrom),
    endFrom: mirrorLimit(task.startBy),
    endBy: mirrorLimit(task.release),
    closing: task.closing === null ? null : mirrorReach(task.closing),
    forbidden: task.forbidden.map(({ ticks, reach }) => ({
      ticks: mirrorTable(ticks, tables),
      reach: mirrorReach(reach),
    })),
    conflicts: task.conflicts.map(({ other, mine, others }) => {
      return { other, mine: mirrorReach(mine), others: mirrorReach(others) }
    }),
  }
}

function mirrorReach(reach: Reach): Reach {
  return { before: reach.after, after: reach.before }
}

function mirrorTable(table: ForbiddenTicks, known: Map<ForbiddenTicks, ForbiddenTicks>): ForbiddenTicks {
  const found = known.get(table)
  if (found !== undefined) return found
  const horizon = table.nextForbidden.length - 1
  const forbidden = Uint8Array.from({ length: horizon }, (_, tick) => {
    return table.nextForbidden[horizon - 1 - tick] === horizon - 1 - tick ? 1 : 0
  })
  const made = scanForbidden(forbidden)
  known.set(table, made)
  return made
}

function mirrorArc(arc: Arc): Arc {
  return { ...arc, from: arc.to, fromSide: flip(arc.toSide), to: arc.from, toSide: flip(arc.fromSide) }
}

function flip(side: TaskSide): TaskSide {
  return side === 0 ? 1 : 0
}
