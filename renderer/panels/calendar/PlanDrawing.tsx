import {
  type KeyboardEvent,
  type PointerEvent,
  type ReactNode,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react'
import type { LocalTime } from '../../../core/schedule/calendar.ts'
import type { ScheduleProblem } from '../../../core/schedule/model.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { AxisHead } from './AxisHead.tsx'
import { absences } from './absences.ts'
import { type BarPlace, barId, laneKey, placeInLane, placeOfTask, tabStop, walked } from './bar-walk.ts'
import { LaneDrawing, type PlanLook } from './LaneDrawing.tsx'
import { type Bar, type Lane, laneHeight } from './lanes.ts'
import { Patterns } from './Patterns.tsx'
import { useShownPart } from './shown-part.ts'
import { hasNarrowDays, instantAt, placeOf, startsWeek, type TimeAxis } from './time-axis.ts'

const nameWidth = 172
/** Moves of the hand and of the keys go by quarters of an hour. */
const moveGrid = 15

interface PlanDrawingProps {
  readonly problem: ScheduleProblem
  readonly local: LocalTime
  readonly axis: TimeAxis
  readonly lanes: readonly Lane[]
  /** Beside the axis, above the names. */
  readonly corner: ReactNode
  readonly system: LengthUnitSystem
  readonly look: PlanLook
  /** Under the name of a lane: when the room is out of use. */
  readonly noteOf: (lane: Lane) => string
  /** Instant of now, or null where it lies outside of the plan. */
  readonly now: number | null
  readonly onPick: (taskId: string | null) => void
  /** Where tasks would begin that are pinned in what is tried and drawn as they are now. */
  readonly triedStarts: ReadonlyMap<string, number>
  readonly canMove: (taskId: string) => boolean
  /** A move under the hand: called for every new place; `isDone` when let go. */
  readonly onMove: (taskId: string, start: number, isDone: boolean) => void
  readonly onGiveUp: (draggedId: string | null) => void
}

interface Drag {
  readonly taskId: string
  readonly fromX: number
  readonly from: number
  readonly start: number
  readonly hasMoved: boolean
}

/** Lanes by person and by room on one time axis. Work is solid, drying is hatched, nights, breaks and days off are shaded. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { axis, lanes, look, problem, local } = props
  const [drag, setDrag] = useState<Drag | null>(null)
  const scroller = useRef<HTMLElement>(null)
  const { shown, onScroll } = useShownPart(scroller, axis, nameWidth)
  const away = useMemo(
    () => new Map(lanes.map((lane) => [lane, absences(problem, local, axis, lane)])),
    [problem, local, axis, lanes],
  )
  const stop = tabStop(lanes, look.pickedId, shown)
  const focus = useBarFocus(stop, lanes)
  const { pickedId } = look
  // Picked from the list of neighbours, a bar may lie outside of what is seen.
  const isPickedHere = useRef(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another pick brings the drawing there, not a better plan
  useEffect(() => {
    const place = pickedId === null || isPickedHere.current ? null : placeOfTask(lanes, pickedId)
    isPickedHere.current = false
    if (place !== null) bringIntoSight(scroller.current, axis, place)
  }, [pickedId])

  const ghosts = drag?.hasMoved ? new Map([[drag.taskId, drag.start]]) : props.triedStarts

  function pick(taskId: string) {
    isPickedHere.current = taskId !== pickedId
    props.onPick(taskId)
  }

  function begin(event: PointerEvent, bar: Bar) {
    const taskId = bar.task.id
    pick(taskId)
    if (!props.canMove(taskId) || event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    const { start } = bar.planned
    setDrag({ taskId, fromX: event.clientX, from: start, start, hasMoved: false })
  }

  function move(event: PointerEvent) {
    if (drag === null) return
    const by = event.clientX - drag.fromX
    if (!drag.hasMoved && Math.abs(by) < 4) return
    const start = instantAt(axis, placeOf(axis, drag.from) + by, moveGrid)
    if (start === drag.start && drag.hasMoved) return
    setDrag({ ...drag, start, hasMoved: true })
    props.onMove(drag.taskId, start, false)
  }

  function end() {
    if (drag?.hasMoved) props.onMove(drag.taskId, drag.start, true)
    setDrag(null)
  }

  function giveUp() {
    setDrag(null)
    props.onGiveUp(drag?.taskId ?? null)
  }

  function key(event: KeyboardEvent) {
    const taskId = event.currentTarget.getAttribute('data-task') ?? ''
    const row = event.currentTarget.closest('[data-lane]')?.getAttribute('data-lane') ?? ''
    const place = placeInLane(lanes, row, taskId)
    if (event.key === 'Escape') giveUp()
    else if (event.key === 'Enter' || event.key === ' ') props.onPick(taskId)
    else if (place === null || !event.key.startsWith('Arrow')) return
    else if (event.shiftKey) moveByKey(event.key, place.bar)
    else {
      const target = walked(lanes, place, event.key)
      if (target !== null) goTo(target)
    }
    event.preventDefault()
  }

  function moveByKey(pressed: string, { task, planned }: Bar) {
    const by = pressed === 'ArrowRight' ? moveGrid : pressed === 'ArrowLeft' ? -moveGrid : 0
    const start = props.triedStarts.get(task.id) ?? planned.start
    if (by !== 0 && props.canMove(task.id)) props.onMove(task.id, start + by, true)
  }

  function goTo(place: BarPlace) {
    pick(place.bar.task.id)
    bringIntoSight(scroller.current, axis, place)
    focus.want(barId(place.lane, place.bar.task.id))
  }

  return (
    <section
      ref={scroller}
      className="plan-scroll"
      onScroll={onScroll}
      onFocus={focus.onFocus}
      onBlur={focus.onBlur}
      onPointerMove={move}
      onPointerUp={end}
      onPointerCancel={giveUp}
      aria-label="The plan. Arrow keys go from task to task; Shift with left or right moves the picked task by a quarter of an hour."
    >
      <Patterns />
      <div className="plan-sheet" style={{ width: nameWidth + axis.width }}>
        <div className="plan-head">
          <div className="plan-corner" style={{ width: nameWidth }}>
            {props.corner}
          </div>
          <AxisHead axis={axis} system={props.system} />
        </div>
        <Background axis={axis} now={props.now} />
        {lanes.map((lane, index) => (
          <div key={laneKey(lane)}>
            {lanes[index - 1]?.kind === lane.kind ? null : (
              <div className="plan-group">
                <span>{lane.kind === 'person' ? 'People' : 'Rooms, in the order work begins'}</span>
              </div>
            )}
            <div
              className={`plan-lane plan-lane-${lane.kind}`}
              style={{ height: laneHeight(lane) + 1 }}
              data-lane={laneKey(lane)}
            >
              <div className="plan-name" style={{ width: nameWidth }} title={lane.name}>
                <span className="plan-name-main">{lane.name}</span>
                <span className="plan-name-note">{props.noteOf(lane)}</span>
              </div>
              <LaneDrawing
                axis={axis}
                lane={lane}
                look={look}
                absences={away.get(lane) ?? []}
                shown={shown}
                stop={stop}
                ghosts={ghosts}
                onBegin={begin}
                onKey={key}
              />
            </div>
          </div>
        ))}
      </div>
    </section>
  )
}

/** Nights, days off, the edges of days and the present moment, once behind all lanes. */
function Background({ axis, now }: { readonly axis: TimeAxis; readonly now: number | null }) {
  const narrow = hasNarrowDays(axis)
  return (
    <svg
      width={axis.width}
      className={narrow ? 'plan-background plan-background-narrow' : 'plan-background'}
      style={{ left: nameWidth }}
      aria-hidden="true"
    >
      {axis.parts.map((part) =>
        part.kind === 'hours' ? null : (
          <rect
            key={part.from}
            x={part.left}
            width={part.right - part.left}
            y={0}
            height="100%"
            className={`plan-${part.kind}`}
          />
        ),
      )}
      {axis.days.map((day, index) =>
        narrow && !startsWeek(axis, index) ? null : (
          <line key={day.date} x1={day.left} x2={day.left} y1={0} y2="100%" className="plan-day-line" />
        ),
      )}
      {now === null ? null : (
        <line x1={placeOf(axis, now)} x2={placeOf(axis, now)} y1={0} y2="100%" className="plan-now" />
      )}
    </svg>
  )
}

/** Scrolls just as far as it takes to see the begin of a bar beside the names and below the axis. */
function bringIntoSight(scroller: HTMLElement | null, axis: TimeAxis, { lane, bar }: BarPlace): void {
  const row = scroller?.querySelector<HTMLElement>(`[data-lane="${laneKey(lane)}"]`)
  if (!scroller || !row) return
  const [left, right] = [placeOf(axis, bar.from), placeOf(axis, bar.to)]
  const width = scroller.clientWidth - nameWidth
  const isSeen = left >= scroller.scrollLeft && Math.min(right, left + 120) <= scroller.scrollLeft + width
  if (!isSeen) scroller.scrollLeft = Math.max(0, left - width / 3)
  row.scrollIntoView({ block: 'nearest', inline: 'nearest' })
}

/** Keeps the focus on a bar that is drawn anew elsewhere, and gives it to one that is drawn a moment later. */
function useBarFocus(stop: string | null, lanes: readonly Lane[]) {
  const hasFocus = useRef(false)
  const wanted = useRef<string | null>(null)
  useEffect(() => {
    const isLost = hasFocus.current && document.activeElement === document.body
    const id = wanted.current ?? (isLost && lanes.length > 0 ? stop : null)
    const element = id === null ? null : document.getElementById(id)
    if (element === null) return
    wanted.current = null
    element.focus({ preventScroll: true })
  })
  return {
    want: (id: string) => {
      wanted.current = id
    },
    onFocus: () => {
      hasFocus.current = true
    },
    onBlur: () => {
      hasFocus.current = false
    },
  }
}
