import { present } from '../../lists/lists.ts'
import type { TaskId } from '../model.ts'
import { type Court, type PlacedTask, workOf } from './court.ts'
import { daysGivenBack, daysUsed, entriesByRoom } from './room-use.ts'
import type { Violation } from './violation.ts'

/** A piece of somebody's day. */
interface Stop {
  readonly entry: PlacedTask
  readonly start: number
  readonly end: number
  readonly isFirstPiece: boolean
}

/** Nobody is at two places at once. */
export function onePlaceRule(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  return [...stopsByPerson(entries)]
    .flatMap(([person, stops]) =>
      stops.flatMap((stop, index): readonly Violation[] => {
        const before = stops[index - 1]
        if (before === undefined || before.end <= stop.start) return []
        return [
          {
            rule: 'onePlaceAtATime',
            person,
            tasks: [before.entry.task.id, stop.entry.task.id],
            at: stop.start,
          },
        ]
      }),
    )
    .filter(() => court !== undefined)
}

function stopsByPerson(entries: readonly PlacedTask[]): ReadonlyMap<string, readonly Stop[]> {
  const byPerson = new Map<string, Stop[]>()
  for (const entry of entries) {
    if (entry.isFact) continue
    for (const person of entry.planned.people) {
      const own = byPerson.get(person) ?? []
      byPerson.set(person, own)
      for (const [index, { start, end }] of entry.planned.segments.entries())
        own.push({ entry, start, end, isFirstPiece: index === 0 })
    }
  }
  for (const stops of byPerson.values())
    stops.sort((one, other) => one.start - other.start || one.end - other.end)
  return byPerson
}

/**
 * Each task is given the minutes of its work and of what goes before it that day: moving in from another room, changing product, setting a
 * room up once more that was given back. Of two people the one with more before it counts; pins and work under way may have more.
 */
export function timeSpentRule(court: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  const { problem } = court
  const grid = problem.gridMinutes
  const before = minutesBefore(court, entries)
  const again = setUpAgain(court, entries)
  const missed = again.filter(({ tasks, minutes }) => !tasks.some((id) => spares(id) >= minutes(id)))
  function spares(id: TaskId): number {
    const entry = present(entries.find(({ task }) => task.id === id))
    return spentOn(entry) - workOf(entry, grid) - (before.get(id) ?? 0)
  }
  const mayBeMore = new Map(
    again.flatMap(({ tasks, minutes }) => tasks.map((id) => [id, minutes(id)] as const)),
  )
  const wrong = entries.flatMap((entry): readonly Violation[] => {
    const { task, isFact } = entry
    if (isFact) return []
    const more = spares(task.id)
    const most =
      task.state.kind === 'open' ? 0 : problem.spending.moving + problem.spending.changingProduct + 2 * grid
    const isRight = (more >= 0 && more <= most) || more === mayBeMore.get(task.id)
    return isRight ? [] : [{ rule: 'timeSpent', tasks: [task.id], minutes: more }]
  })
  return [
    ...wrong,
    ...missed.map(({ tasks }): Violation => ({ rule: 'timeSpent', tasks: tasks.slice(0, 1) })),
  ]
}

function spentOn({ planned }: PlacedTask): number {
  return planned.segments.reduce((sum, { start, end }) => sum + end - start, 0)
}

/** Minutes of moving in and changing product at each task, of the one of its people who needs more. */
function minutesBefore(court: Court, entries: readonly PlacedTask[]): ReadonlyMap<TaskId, number> {
  const { moving, changingProduct } = court.problem.spending
  const grid = court.problem.gridMinutes
  const onGrid = (minutes: number): number => Math.ceil(minutes / grid) * grid
  const needed = new Map<TaskId, number>()
  for (const stops of stopsByPerson(entries).values()) {
    let last: Stop | undefined
    let product: string | null = null
    for (const stop of stops) {
      const { task } = stop.entry
      const isSameDay = last !== undefined && court.dayAt(last.start) === court.dayAt(stop.start)
      if (!isSameDay) product = last?.entry === stop.entry ? task.product : null
      const isNew = isSameDay && last?.entry !== stop.entry
      const moves = isNew && last?.entry.task.room !== task.room ? onGrid(moving) : 0
      const changes = isNew && product !== null && task.product !== null && product !== task.product
      const minutes = moves + (changes ? onGrid(changingProduct) : 0)
      needed.set(task.id, Math.max(needed.get(task.id) ?? 0, minutes))
      product = task.product ?? product
      last = stop
    }
  }
  return needed
}

