import { type ReactNode, useEffect, useMemo, useRef } from 'react'
import type { ScheduleProblem } from '../../../core/schedule/model.ts'
import type { LocalTime } from '../../../core/time/local-time.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { AxisHead } from './AxisHead.tsx'
import { absences } from './absences.ts'
import { barKeys, type PlanActs, useDrag } from './bar-drag.ts'
import { bringIntoView, nameWidth, useBarFocus } from './bar-focus.ts'
import { type BarPlace, barId, laneKey, placeOfTask, tabStop } from './bar-walk.ts'
import { LaneDrawing, type PlanLook } from './LaneDrawing.tsx'
import { type Lane, laneHeight } from './lanes.ts'
import { Patterns } from './Patterns.tsx'
import { PlanBackground } from './PlanBackground.tsx'
import { useShownPart } from './shown-part.ts'
import type { TimeAxis } from './time-axis.ts'

interface PlanDrawingProps extends PlanActs {
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
}

/** Lanes by person and by room on one time axis. Work is solid, drying is hatched, nights, breaks and days off are shaded. */
export function PlanDrawing(props: PlanDrawingProps) {
  const { axis, lanes, look, problem, local } = props
  const scroller = useRef<HTMLElement>(null)
  const { shown, onScroll } = useShownPart(scroller, axis, nameWidth)
  const away = useMemo(
    () => new Map(lanes.map((lane) => [lane, absences(problem, local, axis, lane)])),
    [problem, local, axis, lanes],
  )
  const stop = tabStop(lanes, look.pickedId, shown)
  const focus = useBarFocus(stop, lanes)
  const pick = usePick(props, scroller)
  const drag = useDrag(axis, props, pick)

  function goTo(place: BarPlace) {
    pick(place.bar.task.id)
    bringIntoView(scroller.current, axis, place)
    focus.want(barId(place.lane, place.bar.task.id))
  }

  const onKey = barKeys(lanes, props, { pick: props.onPick, goTo, giveUp: drag.giveUp })
  return (
    <section
      ref={scroller}
      className="plan-scroll"
      onScroll={onScroll}
      onFocus={focus.onFocus}
      onBlur={focus.onBlur}
      onPointerMove={drag.move}
      onPointerUp={drag.end}
      onPointerCancel={drag.giveUp}
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
        <PlanBackground axis={axis} now={props.now} />
        {lanes.map((lane, index) => (
          <LaneRow
            key={laneKey(lane)}
            lane={lane}
            isFirst={lanes[index - 1]?.kind !== lane.kind}
            note={props.noteOf(lane)}
          >
            <LaneDrawing
              axis={axis}
              lane={lane}
              look={look}
              absences={away.get(lane) ?? []}
              shown={shown}
              stop={stop}
              ghosts={drag.ghosts}
              onBegin={drag.begin}
              onKey={onKey}
            />
          </LaneRow>
        ))}
      </div>
    </section>
  )
}

/** Picks a task; one that was picked elsewhere, in the list of neighbours, is brought into view. */
function usePick(
  { axis, lanes, look, onPick }: PlanDrawingProps,
  scroller: React.RefObject<HTMLElement | null>,
): (taskId: string) => void {
  const { pickedId } = look
  const isPickedHere = useRef(false)
  // biome-ignore lint/correctness/useExhaustiveDependencies: only another pick brings the drawing there, not a better plan
  useEffect(() => {
    const place = pickedId === null || isPickedHere.current ? null : placeOfTask(lanes, pickedId)
    isPickedHere.current = false
    if (place !== null) bringIntoView(scroller.current, axis, place)
  }, [pickedId])
  return (taskId) => {
    isPickedHere.current = taskId !== pickedId
    onPick(taskId)
  }
}

/** One lane with its name; the first person and the first room have a heading above them. */
function LaneRow(props: {
  readonly lane: Lane
  readonly isFirst: boolean
  readonly note: string
  readonly children: ReactNode
}) {
  const { lane } = props
  return (
    <div>
      {props.isFirst ? (
        <div className="plan-group">
          <span>{lane.kind === 'person' ? 'People' : 'Rooms, in the order work begins'}</span>
        </div>
      ) : null}
      <div
        className={`plan-lane plan-lane-${lane.kind}`}
        style={{ height: laneHeight(lane) + 1 }}
        data-lane={laneKey(lane)}
      >
        <div className="plan-name" style={{ width: nameWidth }} title={lane.name}>
          <span className="plan-name-main">{lane.name}</span>
          <span className="plan-name-note">{props.note}</span>
        </div>
        {props.children}
      </div>
    </div>
  )
}
