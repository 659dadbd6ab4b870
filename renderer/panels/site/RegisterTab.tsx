import type { StepProgress } from '../../../core/progress/step-states.ts'
import { takenOffRegister } from '../../../core/progress/taken-off.ts'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { handlingWords } from '../../../core/specification/trade-words.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import { capital } from '../../../core/words/text.ts'
import { Empty } from '../parts/Empty.tsx'
import { walkThrough } from '../parts/next-steps.ts'

/** What came off, is loose or covered, and what is back; it follows the ticked steps. */
export function RegisterTab(props: {
  readonly job: Job
  readonly roomId: RoomId
  readonly steps: readonly StepProgress[]
}) {
  const { job, roomId, steps } = props
  const register = takenOffRegister(job, steps).filter(({ item }) => item.roomId === roomId)
  const system = job.header.unitSystem
  if (register.length === 0) {
    return (
      <Empty title="Nothing comes off here" next={walkThrough}>
        <p>
          Plates, locks, lights, alarms and hangings that stay in a room are counted at Walk; here stands when
          each came off and went back.
        </p>
      </Empty>
    )
  }
  return (
    <div className="scroll tab-pad">
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
          {register.map(({ item, standing, offAt, backAt }) => (
            <tr key={item.id}>
              <td>
                {capital(item.name)}
                {item.wired ? <span className="quiet"> · wired, restored every day</span> : null}
                {item.note === '' ? null : <div className="quiet">{item.note}</div>}
              </td>
              <td className="number">{item.count}</td>
              <td>{handlingWords[item.handling]}</td>
              <td>{offAt === null ? '–' : momentWords(offAt, system)}</td>
              <td>{backAt !== null ? momentWords(backAt, system) : standing === 'off' ? 'not yet' : '–'}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="quiet">
        Check off “Take off, bag and label” and “Put back” among the steps; this list follows.
      </p>
    </div>
  )
}
