import { expect, test } from 'vitest'
import { demoJob } from '../renderer/station-jobs.ts'

test('the demonstration house says that it is one, which the page and the book go by', () => {
  expect(demoJob('old-house').header.isDemonstration).toBe(true)
})
