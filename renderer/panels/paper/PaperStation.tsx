import '../parts/station-page.css'
import './paper.css'
import { useEffect, useMemo, useState } from 'react'
import { records } from '../../../core/project/job.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { useJob } from '../../state/app.ts'
import { type SearchState, useForecast } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { Empty } from '../parts/Empty.tsx'
import { drawFirstRoom, lookAtCalendar } from '../parts/next-steps.ts'
import { PaperContent } from './PaperContent.tsx'

/** What goes out of the house: chosen, looked at exactly as printed, printed, saved. */
export function PaperStation() {
  const job = useJob()
  const forecast = useForecast()
  const accepted = useMemo(() => acceptedPlan(job), [job])
  const found = useSteadyPlan(forecast)
  const plan = accepted?.plan ?? found
  if (records(job.rooms).length === 0) {
    return (
      <section className="station-page paper-station">
        <Empty title="No papers yet" next={drawFirstRoom}>
          <p>
            Papers are made from the sketch, what was found, the finishes and the plan. Draw the first room at
            House; the work order, the week sheets, the shopping list and the estimate follow.
          </p>
        </Empty>
      </section>
    )
  }
  if (plan === null) {
    return (
      <section className="station-page paper-station">
        <Empty title="Papers need a plan" {...(forecast.clash === null ? {} : { next: lookAtCalendar })}>
          {forecast.clash === null ? (
            <p role="status">A plan is being worked out; the papers appear as soon as there is one.</p>
          ) : (
            <p>
              There is no plan to print from: {forecast.clash.sentence} Calendar shows it and lets you change
              crew, dates and house rules.
            </p>
          )}
        </Empty>
      </section>
    )
  }
  return <PaperContent plan={plan} acceptedAt={accepted?.acceptedAt ?? null} />
}

/** The first plan, then the one the search rests at: papers are not laid out anew for every step between. */
function useSteadyPlan(forecast: SearchState): WorkPlan | null {
  const latest: WorkPlan | null = forecast.plan?.workPlan ?? null
  const [steady, setSteady] = useState(latest)
  const isDue = steady === null || forecast.status === 'resting'
  useEffect(() => {
    if (isDue) setSteady(latest)
  }, [isDue, latest])
  return latest === null ? null : (steady ?? latest)
}
