import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gatherPasses } from '../../core/passes/gather.ts'
import { stepMinutes } from '../../core/price/labour.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { boundOf } from '../../core/schedule/bound/bound.ts'
import { problemOfJob } from '../../core/schedule/job/problem-of-job.ts'
import { figuresOf } from '../../core/schedule/judge/plan-costs.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import type { Plan, ScheduleProblem } from '../../core/schedule/model.ts'
import { createSearch } from '../../core/schedule/tries/search.ts'
import { specify } from '../../core/specification/specify.ts'
import { randomHouse } from '../schedule/random-house.ts'
import { foremansPlan } from './foreman-plan.ts'

/**
 * What the search makes cheaper than a foreman's rule (`foreman-plan.ts` says exactly which), under the same rules and in the same money,
 * how far from the bound it is at most, and how long the first plan takes.
 *   npm run bench:plan [-- <tries> [<job.json> ...]]
 */
const demo = join(import.meta.dirname, '..', '..', 'demo-data')
const [wanted = '20000', ...given] = process.argv.slice(2)
const tries = Number(wanted)
const jobs =
  given.length > 0
    ? given
    : ['old-house', 'l-shaped-room', 'plain-room'].map((name) => join(demo, `${name}.json`))

function problemOfFile(path: string): ScheduleProblem {
  const read = readJobFile(readFileSync(path, 'utf8'))
  if (!read.ok) throw new Error(read.problem.sentence)
  const job = read.value
  const specification = specify(job, takeOff(job))
  const minutes = new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)]))
  return problemOfJob(job, specification, gatherPasses(job, specification, minutes), minutes).problem
}

function median(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0
}

/** Of several runs in this process: compiled by then. */
function firstPlanMilliseconds(problem: ScheduleProblem): number {
  const times = Array.from({ length: 9 }, () => {
    const begin = performance.now()
    const search = createSearch(problem, 1)
    while (search.best() === undefined) search.step(1)
    return performance.now() - begin
  })
  return median(times)
}

function judgeMilliseconds(problem: ScheduleProblem, plan: Plan): number {
  const times = Array.from({ length: 15 }, () => {
    const begin = performance.now()
    verifyPlan(problem, plan)
    return performance.now() - begin
  })
  return median(times)
}

const gains: number[] = []

function compare(name: string, problem: ScheduleProblem): void {
  const foreman = foremansPlan(problem)
  const begin = performance.now()
  const search = createSearch(problem, 1)
  search.step(tries)
  const seconds = (performance.now() - begin) / 1000
  const plan = search.best()
  if (plan === undefined || foreman === undefined) {
    console.log(
      `${name.padEnd(28)} ${foreman === undefined ? 'the foreman has no plan' : ''} ${plan === undefined ? 'no plan was found' : ''}`,
    )
    return
  }
  const broken = verifyPlan(problem, plan).length + verifyPlan(problem, foreman).length
  const found = figuresOf(problem, plan).cost.total
  const byRule = figuresOf(problem, foreman).cost.total
  const bound = boundOf(problem).cents
  gains.push(1 - found / byRule)
  const percent = (value: number): string => `${(100 * value).toFixed(1)} %`
  console.log(
    [
      name.padEnd(28),
      `${problem.tasks.length} tasks, ${problem.people.length} people`.padEnd(22),
      `foreman $${(byRule / 100).toFixed(0)}`.padEnd(16),
      `search $${(found / 100).toFixed(0)}`.padEnd(16),
      `${percent(1 - found / byRule)} below`.padEnd(15),
      `bound at most ${percent(1 - bound / found)} below`.padEnd(28),
      `${seconds.toFixed(1)} s, first ${firstPlanMilliseconds(problem).toFixed(0)} ms, judge ${judgeMilliseconds(problem, plan).toFixed(1)} ms`,
      broken === 0 ? '' : `${broken} RULES BROKEN`,
    ].join(' '),
  )
}

for (const path of jobs) compare(path.split('/').at(-1) ?? path, problemOfFile(path))
if (given.length === 0) {
  for (let seed = 1; seed <= 20; seed++) {
    const rooms = 3 + Math.round(((seed - 1) * 37) / 19)
    const crew = 1 + (seed % 6)
    compare(
      `house ${seed}, ${rooms} rooms`,
      randomHouse(seed, { rooms, crew, isRich: true, roomLimit: null }),
    )
  }
}
const mean = gains.reduce((sum, gain) => sum + gain, 0) / gains.length
console.log(
  `On average ${(100 * mean).toFixed(1)} % below the foreman's rule, at the least ${(100 * Math.min(...gains)).toFixed(1)} %; ${tries} tries each.`,
)
