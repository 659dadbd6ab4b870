import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from 'react'
import type { LocalTime } from '../../../core/schedule/calendar.ts'
import type { ScheduleProblem } from '../../../core/schedule/model.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { dateWords } from '../../../core/work-order/date-words.ts'
import { absences } from './absences.ts'
import { barId, showBar, tabStop, walkBars } from './bar-walk.ts'
import type { Bar, Lane } from './lanes.ts'
import { instantAt, placeOf, type TimeAxis } from './time-axis.ts'

const lineHeight = 26
const lanePadding = 4
const nameWidth = 150

export interface PlanDrawingProps {
  readonly problem: ScheduleProblem
  readonly local: LocalTime
  readonly axis: TimeAxis
  readonly lanes: readonly Lane[]
  readonly system: LengthUnitSystem
  readonly titleOf: (taskId: string) => string
  /** Shown in a bar: the step where the lane is a room, the room where it is a person. */
  readonly shortOf: (taskId: string, lane: Lane) => string
  readonly pickedId: string | null
  /** Tasks joined to the picked one: what it waits for and what waits for it. */
  readonly joined: ReadonlySet<string>
  readonly pinned: ReadonlySet<string>
  /** Instant of now, or null where it lies outside of the plan. */
  readonly now: number | null
  readonly onPick: (taskId: string | null) => void
  readonly canMove: (taskId: string) => boolean
  /** A move under the hand: called for every new place; `isDone` when let go. */
  readonly onMove: (taskId: string, start: number, isDone: boolean) => void
  readonly onGiveUp: (draggedId: string | null) => void
  readonly grid: number
}

interface Drag {
  readonly taskId: string
  readonly fromX: number
  readonly start: number
  readonly at: number
  readonly hasMoved: boolean
}

