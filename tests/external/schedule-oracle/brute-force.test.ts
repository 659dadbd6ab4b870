import { expect, test } from 'vitest'
import type { ScheduleProblem } from '../../../core/schedule/model.ts'
import { solve } from '../../../core/schedule/solve.ts'
import { randomJob } from '../../schedule/random-job.ts'

// Checked against: every order of the tasks of one room by one painter, each placed by hand on the wall clock.

const minutesPerDay = 1440

/** Start minutes (from the Monday's midnight) of half hours worked: 8:00-12:00 and 12:30-16:00, Monday to Friday. */
function workedHalfHours(days: number): readonly number[] {
  return Array.from({ length: days * 48 }, (_, index) => index * 30).filter((minute) => {
    const day = Math.floor(minute / minutesPerDay)
    const ofDay = minute % minutesPerDay
    return day % 7 < 5 && ofDay >= 480 && ofDay < 960 && ofDay !== 720
  })
}

/** The earliest day on which the last task can end, over all orders and, before an open time, over all delays up to two days. */
function bestDay(job: ScheduleProblem): number {
  const moments = workedHalfHours(14)
  const lengths = job.tasks.map((task) => task.work / 30)
  const indexOf = new Map(job.tasks.map((task, index) => [task.id, index]))
  const links = job.links.map((link) => ({
    from: indexOf.get(link.from) ?? -1,
    to: indexOf.get(link.to) ?? -1,
    least: link.atLeast ?? 0,
    most: link.atMost ?? Number.POSITIVE_INFINITY,
  }))
  const ends = job.tasks.map(() => -1)
  let best = Number.POSITIVE_INFINITY

  function mayPause(task: number, first: number): boolean {
    const { splitting } = job.tasks[task] as ScheduleProblem['tasks'][number]
    const length = lengths[task] as number
    const begin = moments[first] as number
    const last = moments[first + length - 1]
    if (last === undefined) return false
    if (splitting === 'night') return true
    const isOneDay = Math.floor(last / minutesPerDay) === Math.floor(begin / minutesPerDay)
    return splitting === 'break' ? isOneDay : last - begin === (length - 1) * 30
  }

  function isInTime(task: number, start: number): boolean {
    return links.every(({ from, to, least, most }) => {
      if (to !== task) return true
      const wait = start - (ends[from] as number)
      return wait >= least && wait <= most
    })
  }

  function place(done: number, from: number): void {
    if (done === job.tasks.length) {
      best = Math.min(best, Math.floor((Math.max(...ends) - 1) / minutesPerDay))
      return
    }
    for (let task = 0; task < job.tasks.length; task++) {
      const isReady = ends[task] === -1 && links.every((link) => link.to !== task || ends[link.from] !== -1)
      if (!isReady) continue
      const mayWait = links.some((link) => link.from === task && link.most < Number.POSITIVE_INFINITY)
      let tries = 0
      for (let first = from; first < moments.length && tries < (mayWait ? 30 : 1); first++) {
        const start = moments[first] as number
        if (Math.floor(start / minutesPerDay) > best) break
        if (!mayPause(task, first) || !isInTime(task, start)) continue
        tries++
        ends[task] = (moments[first + (lengths[task] as number) - 1] as number) + 30
        place(done + 1, first + (lengths[task] as number))
        ends[task] = -1
      }
    }
  }
  place(0, 0)
  return best
}

test('one room by one painter ends on the day that trying every order gives', () => {
  for (let seed = 1; seed <= 10; seed++) {
    const job = randomJob(seed, { rooms: 1, crew: 1, gridMinutes: 30, roomLimit: null, isRich: false })
    expect(job.tasks.length).toBeLessThanOrEqual(8)
    const outcome = solve(job, { seed: 1, iterations: 2000 })
    if (outcome.kind !== 'scheduled') throw new Error(outcome.kind)
    const best = bestDay(job)
    expect({ seed, finish: outcome.plan.value.finish }).toEqual({ seed, finish: best })
    expect(outcome.bound.finish).toBeLessThanOrEqual(best)
  }
})
