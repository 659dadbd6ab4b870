import type { KeyboardEvent, PointerEvent } from 'react'
import { barId } from './bar-walk.ts'
import {
  type Bar,
  dryingSpans,
  type Lane,
  laneHeight,
  lineHeight,
  lineTop,
  type Span,
  stayHeight,
} from './lanes.ts'
import { shortened, wordsThatFit } from './short-words.ts'
import { placeOf, type TimeAxis } from './time-axis.ts'

/** How the tasks of a plan look apart from where they are. */
export interface PlanLook {
  readonly pickedId: string | null
  /** Neighbours of the picked task, with whether they leave it no time to spare. */
  readonly before: ReadonlyMap<string, boolean>
  readonly after: ReadonlyMap<string, boolean>
  readonly pinned: ReadonlySet<string>
  /** Begin at another time than in the plan compared with. */
  readonly moved: ReadonlySet<string>
  /** Everything about a task in one line: what, when and who. */
  readonly lineOf: (taskId: string) => string
  readonly shortOf: (taskId: string) => readonly string[]
  readonly roomOf: (roomId: string) => string
}

interface LaneDrawingProps {
  readonly axis: TimeAxis
  readonly lane: Lane
  readonly look: PlanLook
  readonly absences: readonly Span[]
  /** What of the axis is drawn, in epoch minutes. */
  readonly shown: Span
  /** The bar that takes the focus of the whole drawing. */
  readonly stop: string | null
  /** Tasks outlined where they would begin. */
  readonly ghosts: ReadonlyMap<string, number>
  readonly onBegin: (event: PointerEvent, bar: Bar) => void
  readonly onKey: (event: KeyboardEvent) => void
}

export function LaneDrawing(props: LaneDrawingProps) {
  const { axis, lane, look, shown, ghosts } = props
  const height = laneHeight(lane)
  const bandTop = lineTop(lane, 0) - 1
  const bandHeight = lane.lines * lineHeight + 2
  return (
    <svg width={axis.width} height={height} className="plan-lane-drawing" role="presentation">
      {within(props.absences, shown).map((gap) => (
        <SpanRect key={gap.from} axis={axis} span={gap} y={0} height={height} className="plan-absent" />
      ))}
      {within(lane.elsewhere, shown).map((span) => (
        <Elsewhere key={span.from} axis={axis} span={span} height={height} />
      ))}
      {within(lane.wet, shown).map((span) => (
        <SpanRect
          key={span.from}
          axis={axis}
          span={span}
          y={bandTop}
          height={bandHeight}
          className="plan-drying"
        />
      ))}
      <PickedDrying {...props} y={bandTop} height={bandHeight} />
      {lane.outOfUse === null || within([lane.outOfUse], shown).length === 0 ? null : (
        <SpanRect axis={axis} span={lane.outOfUse} y={height - 4} height={4} className="plan-out-of-use" />
      )}
      {lane.backBy === null ? null : <PromisedBack at={placeOf(axis, lane.backBy)} height={height} />}
      {within(lane.stays, shown).map((stay) => (
        <StayName key={stay.from} axis={axis} stay={stay} look={look} />
      ))}
      {within(lane.bars, shown).map((bar) => (
        <BarShape key={`${bar.task.id}-${bar.piece}`} {...props} bar={bar} />
      ))}
      {[...ghosts].map(([taskId, start]) => (
        <Ghost key={taskId} axis={axis} lane={lane} taskId={taskId} start={start} />
      ))}
    </svg>
  )
}

/** Somebody is on another job of the book. */
function Elsewhere(props: { readonly axis: TimeAxis; readonly span: Span; readonly height: number }) {
  const { axis, span, height } = props
  const [left, right] = [placeOf(axis, span.from), placeOf(axis, span.to)]
  const words = shortened('on another job', right - left - 6)
  return (
    <g>
      <title>on another job</title>
      <SpanRect
        axis={axis}
        span={span}
        y={stayHeight}
        height={height - stayHeight - 4}
        className="plan-elsewhere"
      />
      {words === '' ? null : (
        <text x={left + 3} y={stayHeight + 13} className="plan-elsewhere-name">
          {words}
        </text>
      )}
    </g>
  )
}

/** A flag at the moment a room was promised back. */
export function PromisedBack({ at, height }: { readonly at: number; readonly height: number }) {
  return (
    <g className="plan-promised">
      <line x1={at} x2={at} y1={0} y2={height} />
      <path d={`M${at} 0 h9 l-3 4 l3 4 h-9 z`} />
    </g>
  )
}

/** Those that lie at least partly in what is drawn. */
function within<Each extends Span>(spans: readonly Each[], shown: Span): readonly Each[] {
  return spans.filter((span) => span.from <= shown.to && span.to >= shown.from)
}

function SpanRect(props: {
  readonly axis: TimeAxis
  readonly span: Span
  readonly y: number
  readonly height: number
  readonly className: string
}) {
  const left = placeOf(props.axis, props.span.from)
  const width = Math.max(0, placeOf(props.axis, props.span.to) - left)
  return <rect x={left} y={props.y} width={width} height={props.height} className={props.className} />
}

