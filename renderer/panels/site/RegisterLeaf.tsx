import type { StepProgress } from '../../../core/progress/step-states.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { KeptItem } from '../../../core/project/survey-records.ts'
import { handlingWords } from '../../../core/specification/trade-words.ts'
import type { Operation } from '../../../core/specification/types.ts'
import { momentWords } from '../../../core/work-order/date-words.ts'
import { capital } from '../parts/words.ts'

const away: ReadonlySet<Operation> = new Set<Operation>(['takeOff', 'loosenHanging', 'coverAlarm', 'maskOff'])
const back: ReadonlySet<Operation> = new Set<Operation>(['putBack', 'refitHanging', 'restoreAlarm', 'unmask'])

/** What came off, is loose or covered, and what is back; it follows the ticked steps. */
export function RegisterLeaf(props: {
  readonly job: Job
  readonly roomId: RoomId
  readonly steps: readonly StepProgress[]
}) {
  const { job, roomId, steps } = props
  const items = records(job.keptItems).filter((item) => item.roomId === roomId)
  const system = job.header.unitSystem
  if (items.length === 0) {
    return (
      <p className="quiet leaf-pad">
        Nothing is written down for this room. Plates, locks, lights, alarms and hangings that stay are listed
        at Walk.
      </p>
    )
  }
  return (
    <div className="scroll leaf-pad">
      <table className="pick-table">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Count
            </th>
            <th scope="col">Handling</th>
            <th scope="col">Off or covered</th>
            <th scope="col">Back</th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.id}>
              <td>
                {capital(item.name)}
                {item.wired ? <span className="quiet"> · wired, restored every day</span> : null}
                {item.note === '' ? null : <div className="quiet">{item.note}</div>}
              </td>
              <td className="number">{item.count}</td>
              <td>{handlingWords[item.handling]}</td>
              <td>{whenOf(steps, item, away, system)}</td>
              <td>{whenOf(steps, item, back, system)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        Tick “Take off, bag and label” and “Put back” among the steps; the register follows.
      </p>
    </div>
  )
}

function whenOf(
  steps: readonly StepProgress[],
  item: KeptItem,
  operations: ReadonlySet<Operation>,
  system: Job['header']['unitSystem'],
): string {
  const found = steps.find(({ step }) => operations.has(step.operation) && step.keptItemIds.includes(item.id))
  if (found === undefined) return '–'
  return found.state.kind === 'done' ? momentWords(found.state.at, system) : 'not yet'
}
