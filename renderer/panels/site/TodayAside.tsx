import { useMemo } from 'react'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { mergedCans, siteDays } from '../../../core/work-order/site-days.ts'
import type { JudgedPlan, WorkPlan } from '../../../core/work-order/work-plan.ts'
import { useSpecification } from '../../state/derived.ts'
import { DayLegend, HouseOnDay } from '../parts/house-picture/HouseOnDay.tsx'
import { houseDaysOf } from '../parts/house-picture/house-days-of.ts'

/** Beside the day's passes: the house as it stands, cans to bring, what to cover and uncover. */
export function TodayAside(props: {
  readonly job: Job
  readonly plan: WorkPlan
  readonly forecast: JudgedPlan
  readonly date: string
  readonly onPickRoom: (setId: RoomId) => void
}) {
  const { job, plan, forecast, date } = props
  const specification = useSpecification()
  const rooms = useMemo(() => houseDaysOf(job, forecast).on(date), [job, forecast, date])
  const day = useMemo(() => {
    const tasks = plan.tasks.filter(({ segments }) =>
      segments.some(({ startsAt }) => startsAt.startsWith(date)),
    )
    return siteDays(job, specification, { ...plan, tasks }).find((each) => each.date === date)
  }, [job, specification, plan, date])
  const cans = mergedCans((day?.people ?? []).map((person) => person.cans))
  const owner = day?.people.find(({ crewMemberId }) => crewMemberId === day.choresOwner)?.name
  return (
    <aside className="today-aside" aria-label="The house today">
      <HouseOnDay className="today-house" job={job} date={date} rooms={rooms} onPick={props.onPickRoom} />
      <DayLegend rooms={rooms} />
      <div className="block">
        <h3>Cans to bring</h3>
        {cans.length === 0 ? (
          <p className="quiet">None.</p>
        ) : (
          <ul className="today-cans">
            {cans.map(({ what, roomNames }) => (
              <li key={what}>
                {what} <span className="quiet">{roomNames.join(', ')}</span>
              </li>
            ))}
          </ul>
        )}
        {day === undefined || day.chores.length === 0 ? null : (
          <>
            <h3>Cover and uncover{owner === undefined ? '' : `: ${owner} sees to it`}</h3>
            <ul className="today-cans">
              {day.chores.map(({ kind, roomNames }) => (
                <li key={kind}>
                  {kind === 'alarms'
                    ? 'Alarms covered for work, uncovered and tested before leaving: '
                    : 'Cleaned down: '}
                  {roomNames.join(', ')}
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
    </aside>
  )
}
