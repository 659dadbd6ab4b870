import { expect, test } from 'vitest'
import { randomBelow, randomStream } from '../../core/schedule/random.ts'
import { createSearch } from '../../core/schedule/search.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import {
  countViolations,
  type ProjectInstance,
  problemOf,
  readSch,
  readSm,
} from '../benchmarks/project-files.ts'

interface Shape {
  readonly tasks: number
  readonly capacities: readonly number[]
  readonly longest: number
  /** Share of pairs that have a maximum wait as well. */
  readonly maximumWaits: number
}

function randomInstance(seed: number, shape: Shape): ProjectInstance {
  const random = randomStream(seed)
  const durations = Array.from({ length: shape.tasks }, () => randomBelow(random, shape.longest + 1))
  const demands = durations.map(() =>
    shape.capacities.map((capacity) => (random() < 0.4 ? 0 : randomBelow(random, capacity + 1))),
  )
  const lags = durations.flatMap((duration, from) =>
    Array.from({ length: shape.tasks - from - 1 }, (_, ahead) => from + 1 + ahead).flatMap((to) => {
      if (random() > 0.25) return []
      const forward = { from, to, lag: duration }
      const most = -duration - randomBelow(random, 4)
      return random() < shape.maximumWaits ? [forward, { from: to, to: from, lag: most }] : [forward]
    }),
  )
  return { durations, demands, capacities: shape.capacities, lags }
}

function startsAfter(instance: ProjectInstance, decodings: number): readonly number[] | undefined {
  const problem = problemOf(instance)
  expect(validateProblem(problem)).toEqual([])
  const search = createSearch(problem, 1, decodings)
  search.step(decodings)
  return search.best()?.tasks.map((task) => task.start)
}

function endOf(instance: ProjectInstance, starts: readonly number[]): number {
  return Math.max(...starts.map((start, task) => start + (instance.durations[task] ?? 0)))
}

test.each([0, 0.3])('capacities of any width fit, with maximum waits on %f of the links', (maximumWaits) => {
  const widths = [1, 9, 100, 127, 128, 1000, 65_535, 1_000_000, 2 ** 30]
  for (let seed = 1; seed <= 40; seed++) {
    const random = randomStream(1000 + seed)
    const capacities = Array.from(
      { length: 1 + (seed % 7) },
      () => widths[randomBelow(random, widths.length)] ?? 1,
    )
    const instance = randomInstance(seed, { tasks: 14, capacities, longest: 5, maximumWaits })
    const starts = startsAfter(instance, 120)
    if (maximumWaits === 0) expect(starts).toBeDefined()
    if (starts !== undefined) expect(countViolations(instance, starts)).toBe(0)
  }
})

/** The least end of any plan, by trying all starts task by task; undefined when none fits. */
function leastEnd(instance: ProjectInstance): number | undefined {
  const { durations } = instance
  const horizon = durations.reduce((sum, duration) => sum + duration, 0) + 8
  let best = Number.POSITIVE_INFINITY
  const starts: number[] = []
  const first = (task: number): ProjectInstance => ({
    ...instance,
    durations: durations.slice(0, task + 1),
    lags: instance.lags.filter(({ from, to }) => from <= task && to <= task),
  })
  const firsts = durations.map((_, task) => first(task))
  function place(task: number): void {
    if (task === durations.length) {
      best = Math.min(best, endOf(instance, starts))
      return
    }
    for (let start = 0; start + (durations[task] ?? 0) <= Math.min(horizon, best - 1); start++) {
      starts[task] = start
      if (countViolations(firsts[task] as ProjectInstance, starts) === 0) place(task + 1)
      starts.length = task
    }
  }
  place(0)
  return Number.isFinite(best) ? best : undefined
}

test('tiny nets end as early as the best of all plans, and have none where none fits', () => {
  const ends: (number | undefined)[] = []
  for (let seed = 1; seed <= 60; seed++) {
    const instance = randomInstance(seed, { tasks: 5, capacities: [4, 3], longest: 3, maximumWaits: 0.6 })
    const starts = startsAfter(instance, 400)
    const end = leastEnd(instance)
    ends.push(end)
    expect([seed, starts && endOf(instance, starts)]).toEqual([seed, end])
  }
  expect(ends.filter((end) => end === undefined).length).toBeGreaterThan(0)
  expect(new Set(ends).size).toBeGreaterThan(5)
})

test('the same seed finds the same plan however it is sliced', () => {
  const instance = randomInstance(3, { tasks: 25, capacities: [9, 7, 8], longest: 9, maximumWaits: 0 })
  const whole = createSearch(problemOf(instance), 7, 600)
  const sliced = createSearch(problemOf(instance), 7, 600)
  whole.step(600)
  for (let slice = 0; slice < 60; slice++) sliced.step(10)
  expect(sliced.best()).toEqual(whole.best())
})

const sm = `***
jobs (incl. supersource/sink ):  4
***
PRECEDENCE RELATIONS:
jobnr.    #modes  #successors   successors
   1        1          2           2   3
   2        1          1           4
   3        1          1           4
   4        1          0
***
REQUESTS/DURATIONS:
jobnr. mode duration  R 1  R 2
---
  1      1     0       0    0
  2      1     3       2    0
  3      1     2       1    4
  4      1     0       0    0
***
RESOURCEAVAILABILITIES:
  R 1  R 2
    2    5
***
`

test('files are read with any line ends and spaces, and refused in words', () => {
  const instance = readSm(sm)
  expect(instance.durations).toEqual([0, 3, 2, 0])
  expect(instance.capacities).toEqual([2, 5])
  expect(instance.lags).toContainEqual({ from: 2, to: 3, lag: 2 })
  expect(readSm(sm.replaceAll('\n', '\r\n').replaceAll('  ', '\t '))).toEqual(instance)
  expect(readSm(sm.replaceAll('\n', '\r'))).toEqual(instance)
  expect(() => readSm('')).toThrow('no heading PRECEDENCE RELATIONS')
  expect(() => readSm(sm.replace('    2    5', '    2'))).toThrow('does not fit 1 capacities')
  expect(() => readSm(sm.replace('2   3', '2   9'))).toThrow('not there')

  const sch = '1 1 0 0\n0 1 1 1 [0]\n1 1 2 2 0 [4] [-6]\n2 1 0\n0 1 0 0\n1 1 4 2\n2 1 0 0\n3\n'
  expect(readSch(sch).lags).toContainEqual({ from: 1, to: 0, lag: -6 })
  expect(() => readSch(sch.replace('[4] [-6]', '[4]'))).toThrow('arcs of task 1')
  expect(() => readSch(sch.slice(0, 30))).toThrow('fewer lines')
})
