import type { Agreement } from '../../../core/agreement/agreement.ts'
import { type Issued, sealedWords } from '../../../core/project/issued-records.ts'
import { type Job, records } from '../../../core/project/job.ts'
import { dateWords, momentWords } from '../../../core/time/date-words.ts'
import { signedMinutes } from '../../../core/units/duration.ts'
import { signedCents } from '../../../core/units/money.ts'
import { capital } from '../../../core/words/text.ts'
import { signedMoney } from '../parts/dealings/agreement-words.ts'
import { useAgreement } from '../parts/dealings/use-agreement.ts'

interface Row {
  readonly id: string
  readonly day: string
  readonly what: string
  readonly hours: string
  readonly price: string
  readonly lastDay: string
  readonly stands: string
}

/** Change orders of the job, declined ones among them; those offered to the client are answered at Figures, Agreement. */
export function ChangeOrderList({ job }: { readonly job: Job }) {
  const agreement = useAgreement()
  const rows = [
    ...records(job.issued).flatMap((issued) =>
      issued.kind === 'changeOrder' ? [takenInRow(issued, job)] : [],
    ),
    ...agreement.changes.map((state) => offeredRow(state, job)),
  ]
  if (rows.length === 0) return null
  return (
    <section className="block" aria-label="Change orders">
      <h3>Change orders</h3>
      <table className="pick-table">
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Hours
            </th>
            <th scope="col" className="number">
              Price
            </th>
            <th scope="col" className="number">
              Last day
            </th>
            <th scope="col">Stands</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.id}>
              <td>{row.day}</td>
              <td>{row.what}</td>
              <td className="number">{row.hours}</td>
              <td className="number">{row.price}</td>
              <td className="number">{row.lastDay}</td>
              <td>{row.stands}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}

/** A finding taken into a job that nothing was agreed about in this program. */
function takenInRow(
  { id, issuedAt, body }: Extract<Issued, { readonly kind: 'changeOrder' }>,
  job: Job,
): Row {
  const system = job.header.unitSystem
  const row = { id, day: momentWords(issuedAt, system), stands: 'agreed' }
  if (body.version === null) return { ...row, what: sealedWords, hours: '', price: '', lastDay: '' }
  const { after } = body.finishesOn
  return {
    ...row,
    what: capital(body.found),
    hours: signedMinutes(body.minutes.after - body.minutes.before),
    price: signedCents(body.totalCents.after - body.totalCents.before),
    lastDay: after === null ? '–' : dateWords(after, system),
  }
}

function offeredRow({ change, answer }: Agreement['changes'][number], job: Job): Row {
  const system = job.header.unitSystem
  const { after } = change.finishesOn
  return {
    id: change.id,
    day: dateWords(change.on, system),
    what: `${change.number}: ${change.title}`,
    hours: signedMinutes(change.minutes.after - change.minutes.before),
    price: signedMoney(change),
    lastDay: after === null ? '–' : dateWords(after, system),
    stands: answer?.answer ?? 'not answered',
  }
}
