import { boundOf } from '../../core/schedule/bound/bound.ts'
import { figuresOf } from '../../core/schedule/judge/plan-costs.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import { createSearch } from '../../core/schedule/tries/search.ts'
import { bestPlan } from '../external/plan-oracle/oracle.ts'
import { type SmallShape, smallHouse } from '../external/plan-oracle/small-house.ts'

/**
 * How far the search's plans of small houses are above the best there is, which a solver proves under the same rules and in the same money.
 * The solver is asked for the best plan that is no dearer than the search's, so that it begins with what the search found.
 *   npm run bench:oracle [-- <tries> [<houses of each shape> [<seconds for each proof>]]]
 */
const [tries = 60_000, houses = 12, seconds = 180] = process.argv.slice(2).map(Number)
const shapes: readonly SmallShape[] = [
  { passes: 8, people: 2 },
  { passes: 8, people: 3 },
  { passes: 10, people: 2 },
  { passes: 10, people: 3 },
  { passes: 12, people: 2 },
]

interface Outcome {
  /** Share above the best; null where the solver proved nothing in its time. */
  readonly gap: number | null
  /** What must never be: rules broken, a plan below the bound or the best, the judge and the solver not at one. */
  readonly wrongs: readonly string[]
}

async function compare(seed: number, shape: SmallShape): Promise<Outcome> {
  const house = smallHouse(seed, shape)
  const name = `${shape.passes} passes, ${shape.people} people, house ${seed}`.padEnd(34)
  const begin = performance.now()
  const search = createSearch(house, 1)
  search.step(tries)
  const searched = ((performance.now() - begin) / 1000).toFixed(1)
  const plan = search.best()
  if (plan === undefined) {
    console.log(`${name} the search has no plan`)
    return { gap: null, wrongs: ['no plan'] }
  }
  const found = figuresOf(house, plan).cost.total
  const verdict = await bestPlan(house, found, seconds)
  const isProved = verdict.status === 'proved'
  const gap = isProved ? found / verdict.cents - 1 : null
  const checks: readonly (readonly [boolean, string])[] = [
    [verifyPlan(house, plan).length > 0, 'the search breaks rules'],
    [verdict.violations.length > 0, 'the solver breaks rules'],
    [verdict.status === 'impossible', "the solver does not take the search's plan"],
    // What is not proved may be counted too dear: pay and room-days are bounded from below only.
    [isProved && verdict.judged !== verdict.cents, 'solver and judge count differently'],
    [isProved && boundOf(house).cents > verdict.cents, 'the bound is above the best'],
    [isProved && found < verdict.cents, 'the search is below the best'],
  ]
  const wrongs = checks.flatMap(([isWrong, words]) => (isWrong ? [words] : []))
  console.log(
    [
      name,
      `search $${found / 100} in ${searched} s`.padEnd(25),
      isProved ? `best $${verdict.cents / 100}` : verdict.status,
      `in ${verdict.seconds.toFixed(1)} s`.padEnd(12),
      gap === null ? '' : `${(100 * gap).toFixed(2)} % above`,
      wrongs.join(', ').toUpperCase(),
    ].join(' '),
  )
  return { gap, wrongs }
}

const outcomes: Outcome[] = []
for (const shape of shapes) {
  const own: Outcome[] = []
  for (let seed = 1; seed <= houses; seed++) own.push(await compare(seed, shape))
  outcomes.push(...own)
  console.log(summary(`${shape.passes} passes, ${shape.people} people`, own))
}
console.log(summary('All', outcomes))
if (outcomes.some(({ wrongs }) => wrongs.length > 0)) process.exitCode = 1

function summary(name: string, own: readonly Outcome[]): string {
  const gaps = own.flatMap(({ gap }) => (gap === null ? [] : [gap]))
  const near = gaps.filter((gap) => gap <= 0.01).length
  const exact = gaps.filter((gap) => gap === 0).length
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / Math.max(1, gaps.length)
  const wrongs = own.reduce((sum, each) => sum + each.wrongs.length, 0)
  return `${name}: ${gaps.length} of ${own.length} proved; ${near} within 1 %, ${exact} best; on average ${(100 * mean).toFixed(2)} % above, at most ${(100 * Math.max(0, ...gaps)).toFixed(2)} %; ${wrongs} wrongs`
}
