import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { lookFurther, type SearchState } from '../../state/planner.ts'
import type { PlanClash } from '../../state/planner-messages.ts'
import { Callout } from '../parts/Callout.tsx'
import { Empty } from '../parts/Empty.tsx'
import { walkThrough } from '../parts/next-steps.ts'

/** Instead of a drawing: what is missing before there can be a plan, what stands in its way, or that it is on its way. */
export function NoPlan(props: {
  readonly job: Job
  readonly specification: Specification
  readonly state: SearchState
  readonly titleOf: (id: string) => string
  readonly onCrew: () => void
}) {
  const { job, specification, onCrew } = props
  if (specification.steps.every((step) => step.daily)) {
    return (
      <Empty title="No steps to plan yet" next={walkThrough}>
        <p>
          The rooms are drawn, and nothing is to be done in them. Write down what is wrong at Walk, or choose
          a color at Finish: the steps follow, and with them who works when.
        </p>
      </Empty>
    )
  }
  if (records(job.crew).length === 0) {
    return (
      <Empty title="Nobody to plan with" next={{ label: 'Put the crew together', onPress: onCrew }}>
        <p>
          Add the people who will work here on the tab Crew, with their hours and what they can do. The plan
          is tried while you do.
        </p>
      </Empty>
    )
  }
  return <div className="tab-pad">{whyNone(props)}</div>
}

function whyNone({
  state,
  titleOf,
}: {
  readonly state: SearchState
  readonly titleOf: (id: string) => string
}) {
  if (state.broken !== null) return <Callout kind="stop">{state.broken}</Callout>
  if (state.clash !== null) return <Clash clash={state.clash} titleOf={titleOf} />
  return (
    <Callout kind="wait" title="Looking" isLive>
      The first plan is being worked out.
    </Callout>
  )
}

function Clash(props: { readonly clash: PlanClash; readonly titleOf: (id: string) => string }) {
  const { isProved, sentence, taskIds } = props.clash
  return (
    <Callout kind="stop" title={isProved ? 'There can be no plan' : 'No plan found yet'} isLive>
      <p>{sentence}</p>
      {taskIds.length < 2 ? null : (
        <ol className="clash-steps">
          {taskIds.map((id) => (
            <li key={id}>{props.titleOf(id)}</li>
          ))}
        </ol>
      )}
      <p>
        {isProved
          ? 'Change what stands in the way: crew, hours, a pin, a promise or a house rule.'
          : 'There may be one all the same: keep looking, or loosen a pin, a promise or a house rule.'}
      </p>
      {isProved ? null : (
        <Button className="plain-button" onPress={() => lookFurther('present')}>
          Keep improving
        </Button>
      )}
    </Callout>
  )
}
