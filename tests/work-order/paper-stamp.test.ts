import { expect, test } from 'vitest'
import { workOrderHtml } from '../../core/work-order/html.ts'
import { wholeJob } from '../../core/work-order/paper-choice.ts'
import { sampleOrder } from './sample-order.ts'

const order = sampleOrder()

test('a draft says so across its pages, what is given out has its number and moment, other papers neither', () => {
  const plain = workOrderHtml(order, 'letter', ['weeks'])
  expect(plain).not.toContain('DRAFT')
  expect(workOrderHtml(order, 'letter', ['weeks'], wholeJob, { kind: 'draft' })).toContain('content: "DRAFT"')
  const given = workOrderHtml(order, 'letter', ['weeks'], wholeJob, {
    kind: 'issued',
    number: 7,
    at: '2027-03-29T17:00',
    proposal: null,
  })
  // Beside the page number: in the middle it ran into the words at the left.
  expect(given).not.toContain('@bottom-center')
  expect(given).toMatch(
    /@bottom-right \{ content: "No\\2e {2}7\\2c {2}given out Mon Mar 29\\2c {2}5\\3a 00 pm [^"]*" "Page " counter/,
  )
  expect(given).not.toContain('DRAFT')
})

test('the same paper given out at the same moment is the same text', () => {
  const stamp = { kind: 'issued', number: 2, at: '2027-03-29T17:00', proposal: null } as const
  const [one, other] = [sampleOrder(), sampleOrder()].map((each) =>
    workOrderHtml(each, 'a4', undefined, wholeJob, stamp),
  )
  expect(one).toBe(other)
})
