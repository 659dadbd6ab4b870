import type { DayWindow, PlannedTask, ScheduleProblem, ScheduleRoom, ScheduleRoomId, Task } from '../model.ts'
import { type Entry, entriesByRoom } from './entry.ts'
import type { Violation } from './violation.ts'
import { localMinute, type WallClock } from './wall-clock.ts'

/** First common minute of two stretches of time. */
function firstCommon(oneFrom: number, oneTo: number, otherFrom: number, otherTo: number): number | undefined {
  const at = Math.max(oneFrom, otherFrom)
  return at < Math.min(oneTo, otherTo) ? at : undefined
}

/** When a room is dry and open again as far as one task in it goes. */
function usableFrom({ effects }: Task, { end }: PlannedTask): number {
  return end + Math.max(effects.wetFor ?? 0, effects.closedFor ?? 0)
}

/** For each room the rooms its air reaches: itself, and those it or they say they are open to. */
function airReaches(rooms: readonly ScheduleRoom[]): ReadonlyMap<ScheduleRoomId, readonly ScheduleRoom[]> {
  return new Map(
    rooms.map((room) => [
      room.id,
      rooms.filter(
        (other) => other === room || room.openTo.includes(other.id) || other.openTo.includes(room.id),
      ),
    ]),
  )
}

export function verifyDust(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  if (!problem.rules.noDustNearWet) return
  const reached = airReaches(problem.rooms)
  const wetByRoom = entriesByRoom(
    entries.filter(({ task, planned }) => task.effects.wetFor !== null && planned.segments.length > 0),
  )
  for (const dusty of entries) {
    const { room, effects } = dusty.task
    if (!effects.dusty || room === null || dusty.planned.segments.length === 0) continue
    for (const wet of (reached.get(room) ?? []).flatMap(({ id }) => wetByRoom.get(id) ?? [])) {
      if (wet === dusty || (wet.isFact && dusty.isFact)) continue
      const wetUntil = wet.planned.end + (wet.task.effects.wetFor ?? 0)
      const at = firstCommon(dusty.planned.start, dusty.planned.end, wet.planned.start, wetUntil)
      if (at !== undefined) found.push({ rule: 'noDustNearWet', dusty: dusty.task.id, wet: wet.task.id, at })
    }
  }
}

export function verifyQuietHours(
  problem: ScheduleProblem,
  clock: WallClock,
  entries: readonly Entry[],
  found: Violation[],
): void {
  const { noFumesWhileSleeping: sleep, roomBackInTime } = problem.rules
  const reached = airReaches(problem.rooms)
  const rooms = new Map(problem.rooms.map((room) => [room.id, room]))
  for (const { task, planned, isFact } of entries) {
    if (isFact || planned.segments.length === 0 || task.room === null) continue
    const { fumesFor, closedFor } = task.effects
    const firstNew = planned.segments[0]?.start ?? planned.start
    const sleeper = (reached.get(task.room) ?? []).find((room) => room.sleeping)
    if (sleep !== null && fumesFor !== null && sleeper !== undefined) {
      const at = firstMinuteWithin(clock, firstNew, planned.end + fumesFor, sleep)
      if (at !== undefined) found.push({ rule: 'noFumesWhileSleeping', task: task.id, room: sleeper.id, at })
    }
    const room = rooms.get(task.room)
    if (!roomBackInTime || room === undefined) continue
    const at =
      room.backBy !== null && usableFrom(task, planned) > room.backBy
        ? room.backBy
        : room.neededDaily !== null && closedFor !== null
          ? firstMinuteWithin(clock, firstNew, planned.end + closedFor, room.neededDaily)
          : undefined
    if (at !== undefined) found.push({ rule: 'roomBackInTime', task: task.id, room: room.id, at })
  }
}

/** `hours` of every local day, over midnight when they end before they begin. */
function firstMinuteWithin(clock: WallClock, from: number, to: number, hours: DayWindow): number | undefined {
  for (let at = from; at < to; at++) {
    const minute = localMinute(clock, at) % 1440
    const isFromOn = hours.from <= minute
    const isBefore = minute < hours.to
    if (hours.from < hours.to ? isFromOn && isBefore : isFromOn || isBefore) return at
  }
  return undefined
}

export function verifyRoomsOutOfUse(
  problem: ScheduleProblem,
  entries: readonly Entry[],
  found: Violation[],
): void {
  const limit = problem.rules.roomsOutOfUse
  if (limit === null) return
  const spans = new Map<ScheduleRoomId, { from: number; to: number; isFact: boolean }>()
  for (const { task, planned, isFact } of entries) {
    if (task.room === null || planned.segments.length === 0) continue
    const known = spans.get(task.room)
    const to = usableFrom(task, planned)
    spans.set(task.room, {
      from: Math.min(known?.from ?? planned.start, planned.start),
      to: Math.max(known?.to ?? to, to),
      isFact: isFact && (known?.isFact ?? true),
    })
  }
  for (const { from } of spans.values()) {
    const at = Math.max(from, problem.clock.start)
    const out = [...spans].filter(([, span]) => span.from <= at && at < span.to)
    if (out.length <= limit || out.every(([, span]) => span.isFact)) continue
    found.push({ rule: 'roomsOutOfUse', rooms: out.map(([room]) => room), at })
    return
  }
}

export function verifyWayOut(problem: ScheduleProblem, entries: readonly Entry[], found: Violation[]): void {
  const { wayOutKeptOpen, hallsLast } = problem.rules
  const behind = entriesBehind(problem, entries)
  for (const hall of entries) {
    const { wetFor, closedFor } = hall.task.effects
    if (hall.task.room === null || hall.planned.segments.length === 0) continue
    const isBlocking = wetFor !== null || closedFor !== null
    const isLast = isBlocking && hall.task.state.kind !== 'done' && hall.task.state.kind !== 'started'
    const closedUntil = hall.planned.end + (closedFor ?? 0)
    for (const other of behind.get(hall.task.room) ?? []) {
      if (other === hall || (hall.isFact && other.isFact)) continue
      const { start, end } = other.planned
      if (end <= hall.planned.start) break
      const at = firstCommon(start, end, hall.planned.start, closedUntil)
      if (wayOutKeptOpen && closedFor !== null && at !== undefined)
        found.push({ rule: 'wayOutKeptOpen', behind: other.task.id, hall: hall.task.id, at })
      if (hallsLast && isLast && hall.planned.start < end)
        found.push({ rule: 'hallsLast', task: other.task.id, hall: hall.task.id })
    }
  }
}

/** For each hall or stair the tasks in rooms reached through it, the last to end first. */
function entriesBehind(
  problem: ScheduleProblem,
  entries: readonly Entry[],
): ReadonlyMap<ScheduleRoomId, readonly Entry[]> {
  const halls = new Map(problem.rooms.map((room) => [room.id, room.reachedThrough]))
  const behind = new Map<ScheduleRoomId, Entry[]>()
  for (const entry of entries.toSorted((one, other) => other.planned.end - one.planned.end)) {
    const { room } = entry.task
    if (room === null || entry.planned.segments.length === 0) continue
    for (const hall of new Set(halls.get(room))) {
      const known = behind.get(hall)
      if (known === undefined) behind.set(hall, [entry])
      else known.push(entry)
    }
  }
  return behind
}
