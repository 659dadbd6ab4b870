import { describe, expect, test } from 'vitest'
import type { ScheduleProblem } from '../../../core/schedule/model.ts'
import { solve } from '../../../core/schedule/solve.ts'
import { type JobShape, randomJob } from '../../schedule/random-job.ts'
import { houseModel } from './house-model.ts'
import { solveModel } from './minizinc-thread.ts'

// Checked against: Chuffed 0.14.0 and HiGHS 1.15.1 as shipped in npm minizinc 4.5.1 (MiniZinc 2.10.0, WASM build).

interface Answer {
  readonly finish: number
  readonly roomDays: number
}

function shape(rooms: number, crew: number, roomLimit: number | null = null): JobShape {
  return { rooms, crew, gridMinutes: 15, roomLimit, isRich: false }
}

function ours(job: ScheduleProblem): Answer & { readonly bound: number } {
  const outcome = solve(job, { seed: 1, iterations: 40_000 })
  if (outcome.kind !== 'scheduled') throw new Error(outcome.kind)
  const { finish, roomDaysOutOfUse } = outcome.plan.value
  return { finish, roomDays: roomDaysOutOfUse, bound: outcome.bound.finish }
}

interface Verdict extends Answer {
  readonly isProved: boolean
}

/** Undefined when the solver finds nothing in its time, which says nothing about the plan. */
async function oracle(
  job: ScheduleProblem,
  days: number,
  solver: 'chuffed' | 'highs' = 'chuffed',
): Promise<Verdict | undefined> {
  const { status, output } = await solveModel(houseModel(job, days), solver, 40)
  if (status === 'none') throw new Error('the oracle says there is no plan where one passed the judge')
  return status === 'silent' ? undefined : { ...(output as unknown as Answer), isProved: status === 'proved' }
}

const cases: readonly (readonly [number, JobShape])[] = [
  [1, shape(2, 1)],
  [2, shape(2, 2)],
  [3, shape(3, 1, 2)],
  [4, shape(3, 2)],
  [5, shape(4, 2)],
  [6, shape(4, 2, 2)],
  [7, shape(4, 3)],
  [8, shape(5, 2)],
  [9, shape(4, 3, 2)],
  [10, shape(3, 2)],
  [11, shape(3, 1)],
  [12, shape(3, 1, 2)],
  [13, shape(3, 2, 2)],
  [14, shape(4, 3, 3)],
  [15, shape(2, 1)],
  [16, shape(3, 3)],
]

describe('small houses against a constraint solver', () => {
  const whole: boolean[] = []
  const tight: boolean[] = []
  for (const [seed, kind] of cases) {
    const title = `house ${seed}: ${kind.rooms} rooms, crew of ${kind.crew}, at most ${kind.roomLimit ?? 'all'} rooms out of use`
    test(title, { timeout: 180_000 }, async () => {
      const job = randomJob(seed, kind)
      const mine = ours(job)
      const best = await oracle(job, mine.finish + 1)
      if (best === undefined) return
      expect(mine.finish).toBeLessThanOrEqual(best.finish)
      if (!best.isProved) return
      expect(mine.finish).toBe(best.finish)
      expect(mine.bound).toBeLessThanOrEqual(best.finish)
      expect(mine.roomDays).toBeGreaterThanOrEqual(best.roomDays)
      whole.push(mine.roomDays === best.roomDays)
      tight.push(mine.bound === best.finish)
    })
  }
  test('of those proved, and most are, nine in ten are best in room-days too', () => {
    expect(whole.length).toBeGreaterThanOrEqual(Math.ceil(0.75 * cases.length))
    expect(whole.filter((isBest) => isBest).length).toBeGreaterThanOrEqual(Math.ceil(0.9 * whole.length))
  })
  test('the bound meets the finish of three in four', () => {
    expect(tight.filter((isMet) => isMet).length).toBeGreaterThanOrEqual(Math.ceil(0.75 * tight.length))
  })
})

test('a mixed-integer solver gives the same answer on the smallest house', { timeout: 180_000 }, async () => {
  const job = randomJob(15, shape(1, 1))
  const mine = ours(job)
  const best = await oracle(job, mine.finish + 1, 'highs')
  expect(best).toMatchObject({ finish: mine.finish, roomDays: mine.roomDays })
})
