import { Button } from 'react-aria-components'
import { punchList } from '../../../core/progress/punch-list.ts'
import type { Job } from '../../../core/project/job.ts'
import { stepTitle } from '../../../core/specification/trade-words.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import { viewingRule } from '../../../core/work-order/viewing-rule.ts'
import { Empty } from '../parts/Empty.tsx'
import { SourceDetails } from '../parts/SourceDetails.tsx'
import { addMark } from './marks.ts'

/** What was judged not good on the walk through, and whether it has been made good. */
export function PunchTab(props: {
  readonly job: Job
  readonly specification: Specification
  readonly now: string
}) {
  const { job, specification, now } = props
  const items = punchList(job, specification)
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  const system = job.header.unitSystem
  return (
    <div className="scroll tab-pad">
      <p>{viewingRule.text}</p>
      <SourceDetails source={viewingRule.source} />
      {items.length === 0 ? (
        <Empty title="Nothing to fix">
          <p>
            Walk through each room at that distance. At a step that does not hold up, write what you see and
            choose “Do again”; it stands here until it is fixed.
          </p>
        </Empty>
      ) : (
        <table className="pick-table">
          <thead>
            <tr>
              <th scope="col">Room</th>
              <th scope="col">Step</th>
              <th scope="col">Seen</th>
              <th scope="col">Noted</th>
              <th scope="col">Fixed</th>
            </tr>
          </thead>
          <tbody>
            {items.map((item) => {
              const step = steps.get(item.stepKey)
              return (
                <tr key={`${item.stepKey}/${item.notedAt}`}>
                  <td>{item.roomName}</td>
                  <td>{step === undefined ? item.stepKey : stepTitle(step)}</td>
                  <td>{item.seen === '' ? <span className="quiet">no note</span> : item.seen}</td>
                  <td>{momentWords(item.notedAt, system)}</td>
                  <td>
                    {item.madeGoodAt === null ? (
                      <Button className="plain-button" onPress={() => addMark(item.stepKey, 'done', now)}>
                        Fixed now
                      </Button>
                    ) : (
                      momentWords(item.madeGoodAt, system)
                    )}
                  </td>
                </tr>
              )
            })}
          </tbody>
        </table>
      )}
    </div>
  )
}
