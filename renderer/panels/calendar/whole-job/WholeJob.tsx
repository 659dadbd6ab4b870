import { dateOfDay, weekdayOf } from '../../../../core/time/local-date.ts'
import './whole-job.css'
import { dateWords } from '../../../../core/time/date-words.ts'
import type { LengthUnitSystem } from '../../../../core/units/length.ts'
import { useDrawnCount } from '../../parts/use-drawn-count.ts'
import { Patterns } from '../Patterns.tsx'
import { PeopleRows } from './PeopleRows.tsx'
import { PhasePatterns } from './PhaseLooks.tsx'
import { dayAt, type Picture } from './picture.ts'
import { RoomRows } from './RoomRows.tsx'
import {
  type HalfDayPlacing,
  headHeight,
  personHeight,
  rowHeight,
  rowNameWidth,
  type WholeJobProps,
} from './whole-job-sizes.ts'

/** What the day a week begins on takes, as `May 24`, in pixels. */
const dateWidth = 48

/** The whole job at a glance: what goes on in every room set, phase by phase, and in which room everybody is, by half-days. */
export function WholeJob(props: WholeJobProps) {
  const { picture, width } = props
  const wide = Math.max(3, (width - rowNameWidth - 4) / (picture.days * 2))
  const place = (half: number) => half * wide
  const drawn = picture.days * 2 * wide
  // Rows of people stand below those of all rooms.
  const rooms = useDrawnCount(picture.rooms.length, Math.ceil(window.innerHeight / rowHeight))
  const people = rooms < picture.rooms.length ? [] : picture.people
  const height = headHeight + picture.rooms.length * rowHeight + picture.people.length * personHeight
  return (
    <section className="whole-job" aria-label="The whole job">
      <Patterns />
      <PhasePatterns />
      <div className="whole-names" style={{ width: rowNameWidth }}>
        <div className="whole-corner" style={{ height: headHeight }}>
          {props.corner}
        </div>
        {picture.rooms.slice(0, rooms).map((row) => (
          <div key={row.roomSetId} className="whole-name" style={{ height: rowHeight }}>
            <strong>{props.roomName(row.roomSetId)}</strong>
            <span>{row.lastDay === '' ? 'done' : `back ${backWords(row.lastDay, props.system)}`}</span>
          </div>
        ))}
        {people.map(({ crewMemberId }) => (
          <div key={crewMemberId} className="whole-name whole-person" style={{ height: personHeight }}>
            <strong>{props.personName(crewMemberId)}</strong>
          </div>
        ))}
      </div>
      <svg width={drawn} height={height} className="whole-drawing">
        <title>Rooms and people by half-days</title>
        <Days picture={picture} place={place} height={height} system={props.system} />
        <RoomRows {...props} place={place} drawn={rooms} />
        <PeopleRows
          {...props}
          people={people}
          place={place}
          top={headHeight + picture.rooms.length * rowHeight}
        />
      </svg>
    </section>
  )
}

/** A room is back on the day after its last day out of use. */
function backWords(lastDay: string, system: LengthUnitSystem): string {
  return dateWords(dateOfDay(dayAt(lastDay) + 1), system)
}

function Days({
  picture,
  place,
  height,
  system,
}: HalfDayPlacing & {
  readonly picture: Picture
  readonly height: number
  readonly system: LengthUnitSystem
}) {
  const days = Array.from({ length: picture.days }, (_, index) => picture.firstDay + index)
  const dayWidth = place(2)
  const weeksBetween = Math.ceil(dateWidth / (7 * dayWidth))
  return (
    <g>
      {days.map((day, index) => {
        const weekday = weekdayOf(day)
        const isMonday = weekday === 1 || index === 0
        return (
          <g key={day}>
            {weekday === 0 || weekday === 6 ? (
              <rect
                x={place(2 * index)}
                y={headHeight}
                width={dayWidth}
                height={height - headHeight}
                className="whole-weekend"
              />
            ) : null}
            {isMonday ? (
              <>
                <line x1={place(2 * index)} x2={place(2 * index)} y1={0} y2={height} className="whole-week" />
                {Math.ceil(index / 7) % weeksBetween === 0 ? (
                  <text x={place(2 * index) + 3} y={14} className="whole-date">
                    {dateWords(dateOfDay(day), system).slice(4)}
                  </text>
                ) : null}
              </>
            ) : null}
            {dayWidth >= 12 ? (
              <text x={place(2 * index) + dayWidth / 2} y={28} className="whole-day">
                {'SMTWTFS'[weekday]}
              </text>
            ) : null}
          </g>
        )
      })}
    </g>
  )
}
