import { useMemo, useState } from 'react'
import { pinsOnPasses } from '../../../core/passes/pins.ts'
import { records } from '../../../core/project/job.ts'
import type { Pin } from '../../../core/project/progress-records.ts'
import type { CrewMemberId } from '../../../core/project/shop-records.ts'
import { finishOf } from '../../../core/schedule/model.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import { localTimeIn } from '../../../core/time/local-time.ts'
import { instantOf, momentsIn } from '../../../core/time/site-moment.ts'
import { useJob } from '../../state/app.ts'
import { passesOf, specificationOf } from '../../state/derived.ts'
import { newId } from '../../state/new-id.ts'
import type { SearchState } from '../../state/planner.ts'
import { useChoice } from '../../state/planner-choice.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { ChoicePanel } from './choice/ChoicePanel.tsx'
import type { Lane } from './lanes.ts'
import { MoveVerdict } from './MoveVerdict.tsx'
import { NoPlan } from './NoPlan.tsx'
import { AcceptBlock, AimBlock, StartBlock } from './PlanBlocks.tsx'
import { PlanDrawing } from './PlanDrawing.tsx'
import { Legend } from './PlanLegend.tsx'
import { PlanStatus } from './PlanStatus.tsx'
import { drawingOf, planLook, triedStarts } from './plan-look.ts'
import { ScaleChoice, useScale } from './ScaleChoice.tsx'
import { TaskPaper } from './TaskPaper.tsx'
import { TrialBar } from './TrialBar.tsx'
import { taskWords } from './task-words.ts'
import { dropChange, type Trial, tryChange } from './trial.ts'
import { outOfUseWords } from './verdict-words.ts'
import { WholeJobLegend } from './whole-job/WholeJob.tsx'
import { WholeJobSight } from './whole-job/WholeJobSight.tsx'

interface PlanLeafProps {
  readonly trial: Trial
  readonly present: SearchState
  readonly search: SearchState
}

/** Where the hand holds a task, and the plan it takes it from: better ones wait until it lets go. */
interface Held {
  readonly taskId: string
  readonly start: number
  readonly found: FoundPlan
}

