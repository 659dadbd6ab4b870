import { expect, test } from 'vitest'
import type { IssuedId, IssuedPaper } from '../../core/project/issued-records.ts'
import type { PaperStamp } from '../../core/work-order/paper-stamp.ts'
import { paperDocuments } from '../../renderer/panels/paper/documents.ts'
import { openBody, outgoingPaper } from '../../renderer/panels/paper/outgoing.ts'

function documentOf(id: string) {
  const found = paperDocuments.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no document ${id}`)
  return found
}

/** A document says what it holds and its stamp, as the laid out one does. */
function sheets(holds: string) {
  return (stamp: PaperStamp | null) => {
    if (stamp === null) return holds
    return stamp.kind === 'issued' ? `${holds} No. ${stamp.number} ${stamp.at}` : `${holds} DRAFT`
  }
}

function give(
  documentId: string,
  kept: readonly IssuedPaper[],
  changes: Partial<Parameters<typeof outgoingPaper>[0]> = {},
) {
  return outgoingPaper({
    shown: null,
    chosen: documentOf(documentId),
    size: 'letter',
    isDraft: false,
    issued: kept,
    kept,
    at: '2027-03-29T08:00',
    id: `paper-${kept.length}` as IssuedId,
    proposal: null,
    layOut: sheets('two rooms'),
    ...changes,
  })
}

function kept(...papers: readonly ReturnType<typeof outgoingPaper>[]): readonly IssuedPaper[] {
  return papers.flatMap(({ record }) => (record === null ? [] : [record]))
}

test('a paper that is kept goes out under the next number, with the moment it went', () => {
  const first = give('workOrder', [])
  expect(first.html).toBe('two rooms No. 1 2027-03-29T08:00')
  expect(first.record).toMatchObject({ kind: 'workOrder', issuedAt: '2027-03-29T08:00' })
  const second = give('proposal', kept(first))
  expect(second.html).toBe('two rooms No. 2 2027-03-29T08:00')
})

test('the same paper given out again keeps its number and moment; another content or sheet gets its own', () => {
  const before = kept(give('workOrder', []))
  const later = { at: '2027-04-02T12:00' }
  const again = give('workOrder', before, later)
  expect(again.record).toBe(before[0])
  expect(again.html).toBe('two rooms No. 1 2027-03-29T08:00')
  const changed = give('workOrder', before, { ...later, layOut: sheets('three rooms') })
  expect(changed.html).toBe('three rooms No. 2 2027-04-02T12:00')
  const otherSheet = give('workOrder', before, { ...later, size: 'a4' })
  expect(otherSheet.html).toBe('two rooms No. 2 2027-04-02T12:00')
})

test('drafts, papers of one day and papers shown as they were keep nothing', () => {
  expect(give('workOrder', [], { isDraft: true })).toEqual({ html: 'two rooms DRAFT', record: null })
  expect(give('today', [])).toEqual({ html: 'two rooms', record: null })
  const [old] = kept(give('workOrder', []))
  const shown = old === undefined ? undefined : openBody(old)
  if (old === undefined || shown === undefined) throw new Error('nothing was kept')
  expect(give('proposal', [old], { shown, layOut: sheets('changed') })).toEqual({
    html: 'two rooms No. 1 2027-03-29T08:00',
    record: null,
  })
})
