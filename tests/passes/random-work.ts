import fc from 'fast-check'
import type { Job } from '../../core/project/job.ts'
import type { RoomId } from '../../core/project/sketch-records.ts'
import type { SurfaceClass } from '../../core/project/vocabulary.ts'
import { operations, type Specification, type Step, type StepOrder } from '../../core/specification/types.ts'
import { elapsedMinutes, type WorkingMinutes, workingMinutes } from '../../core/units/duration.ts'
import { buildJob, rectangularRoom } from '../fixtures/job-builder.ts'
import { handStep } from '../fixtures/plain-room.ts'

const classes: readonly SurfaceClass[] = ['ceiling', 'walls', 'trim', 'doors', 'sash', 'stairs', 'radiators']
const waits = [0, 0, 0, 0, 65, 260, 1545, 10805]

const step = fc.record({
  room: fc.nat(1),
  operation: fc.constantFrom(...operations),
  surfaceClass: fc.constantFrom(...classes, null),
  coat: fc.integer({ min: 1, max: 8 }),
  minutes: fc.integer({ min: 0, max: 900 }),
})

const edge = fc.record({
  from: fc.nat(),
  to: fc.nat(),
  wait: fc.constantFrom(...waits),
  window: fc.constantFrom(null, null, null, 30, 43_200),
})

/** Work that no rule book would ask for: any operations in any order, some of it turned round. */
export interface RandomWork {
  readonly job: Job
  readonly specification: Specification
  readonly minutes: ReadonlyMap<string, WorkingMinutes>
}

export const randomWork: fc.Arbitrary<RandomWork> = fc
  .record({
    steps: fc.array(step, { minLength: 1, maxLength: 25 }),
    edges: fc.array(edge, { maxLength: 40 }),
    turned: fc.nat(9),
  })
  .map(({ steps, edges, turned }) => {
    const job = buildJob({ rooms: [rectangularRoom('one', 12, 10), rectangularRoom('two', 12, 10)] })
    const rooms = ['one', 'two'] as readonly string[] as readonly RoomId[]
    const all = steps.map((given, index): Step => {
      const roomId = rooms[given.room] as RoomId
      const { operation, surfaceClass } = given
      const groupKey = surfaceClass ?? 'room'
      const key = `${roomId}/${groupKey}/${operation}/${index}`
      const coat = operation === 'coat' ? given.coat : 0
      return handStep(key, { roomId, groupKey, surfaceClass, operation, coat, surfaceKeys: [key] })
    })
    const ordered = rooms.flatMap((roomId) => all.filter((one) => one.roomId === roomId))
    const order = edges.flatMap((given): readonly StepOrder[] => {
      const [from, to] = [given.from % ordered.length, given.to % ordered.length]
      const isTurned = turned === 0 && from % 3 === 0
      const [before, after] = [
        ordered[isTurned ? Math.max(from, to) : Math.min(from, to)],
        ordered[isTurned ? Math.min(from, to) : Math.max(from, to)],
      ]
      if (before === undefined || after === undefined || before === after) return []
      if (before.roomId !== after.roomId) return []
      return [
        {
          before: before.key,
          after: after.key,
          minimumWait: elapsedMinutes(given.wait),
          maximumWait: given.window === null ? null : elapsedMinutes(Math.max(given.window, given.wait)),
          ruleId: 'rule',
          reason: 'A reason.',
          source: 'common practice',
        },
      ]
    })
    return {
      job,
      specification: { steps: ordered, order, holds: [], notices: [], clashes: [] },
      minutes: new Map(steps.map((given, index) => [all[index]?.key ?? '', workingMinutes(given.minutes)])),
    }
  })
