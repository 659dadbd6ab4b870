import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Specification } from '../specification/types.ts'
import type { Cents } from '../units/money.ts'
import { roundToCents } from '../units/money.ts'
import type { EstimateLine, RoomPrice } from './estimate-types.ts'
import type { MaterialLine } from './materials.ts'
import { shareCents } from './price-shares.ts'

/** Shares the price before tax over the rooms by their own labour and their part of each product, in the order of the work. */
export function roomPrices(
  job: Job,
  specification: Specification,
  labourLines: readonly EstimateLine[],
  bought: readonly MaterialLine[],
  beforeTax: Cents,
): readonly RoomPrice[] {
  const weights = new Map<RoomId, number>()
  const add = (roomId: RoomId | null, cents: number) => {
    if (roomId !== null) weights.set(roomId, (weights.get(roomId) ?? 0) + cents)
  }
  for (const line of labourLines) add(line.roomId, line.cents)
  for (const [roomId, cents] of materialCentsByRoom(specification, bought)) add(roomId, cents)
  const shares = shareCents(beforeTax, [...weights.values()])
  return [...weights.keys()].map((roomId, index) => ({
    roomId,
    name: job.rooms[roomId]?.name ?? roomId,
    cents: shares[index] ?? roundToCents(0),
  }))
}

/** Cents of material that each room takes of what is bought, not rounded. */
export function materialCentsByRoom(
  specification: Specification,
  bought: readonly MaterialLine[],
): ReadonlyMap<RoomId, number> {
  const roomOfStep = new Map(specification.steps.map((step) => [step.key, step.roomId]))
  const cents = new Map<RoomId, number>()
  for (const line of bought) {
    for (const part of line.steps) {
      const roomId = roomOfStep.get(part.stepKey)
      if (roomId === undefined) continue
      cents.set(roomId, (cents.get(roomId) ?? 0) + (line.priceCents * part.gallons) / line.gallons)
    }
  }
  return cents
}
