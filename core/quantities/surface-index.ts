import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceQuantity } from './takeoff-types.ts'

/**
 * All surfaces of a job by key, looked up among the few of the room a key speaks of, so that an edit need not put thousands of
 * untouched surfaces into a new map.
 */
export class SurfaceIndex implements ReadonlyMap<string, SurfaceQuantity> {
  readonly size: number
  readonly #rooms: ReadonlyMap<RoomId, readonly SurfaceQuantity[]>
  readonly #openings: Job['openings']

  constructor(rooms: ReadonlyMap<RoomId, readonly SurfaceQuantity[]>, openings: Job['openings']) {
    this.#rooms = rooms
    this.#openings = openings
    let size = 0
    for (const room of rooms.values()) size += room.length
    this.size = size
  }

  get(key: string): SurfaceQuantity | undefined {
    const roomId = this.#roomOf(key)
    return roomId === undefined ? undefined : this.#rooms.get(roomId)?.find((surface) => surface.key === key)
  }

  has(key: string): boolean {
    return this.get(key) !== undefined
  }

  /** `wall:dining:north:upper` names its room; `opening:door-1:far:casing` the opening and the side whose room it is. */
  #roomOf(key: string): RoomId | undefined {
    const [kind, id = '', side] = key.split(':', 3)
    if (kind !== 'opening') return id as RoomId
    const opening = this.#openings[id]
    return side === 'near' ? opening?.roomId : opening?.far?.roomId
  }

  *values(): MapIterator<SurfaceQuantity> {
    for (const room of this.#rooms.values()) yield* room
  }

  *keys(): MapIterator<string> {
    for (const surface of this.values()) yield surface.key
  }

  *entries(): MapIterator<[string, SurfaceQuantity]> {
    for (const surface of this.values()) yield [surface.key, surface]
  }

  [Symbol.iterator](): MapIterator<[string, SurfaceQuantity]> {
    return this.entries()
  }

  forEach(
    visit: (value: SurfaceQuantity, key: string, map: ReadonlyMap<string, SurfaceQuantity>) => void,
  ): void {
    for (const surface of this.values()) visit(surface, surface.key, this)
  }
}
