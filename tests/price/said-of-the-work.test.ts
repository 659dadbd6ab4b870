import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import { estimate } from '../../core/price/estimate.ts'
import { minutesByStep } from '../../core/price/labour.ts'
import { isAlikeBut, saidOfTheWork } from '../../core/project/alike.ts'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'

function workedOut(job: Job) {
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  const passes = gatherPasses(job, specification, minutesByStep(job, specification))
  return { takeoff, specification, passes, estimate: estimate(job, takeoff, specification) }
}

test('nothing that is worked out follows from what is said of the work while it goes on', () => {
  const job = everyRecordJob()
  for (const name of saidOfTheWork) expect(Object.keys(job[name]), name).not.toEqual([])
  const silent = { ...job, ...Object.fromEntries(saidOfTheWork.map((name) => [name, {}])) }
  expect(isAlikeBut(job, silent, saidOfTheWork)).toBe(true)
  expect(isAlikeBut(job, silent, ['marks'])).toBe(false)
  expect(workedOut(silent)).toEqual(workedOut(job))
})
