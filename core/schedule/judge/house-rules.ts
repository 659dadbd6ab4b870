import { isBegun } from '../model.ts'
import type { Court, PlacedTask } from './court.ts'
import { entriesByRoom, stretchesOf, usableFrom } from './room-use.ts'
import type { Violation } from './violation.ts'

/** First common minute of two stretches of time. */
function firstCommon(oneFrom: number, oneTo: number, otherFrom: number, otherTo: number): number | undefined {
  const at = Math.max(oneFrom, otherFrom)
  return at < Math.min(oneTo, otherTo) ? at : undefined
}

/** Somebody with every skill that is asked for in a room leads it, and at most one more works in it; what somebody placed is not counted. */
export function leadRule({ problem, person }: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  if (!problem.rules.leadAndOneMore) return []
  return [...entriesByRoom(entries)].flatMap(([room, inside]): readonly Violation[] => {
    const open = inside.filter(({ task, planned }) => task.state.kind === 'open' && planned.people.length > 0)
    const skills = new Set(open.flatMap(({ task }) => task.skills))
    const canLead = (id: string): boolean => [...skills].every((skill) => person(id)?.skills.includes(skill))
    if (!problem.people.some(({ id }) => canLead(id))) return []
    const people = [...new Set(open.flatMap(({ planned }) => planned.people))]
    if (people.length <= 1 && people.every(canLead)) return []
    const isLed = people.length === 2 && people.some(canLead)
    // Whoever helps with part of what a lead would do alone is led by somebody who need not be seen in the plan.
    const isHelperAlone = people.length === 1
    return isLed || isHelperAlone
      ? []
      : [{ rule: 'leadAndOneMore', room, tasks: open.map(({ task }) => task.id) }]
  })
}

/** No dust from begin to end of a task while something is wet in the same or an openly connected room. */
export function dustRule(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  if (!court.problem.rules.noDustNearWet) return []
  const wets = entries.filter(
    ({ task, planned }) => task.effects.touchDry !== null && planned.end > planned.start,
  )
  return entries.flatMap((dusty) => {
    const { room, effects } = dusty.task
    if (!effects.dusty || room === null || dusty.planned.end === dusty.planned.start) return []
    return wets.flatMap((wet): readonly Violation[] => {
      if (wet === dusty || (isBegun(wet.task) && isBegun(dusty.task)) || wet.task.room === null) return []
      if (!court.airMeets(room, wet.task.room)) return []
      const wetUntil = wet.planned.end + (wet.task.effects.touchDry ?? 0)
      const at = firstCommon(dusty.planned.start, dusty.planned.end, wet.planned.start, wetUntil)
      return at === undefined ? [] : [{ rule: 'dustNearWet', tasks: [wet.task.id, dusty.task.id], at }]
    })
  })
}

/**
 * No fumes in the hours of sleep in a room that is open to a bedroom in use. Nobody sleeps in a room that is worked in itself: it is out of
 * use.
 */
export function fumesRule(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  const hours = court.problem.rules.noFumesWhileSleeping
  if (hours === null) return []
  const bedrooms = court.problem.rooms.filter((room) => room.sleeping)
  return entries.flatMap(({ task, planned }): readonly Violation[] => {
    const { fumesFor } = task.effects
    const room = bedrooms.find(
      ({ id }) => id !== task.room && task.room !== null && court.airMeets(id, task.room),
    )
    if (fumesFor === null || room === undefined || isBegun(task)) return []
    const at = firstWithin(court, hours, planned.start, planned.end + fumesFor)
    return at === undefined ? [] : [{ rule: 'fumesWhileSleeping', tasks: [task.id], room: room.id, at }]
  })
}

/** First instant of a stretch within hours of every day, over midnight where they end before they begin. */
function firstWithin(
  { local }: Court,
  hours: { readonly from: number; readonly to: number },
  from: number,
  to: number,
): number | undefined {
  if (local === null) return undefined
  for (let day = local.dayAt(from) - 1; day <= local.dayAt(to); day++) {
    const end = local.instantOf(hours.from < hours.to ? day : day + 1, hours.to)
    const at = firstCommon(from, to, local.instantOf(day, hours.from), end)
    if (at !== undefined) return at
  }
  return undefined
}

