import { useState } from 'react'
import { Button } from 'react-aria-components'
import { counted, type PassProgress } from '../../../core/progress/pass-states.ts'
import type { Readiness } from '../../../core/progress/readiness.ts'
import { isSettled, type StepProgress } from '../../../core/progress/step-states.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { rovingList } from '../parts/roving-list.ts'
import { PassMinutes } from './PassMinutes.tsx'
import { StepTicks } from './StepTicks.tsx'
import { passWords } from './step-words.ts'
import { TickButton } from './TickButton.tsx'

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
  return (
    <li className={`pass-tick step-${words.kind}`}>
      <div className="step-tick" data-row>
        <TickButton
          name={pass.name}
          isDone={state.kind === 'done'}
          mark={words.mark}
          onPress={() => onTick(counted(steps), pass.name)}
        />
        <Button className="step-name" aria-expanded={isOpen} onPress={() => onOpen(!isOpen)}>
          <span className="step-title pass-title">{pass.name}</span>
        </Button>
        <span className="step-when">{words.text}</span>
        <span className="number">{formatMinutes(pass.personMinutes)}</span>
      </div>
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
  const { progress, onTick } = props
  const byKey = new Map(progress.steps.map((step) => [step.step.key, step]))
  const [openWords, setOpenWords] = useState<string | null>(null)
  return (
    <ul className="pass-lines">
      {progress.pass.lines.map((line) => {
        const steps = line.stepKeys.flatMap((key) => byKey.get(key) ?? [])
        const isDone = counted(steps).every(({ state }) => isSettled(state))
        const isOpen = openWords === line.words
        return (
          <li key={line.words} className={isDone ? 'step-done' : ''}>
            <div className="step-tick" data-row>
              <TickButton
                name={line.words}
                isDone={isDone}
                mark={isDone ? '✓' : ''}
                onPress={() => onTick(counted(steps), line.words)}
              />
              <Button
                className="step-name"
                aria-expanded={isOpen}
                onPress={() => setOpenWords(isOpen ? null : line.words)}
              >
                <span className="step-title">{line.words}</span>
              </Button>
              <span className="step-when" />
              <span className="number">
                {line.personMinutes > 0 ? formatMinutes(line.personMinutes) : 'every day'}
              </span>
            </div>
            {isOpen ? <StepTicks {...props} steps={steps} /> : null}
          </li>
        )
      })}
    </ul>
  )
}
