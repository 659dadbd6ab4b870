import { expect, test } from 'vitest'
import { stepStates } from '../../core/progress/step-states.ts'
import { takenOffRegister } from '../../core/progress/taken-off.ts'
import type { KeptItemId } from '../../core/project/survey-records.ts'
import { furnishedJob } from '../fixtures/furnished-room.ts'
import { handStep, plainSpecification } from '../fixtures/plain-room.ts'
import { marksOf, type SiteMark } from './site-marks.ts'

const plates = ['plates' as KeptItemId]
const alarm = ['alarm' as KeptItemId]
const specification = {
  ...plainSpecification,
  steps: [
    handStep('off', { operation: 'takeOff', keptItemIds: plates }),
    handStep('cover', { operation: 'coverAlarm', keptItemIds: alarm, daily: true }),
    handStep('uncover', { operation: 'restoreAlarm', keptItemIds: alarm, daily: true }),
    handStep('back', { operation: 'putBack', keptItemIds: plates }),
  ],
}

function standings(...marks: readonly SiteMark[]) {
  const job = furnishedJob({ marks: marksOf(...marks) })
  const register = takenOffRegister(job, [...stepStates(job, specification).values()])
  return Object.fromEntries(register.map(({ item, standing }) => [item.id, standing]))
}

test('everything is in its place before the work', () => {
  expect(standings()).toEqual({ plates: 'inPlace', alarm: 'inPlace', clock: 'inPlace' })
})

test('what was taken off is off until it is put back', () => {
  const off = { stepKey: 'off', mark: 'done', at: '2027-03-29T08:30' } as const
  expect(standings(off)).toMatchObject({ plates: 'off' })
  expect(standings(off, { stepKey: 'back', mark: 'done', at: '2027-03-31T15:00' })).toMatchObject({
    plates: 'back',
  })
})

test('an alarm covered again on the second day is covered, though it was uncovered on the first evening', () => {
  const done = (stepKey: string, at: string): SiteMark => ({ stepKey, mark: 'done', at })
  const firstDay = [done('cover', '2027-03-29T08:00'), done('uncover', '2027-03-29T16:30')]
  expect(standings(...firstDay)).toMatchObject({ alarm: 'back' })
  expect(standings(...firstDay, done('cover', '2027-03-30T08:00'))).toMatchObject({ alarm: 'off' })
})
