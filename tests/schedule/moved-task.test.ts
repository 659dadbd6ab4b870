import { expect, test } from 'vitest'
import { localTimeIn } from '../../core/schedule/calendar.ts'
import { breaksWhenMoved, withTaskMoved } from '../../core/schedule/rules/moved-task.ts'
import { at, handPlan, link, person, problem, task } from './builders.ts'

const local = localTimeIn('UTC')
const lunch = person('Ann', { breaks: [{ from: 720, to: 750 }] })

test('a moved task goes on after a break and over the night', () => {
  // planned   8 ==== 10
  // at 11     11 == 12 . 12:30 == 13:30
  // at 15:30  15:30 = 16 . night . Tue 8 ===== 9:30
  const job = problem({ people: [lunch], tasks: [task('walls', { work: 120 })] })
  const plan = handPlan([['walls', [[at(0, 8), at(0, 10)]], ['Ann']]])
  const segmentsFrom = (start: ReturnType<typeof at>) =>
    withTaskMoved(job, plan, local, 'walls', start).tasks[0]?.segments.map(({ start: from, end }) => [
      from,
      end,
    ])
  expect(segmentsFrom(at(0, 11))).toEqual([
    [at(0, 11), at(0, 12)],
    [at(0, 12, 30), at(0, 13, 30)],
  ])
  expect(segmentsFrom(at(0, 15, 30))).toEqual([
    [at(0, 15, 30), at(0, 16)],
    [at(1, 8), at(1, 9, 30)],
  ])
})

test('two people go on only while both are there', () => {
  // Ann 8 ======== 16, Bob 8 == 9:30 and Tue 8 ======== 16
  const bob = person('Bob', { partDays: [{ date: '2026-03-02', windows: [{ from: 480, to: 570 }] }] })
  const job = problem({
    people: [person('Ann'), bob],
    tasks: [task('walls', { work: 240, crew: { min: 2, max: 2 } })],
  })
  const plan = handPlan([['walls', [[at(1, 8), at(1, 10)]], ['Ann', 'Bob']]])
  expect(withTaskMoved(job, plan, local, 'walls', at(0, 8)).tasks[0]).toMatchObject({
    start: at(0, 8),
    end: at(1, 8, 30),
  })
})

test('where the hand holds a task it is told what it would run into, and what stays clear', () => {
  // degloss 8 == 9 . at most 30 min . coat 9:15 == 10:15, and trim 11 == 12
  const job = problem({
    people: [lunch],
    tasks: [task('degloss'), task('coat'), task('trim')],
    links: [link('degloss', 'coat', 15, 30)],
  })
  const plan = handPlan([
    ['degloss', [[at(0, 8), at(0, 9)]], ['Ann']],
    ['coat', [[at(0, 9, 15), at(0, 10, 15)]], ['Ann']],
    ['trim', [[at(0, 11), at(0, 12)]], ['Ann']],
  ])
  const rulesAt = (start: ReturnType<typeof at>) =>
    breaksWhenMoved(job, plan, local, 'coat', start).map((each) => each.rule)
  expect(rulesAt(at(0, 9, 30))).toEqual([])
  expect(rulesAt(at(0, 9))).toEqual(['drying'])
  expect(rulesAt(at(0, 10, 30))).toEqual(['onePlaceAtATime', 'openTime'])
  expect(rulesAt(at(0, 12))).toEqual(['crewCalendar', 'openTime'])
})

test('the pin a task has is not in the way of moving it', () => {
  const pinned = { kind: 'pinned', start: at(0, 9), people: null } as const
  const job = problem({ tasks: [task('walls', { state: pinned })] })
  const plan = handPlan([['walls', [[at(0, 9), at(0, 10)]], ['Ann']]])
  expect(breaksWhenMoved(job, plan, local, 'walls', at(0, 11))).toEqual([])
})
