import { expect } from 'vitest'
import type { Job } from '../../../core/project/job.ts'
import { storeyIdSchema } from '../../../core/project/sketch-records.ts'
import { applyCommand } from '../../../core/sketch/apply-command.ts'
import { planTapeRooms } from '../../../core/sketch/tape-list/plan-rooms.ts'
import { readTapeList } from '../../../core/sketch/tape-list/read-line.ts'

/** What is made of a list on the ground floor of a job; the command makes the same of it. */
export function planned(job: Job, text: string) {
  let serial = Object.keys(job.rooms).length * 1000
  const lines = readTapeList(text, 'imperial')
  const ground = storeyIdSchema.parse('ground')
  const plan = planTapeRooms(job, lines, ground, (prefix) => `${prefix}-${++serial}`)
  const { drawn, joins } = plan
  expect(applyCommand(job, { kind: 'addDrawn', drawn, joins })).toEqual({ ok: true, value: plan.job })
  return plan
}
