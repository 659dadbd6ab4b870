import { useState } from 'react'
import { stepMinutes } from '../../../core/price/labour.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { explainOrder, explainStep } from '../../../core/specification/explain.ts'
import { conditionWords, stepTitle } from '../../../core/specification/trade-words.ts'
import type { Specification, Step, StepOrder } from '../../../core/specification/types.ts'
import { partWords } from '../../../core/specification/woodwork.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { materialWords } from '../../../core/work-order/material-words.ts'
import { placeInSentence, stepPlace } from '../../../core/work-order/surface-words.ts'
import { useView, viewStore } from '../../state/app.ts'
import { Callout, QuietNote } from '../parts/Callout.tsx'
import { Choice } from '../parts/Choice.tsx'
import { Empty } from '../parts/Empty.tsx'
import { HoldPapers } from '../parts/HoldPapers.tsx'
import { walkThrough } from '../parts/next-steps.ts'
import { type Column, PickTable } from '../parts/PickTable.tsx'
import { RoomNotices } from '../parts/RoomNotices.tsx'
import { SourceDetails } from '../parts/SourceDetails.tsx'
import { orderWaitWords } from './wait-words.ts'

interface OrderTabProps {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
}

/** The steps of a room in order; a step picked says why it is here and why it stands before and after its neighbours. */
export function OrderTab(props: OrderTabProps) {
  const { job, takeoff, specification } = props
  const viewRoom = useView((state) => state.roomId)
  const rooms = records(job.rooms).filter((room) =>
    specification.steps.some((step) => step.roomId === room.id),
  )
  const room = rooms.find((each) => each.id === viewRoom) ?? rooms[0]
  const [pickedKey, setPickedKey] = useState<string | null>(null)
  const steps = specification.steps.filter((step) => step.roomId === room?.id)
  const index = steps.findIndex((step) => step.key === pickedKey)
  const step = steps[index]
  if (room === undefined) {
    return (
      <div className="tab-pad">
        <Clashes specification={specification} />
        <Empty title="No steps yet" next={walkThrough}>
          <p>
            Steps follow from what is wrong and from what each surface becomes. Choose a color on the tab
            Finishes, or write down what you find at Walk.
          </p>
        </Empty>
      </div>
    )
  }
  return (
    <div className="two-panes">
      <div className="pane pane-wide">
        <div className="tab-intro">
          <Choice
            label="Room"
            options={rooms.map((each) => ({ id: each.id, label: each.name }))}
            chosen={room.id}
            onChoose={(roomId) => viewStore.setState({ roomId })}
          />
          <p className="quiet">
            {steps.length} steps,{' '}
            {formatMinutes(steps.reduce((total, each) => total + stepMinutes(job, each), 0))} of work
          </p>
        </div>
        <Clashes specification={specification} />
        <div className="scroll">
          <PickTable
            label={`Steps of ${room.name}`}
            columns={columnsOf(job, takeoff, steps)}
            rows={steps}
            keyOf={(each) => each.key}
            picked={pickedKey}
            onPick={setPickedKey}
          />
        </div>
      </div>
      <aside className="pane pane-side" aria-label="Why">
        {step === undefined ? (
          <p className="quiet">Pick a step to see why it is here and why it is before its neighbor.</p>
        ) : (
          <Why {...props} steps={steps} index={index} step={step} />
        )}
        <HoldPapers job={job} specification={specification} roomId={room.id} />
        <RoomNotices specification={specification} roomId={room.id} />
      </aside>
    </div>
  )
}

function Clashes({ specification }: { readonly specification: Specification }) {
  return specification.clashes.map((clash) => (
    <Callout key={clash.sentence} kind="stop" title="Two rules disagree">
      {clash.sentence}
    </Callout>
  ))
}

