import { expect, test } from 'vitest'
import type { ScheduleProblem } from '../../core/schedule/model.ts'
import { solve } from '../../core/schedule/solve.ts'
import { elapsedMinutes } from '../../core/units/duration.ts'
import { at, link, person, problem, room, task } from './builders.ts'

/** Each room: four hours, twenty hours of drying, two hours; three painters from 8 to 16. */
function rooms(count: number, roomsOutOfUse: number | null, values: Partial<ScheduleProblem> = {}) {
  const ids = Array.from({ length: count }, (_, index) => `room${index}`)
  return problem({
    people: ['Ann', 'Bea', 'Cem'].map((id) => person(id)),
    rooms: ids.map((id) => room(id)),
    tasks: ids.flatMap((id) => [
      task(`${id} first`, { room: id, work: 240, effects: { closedFor: 0 } }),
      task(`${id} second`, { room: id, work: 120, effects: { closedFor: 0 } }),
    ]),
    links: ids.map((id) => link(`${id} first`, `${id} second`, 20 * 60)),
    rules: { roomsOutOfUse },
    ...values,
  })
}

function proved(job: ScheduleProblem): number {
  const outcome = solve(job, { seed: 1, iterations: 500 })
  if (outcome.kind !== 'scheduled') throw new Error(outcome.kind)
  expect(outcome.gap).toBe(0)
  return outcome.bound.finish
}

test('rooms that may only be closed one after the other are proved to take longer', () => {
  // at once:   Mon 8-12, dry until Tue 8, Tue 8-10
  expect(proved(rooms(2, null))).toBe(1)
  expect(proved(rooms(2, 2))).toBe(1)
  // one by one: room 0 as above, room 1 Tue 10-14, dry until Wed 10, Wed 10-12
  expect(proved(rooms(2, 1))).toBe(2)
  // three rooms, two at once: the third one waits for Tue 10
  expect(proved(rooms(3, 2))).toBe(2)
  // four rooms one by one: Wed 12-16, Thu 12-14; then Thu 14 is too late for 4 hours, so Fri 8-12, and dry on Saturday: Mon
  expect(proved(rooms(4, 1))).toBe(7)
})

test('what follows its last task keeps a room closed for the next one', () => {
  // room 0 is given back on Wed 8 only, so room 1 is worked Wed 8-12 and Thu 8-10
  const { tasks, ...job } = rooms(2, 1)
  const closedLonger = tasks.map((entry) => ({
    ...entry,
    effects: { ...entry.effects, closedFor: elapsedMinutes(entry.id.endsWith('second') ? 22 * 60 : 2 * 60) },
  }))
  const outcome = solve({ ...job, tasks: closedLonger }, { seed: 1, iterations: 500 })
  expect(outcome).toMatchObject({ kind: 'scheduled', plan: { value: { finish: 3 } } })
  if (outcome.kind === 'scheduled') expect(outcome.bound.finish).toBeLessThanOrEqual(3)
})

test('a room under way already proves nothing against the plan that goes on with it', () => {
  const { tasks, ...job } = rooms(2, 1)
  const first = { kind: 'done', start: at(0, 8), end: at(0, 12), people: ['Ann'] } as const
  const resumed = tasks.map((entry) => (entry.id === 'room0 first' ? { ...entry, state: first } : entry))
  const now = { ...job, tasks: resumed, clock: { ...job.clock, start: at(0, 12) } }
  // room 0 Tue 8-10, then room 1 as before: the room under way counts as closed from its next task on only
  const outcome = solve(now, { seed: 1, iterations: 500 })
  expect(outcome).toMatchObject({ kind: 'scheduled', plan: { value: { finish: 2 } } })
  if (outcome.kind === 'scheduled') expect(outcome.bound.finish).toBeLessThanOrEqual(2)
})
