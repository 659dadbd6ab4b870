import { expect, test } from 'vitest'
import { documentOf, paperDocuments } from '../../renderer/panels/paper/documents.ts'
import { countWords } from '../../renderer/panels/paper/page-count.ts'

test('how much paper it is stands in words, about where it was not laid out to the end', () => {
  expect(countWords(null)).toBe('Sheets are being counted.')
  expect(countWords({ pages: 0, isExact: true })).toBe('Nothing is chosen.')
  expect(countWords({ pages: 1, isExact: true })).toBe('1 sheet of paper')
  expect(countWords({ pages: 12, isExact: false })).toBe('About 12 sheets of paper')
})

test('every document is found by its id', () => {
  for (const each of paperDocuments) expect(documentOf(each.id)).toBe(each)
})
