import { type ReactNode, useState } from 'react'
import type { Job } from '../../../core/project/job.ts'
import type { CrewMemberId } from '../../../core/project/shop-records.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import { dateOf, instantOf } from '../../../core/time/site-moment.ts'
import { useJob } from '../../state/app.ts'
import type { SearchState } from '../../state/planner.ts'
import { useChoice } from '../../state/planner-choice.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { HouseOverDays } from '../parts/house-picture/HouseOverDays.tsx'
import { AcceptBlock } from './AcceptBlock.tsx'
import { ChoicePanel } from './choice/ChoicePanel.tsx'
import { type HeldTask, HoursPicture } from './HoursPicture.tsx'
import { NoPlan } from './NoPlan.tsx'
import { AimBlock, StartBlock } from './PlanBlocks.tsx'
import { Legend } from './PlanLegend.tsx'
import { PlanStatus } from './PlanStatus.tsx'
import { tryPin, tryUnpin } from './pin-trials.ts'
import type { Scale } from './plan-look.ts'
import { type PlanPicture, usePlanPicture } from './plan-picture.ts'
import { HouseButton, ScaleChoice, useScale } from './ScaleChoice.tsx'
import { TaskPaper } from './TaskPaper.tsx'
import { TrialBar } from './TrialBar.tsx'
import { TwoJobsNote } from './TwoJobsNote.tsx'
import { dropChange, type Trial } from './trial.ts'
import { WholeJobFrame } from './whole-job/WholeJobFrame.tsx'
import { WholeJobLegend } from './whole-job/WholeJobLegend.tsx'

interface PlanTabProps {
  readonly trial: Trial
  readonly present: SearchState
  readonly search: SearchState
  readonly onCrew: () => void
}

/** The plan drawn, with what can be done to it. */
export function PlanTab({ trial, present, search, onCrew }: PlanTabProps) {
  const job = useJob()
  const [showsTrial, setShowsTrial] = useState(false)
  const [pickedId, setPickedId] = useState<string | null>(null)
  const [scale, setScale] = useScale()
  const [held, setHeld] = useState<HeldTask | null>(null)
  const choice = useChoice(job)
  const { now, today } = useSiteNow()
  const isTrialShown = showsTrial && trial.changes.length > 0 && search.plan !== null && search.isSettled
  const state = isTrialShown ? search : present
  const found = held?.found ?? state.plan
  const shownJob = isTrialShown ? trial.job : job
  const comparedTo = isTrialShown ? present.plan : null
  const picture = usePlanPicture({ job, shownJob, found, comparedTo, trial, pickedId, scale })
  const { specification, momentOf, words, pins, drawing, look } = picture
  const { timeZone, unitSystem } = job.header
  const titleOf = words.title
  const shownTrial = { isTrial: isTrialShown, show: setShowsTrial }
  const corner = <ScaleChoice scale={scale} onScale={setScale} />
  const pinTo = (taskId: string, startsAt: string, people?: readonly CrewMemberId[]) =>
    tryPin(pins, { taskId, startsAt, people }, `“${titleOf(taskId)}” to ${momentWords(startsAt, unitSystem)}`)

  function move(taskId: string, start: number, isDone: boolean) {
    setHeld(isDone || found === null ? null : { taskId, start, found })
    pinTo(taskId, momentOf(start))
  }

  function giveUp(draggedId: string | null) {
    setHeld(null)
    if (draggedId === null) setPickedId(null)
    else dropChange(`pin/${draggedId}`)
  }

  return (
    <div className="plan-page">
      <div className="plan-main">
        <TwoJobsNote job={job} now={now} />
        <PlanStatus job={shownJob} found={found} state={state} isTrial={isTrialShown}>
          <HouseButton scale={scale} onScale={setScale} />
        </PlanStatus>
        <ChoicePanel choice={choice} present={present.plan} />
        {found !== null && scale === 'house' ? (
          <HouseOverDays
            job={shownJob}
            plan={found.workPlan}
            today={dateOf(now)}
            onPick={(setId) => setPickedId(firstTaskOf(found, setId))}
          />
        ) : found !== null && drawing === null ? (
          <WholeJobFrame
            job={shownJob}
            found={found}
            pickedKey={pickedId}
            onPick={(key) => setPickedId(taskIdOf(key))}
            corner={corner}
          />
        ) : found !== null && drawing !== null && look !== null ? (
          <HoursPicture
            job={shownJob}
            found={found}
            picture={{ ...picture, drawing, look }}
            held={held}
            now={instantOf(now, timeZone)}
            corner={corner}
            onPick={setPickedId}
            onMove={move}
            onGiveUp={giveUp}
          />
        ) : (
          <NoPlan job={job} specification={specification} state={state} titleOf={titleOf} onCrew={onCrew} />
        )}
        {held === null ? (
          <TrialBar trial={trial} present={present} search={search} drawing={shownTrial} />
        ) : null}
        <PlanLegend found={found} scale={scale} isPicked={pickedId !== null} showsMoved={isTrialShown} />
      </div>
      <PlanSide trial={trial} present={present} isComparing={choice.status === 'comparing'} today={today}>
        {found === null ? null : pickedId === null ? (
          <HowToPick />
        ) : (
          <PickedTask
            job={shownJob}
            found={found}
            picture={picture}
            taskId={pickedId}
            onPick={setPickedId}
            onPin={pinTo}
            onUnpin={() => tryUnpin(job, pins, pickedId, `“${titleOf(pickedId)}”`)}
          />
        )}
      </PlanSide>
    </div>
  )
}

