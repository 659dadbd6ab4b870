import { useMemo, useState } from 'react'
import { Button, Slider, SliderThumb, SliderTrack } from 'react-aria-components'
import { records } from '../../../core/project/job.ts'
import type { IssuedId, Pin, PinId } from '../../../core/project/progress-records.ts'
import { localTimeIn } from '../../../core/schedule/calendar.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { dateWords, momentWords } from '../../../core/work-order/date-words.ts'
import { instantOf, momentOf } from '../../../core/work-order/site-time.ts'
import { newId, useJob } from '../../state/app.ts'
import { specificationOf } from '../../state/derived.ts'
import { lookFurther, type SearchState, stopLooking } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { Callout } from '../parts/Callout.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { putRecord } from '../parts/edits.ts'
import { dateEntry } from '../parts/entries.ts'
import { lanesOf } from './lanes.ts'
import { Patterns } from './Patterns.tsx'
import { PlanDrawing } from './PlanDrawing.tsx'
import { joinedTasks, TaskPaper } from './TaskPaper.tsx'
import { TrialBar } from './TrialBar.tsx'
import { taskWords } from './task-words.ts'
import { timeAxis } from './time-axis.ts'
import { dropChange, type Trial, tryChange } from './trial.ts'
import { gapWords } from './verdict-words.ts'

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

function PlanStatus(props: {
  readonly found: FoundPlan | null
  readonly state: SearchState
  readonly isTrial: boolean
}) {
  const job = useJob()
  const { found, state } = props
  const { unitSystem } = job.header
  if (found === null) return null
  const { value } = found.plan
  return (
    <div className="plan-status">
      <p role="status">
        {props.isTrial ? 'With what is being tried: ' : ''}
        <strong>
          {dateWords(found.workPlan.startsOn, unitSystem)} to{' '}
          {dateWords(found.workPlan.finishesOn, unitSystem)}
        </strong>
        . {gapWords(found, state)}
      </p>
      <p className="quiet">
        {value.roomDaysOutOfUse} room-days out of use, crew idle {formatMinutes(value.idleMinutes)},{' '}
        {value.productChanges} changes of product
      </p>
      {state.status === 'searching' ? (
        <Button className="plain-button" onPress={() => stopLooking(props.isTrial ? 'trial' : 'present')}>
          Looking for a better one: stop
        </Button>
      ) : state.isFinished ? null : (
        <Button className="plain-button" onPress={() => lookFurther(props.isTrial ? 'trial' : 'present')}>
          Look further
        </Button>
      )}
    </div>
  )
}

function NoPlan({
  state,
  titleOf,
}: {
  readonly state: SearchState
  readonly titleOf: (id: string) => string
}) {
  if (state.broken !== null) {
    return (
      <div className="leaf-pad">
        <Callout kind="stop">{state.broken}</Callout>
      </div>
    )
  }
  if (state.clash !== null) {
    return (
      <div className="leaf-pad">
        <Callout
          kind="stop"
          title={state.clash.isProved ? 'There can be no plan' : 'No plan found yet'}
          isLive
        >
          <p>{state.clash.sentence}</p>
          {state.clash.taskIds.length < 2 ? null : (
            <ol>
              {state.clash.taskIds.map((id) => (
                <li key={id}>{titleOf(id)}</li>
              ))}
            </ol>
          )}
          <p>
            {state.clash.isProved
              ? 'Change what stands in the way: crew, hours, a pin, a promise or a house rule.'
              : 'It may exist all the same: look further, or loosen a pin, a promise or a house rule.'}
          </p>
          {state.clash.isProved ? null : (
            <Button className="plain-button" onPress={() => lookFurther('present')}>
              Look further
            </Button>
          )}
        </Callout>
      </div>
    )
  }
  return (
    <div className="leaf-pad">
      <Callout kind="wait" title="Looking" isLive>
        The first plan is being looked for.
      </Callout>
    </div>
  )
}

