import { tableByKey } from '../../../../core/lists/lists.ts'
import { type Job, records } from '../../../../core/project/job.ts'
import { sameValue } from '../../../../core/project/same-value.ts'
import type { RoomId } from '../../../../core/project/sketch-records.ts'
import { surfaceKey } from '../../../../core/project/surface-ref.ts'
import type { Condition } from '../../../../core/project/survey-records.ts'
import { conditionKinds } from '../../../../core/project/vocabulary.ts'
import type { SurfaceQuantity, Takeoff } from '../../../../core/quantities/takeoff-types.ts'
import { conditionWords } from '../../../../core/specification/trade-words.ts'
import { capital } from '../../../../core/words/text.ts'
import { newId } from '../../../state/new-id.ts'

/** Square millimetres in the record, the program's area grain (1/10 000 mm²) on the way. */
export const grainsPerSquareMillimetre = 10_000

/** Made of the whole closed list, so that no kind is missing. */
export const conditionTitles = tableByKey(conditionKinds, (kind) => capital(conditionWords[kind]))

/** What was found on a surface: on itself, on all of its kind in the room, or on the room as a whole. */
export function conditionsOn(job: Job, surface: SurfaceQuantity): readonly Condition[] {
  return records(job.conditions).filter(({ on }) =>
    on.level === 'surface'
      ? surfaceKey(on.surface) === surface.key
      : on.roomId === surface.roomId &&
        (on.surfaceClass === null || on.surfaceClass === surface.surfaceClass),
  )
}

/** How often something was found, by surface key. What was found on a whole room counts at its ceiling's name. */
export function foundCounts(job: Job, takeoff: Takeoff): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  const add = (key: string) => counts.set(key, (counts.get(key) ?? 0) + 1)
  for (const { on } of records(job.conditions)) {
    if (on.level === 'surface') add(surfaceKey(on.surface))
    else {
      for (const surface of takeoff.surfaces) {
        if (surface.roomId === on.roomId && surface.surfaceClass === on.surfaceClass) add(surface.key)
      }
    }
  }
  return counts
}

/** What a form about a finding begins with. */
export const usualFinding: Omit<Condition, 'id' | 'on'> = {
  kind: 'loosePaint',
  severity: 'moderate',
  length: null,
  areaMm2: null,
  count: null,
  suspectedCause: '',
  causeCured: false,
  note: '',
  photo: null,
  foundOn: null,
}

export function newCondition(surface: SurfaceQuantity, foundOn: string | null): Condition {
  return {
    ...usualFinding,
    id: newId('condition'),
    on: { level: 'surface', surface: surface.surface },
    foundOn,
  }
}

type ConditionReach = 'surface' | 'class' | 'room'

export function reachOf({ on }: Condition): ConditionReach {
  return on.level === 'surface' ? 'surface' : on.surfaceClass === null ? 'room' : 'class'
}

export function withReach(condition: Condition, surface: SurfaceQuantity, reach: ConditionReach): Condition {
  const roomId: RoomId = surface.roomId
  switch (reach) {
    case 'surface':
      return { ...condition, on: { level: 'surface', surface: surface.surface } }
    case 'class':
      return { ...condition, on: { level: 'room', roomId, surfaceClass: surface.surfaceClass } }
    case 'room':
      return { ...condition, on: { level: 'room', roomId, surfaceClass: null } }
  }
}

/** Something was written into it that would be lost with the form: a new one with words or amounts, or a change to a kept one. */
export function hasEntries(draft: Condition, stored: Condition | undefined): boolean {
  if (stored !== undefined) return !sameValue(draft, stored)
  const { length, areaMm2, count, photo, suspectedCause, note } = draft
  return suspectedCause !== '' || note !== '' || [length, areaMm2, count, photo].some((part) => part !== null)
}
