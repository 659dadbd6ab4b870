import { expect, test } from 'vitest'
import { readiness } from '../../core/progress/readiness.ts'
import { stepStates } from '../../core/progress/step-states.ts'
import { stateWords } from '../../renderer/panels/site/step-words.ts'
import { plainJob, plainSpecification } from '../fixtures/plain-room.ts'
import { marksOf, type SiteMark } from '../progress/site-marks.ts'

function done(stepKey: string, at: string): SiteMark {
  return { stepKey, mark: 'done', at }
}

function wordsAt(now: string, ...marks: readonly SiteMark[]) {
  const job = plainJob({ marks: marksOf(...marks) })
  const states = stepStates(job, plainSpecification)
  const ready = readiness(job, plainSpecification, states, now)
  return (key: string) => {
    const progress = states.get(key)
    if (progress === undefined) throw new Error(`no step ${key}`)
    return stateWords(progress, ready.get(key), 'imperial', (other) => `<${other}>`)
  }
}

test('a step says what it comes after, that it can start, and that it is done', () => {
  const untouched = wordsAt('2027-03-29T08:00')
  expect(untouched('study/protect')).toMatchObject({ kind: 'ready', text: 'can start' })
  expect(untouched('study/ceiling/coat-1').text).toBe('after <study/protect>')
  const covered = wordsAt('2027-03-29T09:00', done('study/protect', '2027-03-29T08:30'))
  expect(covered('study/protect')).toMatchObject({ kind: 'done', text: 'done Mon Mar 29, 8:30 am' })
})

test('while a coat dries, the next step says from when it may start', () => {
  const words = wordsAt(
    '2027-03-29T09:30',
    done('study/protect', '2027-03-29T08:30'),
    done('study/ceiling/coat-1', '2027-03-29T09:00'),
  )
  // Touch dry after 60 min: 9:00 + 1 h.
  expect(words('study/walls/mask')).toMatchObject({
    kind: 'wait',
    text: 'drying: not before Mon Mar 29, 10:00 am',
  })
})
