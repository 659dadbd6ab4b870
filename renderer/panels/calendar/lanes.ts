import type { Job } from '../../../core/project/job.ts'
import { entriesOf, type PlacedTask as Placed } from '../../../core/schedule/judge/court.ts'
import { usableFrom } from '../../../core/schedule/judge/room-use.ts'
import type { Plan, PlannedTask, ScheduleProblem, Task } from '../../../core/schedule/model.ts'
import type { LocalTime } from '../../../core/time/local-time.ts'

/** A stretch of time in epoch minutes. */
export interface Span {
  readonly from: number
  readonly to: number
}

/** An unbroken piece of work to draw in a lane. */
export interface Bar extends Span {
  readonly task: Task
  readonly planned: PlannedTask
  /** Which line of its lane, 0 at the top. */
  readonly line: number
  /** Which piece of its task, between breaks and nights; the first takes the focus. */
  readonly piece: number
}

/** Work one after another in the same room, for a name above it. */
interface Stay extends Span {
  readonly roomId: string | null
}

export interface Lane {
  readonly id: string
  readonly kind: 'person' | 'room'
  readonly name: string
  readonly lines: number
  readonly bars: readonly Bar[]
  /** Of a person: in which room, from when to when within a day. */
  readonly stays: readonly Stay[]
  /** Of a person: on another job of the book. */
  readonly elsewhere: readonly Span[]
  /** Of a room: while anything in it is drying. */
  readonly wet: readonly Span[]
  /** Of a room: while the household cannot use it; null where it stays in use. */
  readonly outOfUse: Span | null
  /** Of a room: when it was promised back, in epoch minutes. */
  readonly backBy: number | null
}

/** Lanes by person, then by room in the order in which work there begins. */
export function lanesOf(
  job: Job,
  { problem, plan }: { readonly problem: ScheduleProblem; readonly plan: Plan },
  local: LocalTime,
): readonly Lane[] {
  const placed = entriesOf(problem, plan).filter(({ planned }) => planned.segments.length > 0)
  const people = problem.people.map(({ id, busy }) => ({
    ...personLane(
      id,
      job.crew[id]?.name ?? id,
      placed.filter(({ planned }) => planned.people.includes(id)),
      local,
    ),
    elsewhere: busy.map(({ start, end }) => ({ from: start, to: end })),
  }))
  const rooms = problem.rooms
    .map(({ id, backBy }) => ({
      ...roomLane(
        id,
        job.rooms[id]?.name ?? id,
        placed.filter(({ task }) => task.room === id),
      ),
      backBy,
    }))
    .filter((lane) => lane.bars.length > 0)
    .toSorted((one, other) => startOf(one) - startOf(other))
  return [...people, ...rooms]
}

function startOf(lane: Lane): number {
  return Math.min(...lane.bars.map((bar) => bar.from))
}

function personLane(
  id: string,
  name: string,
  placed: readonly Placed[],
  local: LocalTime,
): Omit<Lane, 'elsewhere'> {
  const bars = placed.flatMap((each) => barsOf(each, 0)).toSorted((one, other) => one.from - other.from)
  return {
    id,
    kind: 'person',
    name,
    lines: 1,
    bars,
    stays: staysOf(bars, local),
    wet: [],
    outOfUse: null,
    backBy: null,
  }
}

function roomLane(id: string, name: string, placed: readonly Placed[]): Omit<Lane, 'backBy'> {
  const ends: number[] = []
  const bars = placed
    .toSorted((one, other) => one.planned.start - other.planned.start)
    .flatMap((each) => {
      const free = ends.findIndex((end) => end <= each.planned.start)
      const line = free < 0 ? ends.length : free
      ends[line] = each.planned.end
      return barsOf(each, line)
    })
  return {
    id,
    kind: 'room',
    name,
    lines: Math.max(1, ends.length),
    bars,
    stays: [],
    elsewhere: [],
    wet: united(placed.flatMap(dryingSpans)),
    outOfUse: outOfUseOf(placed),
  }
}

function barsOf({ task, planned }: Placed, line: number): readonly Bar[] {
  return planned.segments.map(({ start, end }, piece) => ({
    task,
    planned,
    from: start,
    to: end,
    line,
    piece,
  }))
}

/** Work in one room joins over breaks, not over nights. */
function staysOf(bars: readonly Bar[], local: LocalTime): readonly Stay[] {
  const stays: Stay[] = []
  for (const { from, to, task } of bars) {
    const last = stays.at(-1)
    const goesOn = last?.roomId === task.room && local.dayAt(last.from) === local.dayAt(from)
    if (last !== undefined && goesOn) stays[stays.length - 1] = { ...last, to }
    else stays.push({ from, to, roomId: task.room })
  }
  return stays
}

/** While a task's surfaces dry: from the end of the work on. */
export function dryingSpans({ task, planned }: Pick<Placed, 'task' | 'planned'>): readonly Span[] {
  const { touchDry } = task.effects
  return touchDry === null || touchDry === 0 ? [] : [{ from: planned.end, to: planned.end + touchDry }]
}

function outOfUseOf(placed: readonly Placed[]): Span | null {
  if (placed.every(({ isFact }) => isFact)) return null
  return { from: Math.min(...placed.map(({ planned }) => planned.start)), to: usableFrom(placed) }
}

/** Stretches that touch or overlap made one. */
function united(spans: readonly Span[]): readonly Span[] {
  const joined: Span[] = []
  for (const span of spans.toSorted((one, other) => one.from - other.from)) {
    const last = joined.at(-1)
    if (last !== undefined && span.from <= last.to) {
      joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, span.to) }
    } else joined.push(span)
  }
  return joined
}

export const lineHeight = 19
/** Above the bars of a person stands the room they are in. */
export const stayHeight = 14
const above = 4
const below = 8

/** Where the bars of a line begin, and how high a lane is, in pixels. */
export function lineTop(lane: Lane, line: number): number {
  return above + (lane.kind === 'person' ? stayHeight : 0) + line * lineHeight
}

export function laneHeight(lane: Lane): number {
  return Math.max(36, lineTop(lane, lane.lines) + below)
}