/** What is picked, and below it what is asked of the plan as a whole. */
function PlanSide(props: {
  readonly trial: Trial
  readonly present: SearchState
  /** Plans are being compared by what they aim at. */
  readonly isComparing: boolean
  readonly today: string
  readonly children: ReactNode
}) {
  const { trial, present } = props
  const isTrying = trial.changes.length > 0
  return (
    <aside className="pane pane-side" aria-label="Plan and task">
      {props.children}
      <AimBlock
        found={present.plan}
        isSettled={present.isSettled}
        isTrying={isTrying}
        isComparing={props.isComparing}
      />
      <StartBlock trial={trial} />
      <AcceptBlock found={present.plan} state={present} isTrying={isTrying} today={props.today} />
    </aside>
  )
}

function PlanLegend(props: {
  readonly found: FoundPlan | null
  readonly scale: Scale
  readonly isPicked: boolean
  readonly showsMoved: boolean
}) {
  const { found } = props
  if (found === null || props.scale === 'house') return null
  const { people, rooms } = found.problem
  return props.scale === 'whole' ? (
    <WholeJobLegend hasElsewhere={people.some(({ busy }) => busy.length > 0)} />
  ) : (
    <Legend
      isPicked={props.isPicked}
      showsMoved={props.showsMoved}
      hasPromises={rooms.some((room) => room.backBy !== null)}
    />
  )
}

function PickedTask(props: {
  readonly job: Job
  readonly found: FoundPlan
  readonly picture: PlanPicture
  readonly taskId: string
  readonly onPick: (taskId: string) => void
  readonly onPin: (taskId: string, startsAt: string, people?: readonly CrewMemberId[]) => void
  readonly onUnpin: () => void
}) {
  const { taskId, onPin } = props
  const { specification, words, pins, momentOf, passes } = props.picture
  return (
    <TaskPaper
      job={props.job}
      specification={specification}
      found={props.found}
      words={words}
      taskId={taskId}
      pin={pins.find((pin) => pin.passKey === taskId) ?? null}
      momentOf={momentOf}
      onPick={props.onPick}
      pass={passes.passes.find(({ key }) => key === taskId)}
      onPin={(startsAt, people) => onPin(taskId, startsAt, people)}
      onUnpin={props.onUnpin}
    />
  )
}

function HowToPick() {
  return (
    <p className="quiet">
      Pick a block to see its first pass, what that waits for and what it holds up. Zoom in from the whole job
      to drag a pass, or to pin it with Shift and the arrow keys; the plan with it is worked out while you
      move it.
    </p>
  )
}

/** A coat that goes on the next day is drawn as one more piece of its task. */
function taskIdOf(key: string): string {
  return key.replace(/~\d+$/, '')
}

/** Of what is left in a room set; its last one where all is done. */
function firstTaskOf({ workPlan }: FoundPlan, setId: string): string | null {
  const own = workPlan.tasks.filter(({ roomSetId }) => roomSetId === setId)
  const task = own.find(({ state }) => state !== 'done') ?? own.at(-1)
  return task === undefined ? null : taskIdOf(task.key)
}
