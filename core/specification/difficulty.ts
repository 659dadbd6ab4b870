import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { toSquareFeet } from '../units/area.ts'
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
  const climbing = shareOutOfReach(group, draft, percent('reachFeet'))
  const level = Math.max(0, job.storeys[room?.storeyId ?? '']?.level ?? 0)
  const textured = group.textured && putsOnFilm(draft.operation)
  const added =
    climbing * percent('climbingPercent') +
    (onStair ? percent('stairPercent') : 0) +
    level * percent('storeyPercent') +
    (job.header.occupied ? percent('occupiedPercent') : 0) +
    (textured ? percent('texturePercent') : 0)
  return Math.round(scuff * (100 + added)) / 100
}

/** How much of what the step touches, by area, cannot be reached from the floor: the crown of a room and not its base, of a wall what lies above. */
function shareOutOfReach(group: Group, draft: Draft, reachFeet: number): number {
  const touched = new Set(draft.surfaceKeys)
  const quantities = group.quantities.filter(({ key }) => touched.has(key))
  const area = (of: (each: SurfaceQuantity) => number) =>
    quantities.reduce((sum, each) => sum + toSquareFeet(each.equivalentArea) * of(each), 0)
  const all = area(() => 1)
  return all === 0 ? 0 : area(({ reachHeight }) => outOfReach(group, toFeet(reachHeight), reachFeet)) / all
}

function outOfReach({ surfaceClass }: Group, top: number, reachFeet: number): number {
  if (top <= reachFeet) return 0
  return surfaceClass === 'walls' ? 1 - reachFeet / top : 1
}
