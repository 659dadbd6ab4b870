import { Button } from 'react-aria-components'
import type { Agreement } from '../../../../core/agreement/agreement.ts'
import { invoiceName } from '../../../../core/agreement/invoices.ts'
import { stageWords } from '../../../../core/agreement/stage-words.ts'
import { lessMoney, sumMoney, totalCents } from '../../../../core/agreement/taxed-money.ts'
import { priceJob } from '../../../../core/agreement/whole-price.ts'
import type { Dealing, Money } from '../../../../core/project/agreement-records.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import { dateWordsWithYear } from '../../../../core/time/date-words.ts'
import { formatCents } from '../../../../core/units/money.ts'
import { viewStore } from '../../../state/app.ts'
import { Callout } from '../../parts/Callout.tsx'
import { signedMoney } from '../../parts/dealings/agreement-words.ts'
import { paperIdOf } from '../../parts/dealings/keep-dealing.ts'
import { Empty } from '../../parts/Empty.tsx'

interface Parts {
  readonly job: Job
  readonly agreement: Agreement
}

/** Where the job stands, in sums that are those of its pages. */
export function Standing({ job, agreement, onChangeOrder }: Parts & { readonly onChangeOrder: () => void }) {
  const { stage, contract, agreed, invoiced, toInvoice, paidCents, dueCents, balanceCents } = agreement
  if (agreement.accepted === null)
    return (
      <section aria-label="Where the job stands">
        <Empty title={stageWords[stage]}>
          <p>{emptyWords[stage] ?? ''}</p>
        </Empty>
      </section>
    )
  const lines: readonly (readonly [string, Money])[] = [
    ['Agreed price, options taken', contract],
    ['Changes agreed', lessMoney(agreed, contract)],
    ['Agreed', agreed],
    ['Invoiced', invoiced],
    ['Still to be invoiced', toInvoice],
  ]
  return (
    <section className="block" aria-label="Where the job stands">
      <h3>{stageWords[stage]}</h3>
      <table className="sum-table">
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">What</span>
            </th>
            <th scope="col" className="number">
              Before tax
            </th>
            <th scope="col" className="number">
              Tax
            </th>
            <th scope="col" className="number">
              Amount
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(([name, money]) => (
            <tr key={name} className={name === 'Agreed' ? 'sum-total' : ''}>
              <td>{name}</td>
              <td className="number">{formatCents(money.beforeTaxCents)}</td>
              <td className="number">{formatCents(money.taxCents)}</td>
              <td className="number">{formatCents(totalCents(money))}</td>
            </tr>
          ))}
          <PlainRow name="Paid" cents={paidCents} />
          <PlainRow name="Due on invoices" cents={dueCents} />
          <PlainRow name="Balance" cents={balanceCents} isTotal />
        </tbody>
      </table>
      <Drift job={job} agreement={agreement} onChangeOrder={onChangeOrder} />
    </section>
  )
}

function PlainRow(props: { readonly name: string; readonly cents: number; readonly isTotal?: boolean }) {
  return (
    <tr className={props.isTotal ? 'sum-total' : ''}>
      <td>{props.name}</td>
      <td />
      <td />
      <td className="number">{formatCents(props.cents)}</td>
    </tr>
  )
}

const emptyWords: Partial<Readonly<Record<Agreement['stage'], string>>> = {
  notQuoted:
    'When the price is right and the options stand at Options, write down here that the quote was given. From then on it stays as it was, whatever becomes of the job.',
  quoted:
    'The quote is out. When the client answers, say here which options were taken and by whom, or why the job was lost.',
  lost: 'Nothing more is planned for this job. It can be quoted again.',
}

/** What the job has become since, by its own figures, that is in no change order. */
export function driftOf(job: Job, { accepted, changes }: Agreement): Money | null {
  if (accepted === null) return null
  const agreed = changes.filter(({ answer }) => answer?.answer === 'agreed').map(({ change }) => change)
  return lessMoney(priceJob(job), sumMoney([accepted.counted, ...agreed]))
}

function Drift({ job, agreement, onChangeOrder }: Parts & { readonly onChangeOrder: () => void }) {
  const drift = driftOf(job, agreement)
  if (drift === null || totalCents(drift) === 0) return null
  return (
    <Callout kind="wait" title="In no change order yet">
      Since it was agreed the job has come to cost {signedMoney(drift)} by its hours. Make it a change order,
      or take back what was changed.
      <div className="button-row">
        <Button className="plain-button" onPress={onChangeOrder}>
          Make a change order of it
        </Button>
      </div>
    </Callout>
  )
}