/** The plan drawn, with what can be done to it. */
export function PlanLeaf({ trial, present, search }: PlanLeafProps) {
  const job = useJob()
  const [showsTrial, setShowsTrial] = useState(false)
  const [pickedId, setPickedId] = useState<string | null>(null)
  const [scale, setScale] = useScale()
  const [held, setHeld] = useState<Held | null>(null)
  const choice = useChoice(job)
  const { now, today } = useSiteNow()
  const isTrialShown = showsTrial && trial.changes.length > 0 && search.plan !== null && search.isSettled
  const state = isTrialShown ? search : present
  const found = held?.found ?? state.plan
  const shownJob = isTrialShown ? trial.job : job
  const specification = specificationOf(job)
  const passes = passesOf(job)
  const { timeZone, unitSystem } = job.header
  const local = useMemo(() => localTimeIn(timeZone), [timeZone])
  const momentOf = useMemo(() => momentsIn(timeZone), [timeZone])
  const words = useMemo(
    () => taskWords(job, specification, found?.workPlan ?? null),
    [job, specification, found],
  )
  const pins = useMemo(() => pinsOnPasses(passes, records(trial.job.pins)), [passes, trial.job.pins])
  const drawing = useMemo(
    () =>
      found === null || scale === 'whole'
        ? null
        : drawingOf({ job: shownJob, found, local, pixelsPerHour: scale }),
    [found, local, scale, shownJob],
  )
  const tried = useMemo(
    () => (found === null ? new Map<string, number>() : triedStarts(found, pins, timeZone)),
    [found, pins, timeZone],
  )
  const comparedTo = isTrialShown ? present.plan : null
  const look = useMemo(
    () =>
      found === null ? null : planLook({ job: shownJob, found, comparedTo, words, pins, pickedId, momentOf }),
    [shownJob, found, comparedTo, words, pins, pickedId, momentOf],
  )

  function pinTo(taskId: string, startsAt: string, people?: readonly CrewMemberId[]) {
    const old = pins.find((pin) => pin.passKey === taskId)
    const pin: Pin = {
      id: old?.id ?? newId('pin'),
      passKey: taskId,
      startsAt,
      crewMemberIds: people ?? old?.crewMemberIds ?? [],
    }
    tryChange({
      key: `pin/${taskId}`,
      name: `Pin “${words.title(taskId)}” to ${momentWords(startsAt, unitSystem)}`,
      commands: [{ kind: 'putRecord', collection: 'pins', record: pin }],
    })
  }

  function unpin(taskId: string) {
    const pin = pins.find((each) => each.passKey === taskId)
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

  function move(taskId: string, start: number, isDone: boolean) {
    setHeld(isDone || found === null ? null : { taskId, start, found })
    pinTo(taskId, momentOf(start))
  }

  const noteOf = (lane: Lane) =>
    lane.outOfUse === null
      ? ''
      : outOfUseWords(momentOf(lane.outOfUse.from), momentOf(lane.outOfUse.to), unitSystem)

  return (
    <div className="plan-page">
      <div className="plan-main">
        <PlanStatus job={shownJob} found={found} state={state} isTrial={isTrialShown} />
        <ChoicePanel choice={choice} present={present.plan} />
        {found !== null && drawing === null ? (
          <WholeJobSight
            job={shownJob}
            found={found}
            pickedKey={pickedId}
            onPick={(key) => setPickedId(taskIdOf(key))}
            corner={<ScaleChoice scale={scale} onScale={setScale} />}
          />
        ) : found !== null && drawing !== null && look !== null ? (
          <div className="plan-sight">
            <PlanDrawing
              problem={found.problem}
              local={local}
              axis={drawing.axis}
              lanes={drawing.lanes}
              corner={<ScaleChoice scale={scale} onScale={setScale} />}
              system={unitSystem}
              look={look}
              noteOf={noteOf}
              now={instantWithin(found, instantOf(now, timeZone))}
              onPick={setPickedId}
              triedStarts={tried}
              canMove={(id) => isOpenTask(found, id)}
              onMove={move}
              onGiveUp={(draggedId) => {
                setHeld(null)
                if (draggedId === null) setPickedId(null)
                else dropChange(`pin/${draggedId}`)
              }}
            />
            {held === null ? null : (
              <MoveVerdict {...held} job={shownJob} titleOf={words.title} momentOf={momentOf} />
            )}
          </div>
        ) : (
          <NoPlan job={job} specification={specification} state={state} titleOf={words.title} />
        )}
        {held === null ? (
          <TrialBar
            trial={trial}
            present={present}
            search={search}
            drawing={{ isTrial: isTrialShown, show: setShowsTrial }}
          />
        ) : null}
        {found === null ? null : scale === 'whole' ? (
          <WholeJobLegend hasElsewhere={found.problem.people.some(({ busy }) => busy.length > 0)} />
        ) : (
          <Legend
            isPicked={pickedId !== null}
            showsMoved={isTrialShown}
            hasPromises={found.problem.rooms.some((room) => room.backBy !== null)}
          />
        )}
      </div>
      <aside className="pane pane-side" aria-label="Plan and task">
        {pickedId !== null && found !== null ? (
          <TaskPaper
            job={shownJob}
            specification={specification}
            found={found}
            words={words}
            taskId={pickedId}
            pin={pins.find((pin) => pin.passKey === pickedId) ?? null}
            momentOf={momentOf}
            onPick={setPickedId}
            pass={passes.passes.find(({ key }) => key === pickedId)}
            onPin={(startsAt, people) => pinTo(pickedId, startsAt, people)}
            onUnpin={() => unpin(pickedId)}
          />
        ) : found === null ? null : (
          <p className="quiet">
            Pick a block to see its first pass, what that waits for and what it holds up. Come closer than the
            whole job to drag a pass, or to pin it with Shift and the arrow keys; the plan with it is looked
            for while you move it.
          </p>
        )}
        <AimBlock
          found={present.plan}
          isSettled={present.isSettled}
          isTrying={trial.changes.length > 0}
          isComparing={choice.status === 'comparing'}
        />
        <StartBlock trial={trial} />
        <AcceptBlock found={present.plan} state={present} isTrying={trial.changes.length > 0} today={today} />
      </aside>
    </div>
  )
}

/** A coat that goes on the next day is drawn as one more piece of its task. */
function taskIdOf(key: string): string {
  return key.replace(/~\d+$/, '')
}

function isOpenTask(found: FoundPlan, id: string): boolean {
  const kind = found.problem.tasks.find((task) => task.id === id)?.state.kind
  return kind === 'open' || kind === 'pinned'
}

function instantWithin(found: FoundPlan, now: number): number | null {
  const first = Math.min(...found.plan.tasks.map((task) => task.start))
  return now >= first && now <= finishOf(found.plan) ? now : null
}
