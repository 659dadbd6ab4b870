import { type KeyboardEvent, type PointerEvent, useState } from 'react'
import { type BarPlace, placeInLane, walked } from './bar-walk.ts'
import type { Bar, Lane } from './lanes.ts'
import { instantAt, placeOf, type TimeAxis } from './time-axis.ts'

/** Moves by the pointer and by keys go by quarters of an hour. */
const moveGrid = 15

interface Drag {
  readonly taskId: string
  readonly fromX: number
  readonly from: number
  readonly start: number
  readonly hasMoved: boolean
}

/** What the pointer and the keys may ask of the plan. */
export interface PlanActs {
  /** Where tasks would begin that are pinned in what is tried and drawn as they are now. */
  readonly triedStarts: ReadonlyMap<string, number>
  readonly canMove: (taskId: string) => boolean
  /** A move while the pointer drags: called for every new place; `isDone` when let go. */
  readonly onMove: (taskId: string, start: number, isDone: boolean) => void
  readonly onGiveUp: (draggedId: string | null) => void
}

/** A bar that is dragged: `ghosts` are where tasks would begin, by task. */
export function useDrag(axis: TimeAxis, acts: PlanActs, pick: (taskId: string) => void) {
  const [drag, setDrag] = useState<Drag | null>(null)
  return {
    ghosts: drag?.hasMoved ? new Map([[drag.taskId, drag.start]]) : acts.triedStarts,
    begin(event: PointerEvent, bar: Bar): void {
      const taskId = bar.task.id
      pick(taskId)
      if (!acts.canMove(taskId) || event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      const { start } = bar.planned
      setDrag({ taskId, fromX: event.clientX, from: start, start, hasMoved: false })
    },
    move(event: PointerEvent): void {
      if (drag === null) return
      const by = event.clientX - drag.fromX
      if (!drag.hasMoved && Math.abs(by) < 4) return
      const start = instantAt(axis, placeOf(axis, drag.from) + by, moveGrid)
      if (start === drag.start && drag.hasMoved) return
      setDrag({ ...drag, start, hasMoved: true })
      acts.onMove(drag.taskId, start, false)
    },
    end(): void {
      if (drag?.hasMoved) acts.onMove(drag.taskId, drag.start, true)
      setDrag(null)
    },
    giveUp(): void {
      setDrag(null)
      acts.onGiveUp(drag?.taskId ?? null)
    },
  }
}

/** Keys on a bar: arrows walk, with Shift they move the task, Enter picks, Escape gives up. */
export function barKeys(
  lanes: readonly Lane[],
  acts: PlanActs,
  does: {
    readonly pick: (taskId: string) => void
    readonly goTo: (place: BarPlace) => void
    readonly giveUp: () => void
  },
): (event: KeyboardEvent) => void {
  return (event) => {
    const taskId = event.currentTarget.getAttribute('data-task') ?? ''
    const row = event.currentTarget.closest('[data-lane]')?.getAttribute('data-lane') ?? ''
    const place = placeInLane(lanes, row, taskId)
    if (event.key === 'Escape') does.giveUp()
    else if (event.key === 'Enter' || event.key === ' ') does.pick(taskId)
    else if (place === null || !event.key.startsWith('Arrow')) return
    else if (event.shiftKey) moveByKey(event.key, place.bar, acts)
    else {
      const target = walked(lanes, place, event.key)
      if (target !== null) does.goTo(target)
    }
    event.preventDefault()
  }
}

function moveByKey(pressed: string, { task, planned }: Bar, acts: PlanActs): void {
  const by = pressed === 'ArrowRight' ? moveGrid : pressed === 'ArrowLeft' ? -moveGrid : 0
  const start = acts.triedStarts.get(task.id) ?? planned.start
  if (by !== 0 && acts.canMove(task.id)) acts.onMove(task.id, start + by, true)
}
