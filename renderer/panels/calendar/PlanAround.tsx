import { Button, Slider, SliderThumb, SliderTrack } from 'react-aria-components'
import { formatMinutes } from '../../../core/units/duration.ts'
import { dateWords } from '../../../core/work-order/date-words.ts'
import { useJob } from '../../state/app.ts'
import { lookFurther, type SearchState, stopLooking } from '../../state/planner.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { Callout } from '../parts/Callout.tsx'
import { Patterns } from './Patterns.tsx'
import { gapWords, relaxedSentences } from './verdict-words.ts'

/** How good the plan is known to be, and whether a better one is being looked for. */
export function PlanStatus(props: {
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
      {relaxedSentences(job, found.workPlan.relaxed).map((sentence) => (
        <p key={sentence} className="quiet">
          {sentence}
        </p>
      ))}
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

/** What stands in the way of a plan, named, with what to change; or that the first one is on its way. */
export function NoPlan({
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

/** What the signs of the drawing mean, and how wide an hour is. */
export function Legend(props: { readonly pixelsPerHour: number; readonly onZoom: (pixels: number) => void }) {
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
