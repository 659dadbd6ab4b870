import { expect, test } from 'vitest'
import type { Ask } from '../../core/contract/requests.ts'
import { applyDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { createJobStore } from '../../renderer/state/job-store.ts'
import { twoRooms } from '../sketch/two-rooms.ts'

/** A host that keeps the job by the diffs it is sent, or refuses each edit. */
function host(first: Job, refuses = false) {
  const kept = { job: first, revision: 1, edits: 0 }
  const ask = (async (name: string, argument: { revision: number; diff: object }) => {
    if (name !== 'storeEdit') throw new Error(name)
    if (refuses) return fail('storageFailed', 'The disk is full. Make room and try again.')
    expect(argument.revision).toBe(kept.revision)
    kept.job = applyDiff(kept.job, argument.diff as never)
    kept.edits++
    kept.revision++
    return succeed({ revision: kept.revision })
  }) as unknown as Ask
  return { ask, kept }
}

function renamed(job: Job, title: string): Outcome<Job> {
  return succeed({ ...job, header: { ...job.header, title } })
}

test('what is sent is the difference from the book to the page, whatever was undone and done again meanwhile', async () => {
  const job = twoRooms()
  const { ask, kept } = host(job)
  const jobs = createJobStore(ask)
  jobs.show({ jobKey: 'one', job, revision: 1 })
  jobs.perform('rename', renamed(job, 'First'))
  jobs.perform('rename again', renamed(jobs.store.getState().job as Job, 'Second'))
  jobs.undo()
  jobs.undo()
  jobs.redo()
  await jobs.settled()
  // The first action was on its way; the other four lead back to it and need no request.
  expect(kept.edits).toBe(1)
  expect(kept.job.header.title).toBe('First')
  expect(jobs.store.getState().job).toEqual(kept.job)
  expect(jobs.store.getState().stored).toBe('stored')
})

test('undoing everything gives back the very same job', async () => {
  const job = twoRooms()
  const { ask } = host(job)
  const jobs = createJobStore(ask)
  jobs.show({ jobKey: 'one', job, revision: 1 })
  for (const title of ['a', 'b', 'c']) jobs.perform(title, renamed(jobs.store.getState().job as Job, title))
  for (let times = 0; times < 5; times++) jobs.undo()
  expect(jobs.store.getState().job).toEqual(job)
  expect(jobs.store.getState().future.map((action) => action.name)).toEqual(['a', 'b', 'c'])
})

test('a new action forgets what could have been done again', () => {
  const job = twoRooms()
  const jobs = createJobStore(host(job).ask)
  jobs.show({ jobKey: 'one', job, revision: 1 })
  jobs.perform('a', renamed(job, 'a'))
  jobs.undo()
  jobs.perform('b', renamed(job, 'b'))
  expect(jobs.store.getState().future).toEqual([])
})

test('a refused edit shows its sentence and changes nothing', () => {
  const job = twoRooms()
  const jobs = createJobStore(host(job).ask)
  jobs.show({ jobKey: 'one', job, revision: 1 })
  const done = jobs.perform('impossible', fail('openingsOverlap', 'Two openings overlap.'))
  expect(done).toBe(false)
  expect(jobs.store.getState()).toMatchObject({
    job,
    past: [],
    problem: { sentence: 'Two openings overlap.' },
  })
})