/** For each time a room is begun again after it was given back: the tasks that begin it, one of which sets it up once more. */
function setUpAgain(
  court: Court,
  entries: readonly PlacedTask[],
): readonly { readonly tasks: readonly TaskId[]; readonly minutes: (task: TaskId) => number }[] {
  const grid = court.problem.gridMinutes
  return [...entriesByRoom(entries)].flatMap(([room, inside]) => {
    const work = court.room(room)?.setUpAgain ?? 0
    if (work === 0 || court.local === null) return []
    const used = [...daysUsed(court, inside)].sort((one, other) => one - other)
    return used.flatMap((day, index) => {
      const before = used[index - 1]
      if (before === undefined || day - before <= daysGivenBack) return []
      const beginning = inside.filter(
        ({ task, planned }) =>
          task.state.kind === 'open' && court.dayAt(planned.start) === day && planned.people.length > 0,
      )
      const pinned = inside.some(
        ({ task, planned }) => task.state.kind !== 'open' && court.dayAt(planned.start) === day,
      )
      if (beginning.length === 0 || pinned) return []
      const start = Math.min(...beginning.map(({ planned }) => planned.start))
      const first = beginning.filter(({ planned }) => planned.start === start)
      const size = new Map(first.map(({ task, planned }) => [task.id, planned.people.length]))
      return [
        {
          tasks: first.map(({ task }) => task.id),
          minutes: (task: TaskId) => Math.ceil(work / (size.get(task) ?? 1) / grid) * grid,
        },
      ]
    })
  })
}

/** Drying, mere order and open times, in elapsed minutes. */
export function waitRules({ problem }: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  const byId = new Map(entries.map((entry) => [entry.task.id, entry]))
  return problem.links.flatMap(({ from, to, measuredFrom, atLeast, atMost }): readonly Violation[] => {
    const [early, late] = [byId.get(from), byId.get(to)]
    if (early === undefined || late === undefined || late.isFact || late.task.state.kind === 'started')
      return []
    const wait = late.planned.start - (measuredFrom === 'end' ? early.planned.end : early.planned.start)
    const tasks = [from, to]
    return [
      ...(atLeast !== null && wait < atLeast
        ? [{ rule: 'minimumWait', tasks, minutes: atLeast - wait } as const]
        : []),
      ...(atMost !== null && wait > atMost
        ? [{ rule: 'maximumWait', tasks, minutes: wait - atMost } as const]
        : []),
    ]
  })
}

/** Pooled resources, and people in small rooms. */
export function capacityRules({ problem }: Court, entries: readonly PlacedTask[]): readonly Violation[] {
  const resources = problem.resources.flatMap(({ id, capacity }): readonly Violation[] => {
    const held = ({ task }: PlacedTask): number =>
      task.demands.reduce((sum, demand) => (demand.resource === id ? sum + demand.amount : sum), 0)
    const over = firstOverload(entries, capacity, held)
    return over === undefined ? [] : [{ rule: 'pooledResource', ...over }]
  })
  const byRoom = entriesByRoom(entries)
  const rooms = problem.rooms.flatMap(({ id, peopleAtOnce }): readonly Violation[] => {
    if (peopleAtOnce === null) return []
    const over = firstOverload(byRoom.get(id) ?? [], peopleAtOnce, ({ planned }) => planned.people.length)
    return over === undefined ? [] : [{ rule: 'roomCapacity', room: id, ...over }]
  })
  return [...resources, ...rooms]
}

function firstOverload(
  entries: readonly PlacedTask[],
  capacity: number,
  amountOf: (entry: PlacedTask) => number,
) {
  const changes = entries
    .filter(({ isFact }) => !isFact)
    .flatMap((entry) => {
      const amount = amountOf(entry)
      return amount === 0
        ? []
        : entry.planned.segments.flatMap(({ start, end }) => [
            { at: start, amount, task: entry.task.id },
            { at: end, amount: -amount, task: entry.task.id },
          ])
    })
    .sort((one, other) => one.at - other.at || one.amount - other.amount)
  const holding = new Set<TaskId>()
  let used = 0
  for (const { at, amount, task } of changes) {
    used += amount
    if (amount > 0) holding.add(task)
    else holding.delete(task)
    if (used > capacity) return { at, tasks: [...holding] }
  }
  return undefined
}
