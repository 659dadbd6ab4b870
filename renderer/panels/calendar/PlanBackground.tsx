import { nameWidth } from './bar-focus.ts'
import { hasNarrowDays, placeOf, startsWeek, type TimeAxis } from './time-axis.ts'

/** Nights, days off, the edges of days and the present moment, once behind all lanes. */
export function PlanBackground({ axis, now }: { readonly axis: TimeAxis; readonly now: number | null }) {
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
