import type { HouseRules, Job } from '../project/job.ts'
import type { Room } from '../project/sketch-records.ts'
import { orderOfRoom } from '../specification/room-order.ts'

export type PartOfRoom = 'ceiling' | 'woodwork' | 'walls' | 'stairs'

/** How the steps of one room set are gathered. */
export interface PassTemplate {
  /** Coats in this order. */
  readonly parts: readonly PartOfRoom[]
  /** A pass of more person-minutes than this is parted at openings or corners. */
  readonly largestPassMinutes: number
  readonly primed: HouseRules['passes']['primed']
  readonly repairs: HouseRules['passes']['repairs']
  /** A pass of fewer person-minutes goes with a neighbor where nothing has to dry between. */
  readonly smallestPassMinutes: number
}

const partsInOrder: Readonly<Record<ReturnType<typeof orderOfRoom>, readonly PartOfRoom[]>> = {
  trimFirst: ['woodwork', 'ceiling', 'walls', 'stairs'],
  ceilingFirst: ['ceiling', 'woodwork', 'walls', 'stairs'],
  trimLast: ['ceiling', 'walls', 'woodwork', 'stairs'],
}

/** By the house rules and the order of the main room of a set. Half an hour is the least worth a visit (shop assumption). */
export function templateOf(job: Job, room: Room): PassTemplate {
  const { primed, repairs, largestHours } = job.houseRules.passes
  return {
    parts: partsInOrder[orderOfRoom(job, room)],
    primed,
    repairs,
    largestPassMinutes: largestHours * 60,
    smallestPassMinutes: 30,
  }
}
