import { readFileSync } from 'node:fs'
import { boundOf } from '../../../core/schedule/bound/bound.ts'
import { figuresOf } from '../../../core/schedule/judge/plan-costs.ts'
import { verifyPlan } from '../../../core/schedule/judge/verify.ts'
import type { Violation } from '../../../core/schedule/judge/violation.ts'
import type { Plan, ScheduleProblem } from '../../../core/schedule/model.ts'
import { epochMinutes } from '../../../core/time/instant.ts'
import { type Solved, solve } from './solver.ts'
import { type Statement, statementOf } from './statement.ts'

const model = readFileSync(new URL('./passes.mzn', import.meta.url), 'utf8')

/** What the solver says about a problem, and what the judge says about the solver's plan. */
export interface Verdict {
  readonly status: Solved['status']
  readonly seconds: number
  readonly plan: Plan | null
  /** The cost by the solver and by the judge, in cents. */
  readonly cents: number
  readonly judged: number
  readonly violations: readonly Violation[]
  /** The plan lasts so many working days at most: no longer one costs less than what was asked for. */
  readonly workingDays: number
}

/** The best of all plans that cost so many cents at most; `impossible` where none does. */
export async function bestPlan(
  problem: ScheduleProblem,
  atMostCents: number,
  seconds: number,
): Promise<Verdict> {
  const workingDays = daysWorth(problem, atMostCents)
  const statement = statementOf(problem, workingDays, atMostCents)
  const solved = await solve(model, statement.data, seconds)
  const none = { cents: 0, judged: 0, violations: [], plan: null }
  if (solved.solution === null)
    return { ...none, status: solved.status, seconds: solved.seconds, workingDays }
  const plan = planOf(problem, statement, solved.solution)
  const { cost } = solved.solution
  return {
    status: solved.status,
    seconds: solved.seconds,
    plan,
    cents: Number(cost) * statement.unit,
    judged: figuresOf(problem, plan).cost.total,
    violations: verifyPlan(problem, plan),
    workingDays,
  }
}

/** So many days on site that a plan of one more costs more than so many cents, whatever is done on them. */
function daysWorth(problem: ScheduleProblem, cents: number): number {
  const { siteDay } = problem.prices
  const rest = boundOf({ ...problem, prices: { ...problem.prices, siteDay: 0 } }).cents
  return Math.max(1, Math.floor((cents - rest) / siteDay))
}

function planOf(
  problem: ScheduleProblem,
  statement: Statement,
  solution: Readonly<Record<string, unknown>>,
): Plan {
  const { calendar, teams } = statement
  const grid = problem.gridMinutes
  const midnight = problem.clock.start - (problem.clock.start % 1440)
  const numbers = (name: string): readonly number[] => solution[name] as readonly number[]
  const tasks = problem.tasks.map(({ id }, index) => {
    const date = calendar.dates[(numbers('day')[index] as number) - 1] as number
    const worked = calendar.minutes.slice(numbers('from')[index], numbers('to')[index])
    const segments = piecesOf(worked, grid).map(({ start, end }) => ({
      start: epochMinutes(midnight + date * 1440 + start),
      end: epochMinutes(midnight + date * 1440 + end),
    }))
    const people = (teams[(numbers('team')[index] as number) - 1] ?? []).map(
      (person) => problem.people[person]?.id ?? '',
    )
    return {
      task: id,
      segments,
      start: segments[0]?.start ?? problem.clock.start,
      end: segments.at(-1)?.end ?? problem.clock.start,
      people,
    }
  })
  return { tasks }
}

/** Slots that follow one another without a break are one piece; minutes of the day. */
function piecesOf(
  minutes: readonly number[],
  grid: number,
): readonly { readonly start: number; readonly end: number }[] {
  const begins = minutes.filter((minute, index) => index === 0 || minute !== (minutes[index - 1] ?? 0) + grid)
  return begins.map((start, index) => {
    const next = begins[index + 1]
    const last = next === undefined ? minutes.length - 1 : minutes.indexOf(next) - 1
    return { start, end: (minutes[last] ?? start) + grid }
  })
}
