import { expect, test } from 'vitest'
import { siteNow } from '../../renderer/state/planner-now.ts'
import { plainJob } from '../fixtures/plain-room.ts'

// The work begins on 29 March 2027 with the first hour of the site.
const job = plainJob()
const begin = `2027-03-29T${job.houseRules.siteHours.from}`

test('the time on site set by hand counts, whatever the clock says', () => {
  const byHand = '2027-03-30T16:45'
  expect(siteNow(job, { clock: '2027-04-02T08:00', byHand })).toBe(byHand)
  expect(siteNow(job, { clock: '2027-03-01T08:00', byHand })).toBe(byHand)
  expect(siteNow(job, { clock: null, byHand: '2027-03-01T08:00' })).toBe('2027-03-01T08:00')
})

test('without it the clock counts once the work has begun, and its first morning before', () => {
  expect(siteNow(job, { clock: '2027-04-02T08:00', byHand: null })).toBe('2027-04-02T08:00')
  expect(siteNow(job, { clock: '2027-03-01T08:00', byHand: null })).toBe(begin)
  expect(siteNow(job, { clock: begin, byHand: null })).toBe(begin)
})