/** Everything that happened, in its order; what has a page leads to it. */
export function Entries({ job, agreement }: Parts) {
  const dealings = records(job.dealings)
  if (dealings.length === 0) return null
  return (
    <section className="block" aria-label="What happened">
      <h3>What happened</h3>
      <table className="pick-table">
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Amount
            </th>
            <th scope="col">Stands</th>
            <th scope="col">
              <span className="unseen">Page</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {dealings.map((dealing) => (
            <EntryRow key={dealing.id} job={job} agreement={agreement} dealing={dealing} />
          ))}
        </tbody>
      </table>
    </section>
  )
}

function EntryRow({ job, agreement, dealing }: Parts & { readonly dealing: Dealing }) {
  const { what, cents, stands } = entryWords(dealing, agreement, job.header.proposalNumber)
  const paper = job.issued[paperIdOf(dealing.id)]
  return (
    <tr>
      <td>{dateWordsWithYear(dealing.on, job.header.unitSystem)}</td>
      <td>{what}</td>
      <td className="number">{cents === null ? '–' : formatCents(cents)}</td>
      <td>{stands}</td>
      <td>
        {paper === undefined ? null : (
          <Button
            className="plain-button"
            aria-label={`Page: ${what}`}
            onPress={() => viewStore.setState({ station: 'paper', paperId: paper.id })}
          >
            Page
          </Button>
        )}
      </td>
    </tr>
  )
}

interface EntryWords {
  readonly what: string
  readonly cents: number | null
  readonly stands: string
}

function entryWords(dealing: Dealing, agreement: Agreement, proposal: number | null): EntryWords {
  switch (dealing.kind) {
    case 'quoted':
      return {
        what: `Quote${proposal === null ? '' : ` by proposal ${proposal}`}, version ${dealing.number}`,
        cents: totalCents(sumMoney(dealing.lines)),
        stands: dealing.id === agreement.quote?.id ? 'counts' : 'replaced',
      }
    case 'accepted':
      return {
        what: `Accepted by ${dealing.by}`,
        cents: totalCents(agreement.contract),
        stands: optionWords(dealing.optionIds.length),
      }
    case 'lost':
      return { what: dealing.why === '' ? 'Lost' : `Lost: ${dealing.why}`, cents: null, stands: '' }
    case 'changeOffered':
      return {
        what: `Change order ${dealing.number}: ${dealing.title}`,
        cents: totalCents(dealing),
        stands: answerWords(dealing.id, agreement),
      }
    case 'changeAnswered': {
      const change = agreement.changes.find(({ change: { id } }) => id === dealing.changeId)?.change
      const why = dealing.why === '' ? '' : `: ${dealing.why}`
      return {
        what: `Change order ${change?.number ?? ''} ${dealing.answer} by ${dealing.by}${why}`,
        cents: null,
        stands: '',
      }
    }
    case 'begun':
      return { what: 'Work begun', cents: null, stands: '' }
    case 'finished':
      return { what: 'Work finished', cents: null, stands: '' }
    case 'invoiced': {
      const state = agreement.invoices.find(({ invoice }) => invoice.id === dealing.id)
      return {
        what: `${invoiceName(dealing)}: ${dealing.title}`,
        cents: totalCents(sumMoney(dealing.lines)),
        stands: state === undefined ? '' : invoiceStands(state),
      }
    }
    case 'paid':
      return {
        what: `Payment${dealing.how === '' ? '' : `, ${dealing.how}`}`,
        cents: dealing.cents,
        stands: '',
      }
  }
}

function invoiceStands({ invoice, openCents, creditedBy }: Agreement['invoices'][number]): string {
  if (creditedBy !== null) return `taken back by ${creditedBy.number}`
  if (invoice.credits !== null) return 'counts'
  return openCents === 0 ? 'paid' : `${formatCents(openCents)} open`
}

function optionWords(count: number): string {
  if (count === 0) return 'no options'
  return count === 1 ? 'with one option' : `with ${count} options`
}

function answerWords(id: Dealing['id'], { changes }: Agreement): string {
  return changes.find(({ change }) => change.id === id)?.answer?.answer ?? 'not answered'
}
