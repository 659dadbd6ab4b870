import { useMemo, useState } from 'react'
import { records } from '../../../core/project/job.ts'
import type { Pin, PinId } from '../../../core/project/progress-records.ts'
import { localTimeIn } from '../../../core/schedule/calendar.ts'
import { momentWords } from '../../../core/work-order/date-words.ts'
import { instantOf, momentOf } from '../../../core/work-order/site-time.ts'
import { newId, useJob } from '../../state/app.ts'
import { specificationOf } from '../../state/derived.ts'
import type { SearchState } from '../../state/planner.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { lanesOf } from './lanes.ts'
import { Legend, NoPlan, PlanStatus } from './PlanAround.tsx'
import { AcceptBlock, StartBlock } from './PlanBlocks.tsx'
import { PlanDrawing } from './PlanDrawing.tsx'
import { joinedTasks, TaskPaper } from './TaskPaper.tsx'
import { TrialBar } from './TrialBar.tsx'
import { taskWords } from './task-words.ts'
import { timeAxis } from './time-axis.ts'
import { dropChange, type Trial, tryChange } from './trial.ts'

interface PlanLeafProps {
  readonly trial: Trial
  readonly present: SearchState
  readonly search: SearchState
}

/** The plan drawn, with what can be done to it. */
export function PlanLeaf({ trial, present, search }: PlanLeafProps) {
  const job = useJob()
  const [showsTrial, setShowsTrial] = useState(false)
  const [pickedId, setPickedId] = useState<string | null>(null)
  const [pixelsPerHour, setPixelsPerHour] = useState(26)
  const { now } = useSiteNow()
  const isTrialShown = showsTrial && trial.changes.length > 0 && search.plan !== null
  const state = isTrialShown ? search : present
  const found = state.plan
  const shownJob = isTrialShown ? trial.job : job
  const specification = specificationOf(job)
  const words = useMemo(
    () => taskWords(job, specification, found?.workPlan ?? null),
    [job, specification, found],
  )
  const { timeZone, unitSystem } = job.header
  const local = useMemo(() => localTimeIn(timeZone), [timeZone])
  const drawing = useMemo(() => {
    if (found === null) return null
    const ends = found.plan.tasks.map((task) => task.end)
    const wet = found.problem.tasks.map((task, index) => (ends[index] ?? 0) + (task.effects.wetFor ?? 0))
    const axis = timeAxis({
      problem: found.problem,
      local,
      from: Math.min(...found.plan.tasks.map((task) => task.start)),
      to: Math.max(found.plan.finishInstant, ...wet),
      pixelsPerHour,
    })
    return { axis, lanes: lanesOf(shownJob, found.problem, found.plan) }
  }, [found, local, pixelsPerHour, shownJob])
  const pins = records(trial.job.pins)

  function pinTo(taskId: string, startsAt: string) {
    const old = pins.find((pin) => pin.taskKey === taskId)
    const pin: Pin = {
      id: old?.id ?? (newId('pin') as PinId),
      taskKey: taskId,
      startsAt,
      crewMemberIds: old?.crewMemberIds ?? [],
    }
    tryChange({
      key: `pin/${taskId}`,
      name: `Pin “${words.title(taskId)}” to ${momentWords(startsAt, unitSystem)}`,
      commands: [{ kind: 'putRecord', collection: 'pins', record: pin }],
    })
  }

  function unpin(taskId: string) {
    const pin = pins.find((each) => each.taskKey === taskId)
    if (pin === undefined) return
    if (job.pins[pin.id] === undefined) {
      dropChange(`pin/${taskId}`)
      return
    }
    tryChange({
      key: `pin/${taskId}`,
      name: `Unpin “${words.title(taskId)}”`,
      commands: [{ kind: 'removeRecord', collection: 'pins', id: pin.id }],
    })
  }

  return (
    <div className="plan-page">
      <div className="plan-main">
        <PlanStatus found={found} state={state} isTrial={isTrialShown} />
        {found !== null && drawing !== null ? (
          <PlanDrawing
            problem={found.problem}
            local={local}
            axis={drawing.axis}
            lanes={drawing.lanes}
            system={unitSystem}
            titleOf={words.title}
            shortOf={(id, lane) =>
              lane.kind === 'room' ? words.work(id) : `${words.room(id)}: ${words.work(id)}`
            }
            pickedId={pickedId}
            joined={joinedTasks(found.problem, pickedId)}
            pinned={new Set(pins.map((pin) => pin.taskKey))}
            now={instantWithin(found, instantOf(now, timeZone))}
            onPick={setPickedId}
            canMove={(id) => isOpenTask(found, id)}
            onMove={(id, start) => pinTo(id, momentOf(start, timeZone))}
            onGiveUp={(draggedId) => {
              if (draggedId === null) setPickedId(null)
              else dropChange(`pin/${draggedId}`)
            }}
            grid={15}
          />
        ) : (
          <NoPlan state={state} titleOf={words.title} />
        )}
        <TrialBar
          trial={trial}
          present={present.plan}
          search={search}
          system={unitSystem}
          titleOf={words.title}
          isShown={isTrialShown}
          onShow={setShowsTrial}
        />
        <Legend pixelsPerHour={pixelsPerHour} onZoom={setPixelsPerHour} />
      </div>
      <aside className="pane pane-side" aria-label="Plan and task">
        {pickedId !== null && found !== null ? (
          <TaskPaper
            job={shownJob}
            specification={specification}
            found={found}
            words={words}
            taskId={pickedId}
            pin={pins.find((pin) => pin.taskKey === pickedId) ?? null}
            onPick={setPickedId}
            onPin={(startsAt) => pinTo(pickedId, startsAt)}
            onUnpin={() => unpin(pickedId)}
          />
        ) : (
          <p className="quiet">
            Pick a task to see what it waits for and what it holds up. Drag it, or use Shift with the arrow
            keys, to pin it to another start; the plan with it is looked for while you move it.
          </p>
        )}
        <StartBlock trial={trial} />
        <AcceptBlock found={present.plan} state={present} isTrying={trial.changes.length > 0} now={now} />
      </aside>
    </div>
  )
}

function isOpenTask(found: FoundPlan, id: string): boolean {
  const kind = found.problem.tasks.find((task) => task.id === id)?.state.kind
  return kind === 'open' || kind === 'pinned'
}

function instantWithin(found: FoundPlan, now: number): number | null {
  const first = Math.min(...found.plan.tasks.map((task) => task.start))
  return now >= first && now <= found.plan.finishInstant ? now : null
}
