import { type RecordOf, records, type Table } from '../../../core/project/job.ts'
import { scopeKey } from '../../../core/project/scopes.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { SurfaceRef } from '../../../core/project/surface-ref.ts'
import type { Scope } from '../../../core/project/survey-records.ts'
import type { SurfaceClass } from '../../../core/project/vocabulary.ts'

export type ScopeLevel = Scope['level']

/** What a choice can be made for: one surface, its class in a room, or its class in the house. */
export interface ScopeTarget {
  readonly surfaceClass: SurfaceClass
  readonly roomId: RoomId | null
  readonly surface: SurfaceRef | null
}

type ScopedRecord = RecordOf<'existing'> | RecordOf<'finishes'>

/** The scopes of a place from narrow to wide, as far as the place is narrow. */
export function scopesOf(place: ScopeTarget): readonly Scope[] {
  const { surfaceClass, roomId, surface } = place
  return [
    ...(surface === null ? [] : [{ level: 'surface', surface } as const]),
    ...(roomId === null ? [] : [{ level: 'room', roomId, surfaceClass } as const]),
    { level: 'house', surfaceClass },
  ]
}

export function isSameScope(one: Scope, other: Scope): boolean {
  return scopeKey(one) === scopeKey(other)
}

export function recordAt<Item extends ScopedRecord>(table: Table<Item>, scope: Scope): Item | null {
  return records(table).find((record) => isSameScope(record.scope, scope)) ?? null
}

/** The record that holds for a place, the narrowest first; null where nobody said anything yet. */
export function recordFor<Item extends ScopedRecord>(table: Table<Item>, place: ScopeTarget): Item | null {
  for (const scope of scopesOf(place)) {
    const found = recordAt(table, scope)
    if (found !== null) return found
  }
  return null
}
