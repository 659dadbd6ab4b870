import { agreementOf } from '../../../../core/agreement/agreement.ts'
import { applyChanges } from '../../../../core/agreement/changes.ts'
import { invoiceName } from '../../../../core/agreement/invoices.ts'
import type { Dealing, DealingId, JobChange, OptionId } from '../../../../core/project/agreement-records.ts'
import {
  type Issued,
  type IssuedId,
  issuedIdSchema,
  nextPaperNumber,
} from '../../../../core/project/issued-records.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import { succeed } from '../../../../core/project/problem.ts'
import { changeOrderHtml, invoiceHtml } from '../../../../core/work-order/agreement-papers.ts'
import { edit } from '../edits.ts'

/** The page of a dealing is kept under an id that follows from it. */
export function paperIdOf(id: DealingId): IssuedId {
  return issuedIdSchema.parse(`paper-${id}`)
}

/** Writes down what happened, with its page where it has one, as one thing to undo. */
export function keepDealing(action: string, dealing: Dealing, at: string): boolean {
  return edit(action, (job) => succeed(withDealing(job, dealing, at)))
}

/** Writes down what happened and makes changes to the job with it; options taken are no options any more. */
export function keepDealingWith(
  action: string,
  dealing: Dealing,
  changes: readonly JobChange[],
  taken: readonly OptionId[],
  at: string,
): boolean {
  return edit(action, (job) => {
    const changed = applyChanges(job, changes)
    if (!changed.ok) return changed
    const options = Object.fromEntries(
      Object.entries(changed.value.options).filter(([, { id }]) => !taken.includes(id)),
    )
    return succeed(withDealing({ ...changed.value, options }, dealing, at))
  })
}

function withDealing(job: Job, dealing: Dealing, at: string): Job {
  const page = pageOf(job, dealing)
  const next = { ...job, dealings: { ...job.dealings, [dealing.id]: dealing } }
  if (page === null) return next
  const size = job.header.paper
  const issued: Issued = {
    id: paperIdOf(dealing.id),
    kind: 'forClient',
    issuedAt: at,
    body: {
      version: 2,
      number: nextPaperNumber(records(job.issued)),
      name: page.name,
      size,
      html: page.html,
    },
  }
  return { ...next, issued: { ...job.issued, [issued.id]: issued } }
}

function pageOf(job: Job, dealing: Dealing) {
  const before = agreementOf(records(job.dealings), true)
  switch (dealing.kind) {
    case 'changeOffered':
      return {
        name: `Change order ${dealing.number}`,
        html: changeOrderHtml(job, dealing, before),
      }
    case 'invoiced':
      return {
        name: invoiceName(dealing),
        html: invoiceHtml(job, dealing, before),
      }
    default:
      return null
  }
}
