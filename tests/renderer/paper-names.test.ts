import { expect, test } from 'vitest'
import { paperDocuments, paperFileName } from '../../renderer/panels/paper/documents.ts'

test('a saved paper says job, kind and moment; two proposals never share a name, nor do two kinds', () => {
  expect(paperFileName('The old house, No. 5', 'estimate', '2027-03-20T17:00')).toBe(
    'the-old-house-no-5-proposal-2027-03-20-1700',
  )
  expect(paperFileName('Café', 'estimate', '2027-03-20T17:01')).toBe('café-proposal-2027-03-20-1701')
  const names = paperDocuments.map(({ id }) => paperFileName('House', id, '2027-03-20T17:00'))
  expect(new Set(names).size).toBe(paperDocuments.length)
})
