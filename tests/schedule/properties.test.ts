import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Plan, ScheduleProblem } from '../../core/schedule/model.ts'
import { brokenRules } from '../../core/schedule/rules/rules.ts'
import { createSearch } from '../../core/schedule/search.ts'
import { firstPlan, solve } from '../../core/schedule/solve.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import { verifyPlan } from '../../core/schedule/verify.ts'
import { elapsedMinutes } from '../../core/units/duration.ts'
import { at, person } from './builders.ts'
import { type JobShape, randomJob } from './random-job.ts'

const jobs = fc
  .record({
    seed: fc.integer({ min: 1, max: 1_000_000 }),
    rooms: fc.integer({ min: 1, max: 5 }),
    crew: fc.integer({ min: 1, max: 3 }),
    gridMinutes: fc.constantFrom(5, 15),
    roomLimit: fc.constantFrom(null, 1, 2),
    isRich: fc.boolean(),
  })
  .map(({ seed, ...shape }) => randomJob(seed, shape))

function planOf(job: ScheduleProblem, iterations: number, seed = 1): Plan {
  const outcome = solve(job, { seed, iterations })
  if (outcome.kind !== 'scheduled') throw new Error(JSON.stringify(outcome))
  return outcome.plan
}

test('any random job gets a plan that the judge and the rules accept, and no plan beats the bound', () => {
  fc.assert(
    fc.property(jobs, fc.integer({ min: 1, max: 100 }), (job, seed) => {
      expect(validateProblem(job)).toEqual([])
      const outcome = solve(job, { seed, iterations: 150 })
      if (outcome.kind !== 'scheduled') throw new Error(JSON.stringify(outcome))
      expect(verifyPlan(job, outcome.plan)).toEqual([])
      expect(brokenRules(job, outcome.plan)).toEqual([])
      expect(outcome.gap).toBeGreaterThanOrEqual(0)
    }),
    { seed: 20260302, numRuns: 40 },
  )
})

test('the same seed gives the same plan, however the iterations are sliced', () => {
  fc.assert(
    fc.property(jobs, fc.integer({ min: 1, max: 50 }), (job, slice) => {
      const whole = createSearch(job, 7)
      whole.step(200)
      const sliced = createSearch(job, 7)
      for (let done = 0; done < 200; done += slice) sliced.step(Math.min(slice, 200 - done))
      expect(sliced.best()).toEqual(whole.best())
    }),
    { seed: 20260303, numRuns: 15 },
  )
})

test('a search stopped at any moment holds a valid plan', () => {
  fc.assert(
    fc.property(jobs, fc.integer({ min: 40, max: 400 }), (job, iterations) => {
      const search = createSearch(job, 3)
      search.step(iterations)
      const plan = search.best()
      expect(plan).toBeDefined()
      if (plan !== undefined) expect(verifyPlan(job, plan)).toEqual([])
    }),
    { seed: 20260304, numRuns: 25 },
  )
})

function promised(job: ScheduleProblem, plan: Plan): ScheduleProblem {
  const promises = plan.tasks.map(({ task, start, people }) => ({ task, start, people }))
  return { ...job, promises }
}

test('a re-plan with nothing changed moves nothing', () => {
  fc.assert(
    fc.property(jobs, fc.integer({ min: 1, max: 300 }), (job, iterations) => {
      const before = firstPlanOf(job, iterations)
      const after = planOf(promised(job, before), 200, 9)
      expect(after.tasks).toEqual(before.tasks)
      expect(after.value.movedPromises).toBe(0)
    }),
    { seed: 20260305, numRuns: 25 },
  )
})

function firstPlanOf(job: ScheduleProblem, iterations: number): Plan {
  const first = firstPlan(job)
  if (first.kind !== 'scheduled') throw new Error(JSON.stringify(first))
  const search = createSearch(job, 2)
  search.step(iterations)
  return search.best() ?? first.plan
}

test('work done and under way stays where it was when the rest is planned again', () => {
  fc.assert(
    fc.property(jobs, (job) => {
      const before = planOf(job, 100)
      const now = at(0, 12)
      const tasks = job.tasks.map((task, index) => {
        const planned = before.tasks[index] as Plan['tasks'][number]
        if (planned.end > now) return task
        const { start, end, people } = planned
        return { ...task, state: { kind: 'done', start, end, people } as const }
      })
      const clock = { ...job.clock, start: now }
      const after = planOf({ ...promised(job, before), clock, tasks }, 150)
      for (const [index, task] of tasks.entries()) {
        if (task.state.kind === 'done') expect(after.tasks[index]?.end).toBe(before.tasks[index]?.end)
        else expect(after.tasks[index]?.segments[0]?.start).toBeGreaterThanOrEqual(now)
      }
    }),
    { seed: 20260306, numRuns: 15 },
  )
})

const tiny: JobShape = { rooms: 1, crew: 1, gridMinutes: 15, roomLimit: null, isRich: false }

test('at the proved best finish, one more painter or shorter drying never ends later', () => {
  let compared = 0
  for (let seed = 1; seed <= 12; seed++) {
    const job = randomJob(seed, { ...tiny, rooms: 1 + (seed % 2) })
    const base = solve(job, { seed: 1, iterations: 4000 })
    const more = solve({ ...job, people: [...job.people, helperOf(job)] }, { seed: 1, iterations: 4000 })
    const links = job.links.map((link) => {
      const isDrying = link.atLeast !== null && link.atLeast > 0 && link.atMost === null
      return isDrying ? { ...link, atLeast: elapsedMinutes(Math.floor(Number(link.atLeast) / 2)) } : link
    })
    const dry = solve({ ...job, links }, { seed: 1, iterations: 4000 })
    if (base.kind !== 'scheduled' || more.kind !== 'scheduled' || dry.kind !== 'scheduled')
      throw new Error('no plan')
    if (base.gap === 0 && more.gap === 0)
      expect(more.plan.value.finish).toBeLessThanOrEqual(base.plan.value.finish)
    if (base.gap === 0 && dry.gap === 0)
      expect(dry.plan.value.finish).toBeLessThanOrEqual(base.plan.value.finish)
    if (base.gap === 0) compared++
  }
  expect(compared).toBeGreaterThan(0)
})

function helperOf(job: ScheduleProblem) {
  const model = job.people[0]
  return person(
    'helper',
    model === undefined ? {} : { skills: model.skills, week: model.week, breaks: model.breaks },
  )
}