/** What the picked task leaves wet, told apart from what else dries in the room. */
function PickedDrying(props: LaneDrawingProps & { readonly y: number; readonly height: number }) {
  const bar = props.lane.bars.find((each) => each.task.id === props.look.pickedId)
  if (props.lane.kind === 'person' || bar === undefined) return null
  return dryingSpans(bar).map((span) => (
    <SpanRect
      key={span.from}
      axis={props.axis}
      span={span}
      y={props.y}
      height={props.height}
      className="plan-drying-picked"
    />
  ))
}

function StayName(props: {
  readonly axis: TimeAxis
  readonly stay: Lane['stays'][number]
  readonly look: PlanLook
}) {
  const { axis, stay, look } = props
  const [left, right] = [placeOf(axis, stay.from), placeOf(axis, stay.to)]
  const name = stay.roomId === null ? '' : shortened(look.roomOf(stay.roomId), right - left - 7)
  return (
    <g className="plan-stay">
      <line x1={left + 1} x2={right - 2} y1={stayHeight + 1.5} y2={stayHeight + 1.5} />
      {name === '' ? null : (
        <text x={left + 1} y={stayHeight - 2}>
          {name}
        </text>
      )}
    </g>
  )
}

function BarShape(props: LaneDrawingProps & { readonly bar: Bar }) {
  const { axis, lane, bar, look, stop, onBegin, onKey } = props
  const { id } = bar.task
  const [left, right] = [placeOf(axis, bar.from), placeOf(axis, bar.to)]
  const width = Math.max(2, right - left - 1)
  const top = lineTop(lane, bar.line)
  const height = lineHeight - 3
  const own = barId(lane, id)
  const isFirst = bar.piece === 0
  const isLast = bar.piece === bar.planned.segments.length - 1
  const isPinned = isFirst && look.pinned.has(id)
  const [before, after] = [look.before.get(id), look.after.get(id)]
  // Words stand clear of the pin and of the mark at the begin.
  const indent = isPinned ? 11 : isFirst && after !== undefined ? 8 : 3
  const text = width < 16 ? null : wordsThatFit(look.shortOf(id), width - indent - 2)
  return (
    <>
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing has no button element */}
      <g
        id={isFirst ? own : undefined}
        data-task={id}
        tabIndex={isFirst && stop === own ? 0 : -1}
        role="button"
        aria-label={look.lineOf(id)}
        aria-pressed={look.pickedId === id}
        className={barClasses(bar, look, width)}
        onPointerDown={(event) => onBegin(event, bar)}
        onKeyDown={onKey}
      >
        <title>{look.lineOf(id)}</title>
        <rect x={left} y={top} width={width} height={height} rx={width > 8 ? 2 : 0} />
        {before === undefined || !isLast ? null : (
          <EdgeMark at={left + width} isTight={before} side="before" top={top} height={height} />
        )}
        {after === undefined || !isFirst ? null : (
          <EdgeMark at={left} isTight={after} side="after" top={top} height={height} />
        )}
        {isPinned ? <circle cx={left + 5} cy={top + 5} r={3.5} className="plan-pin" /> : null}
      </g>
      {/* Shortened words stand beside the button: its name says them in full. */}
      <g className="plan-bar-words">
        {text === null ? null : (
          <text x={left + indent} y={top + 12.5}>
            {text}
          </text>
        )}
        {bar.task.state.kind === 'done' && width > 14 ? (
          <text x={left + width - 9} y={top + 12.5}>
            ✓
          </text>
        ) : null}
      </g>
    </>
  )
}

/** Below this width an outline would hide what it goes round. */
const roomForOutline = 6

function barClasses({ task }: Bar, look: PlanLook, width: number): string {
  const isPicked = look.pickedId === task.id
  const isJoined = look.before.has(task.id) || look.after.has(task.id)
  const marks = [
    `plan-bar-${task.state.kind}`,
    task.effects.touchDry === null ? '' : 'plan-bar-wet',
    isPicked ? 'plan-bar-picked' : '',
    look.pickedId !== null && !isPicked && !isJoined ? 'plan-dim' : '',
    look.moved.has(task.id) ? 'plan-bar-moved' : '',
    width < roomForOutline ? 'plan-bar-thin' : '',
  ]
  return ['plan-bar', ...marks.filter((mark) => mark !== '')].join(' ')
}

/** A stop at the side that touches the picked task: thick where there is no time to spare. */
function EdgeMark(props: {
  readonly at: number
  readonly isTight: boolean
  readonly side: 'before' | 'after'
  readonly top: number
  readonly height: number
}) {
  const width = props.isTight ? 6 : 3
  return (
    <rect
      x={props.side === 'before' ? props.at - width : props.at}
      y={props.top - 2}
      width={width}
      height={props.height + 4}
      className={`plan-edge plan-edge-${props.side}`}
    />
  )
}

function Ghost(props: {
  readonly axis: TimeAxis
  readonly lane: Lane
  readonly taskId: string
  readonly start: number
}) {
  const { axis, lane, taskId, start } = props
  const bar = lane.bars.find((each) => each.task.id === taskId && each.piece === 0)
  if (bar === undefined) return null
  return (
    <rect
      x={placeOf(axis, start)}
      y={lineTop(lane, bar.line)}
      width={Math.max(8, placeOf(axis, bar.to) - placeOf(axis, bar.from))}
      height={lineHeight - 3}
      rx={2}
      className="plan-ghost"
    />
  )
}
