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

async function oracle(
  job: ScheduleProblem,
  days: number,
  solver: 'chuffed' | 'highs' = 'chuffed',
): Promise<Answer | undefined> {
  const answer = await solveModel(houseModel(job, days), solver, 30)
  return answer.status === 'proved' ? (answer.output as unknown as Answer) : undefined
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
  [9, shape(5, 3, 2)],
  [10, shape(3, 2)],
  [11, shape(3, 1)],
  [12, shape(4, 1, 2)],
  [13, shape(3, 2, 2)],
  [14, shape(4, 3, 3)],
  [15, shape(2, 1)],
  [16, shape(3, 3)],
]

describe('small houses against a constraint solver', () => {
  const whole: boolean[] = []
  for (const [seed, kind] of cases) {
    test(`house ${seed}: ${kind.rooms} rooms, crew of ${kind.crew}, at most ${kind.roomLimit ?? 'all'} rooms out of use`, async () => {
      const job = randomJob(seed, kind)
      const mine = ours(job)
      const best = await oracle(job, mine.finish + 1)
      expect(best, 'the oracle proves its answer').toBeDefined()
      if (best === undefined) return
      expect(mine.finish).toBe(best.finish)
      expect(mine.bound).toBeLessThanOrEqual(best.finish)
      expect(mine.roomDays).toBeGreaterThanOrEqual(best.roomDays)
      whole.push(mine.roomDays === best.roomDays)
    })
  }
  test('nine in ten are best in room-days too', () => {
    expect(whole.filter((isBest) => isBest).length).toBeGreaterThanOrEqual(Math.ceil(0.9 * whole.length))
    expect(whole.length).toBe(cases.length)
  })
})

test('a mixed-integer solver gives the same answer on the smallest house', async () => {
  const job = randomJob(15, shape(1, 1))
  const mine = ours(job)
  const best = await oracle(job, mine.finish + 1, 'highs')
  expect(best).toMatchObject({ finish: mine.finish, roomDays: mine.roomDays })
})