function columnsOf(job: Job, takeoff: Takeoff, steps: readonly Step[]): readonly Column<Step>[] {
  const numbers = new Map(steps.map((step, index) => [step.key, index + 1]))
  return [
    { id: 'number', head: 'No.', isNumber: true, cell: (step) => numbers.get(step.key) },
    {
      id: 'step',
      head: 'Step',
      cell: (step) => (
        <>
          {stepTitle(step)}
          {step.cautions.length === 0 ? null : (
            <span className="caution-mark" title="Has cautions">
              {' '}
              ! caution
            </span>
          )}
        </>
      ),
    },
    {
      id: 'place',
      head: 'Where',
      cell: (step) => (
        <>
          {stepPlace(job, takeoff, step)}
          <WoodworkByKind job={job} step={step} />
        </>
      ),
    },
    {
      id: 'material',
      head: 'With',
      cell: (step) => <span className="quiet">{materialWords(job, step)}</span>,
    },
    {
      id: 'minutes',
      head: 'Work',
      isNumber: true,
      cell: (step) => (step.daily ? 'every day' : formatMinutes(stepMinutes(job, step))),
    },
    {
      id: 'dry',
      head: 'Touch dry',
      isNumber: true,
      cell: (step) => (step.touchDry === 0 ? '' : formatMinutes(step.touchDry)),
    },
  ]
}

/** What a lump of trim is made of: `crown 48' 0", casings 121' 0"`. */
function WoodworkByKind({ job, step }: { readonly job: Job; readonly step: Step }) {
  if (step.surfaceClass !== 'trim' || step.parts.length === 0) return null
  return (
    <div className="quiet">{step.parts.map((part) => partWords(part, job.header.unitSystem)).join(', ')}</div>
  )
}

interface WhyProps extends OrderTabProps {
  readonly steps: readonly Step[]
  readonly index: number
  readonly step: Step
}

function Why(props: WhyProps) {
  const { job, specification, step } = props
  const explanation = explainStep(job, specification, step.key)
  if (explanation === null) return null
  return (
    <section className="block" aria-label={`Why: ${stepTitle(step)}`}>
      <h3>{stepTitle(step)}</h3>
      <h4>Why it is here</h4>
      {explanation.because.map((because) => (
        <div key={because.ruleId}>
          <p>{because.reason}</p>
          <SourceDetails source={because.source} />
          {because.conditions.map((condition) => (
            <p key={condition.id} className="quiet">
              Found: {conditionWords[condition.kind]}
              {condition.note === '' ? '' : `, ${condition.note}`}
            </p>
          ))}
        </div>
      ))}
      <NextStep {...props} />
      <Orders {...props} title="Why it is before" orders={explanation.before} side="after" />
      <Orders {...props} title="Why it is after" orders={explanation.after} side="before" />
      {explanation.cautions.length === 0 ? null : (
        <>
          <h4>Cautions</h4>
          {explanation.cautions.map((caution) => (
            <QuietNote
              key={caution.id}
              kind="stop"
              title="Caution"
              words={caution.text}
              source={caution.rule}
            />
          ))}
        </>
      )}
    </section>
  )
}

/** The line below in the list: the chain of reasons that leads to it, or that they may go in either order. */
function NextStep({ job, takeoff, specification, steps, index, step }: WhyProps) {
  const next = steps[index + 1]
  if (next === undefined) return null
  const chain = explainOrder(specification, step.key, next.key)
  return (
    <>
      <h4>Before its neighbor</h4>
      <p>
        {stepTitle(next)} <span className="quiet">· {placeInSentence(stepPlace(job, takeoff, next))}: </span>
        {chain.length === 0
          ? 'no rule says so; they may go in either order.'
          : chain.map((order) => order.reason).join(' Then: ')}
      </p>
    </>
  )
}

function Orders(
  props: WhyProps & {
    readonly title: string
    readonly orders: readonly StepOrder[]
    readonly side: 'before' | 'after'
  },
) {
  const { job, takeoff, specification, title, orders, side } = props
  const byKey = new Map(specification.steps.map((each) => [each.key, each]))
  if (orders.length === 0) return null
  return (
    <>
      <h4>{title}</h4>
      <ul className="reasons">
        {orders.map((order) => {
          const other = byKey.get(order[side])
          if (other === undefined) return null
          return (
            <li key={`${order.before}>${order.after}`}>
              <strong>{stepTitle(other)}</strong>{' '}
              <span className="quiet">· {placeInSentence(stepPlace(job, takeoff, other))}</span>
              <div>
                {order.reason} {orderWaitWords(order)}
                <SourceDetails source={order.source} />
              </div>
            </li>
          )
        })}
      </ul>
    </>
  )
}
