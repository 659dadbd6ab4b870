import { present } from '../../lists/lists.ts'
import type { Job } from '../../project/job.ts'
import { jobProblems } from '../../project/job-problems.ts'
import type { RoomId } from '../../project/sketch-records.ts'
import { withBehindByPlan } from '../behind-walls.ts'
import type { Drawn } from '../commands.ts'
import { withDrawn } from '../room-edits.ts'
import { slopeFrom, usualSlopeAxis } from '../room-slopes.ts'
import type { TapeRoom } from './tape-records.ts'

const lowSides = ['left', 'right', 'top', 'bottom'] as const

/** The rooms with their slopes, each down to the first side under which its openings fit, and the job with all of it. */
export function withSlopes(
  job: Job,
  flat: Drawn,
  slopes: ReadonlyMap<RoomId, TapeRoom['slope']>,
): { readonly drawn: Drawn; readonly job: Job } {
  let drawn = flat
  for (const room of flat.rooms) {
    const slope = slopes.get(room.id) ?? null
    if (slope === null) continue
    const known = drawn
    const order = usualSlopeAxis(room) === 'x' ? lowSides : lowSides.toReversed()
    const tries = order.map((side): Drawn => {
      const ceiling = slopeFrom(side, slope.low, slope.high)
      const rooms = known.rooms.map((one) => (one.id === room.id ? { ...one, ceiling } : one))
      return { ...known, rooms }
    })
    const fits = (one: Drawn) => !jobProblems(withDrawn(job, one)).some(({ ids }) => ids.includes(room.id))
    drawn = tries.find(fits) ?? present(tries[0])
  }
  return { drawn, job: withBehindByPlan(job, withDrawn(job, drawn)) }
}
