import { expect, test } from 'vitest'
import { agreementOf } from '../../core/agreement/agreement.ts'
import { composeChanges } from '../../core/agreement/compose.ts'
import { moneyOf, totalCents } from '../../core/agreement/taxed-money.ts'
import { priceJob, priceOfChanges } from '../../core/agreement/whole-price.ts'
import { estimate } from '../../core/price/estimate.ts'
import type { DealingOf } from '../../core/project/agreement-records.ts'
import type { Job } from '../../core/project/job.ts'
import type { ColourId } from '../../core/project/survey-records.ts'
import { formatCents } from '../../core/units/money.ts'
import { changeOrderHtml, invoiceHtml } from '../../core/work-order/agreement-papers.ts'
import { workOrderHtml } from '../../core/work-order/html.ts'
import { workOrder } from '../../core/work-order/work-order.ts'
import { sampleInput } from '../work-order/sample-order.ts'
import { dealingId, optionId } from './random-deals.ts'

const wallsOfHouse = { roomId: null, surfaceClasses: ['walls'] } as const
const changes = composeChanges(sampleInput().job, wallsOfHouse, { kind: 'moreCoats', coats: 1 })
const option = { id: optionId('third'), name: 'A third coat', note: 'For the red wall.', oneOf: '', changes }
const { job } = sampleInput({ options: { [option.id]: option } })
const priced = priceOfChanges(priceJob, job, changes)
if (!priced.ok) throw new Error(priced.problem.sentence)
const price = priced.value

function proposalHtml(offered: Job): string {
  const { takeoff, specification, plan } = sampleInput()
  const order = workOrder(offered, takeoff, specification, estimate(offered, takeoff, specification), plan)
  return workOrderHtml(order, 'letter', ['proposal'])
}

test('the proposal prints each option with a box and the difference of two whole jobs', () => {
  const page = proposalHtml(job)
  expect(page).toContain('Options: check what you want')
  expect(page).toContain(
    `A third coat<br>For the red wall.</td><td class="n">+ ${formatCents(totalCents(price))}`,
  )
  expect(proposalHtml({ ...job, options: {} })).not.toContain('check what you want')
})

test('an option whose color is gone is told to the owner and not printed', () => {
  const gone = {
    ...option,
    changes: composeChanges(job, wallsOfHouse, { kind: 'color', colourId: 'gone' as ColourId }),
  }
  const page = proposalHtml({ ...job, options: { [gone.id]: gone } })
  expect(page).toContain('The option “A third coat” is not printed.')
  expect(page).not.toContain('check what you want')
})

const change: DealingOf<'changeOffered'> = {
  id: dealingId('change'),
  kind: 'changeOffered',
  on: '2027-04-01',
  number: 7,
  title: 'A third coat',
  why: '',
  changes: [],
  ...moneyOf(18_726, 286),
  minutes: { before: 300, after: 420 },
  finishesOn: { before: null, after: null },
  moves: [],
}
const invoice: DealingOf<'invoiced'> = {
  id: dealingId('invoice'),
  kind: 'invoiced',
  on: '2027-04-01',
  number: 12,
  title: 'Deposit',
  credits: null,
  dueOn: null,
  lines: [{ changeId: null, label: 'Agreed price', ...moneyOf(10_000, 600) }],
}

test('change order and invoice stand under the letterhead, the number of the proposal and on the paper of the job', () => {
  const sold: Job = {
    ...job,
    header: { ...job.header, proposalNumber: 31, paper: 'a4', unitSystem: 'imperial' },
    business: { ...job.business, name: 'Our own shop', phone: '555 0100' },
  }
  for (const page of [
    changeOrderHtml(sold, change, agreementOf([change], false)),
    invoiceHtml(sold, invoice, agreementOf([], false)),
  ]) {
    expect(page).toContain('<div class="letterhead"><strong>Our own shop</strong>\n<span>555 0100</span>')
    expect(page).toContain('<dt>Proposal</dt><dd>31</dd>')
    expect(page).toContain('<html lang="en" class="a4">')
  }
})
