import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { toFeet } from '../units/length.ts'
import type { Group } from './groups.ts'
import { broadClasses, putsOnFilm } from './operation-facts.ts'
import type { RuleBook } from './rule-book.ts'
import type { Draft } from './step-drafts.ts'

/** Rate multiplied by this; 1 is plain work from the floor in an empty ground-storey room. Percentages of rule `difficulty` add up. */
export function difficultyOf(
  { job, book }: { readonly job: Job; readonly book: RuleBook },
  group: Group,
  roomId: RoomId,
  draft: Draft,
): number {
  const scuff =
    draft.operation === 'sand' && draft.ordinal !== '1' ? book.number('scuff-between-coats', 'share') : 1
  if (!book.isOn('difficulty')) return scuff
  const percent = (name: string) => book.number('difficulty', name)
  const room = job.rooms[roomId]
  const onStair = room?.floor.kind === 'stair' && broadClasses.includes(group.surfaceClass)
  const climbs = isHigh(group, draft, percent('reachFeet'))
  const level = Math.max(0, job.storeys[room?.storeyId ?? '']?.level ?? 0)
  const textured = group.textured && putsOnFilm(draft.operation)
  const added =
    (climbs ? percent('climbingPercent') : 0) +
    (onStair ? percent('stairPercent') : 0) +
    level * percent('storeyPercent') +
    (job.header.occupied ? percent('occupiedPercent') : 0) +
    (textured ? percent('texturePercent') : 0)
  return Math.round(scuff * (100 + added)) / 100
}

function isHigh(group: Group, draft: Draft, reachFeet: number): boolean {
  const touched = new Set(draft.surfaceKeys)
  return group.quantities.some((each) => touched.has(each.key) && toFeet(each.reachHeight) > reachFeet)
}
