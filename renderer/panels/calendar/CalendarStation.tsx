import '../parts/station-page.css'
import './calendar.css'
import { type ReactNode, useEffect, useState } from 'react'
import { records } from '../../../core/project/job.ts'
import { forget, restPresent, searchFor, useForecast, useTrial } from '../../state/planner.ts'
import { Empty } from '../parts/Empty.tsx'
import { drawFirstRoom } from '../parts/next-steps.ts'
import { PageTabs } from '../parts/PageTabs.tsx'
import { CrewTab } from './CrewTab.tsx'
import { PlanTab } from './PlanTab.tsx'
import { SiteRulesTab } from './SiteRulesTab.tsx'
import { TrialBar } from './TrialBar.tsx'
import { useJobOnTrial } from './trial.ts'

/** Who works where and when. Everything changed here is tried first: two plans side by side, then taken or left. */
export function CalendarStation() {
  const trial = useJobOnTrial()
  const present = useForecast()
  const search = useTrial()
  const [tab, setTab] = useState('plan')
  const isTrying = trial.changes.length > 0 && trial.problem === null
  const isCompared = isTrying && present.isSettled
  useEffect(() => (isCompared ? restPresent() : undefined), [isCompared])
  useEffect(() => {
    if (isTrying) searchFor('trial', trial.job)
    else forget('trial')
  }, [isTrying, trial])
  if (records(trial.job.rooms).length === 0) {
    return (
      <section className="station-page calendar">
        <Empty title="Nothing to plan yet" next={drawFirstRoom}>
          <p>
            The plan follows from the steps, and the steps from the sketch, what was found and the finishes.
            Draw the first room at House, choose its finishes at Finish, and see here who works when, with the
            drying in between.
          </p>
        </Empty>
      </section>
    )
  }
  const all = { trial, present, search }
  const tried = (page: ReactNode) => (
    <>
      <div className="tried-page">{page}</div>
      <TrialBar trial={trial} present={present} search={search} />
    </>
  )
  return (
    <section className="station-page calendar" aria-label="Calendar">
      <PageTabs
        label="Calendar"
        open={tab}
        onOpen={setTab}
        tabs={[
          { id: 'plan', title: 'Plan', page: () => <PlanTab {...all} onCrew={() => setTab('crew')} /> },
          { id: 'crew', title: 'Crew', page: () => tried(<CrewTab job={trial.job} />) },
          {
            id: 'rules',
            title: 'Site hours and rooms',
            page: () => tried(<SiteRulesTab job={trial.job} />),
          },
        ]}
        aside={
          trial.changes.length === 0 ? null : (
            <p className="tabs-sum">
              <strong>
                {trial.changes.length === 1 ? '1 change' : `${trial.changes.length} changes`} being tried
              </strong>
            </p>
          )
        }
      />
    </section>
  )
}
