import type { Room } from '../project/sketch-records.ts'
import { areaFromUnits, sumAreas } from '../units/area.ts'
import type { Group } from './groups.ts'
import type { Precedence } from './order.ts'
import type { PlannedStep, StepMaker } from './planned-step.ts'
import { byOperation, stepsInOrder } from './room-precedences.ts'
import { roomStep } from './room-steps.ts'
import { allowancesOf } from './rules/allowances.ts'

/** The last round with the small brush: a share of what is painted in the room (rule `touch-up`, or the room's own number). */
export function touchUpSteps(maker: StepMaker, room: Room, groups: readonly Group[]): readonly PlannedStep[] {
  const { touchUp } = allowancesOf(maker.job, room, maker.book)
  const area = areaFromUnits(
    Math.round((sumAreas(groups.map((group) => group.amounts.area)) * touchUp) / 100),
  )
  return area > 0 ? [roomStep(maker, room, 'touchUp', 'touch-up', { amounts: { area } })] : []
}

/** After all coats are dry and the tape is off, before things go back. */
export function touchUpLast(
  maker: StepMaker,
  whole: readonly PlannedStep[],
  work: readonly PlannedStep[],
): readonly Precedence[] {
  const touching = byOperation(whole, 'touchUp')
  const saying = { ruleId: 'touch-up', reason: 'It is touched up when everything in the room is dry.' }
  const after = byOperation(whole, 'refitHanging', 'putBack', 'cleanUp', 'inspect')
  return [
    ...stepsInOrder(maker, [...work, ...byOperation(whole, 'unmask')], touching, saying, true),
    ...stepsInOrder(maker, touching, after, saying, false),
  ]
}
