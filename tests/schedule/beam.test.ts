import { expect, test } from 'vitest'
import { createSearch } from '../../core/schedule/search.ts'
import { solve } from '../../core/schedule/solve.ts'
import { verifyPlan } from '../../core/schedule/verify.ts'
import { at, link, person, problem, task } from './builders.ts'
import { randomJob } from './random-job.ts'

//        8:00    8:30    9:00    9:30    10:00     14:30   15:00   15:30   16:00
//   Anna | prime | edge  |     roll      |                         | sand  |
//   Ben  | fill  |                                 | scrub | wash  | coat  |
//   Cleo | tape  |                                                 | dust  |
//
// Roll within 30 min after prime, coat within 30 min after scrub. Sand 6.5 h after edge, wash 6.5 h after fill, dust 7 h after prime,
// coat 7 h after tape.
// On this day Anna's roll and Ben's coat must wait half an hour while Anna and Ben do something else. With prime and roll laid together
// as early as they can go, roll is at 8:30 and edge too late; with edge first, prime is too late. As late as they can go, scrub and coat
// leave no place for wash before 15:30, and with wash first coat ends too late.
test('a task waits within its maximum wait while its person does another one', () => {
  const by = (who: string, work = 30) => ({ skills: [who], work })
  const job = problem({
    gridMinutes: 30,
    people: ['anna', 'ben', 'cleo'].map((id) => person(id, { skills: [id] })),
    tasks: [
      ...['prime', 'edge', 'sand'].map((id) => task(id, by('anna'))),
      task('roll', by('anna', 60)),
      ...['fill', 'scrub', 'wash', 'coat'].map((id) => task(id, by('ben'))),
      ...['tape', 'dust'].map((id) => task(id, by('cleo'))),
    ],
    links: [
      link('prime', 'roll', 0, 30),
      link('prime', 'dust', 420),
      link('edge', 'sand', 390),
      link('scrub', 'coat', 0, 30),
      link('tape', 'coat', 420),
      link('fill', 'wash', 390),
    ],
  })
  const outcome = solve(job, { seed: 1, iterations: 2000 })
  if (outcome.kind !== 'scheduled') throw new Error(outcome.kind)
  expect(verifyPlan(job, outcome.plan)).toEqual([])
  expect(outcome.plan.value.finish).toBe(0)
  const startOf = (id: string) => outcome.plan.tasks.find((planned) => planned.task === id)?.start
  expect(['prime', 'edge', 'roll'].map(startOf)).toEqual([at(0, 8), at(0, 8, 30), at(0, 9)])
  expect(['scrub', 'wash', 'coat'].map(startOf)).toEqual([at(0, 14, 30), at(0, 15), at(0, 15, 30)])
})

test('partial plans find the same whatever the slices', () => {
  const job = randomJob(9, { rooms: 4, crew: 2, gridMinutes: 15, roomLimit: 2, isRich: false })
  const whole = createSearch(job, 3)
  whole.step(6000)
  const sliced = createSearch(job, 3)
  for (let slice = 0; slice < 60; slice++) sliced.step(100)
  expect(sliced.best()).toEqual(whole.best())
})
