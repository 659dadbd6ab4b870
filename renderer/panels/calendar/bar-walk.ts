import type { Bar, Lane, Span } from './lanes.ts'

/** A task where it stands in one lane; tasks stand in the lane of their room and of each of their people. */
export interface BarPlace {
  readonly lane: Lane
  readonly bar: Bar
}

export function laneKey({ kind, id }: Lane): string {
  return `${kind}-${id}`
}

export function barId(lane: Lane, taskId: string): string {
  return `bar-${laneKey(lane)}-${taskId}`
}

/** Tab stops once in the drawing: at the picked task where it is drawn, else at the first one drawn. */
export function tabStop(lanes: readonly Lane[], pickedId: string | null, shown: Span): string | null {
  const drawn = lanes.flatMap((lane) =>
    firstBars(lane)
      .filter((bar) => bar.from <= shown.to && bar.to >= shown.from)
      .map((bar): BarPlace => ({ lane, bar })),
  )
  const stop = drawn.find(({ bar }) => bar.task.id === pickedId) ?? drawn[0]
  return stop === undefined ? null : barId(stop.lane, stop.bar.task.id)
}

/** Where a task stands: in its room's lane, else in the first that has it. */
export function placeOfTask(lanes: readonly Lane[], taskId: string): BarPlace | null {
  const places = lanes.flatMap((lane) => barPlace(lane, taskId) ?? [])
  return places.find(({ lane }) => lane.kind === 'room') ?? places[0] ?? null
}

/** The bar of a task in the lane of a key; any piece of it leads to the first. */
export function placeInLane(lanes: readonly Lane[], key: string, taskId: string): BarPlace | null {
  const lane = lanes.find((each) => laneKey(each) === key)
  return lane === undefined ? null : barPlace(lane, taskId)
}

function barPlace(lane: Lane, taskId: string): BarPlace | null {
  const bar = firstBars(lane).find((each) => each.task.id === taskId)
  return bar === undefined ? null : { lane, bar }
}

/** Where an arrow key leads: along a lane by time, across lanes to the bar nearest in time; null at the ends. */
export function walked(lanes: readonly Lane[], from: BarPlace, key: string): BarPlace | null {
  switch (key) {
    case 'ArrowLeft':
      return beside(from, -1)
    case 'ArrowRight':
      return beside(from, 1)
    case 'ArrowUp':
      return across(lanes, from, -1)
    case 'ArrowDown':
      return across(lanes, from, 1)
    default:
      return null
  }
}

function firstBars(lane: Lane): readonly Bar[] {
  return lane.bars.filter((bar) => bar.piece === 0).toSorted((one, other) => one.from - other.from)
}

function beside({ lane, bar }: BarPlace, by: 1 | -1): BarPlace | null {
  const bars = firstBars(lane)
  const next = bars[bars.findIndex((each) => each.task.id === bar.task.id) + by]
  return next === undefined ? null : { lane, bar: next }
}

function across(lanes: readonly Lane[], { lane, bar }: BarPlace, by: 1 | -1): BarPlace | null {
  for (let at = lanes.indexOf(lane) + by; at >= 0 && at < lanes.length; at += by) {
    const next = lanes[at]
    const [nearest] = next === undefined ? [] : nearestFirst(next, bar.from)
    if (next !== undefined && nearest !== undefined) return { lane: next, bar: nearest }
  }
  return null
}

function nearestFirst(lane: Lane, instant: number): readonly Bar[] {
  return firstBars(lane).toSorted(
    (one, other) => Math.abs(one.from - instant) - Math.abs(other.from - instant),
  )
}
