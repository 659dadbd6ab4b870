import { useMemo, useState } from 'react'
import { type PassProgress, tickedTogether } from '../../../core/progress/pass-states.ts'
import type { readiness } from '../../../core/progress/readiness.ts'
import { isSettled, type StepProgress, type stepStates } from '../../../core/progress/step-states.ts'
import { records } from '../../../core/project/job.ts'
import { tasksByStep } from '../../../core/work-order/work-plan.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification, useTakeoff } from '../../state/derived.ts'
import { useForecast } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { addMarks, marksAt } from './marks.ts'
import { OutOfOrder, type OutOfOrderTick } from './OutOfOrder.tsx'
import { PassTicks } from './PassTicks.tsx'
import { StepPaper } from './StepPaper.tsx'

/** The passes of a room set and, beside them, what can be said of the step picked. Ticks go to the steps. */
export function PassesTab(props: {
  readonly passes: readonly PassProgress[]
  readonly states: ReturnType<typeof stepStates>
  readonly ready: ReturnType<typeof readiness>
  readonly now: string
  readonly nameOf: (stepKey: string) => string
}) {
  const { passes, states, ready, now, nameOf } = props
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const forecast = useForecast()
  const [pickedKey, setPickedKey] = useState<string | null>(null)
  const [asked, setAsked] = useState<OutOfOrderTick | null>(null)
  const picked = pickedKey === null ? undefined : states.get(pickedKey)
  const plan = acceptedPlan(job)?.plan ?? forecast.plan?.workPlan ?? null
  const tasks = useMemo(() => (plan === null ? null : tasksByStep(plan)), [plan])
  const peopleOf = (stepKey: string) => [
    ...new Set((tasks?.get(stepKey) ?? []).flatMap((task) => task.crewMemberIds)),
  ]

  function tick(steps: readonly StepProgress[], name: string) {
    const open = steps.filter(({ state }) => !isSettled(state)).map(({ step }) => step.key)
    if (open.length === 0) {
      const done = steps.filter(({ state }) => state.kind === 'done').map(({ step }) => step.key)
      addMarks(`Take back the check of ${name}`, marksAt(done, 'cleared', now))
      return
    }
    const known = new Set<string>(records(job.crew).map((person) => person.id))
    const markDone = () =>
      addMarks(
        `Check off ${name}`,
        marksAt(open, 'done', now, (key) => peopleOf(key).filter((id) => known.has(id))),
      )
    const why = tickedTogether(job, specification, states, open, now)
    if (why.kind === 'ready' || why.kind === 'settled') markDone()
    else setAsked({ name, why, tick: markDone })
  }

  return (
    <div className="site-steps">
      <PassTicks
        job={job}
        takeoff={takeoff}
        passes={passes}
        readiness={ready}
        pickedKey={pickedKey}
        onPick={setPickedKey}
        onTick={tick}
        nameOf={nameOf}
      />
      <aside className="pane pane-side" aria-label="The step picked">
        {picked === undefined ? (
          <p className="quiet">
            Check the box when a pass is done; all its steps are checked off with it. Pick its name for its
            lines, a line for its steps, and a step to say when it started, who did it and how long it took,
            to leave it out or to ask for it again.
          </p>
        ) : (
          <StepPaper
            key={picked.step.key}
            job={job}
            progress={picked}
            now={now}
            plannedPeople={peopleOf(picked.step.key)}
          />
        )}
      </aside>
      <OutOfOrder
        asked={asked}
        system={job.header.unitSystem}
        nameOf={nameOf}
        onAnswer={() => setAsked(null)}
      />
    </div>
  )
}
