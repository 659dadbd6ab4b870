import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'
import { buildJob, conditionOn, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'
import { demoJob } from '../renderer/station-jobs.ts'
import { plainSurfaces, takeoffOf } from './hand-takeoff.ts'
import { everySpecification } from './random-house.ts'

/** Everything in a specification that is written for people. */
function sentencesOf({ steps, order, notices, clashes, holds }: Specification): readonly string[] {
  return [
    ...steps.flatMap((step) => [
      ...step.because.map(({ reason }) => reason),
      ...step.cautions.map(({ text }) => text),
    ]),
    ...order.map(({ reason }) => reason),
    ...notices.map(({ sentence }) => sentence),
    ...holds.map(({ reason }) => reason),
    ...clashes.map(({ sentence }) => sentence),
  ]
}

/** Words that only a program would write: `builtWork`, `sand-before-coats`, a key with slashes. */
function rawWords(sentence: string, job: Job): readonly string[] {
  const camel = sentence.match(/\b[a-z]+[A-Z]\w*/g) ?? []
  const ids = [...Object.keys(job.rules), ...Object.keys(job.conditions), ...Object.keys(job.finishes)]
  const words = sentence.split(/[\s“”"(),.:;]+/)
  const keys = words.filter((word) => /^[\w-]+\/[\w-]+\/[\w-]+/.test(word))
  return [
    ...camel.filter((word) => word !== 'pH'),
    ...ids.filter((id) => words.includes(id) && id.includes('-')),
    ...keys,
  ]
}

function rawIn(specification: Specification, job: Job): readonly string[] {
  return sentencesOf(specification).flatMap((sentence) => rawWords(sentence, job))
}

test('no sentence of the demonstration jobs shows a raw identifier', () => {
  for (const name of ['plain-room', 'l-shaped-room', 'old-house'] as const) {
    const job = demoJob(name)
    expect(rawIn(specify(job, takeOff(job)), job)).toEqual([])
  }
})

test('no sentence of any house shows a raw identifier', () => {
  everySpecification((specification, job) => expect(rawIn(specification, job)).toEqual([]))
})

test('odd choices are named in words: a finish that will not hold, a product the shop has not got', () => {
  const job = buildJob({
    rooms: [rectangularRoom('r', 12, 10)],
    products: [],
    existing: [existingOn('walls', 'plaster', 'latexGlossy')],
    finishes: [finishFor('walls', 'latexWall', 'white', 'semiGloss')],
    conditions: [
      conditionOn('c1', 'unsandedPatch', { roomId: 'r', surfaceClass: 'walls' }, {}),
      conditionOn('c2', 'paintedShut', { roomId: 'r', surfaceClass: 'sash' }, {}),
    ],
  })
  const specification = specify(job, takeoffOf(...plainSurfaces('r')))
  const text = sentencesOf(specification).join('\n')
  expect(text).toContain('Painted shut')
  expect(text).toContain('latex wall paint')
  expect(rawIn(specification, job)).toEqual([])
})
