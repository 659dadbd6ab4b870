import { expect, test } from 'vitest'
import { findImpossible } from '../../core/schedule/explain-clashes.ts'
import { workingMinutes } from '../../core/units/duration.ts'
import { at, link, person, problem, task } from './builders.ts'

const handy = { skills: ['painting'] }

test('work nobody can do stands in the way; what takes no time, is begun or done does not', () => {
  const asked = (changes: Parameters<typeof task>[1]) =>
    findImpossible(
      problem({ tasks: [task('a', { ...handy, ...changes })], people: [person('Ann', { skills: [] })] }),
    )
  expect(asked({})).toMatchObject({ kind: 'skillMissing', task: 'a', skills: ['painting'], people: [] })
  expect(asked({ work: 0 })).toBeUndefined()
  expect(
    asked({ state: { kind: 'done', start: at(-3, 8), end: at(-3, 9), people: ['Ann'] } }),
  ).toBeUndefined()
  const begun = {
    kind: 'started',
    start: at(-3, 8),
    people: ['Ann'],
    remainingWork: workingMinutes(5),
  } as const
  expect(asked({ state: begun })).toBeUndefined()
})

test('of two people one has to have all skills, the other some of them', () => {
  const asked = (second: readonly string[]) =>
    findImpossible(
      problem({
        tasks: [task('a', { skills: ['painting', 'fineBrush'], crew: { min: 2, max: 2 } })],
        people: [person('Ann', { skills: ['painting', 'fineBrush'] }), person('Ben', { skills: second })],
      }),
    )
  expect(asked(['painting'])).toBeUndefined()
  expect(asked(['hanging'])).toMatchObject({ kind: 'skillMissing', people: ['Ann'] })
})

test('a crew smaller than the work needs is said with both numbers', () => {
  const alone = problem({ tasks: [task('a', { crew: { min: 2, max: 2 } })], people: [person('Ann')] })
  expect(findImpossible(alone)).toEqual({ kind: 'crewTooSmall', task: 'a', needed: 2, available: 1 })
})

test('work that needs more of a thing than there is stands in the way, as much as there is does not', () => {
  const asked = (amount: number, work = 60) =>
    findImpossible(
      problem({
        tasks: [task('a', { work, demands: [{ resource: 'extractor', amount }] })],
        resources: [{ id: 'extractor', capacity: 2 }],
      }),
    )
  expect(asked(2)).toBeUndefined()
  expect(asked(3)).toEqual({ kind: 'resourceTooSmall', task: 'a', resource: 'extractor', needed: 3 })
  expect(asked(3, 0)).toBeUndefined()
})

test('tasks that wait for one another are named in the order in which they wait, without those outside the circle', () => {
  const tasks = ['outside', 'a', 'b', 'c'].map((id) => task(id))
  const round = [link('a', 'b'), link('b', 'c'), link('c', 'a'), link('c', 'outside')]
  const found = findImpossible(problem({ tasks, links: round }))
  if (found?.kind !== 'waitsContradict') throw new Error('these wait for one another')
  const twice = [...found.tasks, ...found.tasks].join('')
  expect(found.tasks).toHaveLength(3)
  expect('abcabcabc'.includes(twice)).toBe(true)
  expect(findImpossible(problem({ tasks, links: round.slice(1) }))).toBeUndefined()
})
