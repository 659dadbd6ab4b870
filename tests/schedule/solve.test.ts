import { expect, test } from 'vitest'
import { solve } from '../../core/schedule/solve.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import { verifyPlan } from '../../core/schedule/verify.ts'
import { randomJob } from './random-job.ts'

test('every plan of random jobs passes the judge', () => {
  for (let seed = 1; seed <= 30; seed++) {
    const job = randomJob(seed, {
      rooms: 2 + (seed % 4),
      crew: 1 + (seed % 3),
      gridMinutes: seed % 2 === 0 ? 5 : 15,
      roomLimit: seed % 5 === 0 ? 2 : null,
      isRich: seed % 3 !== 0,
    })
    expect(validateProblem(job)).toEqual([])
    const outcome = solve(job, { seed, iterations: 200 })
    expect(outcome.kind).toBe('scheduled')
    if (outcome.kind === 'scheduled') expect(verifyPlan(job, outcome.plan)).toEqual([])
  }
})
