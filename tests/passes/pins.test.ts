import { expect, test } from 'vitest'
import { passOfPin, pinsOnPasses } from '../../core/passes/pins.ts'
import { tableOf } from '../../core/project/empty-job.ts'
import type { Pin, PinId } from '../../core/project/progress-records.ts'
import { nothingHappened, problemOfJob } from '../../core/schedule/job/problem-of-job.ts'
import { oldHouse } from '../../demo-data/old-house.ts'
import { gathered } from './gathered.ts'

const job = oldHouse()
const { passes, specification, minutes } = gathered(job)
const pass = passes.passes.find(({ stepKeys }) => stepKeys.length > 2)
if (pass === undefined) throw new Error('no pass of the old house has three steps')

function pin(id: string, passKey: string): Pin {
  return { id: id as PinId, passKey, startsAt: '2027-04-20T10:00', crewMemberIds: [] }
}

test('a pin holds the pass it names, an older one the pass with the step it names', () => {
  expect(passOfPin(passes, pin('new', pass.key))).toBe(pass)
  for (const key of pass.stepKeys) expect(passOfPin(passes, pin('old', key))).toBe(pass)
  expect(passOfPin(passes, pin('lost', 'no such thing'))).toBeUndefined()
})

test('of two pins on one pass the later counts, and what holds nothing keeps its words', () => {
  const pins = [pin('old', pass.stepKeys[1] ?? ''), pin('lost', 'no such thing'), pin('new', pass.key)]
  expect(pinsOnPasses(passes, pins)).toEqual([pin('new', pass.key), pin('lost', 'no such thing')])
})

test('a plan holds the pass of an older pin, and says which pin holds nothing', () => {
  const pins = [pin('old', pass.stepKeys[1] ?? ''), pin('lost', 'no such thing')]
  const asked = problemOfJob({ ...job, pins: tableOf(pins) }, specification, passes, minutes, nothingHappened)
  const pinned = asked.problem.tasks.filter(({ state }) => state.kind === 'pinned')
  expect(pinned.map(({ id }) => id)).toEqual([pass.key])
  expect(asked.relaxed.filter(({ what }) => what === 'pinLost')).toEqual([{ what: 'pinLost', id: 'lost' }])
})
