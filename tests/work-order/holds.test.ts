import { expect, test } from 'vitest'
import type { Relaxed } from '../../core/schedule/job/planning-site.ts'
import type { Hold } from '../../core/specification/types.ts'
import { workOrderHtml } from '../../core/work-order/html.ts'
import { workOrder } from '../../core/work-order/work-order.ts'
import { sampleInput } from './sample-order.ts'

const leak: Hold = {
  key: 'study/leak/ceiling:study',
  roomId: 'study' as Hold['roomId'],
  surfaceKeys: ['ceiling:study'],
  kind: 'leak',
  reason: 'The leak behind the stain must be cured.',
  whoSeesToIt: 'The roofer',
  expectedOn: '2027-04-12',
  expectedIsAssumed: true,
  usualDays: 14,
  cleared: null,
  stepKeys: ['study/ceiling/coat-1'],
  source: 'common practice',
}

function orderWith(hold: Hold, relaxed: readonly Relaxed[] = []) {
  const { job, takeoff, specification, estimate, plan } = sampleInput()
  return workOrder(job, takeoff, { ...specification, holds: [hold] }, estimate, { ...plan, relaxed })
}

test('an open hold stands on the cover and on its room, with who, when, and a line to be signed', () => {
  const order = orderWith(leak)
  const line = {
    who: 'The roofer',
    expected: 'Mon Apr 12 (assumed: 14 days)',
    alarm: null,
    cleared: null,
  }
  expect(order.cover.holds).toMatchObject([line])
  expect(order.rooms.find((room) => room.roomSetId === 'study')?.holds).toMatchObject([line])
  const html = workOrderHtml(order, 'letter')
  // Once on the cover, once on the room's sheet, each with two places to be filled in.
  expect(html.split('<td class="toFill"></td><td class="toFill"></td>').length - 1).toBe(2)
})

test('a day that was named is not called assumed', () => {
  const order = orderWith({ ...leak, expectedIsAssumed: false })
  expect(order.cover.holds[0]?.expected).toBe('Mon Apr 12')
})

test('overdue and without a day are said loudly, cleared says when and by whom', () => {
  const overdue = orderWith(leak, [{ what: 'holdOverdue', id: leak.key }])
  expect(overdue.cover.holds[0]?.alarm).toContain('OVERDUE')
  const unknown = orderWith({ ...leak, expectedOn: null }, [{ what: 'holdNoDate', id: leak.key }])
  expect(unknown.cover.holds[0]).toMatchObject({ expected: 'no date known' })
  expect(unknown.cover.holds[0]?.alarm).toContain('NO DATE')
  const cleared = orderWith({ ...leak, cleared: { on: '2027-04-05', by: 'B. Client' } }, [
    { what: 'holdOverdue', id: leak.key },
  ])
  expect(cleared.cover.holds[0]).toMatchObject({ cleared: 'Mon Apr 5, 2027, B. Client', alarm: null })
  expect(workOrderHtml(cleared, 'letter', ['cover', 'rooms'])).not.toContain('class="toFill"')
})
