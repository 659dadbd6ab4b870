import type { KeyboardEvent } from 'react'
import type { Bar, Lane } from './lanes.ts'

/** What walking over the bars of a plan by keys needs of the drawing. */
export interface BarWalk {
  readonly lanes: readonly Lane[]
  readonly onPick: (taskId: string | null) => void
  readonly canMove: (taskId: string) => boolean
  readonly onMove: (taskId: string, start: number, isDone: boolean) => void
}

/** Picked from the list of neighbours, a bar may lie outside of what is shown. */
export function showBar(id: string): void {
  document.getElementById(id)?.scrollIntoView({ block: 'nearest', inline: 'nearest' })
}

/** Tab stops once in the drawing: at the picked task, else at the first one. */
export function tabStop(lanes: readonly Lane[], pickedId: string | null): string | null {
  const bars = lanes.flatMap((lane) => firstBars(lane).map((bar) => ({ lane, bar })))
  const stop = bars.find(({ bar }) => bar.task.id === pickedId) ?? bars[0]
  return stop === undefined ? null : barId(stop.lane, stop.bar.task.id)
}

export function barId(lane: Lane, taskId: string): string {
  return `bar-${lane.kind}-${lane.id}-${taskId}`
}

/** Arrow keys walk over the bars: along a lane by time, across lanes to the bar nearest in time. */
export function walkBars(event: KeyboardEvent, props: BarWalk): void {
  const element = event.target instanceof Element ? event.target.closest('[data-task]') : null
  const taskId = element?.getAttribute('data-task') ?? null
  const isArrow = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown'].includes(event.key)
  if (taskId === null || element === null || !isArrow) return
  event.preventDefault()
  const laneIndex = props.lanes.findIndex((lane) => element.id === barId(lane, taskId))
  const lane = props.lanes[laneIndex]
  const bar = lane?.bars.find((each) => each.task.id === taskId && each.kind === 'work')
  if (lane === undefined || bar === undefined) return
  if (event.shiftKey) {
    moveByKey(event, props, bar)
    return
  }
  const target =
    event.key === 'ArrowLeft' || event.key === 'ArrowRight'
      ? beside(lane, bar, event.key === 'ArrowRight')
      : across(props.lanes, laneIndex, bar, event.key === 'ArrowDown' ? 1 : -1)
  if (target === null) return
  props.onPick(target.bar.task.id)
  // The bar takes the focus once it has been drawn as the picked one.
  window.requestAnimationFrame(() => {
    const id = barId(target.lane, target.bar.task.id)
    document.getElementById(id)?.focus()
    showBar(id)
  })
}

function moveByKey(event: KeyboardEvent, props: BarWalk, bar: Bar): void {
  if (!props.canMove(bar.task.id) || (event.key !== 'ArrowLeft' && event.key !== 'ArrowRight')) return
  const by = event.key === 'ArrowRight' ? 15 : -15
  props.onMove(bar.task.id, bar.planned.start + by, true)
}

function firstBars(lane: Lane): readonly Bar[] {
  return lane.bars
    .filter((bar) => bar.kind === 'work' && bar.piece === 0)
    .toSorted((one, other) => one.from - other.from)
}

function beside(lane: Lane, bar: Bar, isLater: boolean): { lane: Lane; bar: Bar } | null {
  const bars = firstBars(lane)
  const index = bars.findIndex((each) => each.task.id === bar.task.id)
  const next = bars[index + (isLater ? 1 : -1)]
  return next === undefined ? null : { lane, bar: next }
}

function across(
  lanes: readonly Lane[],
  index: number,
  bar: Bar,
  direction: 1 | -1,
): { lane: Lane; bar: Bar } | null {
  for (let at = index + direction; at >= 0 && at < lanes.length; at += direction) {
    const lane = lanes[at]
    if (lane === undefined) return null
    const nearest = firstBars(lane).toSorted(
      (one, other) => Math.abs(one.from - bar.from) - Math.abs(other.from - bar.from),
    )[0]
    if (nearest !== undefined) return { lane, bar: nearest }
  }
  return null
}
