import { useState } from 'react'
import { counted, type PassProgress } from '../../../core/progress/pass-states.ts'
import type { Readiness } from '../../../core/progress/readiness.ts'
import { isSettled, type StepProgress } from '../../../core/progress/step-states.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { rovingList } from '../parts/roving-list.ts'
import { useStable } from '../parts/use-stable.ts'
import { PassMinutes } from './PassMinutes.tsx'
import { StepTicks } from './StepTicks.tsx'
import { passWords } from './step-words.ts'
import { TickRow } from './TickRow.tsx'

interface PassTicksProps {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly passes: readonly PassProgress[]
  readonly readiness: ReadonlyMap<string, Readiness>
  readonly pickedKey: string | null
  readonly onPick: (stepKey: string) => void
  /** All of these at once: a pass, a line of one, or a step; what it is called. */
  readonly onTick: (steps: readonly StepProgress[], name: string) => void
  readonly nameOf: (stepKey: string) => string
}

/** The passes of a room set in order, to be ticked as they are done. The name of one opens its lines, a line its steps. */
export function PassTicks(props: PassTicksProps) {
  const next = props.passes.find(({ ready, state }) => ready.kind === 'ready' || state.kind === 'underWay')
  const [openKey, setOpenKey] = useState<string | null>(next?.pass.key ?? null)
  return (
    <ol ref={rovingList} className="step-ticks" aria-label="Passes">
      {props.passes.map((progress) => (
        <PassTick
          key={progress.pass.key}
          {...props}
          progress={progress}
          isOpen={openKey === progress.pass.key}
          onOpen={(isOpen) => setOpenKey(isOpen ? progress.pass.key : null)}
        />
      ))}
    </ol>
  )
}

interface PassTickProps extends PassTicksProps {
  readonly progress: PassProgress
  readonly isOpen: boolean
  readonly onOpen: (isOpen: boolean) => void
}

function PassTick(props: PassTickProps) {
  const { job, progress, isOpen, onOpen, onTick, nameOf } = props
  const { pass, state, steps } = progress
  const words = passWords(progress, job.header.unitSystem, nameOf)
  const tick = useStable(() => onTick(counted(steps), pass.name))
  const open = useStable(() => onOpen(!isOpen))
  return (
    <li className={`pass-tick step-${words.kind}`}>
      <TickRow
        name={pass.name}
        isPass
        isDone={state.kind === 'done'}
        mark={words.mark}
        isOpen={isOpen}
        when={words.text}
        amount={formatMinutes(pass.personMinutes)}
        onTick={tick}
        onOpen={open}
      />
      {isOpen ? <Lines {...props} /> : null}
      {isOpen && state.kind === 'done' ? (
        <div className="pass-minutes">
          <PassMinutes job={job} steps={counted(steps)} />
        </div>
      ) : null}
    </li>
  )
}

/** As a painter would write it: one line for each thing done with one paint. */
function Lines(props: PassTickProps) {
  const { steps, pass } = props.progress
  const byKey = new Map(steps.map((step) => [step.step.key, step]))
  const [openWords, setOpenWords] = useState<string | null>(null)
  return (
    <ul className="pass-lines">
      {pass.lines.map((line) => (
        <Line
          key={line.words}
          {...props}
          line={line}
          steps={line.stepKeys.flatMap((key) => byKey.get(key) ?? [])}
          isOpen={openWords === line.words}
          onOpen={(isOpen) => setOpenWords(isOpen ? line.words : null)}
        />
      ))}
    </ul>
  )
}

function Line(
  props: PassTickProps & {
    readonly line: PassProgress['pass']['lines'][number]
    readonly steps: readonly StepProgress[]
  },
) {
  const { line, steps, isOpen, onOpen, onTick } = props
  const isDone = counted(steps).every(({ state }) => isSettled(state))
  const tick = useStable(() => onTick(counted(steps), line.words))
  const open = useStable(() => onOpen(!isOpen))
  return (
    <li className={isDone ? 'step-done' : ''}>
      <TickRow
        name={line.words}
        isPass={false}
        isDone={isDone}
        mark={isDone ? '✓' : ''}
        isOpen={isOpen}
        when=""
        amount={line.personMinutes > 0 ? formatMinutes(line.personMinutes) : 'every day'}
        onTick={tick}
        onOpen={open}
      />
      {isOpen ? <StepTicks {...props} steps={steps} /> : null}
    </li>
  )
}
