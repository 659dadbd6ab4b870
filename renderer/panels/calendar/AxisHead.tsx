import { dateWords } from '../../../core/time/date-words.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { type AxisDay, hasNarrowDays, startsWeek, type TimeAxis } from './time-axis.ts'

const axisHeight = 40
const roomForNumber = 15
const roomForOff = 26
const roomForWeek = 48

/** Days and hours over all lanes; where hours are drawn narrow, weeks and days. */
export function AxisHead({ axis, system }: { readonly axis: TimeAxis; readonly system: LengthUnitSystem }) {
  const narrow = hasNarrowDays(axis)
  return (
    <svg width={axis.width} height={axisHeight} className="plan-axis" role="presentation">
      {axis.days.map((day, index) => (
        <g key={day.date}>
          <line
            x1={day.left}
            x2={day.left}
            y1={narrow && !startsWeek(axis, index) ? axisHeight - 18 : 0}
            y2={axisHeight}
            className="plan-day-line"
          />
          {narrow ? (
            <NarrowDay
              day={day}
              isNamed={startsWeek(axis, index)}
              hasRoom={day.left + roomForWeek <= axis.width}
              system={system}
            />
          ) : day.isOff ? (
            <OffDay day={day} system={system} />
          ) : (
            <WideDay day={day} system={system} />
          )}
        </g>
      ))}
    </svg>
  )
}

interface DayProps {
  readonly day: AxisDay
  readonly system: LengthUnitSystem
}

function WideDay({ day, system }: DayProps) {
  return (
    <>
      <text x={day.left + 12} y={14} className="plan-day-name">
        {dateWords(day.date, system)}
      </text>
      {day.hours.map(({ hour, at }) => (
        <g key={hour}>
          <line x1={at} x2={at} y1={34} y2={axisHeight} className="plan-hour-line" />
          {hour % hoursApart(day.hours) === 0 ? (
            <text x={at} y={31} className="plan-hour">
              {hourWords(hour, system)}
            </text>
          ) : null}
        </g>
      ))}
    </>
  )
}

function OffDay({ day, system }: DayProps) {
  if (day.right - day.left < roomForOff) return null
  const middle = (day.left + day.right) / 2
  return (
    <>
      <text x={middle} y={14} className="plan-off-name">
        {dateWords(day.date, system).slice(0, 3)}
      </text>
      <text x={middle} y={32} className="plan-off-name">
        off
      </text>
    </>
  )
}

/** `hasRoom` is there for the date, which is wider than a day. */
function NarrowDay({
  day,
  isNamed,
  hasRoom,
  system,
}: DayProps & { readonly isNamed: boolean; readonly hasRoom: boolean }) {
  return (
    <>
      {isNamed && hasRoom ? (
        <text x={day.left + 4} y={15} className="plan-day-name">
          {dateWords(day.date, system).slice(4)}
        </text>
      ) : null}
      {day.isOff || day.right - day.left < roomForNumber ? null : (
        <text x={(day.left + day.right) / 2} y={34} className="plan-hour">
          {Number(day.date.slice(8))}
        </text>
      )}
    </>
  )
}

function hoursApart(hours: AxisDay['hours']): number {
  const [first, second] = hours
  const apart = first === undefined || second === undefined ? 30 : second.at - first.at
  return apart >= 22 ? 1 : apart >= 12 ? 2 : 4
}

function hourWords(hour: number, system: LengthUnitSystem): string {
  return system === 'metric' ? String(hour) : String(((hour + 11) % 12) + 1)
}