/** At most so many rooms out of use on any day; rooms in which nothing is left to plan do not break it alone. */
export function roomsOutOfUseRule(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  const limit = court.problem.rules.roomsOutOfUse
  if (limit === null) return []
  const today = court.dayAt(court.problem.clock.start)
  const perDay = new Map<number, { rooms: string[]; isOpen: boolean }>()
  for (const [room, inside] of entriesByRoom(entries)) {
    const isOpen = inside.some(({ isFact }) => !isFact)
    for (const { first, last } of stretchesOf(court, inside)) {
      for (let day = Math.max(first, today); day <= last; day++) {
        const known = perDay.get(day) ?? { rooms: [], isOpen: false }
        known.rooms.push(room)
        known.isOpen ||= isOpen
        perDay.set(day, known)
      }
    }
  }
  const over = [...perDay].find(([, { rooms, isOpen }]) => rooms.length > limit && isOpen)
  if (over === undefined) return []
  const [day, { rooms }] = over
  const at = court.local?.instantOf(day, 720) ?? day
  const inside = entries.filter(({ task, isFact }) => rooms.includes(task.room ?? '') && !isFact)
  return [{ rule: 'roomsOutOfUse', tasks: inside.map(({ task }) => task.id), at }]
}

/** A room is done with and dry when it was promised back, and nothing closes it in hours it is needed every day. */
export function roomBackRules(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  if (!court.problem.rules.roomBackInTime) return []
  return entries.flatMap((entry): readonly Violation[] => {
    const { task, planned } = entry
    const room = court.room(task.room)
    if (room === undefined || isBegun(task)) return []
    const { closedFor } = task.effects
    const isLate = room.backBy !== null && usableFrom([entry]) > room.backBy
    const at =
      room.neededDaily === null || closedFor === null
        ? undefined
        : firstWithin(court, room.neededDaily, planned.start, planned.end + closedFor)
    return [
      ...(isLate
        ? [{ rule: 'roomBack', tasks: [task.id], room: room.id, at: room.backBy ?? 0 } as const]
        : []),
      ...(at === undefined ? [] : [{ rule: 'neededDaily', tasks: [task.id], room: room.id, at } as const]),
    ]
  })
}

/** Nobody is at work behind a hall that is closed, and halls are begun when everything behind them is done that is no way out itself. */
export function wayOutRules(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  const { rooms, rules } = court.problem
  if (!rules.wayOutKeptOpen && !rules.hallsLast) return []
  const ways = new Set(rooms.flatMap(({ reachedThrough }) => reachedThrough))
  const byRoom = entriesByRoom(entries)
  return [...ways].flatMap((hallId) => {
    const halls = byRoom.get(hallId) ?? []
    const behind = rooms
      .filter((room) => room.reachedThrough.includes(hallId))
      .flatMap(({ id }) => byRoom.get(id) ?? [])
    const lasts = behind.filter(({ task }) => !ways.has(task.room ?? ''))
    const end = lasts.reduce((latest, { planned }) => Math.max(latest, planned.end), 0)
    const last = lasts.find(({ planned }) => planned.end === end)
    return halls.flatMap((hall): readonly Violation[] => {
      const { closedFor } = hall.task.effects
      const isEarly = rules.hallsLast && last !== undefined && !isBegun(hall.task) && hall.planned.start < end
      const shutIn =
        !rules.wayOutKeptOpen || closedFor === null
          ? []
          : behind.flatMap((other): readonly Violation[] => {
              if (isBegun(hall.task) && isBegun(other.task)) return []
              const { start, end: until } = hall.planned
              const at = firstCommon(other.planned.start, other.planned.end, start, until + closedFor)
              return at === undefined ? [] : [{ rule: 'wayOut', tasks: [hall.task.id, other.task.id], at }]
            })
      return isEarly ? [{ rule: 'hallsLast', tasks: [last.task.id, hall.task.id] }, ...shutIn] : shutIn
    })
  })
}