function Legend(props: { readonly pixelsPerHour: number; readonly onZoom: (pixels: number) => void }) {
  return (
    <div className="plan-legend">
      <Patterns />
      <LegendItem fill="#cfd9d6" text="work" />
      <LegendItem fill="url(#drying-hatch)" text="drying" />
      <LegendItem fill="url(#night-dots)" text="night or day off" />
      <LegendItem fill="url(#absent-lines)" text="break or not there" />
      <span>
        <svg width="14" height="12" aria-hidden="true">
          <circle cx="7" cy="6" r="4" className="plan-pin" />
        </svg>
        pinned
      </span>
      <Slider
        className="zoom"
        aria-label="Width of an hour"
        minValue={10}
        maxValue={90}
        step={4}
        value={props.pixelsPerHour}
        onChange={(value) => props.onZoom(Number(value))}
      >
        <span aria-hidden="true">narrower</span>
        <SliderTrack className="zoom-track">
          <SliderThumb className="zoom-thumb" />
        </SliderTrack>
        <span aria-hidden="true">wider</span>
      </Slider>
    </div>
  )
}

function LegendItem({ fill, text }: { readonly fill: string; readonly text: string }) {
  return (
    <span>
      <svg width="20" height="12" aria-hidden="true">
        <rect width="20" height="12" fill={fill} stroke="var(--line-strong)" />
      </svg>
      {text}
    </span>
  )
}

function StartBlock({ trial }: { readonly trial: Trial }) {
  const { startsOn, unitSystem } = trial.job.header
  return (
    <section className="block" aria-label="Start">
      <EntryField
        label="Work starts on"
        kind="date"
        shown={startsOn}
        read={dateEntry}
        hint="Tried first, like everything here: the two plans are compared before you take it."
        onCommit={(date) =>
          tryChange({
            key: 'startsOn',
            name: `Start on ${dateWords(date, unitSystem)}`,
            commands: [{ kind: 'setHeader', change: { startsOn: date } }],
          })
        }
      />
    </section>
  )
}

function AcceptBlock(props: {
  readonly found: FoundPlan | null
  readonly state: SearchState
  readonly isTrying: boolean
  readonly now: string
}) {
  const job = useJob()
  const { found, now } = props
  const accepted = acceptedPlan(job)
  const { unitSystem } = job.header

  function accept() {
    if (found === null) return
    putRecord('Accept the plan', 'issued', {
      id: newId('plan') as IssuedId,
      kind: 'plan',
      issuedAt: now,
      body: JSON.parse(JSON.stringify({ plan: found.workPlan, value: found.plan.value, gapDays: found.gap })),
    })
  }

  return (
    <section className="block" aria-label="Accepting">
      <h3>Accepted plan</h3>
      {accepted === null ? (
        <p className="quiet">
          None yet. Accepting freezes the plan as it is with today’s date; later plans keep its promises where
          they can and say what moved.
        </p>
      ) : (
        <p>
          Accepted {momentWords(accepted.acceptedAt, unitSystem)}:{' '}
          {dateWords(accepted.plan.startsOn, unitSystem)} to {dateWords(accepted.plan.finishesOn, unitSystem)}
          .
          {found === null || found.plan.value.movedPromises === 0
            ? ' The plan now keeps all it promised.'
            : ` The plan now moves ${found.plan.value.movedPromises} of what it promised.`}
        </p>
      )}
      <div className="button-row">
        <Button className="act-button" isDisabled={found === null || props.isTrying} onPress={accept}>
          {accepted === null ? 'Accept this plan' : 'Accept this plan instead'}
        </Button>
      </div>
      {accepted === null ? null : (
        <Button
          className="plain-button"
          onPress={() =>
            tryChange({
              key: 'afresh',
              name: 'Plan afresh, free of what was accepted',
              commands: [{ kind: 'removeRecord', collection: 'issued', id: accepted.id }],
            })
          }
        >
          Plan afresh, free of its promises
        </Button>
      )}
      {props.isTrying ? <p className="quiet">Take or leave what is being tried first.</p> : null}
    </section>
  )
}
