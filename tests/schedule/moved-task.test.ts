import { expect, test } from 'vitest'
import { breaksWhenMoved, planWithTaskMoved } from '../../core/schedule/moved-task.ts'
import { at, handPlan, link, person, problem, task, weekOf } from './builders.ts'

const lunch = [{ from: 720, to: 750 }]
const asked = problem({
  tasks: [task('a'), task('b', { work: 120 })],
  links: [link('a', 'b', 60)],
  people: [person('Ann', { breaks: lunch })],
})
const plan = handPlan([
  ['a', [[at(0, 8), at(0, 9)]], ['Ann']],
  ['b', [[at(0, 10), at(0, 12)]], ['Ann']],
])

test('a task that is moved goes on after the break of its people', () => {
  const moved = planWithTaskMoved(asked, plan, 'b', at(0, 11))
  expect(moved.tasks[1]?.segments).toEqual([
    { start: at(0, 11), end: at(0, 12) },
    { start: at(0, 12, 30), end: at(0, 13, 30) },
  ])
  expect(breaksWhenMoved(asked, plan, 'b', at(0, 11))).toEqual([])
})

test('the judge says under the hand what a move runs into', () => {
  expect(breaksWhenMoved(asked, plan, 'b', at(0, 9)).map(({ rule }) => rule)).toEqual(['minimumWait'])
  expect(breaksWhenMoved(asked, plan, 'a', at(0, 10)).map(({ rule }) => rule)).toEqual([
    'onePlaceAtATime',
    'minimumWait',
  ])
  expect(breaksWhenMoved(asked, plan, 'b', at(0, 20)).map(({ rule }) => rule)).toEqual(['crewCalendar'])
})

test('a task that is moved keeps to the hours of its own people, whoever else works on the job', () => {
  const ben = person('Ben', { week: weekOf(12, 16) })
  const moved = planWithTaskMoved({ ...asked, people: [...asked.people, ben] }, plan, 'b', at(0, 11))
  expect(moved.tasks[1]?.segments.map(({ start }) => start)).toEqual([at(0, 11), at(0, 12, 30)])
})
