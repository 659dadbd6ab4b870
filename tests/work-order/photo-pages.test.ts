import { expect, test } from 'vitest'
import { photoPages } from '../../core/work-order/pages/photo-page.ts'
import { picturesNamed, withPictures } from '../../core/work-order/pictured.ts'
import type { PhotoLine, RoomSheet } from '../../core/work-order/room-sheet/sheet-types.ts'
import { sampleOrder } from './sample-order.ts'

const hash = (sign: string) => sign.repeat(64)

function roomWith(photos: readonly PhotoLine[]): RoomSheet {
  const [room] = sampleOrder().rooms
  if (room === undefined) throw new Error('the sample has no room')
  return { ...room, photos }
}

function photo(picture: string, note = ''): PhotoLine {
  return { picture, number: 2, subject: 'Peeling "paint"', stage: 'after', note }
}

test('a room without photos has no page for them, and thirteen take two', () => {
  expect(photoPages(roomWith([]))).toEqual([])
  expect(photoPages(roomWith(Array.from({ length: 13 }, () => photo(hash('a')))))).toHaveLength(2)
})

test('a page names its pictures, and has them once they are put in; one that is not there leaves its words', () => {
  const [page] = photoPages(roomWith([photo(hash('a'), 'north <wall>'), photo(hash('b'))]))
  const text = page?.('sheet-1').markup ?? ''
  expect(text).toContain('After: Peeling &quot;paint&quot;')
  expect(text).toContain('north &lt;wall&gt;')
  expect(picturesNamed(text)).toEqual([hash('a'), hash('b')])
  // A paper given out lies inside JSON.
  expect(picturesNamed(JSON.stringify({ html: text }))).toEqual([hash('a'), hash('b')])
  const shown = withPictures(text, (each) => (each === hash('a') ? 'data:image/jpeg;base64,AAAA' : null))
  expect(shown).toContain('<img src="data:image/jpeg;base64,AAAA" alt="After: Peeling')
  expect(picturesNamed(shown)).toEqual([hash('b')])
})
