import type { RoomId } from '../project/sketch-records.ts'
import type { Specification, StepOrder } from '../specification/types.ts'

interface OfRoom {
  readonly roomId: RoomId | null
}

/** Lists never change in place, so each is parted once for all its rooms. */
const parted = new WeakMap<object, ReadonlyMap<RoomId | null, readonly OfRoom[]>>()

/** What a list holds of one room, in its order. Going through the whole list for each room would cost rooms times steps. */
export function inRoom<Item extends OfRoom>(items: readonly Item[], roomId: RoomId): readonly Item[] {
  const known =
    (parted.get(items) as ReadonlyMap<RoomId | null, readonly Item[]> | undefined) ?? partByRoom(items)
  parted.set(items, known)
  return known.get(roomId) ?? []
}

function partByRoom<Item extends OfRoom>(
  items: readonly Item[],
): ReadonlyMap<RoomId | null, readonly Item[]> {
  const rooms = new Map<RoomId | null, Item[]>()
  for (const item of items) {
    const list = rooms.get(item.roomId)
    if (list === undefined) rooms.set(item.roomId, [item])
    else list.push(item)
  }
  return rooms
}

const waits = new WeakMap<object, ReadonlyMap<string, readonly StepOrder[]>>()

/** Everything that a step comes after, in the order of the specification. */
export function ordersBefore({ order }: Specification, stepKey: string): readonly StepOrder[] {
  const known = waits.get(order) ?? partByStep(order)
  waits.set(order, known)
  return known.get(stepKey) ?? []
}

function partByStep(order: readonly StepOrder[]): ReadonlyMap<string, readonly StepOrder[]> {
  const steps = new Map<string, StepOrder[]>()
  for (const each of order) {
    const list = steps.get(each.after)
    if (list === undefined) steps.set(each.after, [each])
    else list.push(each)
  }
  return steps
}
