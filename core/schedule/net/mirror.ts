import type { Axis } from '../axis.ts'
import { teamCalendar } from './site-calendars.ts'
import {
  type Arc,
  type ForbiddenTicks,
  type Neighbours,
  type NetTask,
  never,
  type Reach,
  type SiteNet,
  type TaskSide,
  type TeamCalendar,
} from './site-net.ts'

const mirrors = new WeakMap<SiteNet, SiteNet>()
const axes = new WeakMap<Axis, Axis>()
const calendarsOf = new WeakMap<SiteNet['calendars'], SiteNet['calendars']>()

/**
 * The same problem with time running backwards: tick t becomes horizon - t, starts become ends. Placing every task as early
 * as possible in the mirrored net places it as late as possible in the original one. Each net is mirrored once, and so are the axis and the
 * calendars that several nets share.
 */
export function mirrorNet(net: SiteNet): SiteNet {
  const known = mirrors.get(net)
  if (known !== undefined) return known
  const axis = axes.get(net.axis) ?? mirrorAxis(net.axis)
  axes.set(net.axis, axis)
  const calendars = calendarsOf.get(net.calendars) ?? mirrorCalendars(net.calendars, axis)
  calendarsOf.set(net.calendars, calendars)
  const tables = new Map<ForbiddenTicks, ForbiddenTicks>()
  const mirror: SiteNet = {
    ...net,
    mirrored: !net.mirrored,
    axis,
    firstTick: 0,
    calendars,
    tasks: net.tasks.map((task) => mirrorTask(task, axis.horizon, tables)),
    arcs: net.arcs.map(mirrorArc),
    neighbours: mirrorNeighbours(net.neighbours),
  }
  mirrors.set(net, mirror)
  return mirror
}

function mirrorAxis(axis: Axis): Axis {
  const { horizon } = axis
  const slotTick = axis.slotTick.map((tick) => horizon - 1 - tick).reverse()
  const slotAt = new Int32Array(horizon + 1)
  for (let tick = 0, slot = 0; tick <= horizon; tick++) {
    slotAt[tick] = slot
    if (slotTick[slot] === tick) slot++
  }
  const dayOfTick = new Int32Array(horizon + 1)
  for (let tick = 0; tick <= horizon; tick++)
    dayOfTick[tick] = -(axis.dayOfTick[Math.max(0, horizon - 1 - tick)] as number)
  return {
    ...axis,
    slotTick,
    slotAt,
    dayOfTick,
    present: axis.present.slice().reverse(),
    spans: axis.spans
      .map(({ from, to, groups }) => ({ from: horizon - to, to: horizon - from, groups }))
      .reverse(),
  }
}

/** Calendars that share their tables share them in the mirror too. */
function mirrorCalendars(calendars: readonly TeamCalendar[], axis: Axis): readonly TeamCalendar[] {
  const mirrored = new Map<Int32Array, TeamCalendar>()
  return calendars.map(({ groups, peopleOfGroup, slots }) => {
    const tables = mirrored.get(slots) ?? teamCalendar(axis, groups, slots.length)
    mirrored.set(slots, tables)
    return { ...tables, groups, peopleOfGroup }
  })
}

function mirrorTask(task: NetTask, horizon: number, tables: Map<ForbiddenTicks, ForbiddenTicks>): NetTask {
  const mirrorLimit = (tick: number): number => (Math.abs(tick) === never ? -tick : horizon - tick)
  return {
    ...task,
    release: mirrorLimit(task.endBy),
    startBy: mirrorLimit(task.endFrom),
    endFrom: mirrorLimit(task.startBy),
    endBy: mirrorLimit(task.release),
    outOfUse: task.outOfUse === null ? null : mirrorReach(task.outOfUse),
    forbidden: task.forbidden.map(({ ticks, reach }) => ({
      ticks: mirrorTable(ticks, horizon, tables),
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

function mirrorTable(
  table: ForbiddenTicks,
  horizon: number,
  known: Map<ForbiddenTicks, ForbiddenTicks>,
): ForbiddenTicks {
  const mirrored = known.get(table) ?? {
    from: table.to.map((tick) => horizon - tick).reverse(),
    to: table.from.map((tick) => horizon - tick).reverse(),
  }
  known.set(table, mirrored)
  return mirrored
}

function mirrorArc(arc: Arc): Arc {
  return { ...arc, from: arc.to, fromSide: flip(arc.toSide), to: arc.from, toSide: flip(arc.fromSide) }
}

function mirrorNeighbours(rows: Neighbours): Neighbours {
  return {
    rowStart: rows.rowStart,
    other: rows.other,
    otherSide: rows.otherSide.map((side) => 1 - side),
    mySide: rows.mySide.map((side) => 1 - side),
    least: rows.most.map((most) => -most),
    most: rows.least.map((least) => -least),
  }
}

function flip(side: TaskSide): TaskSide {
  return side === 0 ? 1 : 0
}
