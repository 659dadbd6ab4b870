import type { Job } from '../../../core/project/job.ts'
import type { Room } from '../../../core/project/sketch-records.ts'
import type { SurfaceRef } from '../../../core/project/surface-ref.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { formatArea } from '../../../core/units/area.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { shortLength } from '../../../core/work-order/room-sheet/sheet-words.ts'
import { surfaceWords } from '../../../core/work-order/surface-words.ts'
import { openingTitle } from './opening-title.ts'

/** As on paper, but an opening without a name says which wall it stands in. */
export function surfaceTitle(job: Job, surface: SurfaceRef): string {
  if (surface.kind !== 'opening') return capital(surfaceWords(job, surface))
  const opening = job.openings[surface.openingId]
  const roomId = surface.side === 'near' ? opening?.roomId : opening?.far?.roomId
  if (opening === undefined || roomId === undefined) return capital(surfaceWords(job, surface))
  return `${openingTitle(job, opening, roomId)}: ${surface.part}`
}

/** Its length where it is measured along, else its net area. */
export function mainFigure(surface: SurfaceQuantity, system: LengthUnitSystem): string {
  return surface.length > 0 ? shortLength(surface.length, system) : formatArea(surface.netArea, system)
}

/** What lights up on the sheet: the records a figure comes from, walls as `room/wall`, a run as the walls it runs along. */
export function litBy(job: Job, room: Room, surface: SurfaceQuantity): readonly string[] {
  const walls = new Set<string>(room.corners.map((corner) => corner.wallId))
  const lines = surface.derivation.flatMap((line) => line.sourceId ?? [])
  return [...ownIds(job, surface.surface), ...lines].flatMap((id) => {
    const run = job.trimRuns[id]
    if (run !== undefined) return (run.walls ?? [...walls]).map((wallId) => `${room.id}/${wallId}`)
    return walls.has(id) ? [`${room.id}/${id}`] : [id]
  })
}

function ownIds(job: Job, surface: SurfaceRef): readonly string[] {
  switch (surface.kind) {
    case 'wall':
      return [surface.wallId]
    case 'opening':
      return [surface.openingId]
    case 'trim':
      return [surface.trimRunId]
    case 'ceiling':
    case 'floor':
      return [surface.roomId]
    case 'built':
      return job.builtItems[surface.builtItemId] === undefined ? [] : [surface.roomId]
  }
}
