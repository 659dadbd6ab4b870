import { expect, test } from 'vitest'
import { demoJobId } from '../../renderer/app/DemoNote.tsx'
import { demoJob } from '../renderer/station-jobs.ts'

test('the program knows the demonstration house by its id', () => {
  expect(demoJob('old-house').header.id).toBe(demoJobId)
})
