import { expect, test } from 'vitest'
import { pagedDocument, wholeDocument, workOrderHtml } from '../../core/work-order/html.ts'
import { withPlaceholders } from '../../renderer/print/page-filling.ts'
import { sampleOrder } from '../work-order/sample-order.ts'

test('only the first pages are made before a document is shown', () => {
  const made: number[] = []
  const pages = [0, 1, 2, 3].map((number) => () => {
    made.push(number)
    return `<section class="sheet">${number}</section>`
  })
  const text = withPlaceholders({ opening: '<body>', pages, closing: '</body>' })
  expect(made).toEqual([0, 1])
  expect(text.match(/data-page="\d"/g)).toEqual(['data-page="2"', 'data-page="3"'])
  expect(text.startsWith('<body><section class="sheet">0</section>')).toBe(true)
})

test('its pages together are the document that is printed', () => {
  const order = sampleOrder()
  expect(wholeDocument(pagedDocument(order, 'a4'))).toBe(workOrderHtml(order, 'a4'))
  expect(pagedDocument(order, 'a4', ['weeks']).pages).toHaveLength(1)
})