/** Lanes by person and by room on one time axis. Work is solid, drying is hatched, nights, breaks and days off are shaded. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { axis, lanes, system } = props
  const [drag, setDrag] = useState<Drag | null>(null)
  const firstRoom = lanes.findIndex((lane) => lane.kind === 'room')
  const stop = tabStop(lanes, props.pickedId)
  useEffect(() => {
    if (stop !== null && props.pickedId !== null) showBar(stop)
  }, [stop, props.pickedId])
  // A better plan may draw the focused bar anew in another lane; the focus follows it there.
  const hasFocus = useRef(false)
  useEffect(() => {
    const isLost = hasFocus.current && document.activeElement === document.body
    if (isLost && stop !== null && lanes.length > 0) document.getElementById(stop)?.focus()
  }, [stop, lanes])

  function begin(event: PointerEvent, bar: Bar) {
    props.onPick(bar.task.id)
    if (!props.canMove(bar.task.id) || bar.kind !== 'work' || event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    setDrag({
      taskId: bar.task.id,
      fromX: event.clientX,
      start: bar.planned.start,
      at: bar.planned.start,
      hasMoved: false,
    })
  }

  function move(event: PointerEvent) {
    if (drag === null) return
    const by = event.clientX - drag.fromX
    if (!drag.hasMoved && Math.abs(by) < 4) return
    const at = instantAt(axis, placeOf(axis, drag.start) + by, props.grid)
    if (at === drag.at && drag.hasMoved) return
    setDrag({ ...drag, at, hasMoved: true })
    props.onMove(drag.taskId, at, false)
  }

  function end() {
    if (drag?.hasMoved) props.onMove(drag.taskId, drag.at, true)
    setDrag(null)
  }

  function giveUp() {
    setDrag(null)
    props.onGiveUp(drag?.taskId ?? null)
  }

  return (
    <section
      className="plan-scroll"
      onFocus={() => {
        hasFocus.current = true
      }}
      onBlur={() => {
        hasFocus.current = false
      }}
      aria-label="The plan. Arrow keys go from task to task; Shift with left or right moves the picked task by a quarter of an hour."
    >
      <div className="plan-sheet" style={{ width: nameWidth + axis.width }}>
        <div className="plan-head">
          <div className="plan-corner" style={{ width: nameWidth }} />
          <AxisHead axis={axis} system={system} />
        </div>
        {lanes.map((lane, index) => (
          <div key={`${lane.kind}-${lane.id}`} className={`plan-lane plan-lane-${lane.kind}`}>
            <div className="plan-name" style={{ width: nameWidth }}>
              {index === 0 ? <span className="plan-kind">People</span> : null}
              {index === firstRoom ? <span className="plan-kind">Rooms</span> : null}
              {lane.name}
            </div>
            <svg
              width={axis.width}
              height={lane.lines * lineHeight + 2 * lanePadding}
              className="plan-lane-drawing"
              onPointerMove={move}
              onPointerUp={end}
              onPointerCancel={giveUp}
              role="presentation"
            >
              <LaneBack {...props} lane={lane} />
              {lane.bars.map((bar) => (
                <BarShape
                  key={`${bar.task.id}-${bar.kind}-${bar.piece}`}
                  {...props}
                  lane={lane}
                  bar={bar}
                  isStop={bar.piece === 0 && bar.kind === 'work' && stop === barId(lane, bar.task.id)}
                  onBegin={begin}
                  onKey={(event) => {
                    if (event.key === 'Escape') giveUp()
                    else walkBars(event, props)
                  }}
                />
              ))}
              {drag?.hasMoved ? <Ghost {...props} lane={lane} drag={drag} /> : null}
            </svg>
          </div>
        ))}
      </div>
    </section>
  )
}

function AxisHead({ axis, system }: { readonly axis: TimeAxis; readonly system: LengthUnitSystem }) {
  return (
    <svg width={axis.width} height={40} className="plan-axis" role="presentation">
      {axis.days.map((day) => (
        <g key={day.date}>
          <line x1={day.left} x2={day.left} y1={0} y2={40} className="plan-day-line" />
          {day.isOff ? (
            <text x={(day.left + day.right) / 2} y={14} className="plan-off-name">
              {dateWords(day.date, system).slice(0, 3)}
            </text>
          ) : (
            <text x={day.left + 12} y={14} className="plan-day-name">
              {dateWords(day.date, system)}
            </text>
          )}
          {day.isOff ? (
            <text x={(day.left + day.right) / 2} y={32} className="plan-off-name">
              off
            </text>
          ) : null}
          {day.hours.map(({ hour, at }) => (
            <g key={hour}>
              <line x1={at} x2={at} y1={34} y2={40} className="plan-hour-line" />
              {hour % hoursApart(day.hours) === 0 ? (
                <text x={at} y={31} className="plan-hour">
                  {hourWords(hour, system)}
                </text>
              ) : null}
            </g>
          ))}
        </g>
      ))}
    </svg>
  )
}

function hoursApart(hours: readonly { readonly hour: number; readonly at: number }[]): number {
  const [first, second] = hours
  const apart = first === undefined || second === undefined ? 30 : second.at - first.at
  return apart >= 22 ? 1 : apart >= 12 ? 2 : 4
}

function hourWords(hour: number, system: LengthUnitSystem): string {
  return system === 'metric' ? String(hour) : String(((hour + 11) % 12) + 1)
}

function LaneBack(props: PlanDrawingProps & { readonly lane: Lane }) {
  const { axis, lane, problem, local, now } = props
  const height = lane.lines * lineHeight + 2 * lanePadding
  return (
    <g>
      {axis.parts.map((part) =>
        part.kind === 'hours' ? null : (
          <rect
            key={part.from}
            x={part.left}
            width={part.right - part.left}
            y={0}
            height={height}
            fill="url(#night-dots)"
          />
        ),
      )}
      {absences(problem, local, axis, lane).map((gap) => (
        <rect
          key={gap.from}
          x={placeOf(axis, gap.from)}
          width={Math.max(0, placeOf(axis, gap.to) - placeOf(axis, gap.from))}
          y={0}
          height={height}
          fill="url(#absent-lines)"
        />
      ))}
      {axis.days.map((day) => (
        <line key={day.date} x1={day.left} x2={day.left} y1={0} y2={height} className="plan-day-line" />
      ))}
      {now === null ? null : (
        <line x1={placeOf(axis, now)} x2={placeOf(axis, now)} y1={0} y2={height} className="plan-now" />
      )}
    </g>
  )
}

interface BarProps extends PlanDrawingProps {
  readonly lane: Lane
  readonly bar: Bar
  readonly isStop: boolean
  readonly onBegin: (event: PointerEvent, bar: Bar) => void
  readonly onKey: (event: KeyboardEvent) => void
}

function BarShape(props: BarProps) {
  const { axis, lane, bar, pickedId, joined, pinned, onBegin, onPick, titleOf, shortOf } = props
  const [left, right] = [placeOf(axis, bar.from), placeOf(axis, bar.to)]
  const width = Math.max(bar.kind === 'work' ? 3 : 0, right - left - (bar.kind === 'work' ? 1 : 0))
  const top = lanePadding + bar.line * lineHeight
  const isPicked = pickedId === bar.task.id
  const dims = pickedId !== null && !isPicked && !joined.has(bar.task.id)
  if (bar.kind === 'drying') {
    return (
      <rect
        x={left}
        y={top + 3}
        width={width}
        height={lineHeight - 9}
        fill="url(#drying-hatch)"
        className={dims ? 'plan-drying plan-dim' : 'plan-drying'}
      >
        <title>{`Drying after: ${titleOf(bar.task.id)}`}</title>
      </rect>
    )
  }
  const text = shortOf(bar.task.id, lane)
  const state = bar.task.state.kind
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing has no button element
    <g
      id={bar.piece === 0 ? barId(lane, bar.task.id) : undefined}
      data-task={bar.task.id}
      tabIndex={props.isStop ? 0 : -1}
      role="button"
      aria-label={titleOf(bar.task.id)}
      aria-pressed={isPicked}
      className={`plan-bar plan-bar-${state}${isPicked ? ' plan-bar-picked' : ''}${dims ? ' plan-dim' : ''}${joined.has(bar.task.id) ? ' plan-bar-joined' : ''}`}
      onPointerDown={(event) => onBegin(event, bar)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') onPick(bar.task.id)
        else props.onKey(event)
      }}
    >
      <title>{titleOf(bar.task.id)}</title>
      <rect x={left} y={top} width={width} height={lineHeight - 3} rx={2} />
      {pinned.has(bar.task.id) ? <circle cx={left + 5} cy={top + 5} r={3} className="plan-pin" /> : null}
      {state === 'done' && width > 14 ? (
        <text x={right - 6} y={top + 15} className="plan-bar-done">
          ✓
        </text>
      ) : null}
      {width > 34 ? (
        <svg
          x={left + 3}
          y={top}
          width={width - 6}
          height={lineHeight - 3}
          overflow="hidden"
          aria-hidden="true"
        >
          <text x={pinned.has(bar.task.id) ? 8 : 2} y={15} className="plan-bar-text">
            {text}
          </text>
        </svg>
      ) : null}
    </g>
  )
}

function Ghost(props: PlanDrawingProps & { readonly lane: Lane; readonly drag: Drag }) {
  const { axis, lane, drag } = props
  const bar = lane.bars.find(
    (each) => each.task.id === drag.taskId && each.kind === 'work' && each.piece === 0,
  )
  if (bar === undefined) return null
  const left = placeOf(axis, drag.at)
  const width = Math.max(8, placeOf(axis, bar.to) - placeOf(axis, bar.from))
  return (
    <rect
      x={left}
      y={lanePadding + bar.line * lineHeight}
      width={width}
      height={lineHeight - 3}
      rx={2}
      className="plan-ghost"
    />
  )
}
