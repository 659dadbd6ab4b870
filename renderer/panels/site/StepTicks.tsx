import { Button } from 'react-aria-components'
import { stepMinutes } from '../../../core/price/labour.ts'
import type { Readiness } from '../../../core/progress/readiness.ts'
import type { StepProgress } from '../../../core/progress/step-states.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { stepTitle } from '../../../core/specification/trade-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { materialWords } from '../../../core/work-order/material-words.ts'
import { placeInSentence, stepPlace } from '../../../core/work-order/surface-words.ts'
import { stateWords } from './step-words.ts'
import { TickButton } from './TickButton.tsx'

interface StepTicksProps {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly steps: readonly StepProgress[]
  readonly readiness: ReadonlyMap<string, Readiness>
  readonly pickedKey: string | null
  readonly onPick: (stepKey: string) => void
  readonly onTick: (steps: readonly StepProgress[], name: string) => void
  readonly nameOf: (stepKey: string) => string
}

/** The steps of a line in order, to be ticked as they are done. The name of a step opens what else can be said of it. */
export function StepTicks(props: StepTicksProps) {
  return (
    <ol className="step-ticks">
      {props.steps.map((progress) => (
        <StepTick key={progress.step.key} {...props} progress={progress} />
      ))}
    </ol>
  )
}

function StepTick(props: StepTicksProps & { readonly progress: StepProgress }) {
  const { job, takeoff, progress, readiness, pickedKey, onPick, onTick, nameOf } = props
  const { step, state } = progress
  const words = stateWords(progress, readiness.get(step.key), job.header.unitSystem, nameOf)
  const title = stepTitle(step)
  const material = materialWords(job, step)
  return (
    <li data-row className={`step-tick step-${words.kind}${pickedKey === step.key ? ' picked' : ''}`}>
      <TickButton
        name={`${title}, ${placeInSentence(stepPlace(job, takeoff, step))}`}
        isDone={state.kind === 'done'}
        mark={words.mark}
        onPress={() => onTick([progress], title)}
      />
      <Button className="step-name" aria-expanded={pickedKey === step.key} onPress={() => onPick(step.key)}>
        <span className="step-title">
          {title}
          <span className="quiet"> · {stepPlace(job, takeoff, step)}</span>
        </span>
        {material === '' ? null : <span className="quiet">{material}</span>}
      </Button>
      <span className="step-when">{words.text}</span>
      <span className="number">{step.daily ? 'every day' : formatMinutes(stepMinutes(job, step))}</span>
    </li>
  )
}
