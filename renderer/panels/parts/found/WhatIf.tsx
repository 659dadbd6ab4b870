import { stepMinutes } from '../../../../core/price/labour.ts'
import type { MaterialLine } from '../../../../core/price/materials.ts'
import type { ChangedStep, ChangeOrder } from '../../../../core/progress/change-order.ts'
import type { Job } from '../../../../core/project/job.ts'
import type { Takeoff } from '../../../../core/quantities/takeoff-types.ts'
import { stepTitle } from '../../../../core/specification/trade-words.ts'
import type { Step } from '../../../../core/specification/types.ts'
import { dateWords } from '../../../../core/time/date-words.ts'
import { formatMinutes } from '../../../../core/units/duration.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { formatVolume } from '../../../../core/units/volume.ts'
import { materialWords } from '../../../../core/work-order/material-words.ts'
import { placeInSentence, stepPlace } from '../../../../core/work-order/surface-words.ts'
import { QuietNote } from '../Callout.tsx'
import type { Chain } from '../chain.ts'
import { noticeTitle } from '../RoomNotices.tsx'

interface WhatIfProps {
  readonly before: Chain
  readonly after: Chain
  readonly change: ChangeOrder
  readonly moved: readonly Step[]
  /** Says what the second column stands for, `With it`. */
  readonly afterWord: string
}

/** What would be different, before it is accepted: steps that appear, go, move or change, hours, products, price, days. */
export function WhatIf(props: WhatIfProps) {
  const { before, after, change, moved } = props
  const system = after.job.header.unitSystem
  const products = changedProducts(before.estimate.materials, after.estimate.materials)
  const isSame =
    change.added.length + change.removed.length + change.changed.length + moved.length + products.length === 0
  return (
    <div className="what-if">
      <BeforeAfterTable {...props} />
      {isSame ? <p className="quiet">No step, hour or product changes by it.</p> : null}
      <StepGroup
        title="Steps that appear"
        mark="+"
        steps={change.added}
        job={after.job}
        takeoff={after.takeoff}
      />
      <StepGroup
        title="Steps that go"
        mark="−"
        steps={change.removed}
        job={before.job}
        takeoff={before.takeoff}
      />
      {change.changed.length === 0 ? null : (
        <section>
          <h4>Steps that change</h4>
          <ul className="change-list">
            {change.changed.map((each) => (
              <li key={each.after.key}>
                <span aria-hidden="true" className="change-mark">
                  ~
                </span>
                <span>
                  {stepTitle(each.after)} <span className="quiet">· {placeOf(after, each.after)}</span>
                </span>
                <span className="number">{hoursChange(each)}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <StepGroup title="Steps that move" mark="↕" steps={moved} job={after.job} takeoff={after.takeoff} />
      {products.length === 0 ? null : (
        <section>
          <h4>Products</h4>
          <ul className="change-list">
            {products.map(({ line, was, is }) => (
              <li key={line.key}>
                <span aria-hidden="true" className="change-mark">
                  {was === 0 ? '+' : is === 0 ? '−' : '~'}
                </span>
                <span>
                  {line.productName}
                  {line.colourName === null ? '' : `, ${line.colourName}`}
                </span>
                <span className="number">
                  {was === 0 ? '' : `${formatVolume(was, system)} → `}
                  {is === 0 ? 'no longer needed' : formatVolume(is, system)}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {change.newNotices.map((notice) => (
        <QuietNote
          key={notice.sentence}
          kind={notice.hold ? 'stop' : 'note'}
          title={noticeTitle(notice)}
          words={notice.sentence}
          source={notice.source}
        />
      ))}
    </div>
  )
}

/** A step may change in its reason or product alone. */
function hoursChange({ minutesBefore, minutesAfter }: ChangedStep): string {
  const [was, is] = [formatMinutes(minutesBefore), formatMinutes(minutesAfter)]
  return was === is ? `${is}, as before` : `${was} → ${is}`
}

function placeOf(chain: Chain, step: Step): string {
  return `${chain.job.rooms[step.roomId]?.name ?? ''}, ${placeInSentence(stepPlace(chain.job, chain.takeoff, step))}`
}

function BeforeAfterTable({ change, after, afterWord }: WhatIfProps) {
  const system = after.job.header.unitSystem
  const day = (date: string | null) => (date === null ? 'no plan yet' : dateWords(date, system))
  const showsDays = change.finishesOn.before !== null || change.finishesOn.after !== null
  return (
    <table className="before-after">
      <thead>
        <tr>
          <th>
            <span className="unseen">Measure</span>
          </th>
          <th className="number">Now</th>
          <th className="number">{afterWord}</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">Hours</th>
          <td className="number">{formatMinutes(change.minutes.before)}</td>
          <td className="number">{formatMinutes(change.minutes.after)}</td>
        </tr>
        <tr>
          <th scope="row">Price with tax</th>
          <td className="number">{formatCents(change.totalCents.before)}</td>
          <td className="number">{formatCents(change.totalCents.after)}</td>
        </tr>
        {showsDays ? (
          <tr>
            <th scope="row">Last day</th>
            <td className="number">{day(change.finishesOn.before)}</td>
            <td className="number">{day(change.finishesOn.after)}</td>
          </tr>
        ) : null}
      </tbody>
    </table>
  )
}

function StepGroup(props: {
  readonly title: string
  readonly mark: string
  readonly steps: readonly Step[]
  readonly job: Job
  readonly takeoff: Takeoff
}) {
  const { title, mark, steps, job, takeoff } = props
  if (steps.length === 0) return null
  return (
    <section>
      <h4>{title}</h4>
      <ul className="change-list">
        {steps.map((step) => (
          <li key={step.key}>
            <span aria-hidden="true" className="change-mark">
              {mark}
            </span>
            <span>
              {stepTitle(step)}{' '}
              <span className="quiet">
                · {job.rooms[step.roomId]?.name}, {placeInSentence(stepPlace(job, takeoff, step))}
              </span>
              {materialWords(job, step) === '' ? null : (
                <span className="quiet change-material">{materialWords(job, step)}</span>
              )}
            </span>
            <span className="number">{formatMinutes(stepMinutes(job, step))}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function changedProducts(before: readonly MaterialLine[], after: readonly MaterialLine[]) {
  const was = new Map(before.map((line) => [line.key, line]))
  const is = new Map(after.map((line) => [line.key, line]))
  return [...new Map([...was, ...is]).values()].flatMap((line) => {
    const amounts = { was: was.get(line.key)?.gallons ?? 0, is: is.get(line.key)?.gallons ?? 0 }
    return Math.abs(amounts.was - amounts.is) < 0.005 ? [] : [{ line, ...amounts }]
  })
}
