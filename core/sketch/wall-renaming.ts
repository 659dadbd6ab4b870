import type { Job } from '../project/job.ts'
import type { RoomId, WallId } from '../project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../project/surface-ref.ts'
import type { Scope } from '../project/survey-records.ts'
import { mapRecords } from './job-edits.ts'

/** Points everything that named one wall of a room to another: trim, far sides, kept items, what was found and what is chosen. */
export function renameWall(job: Job, roomId: RoomId, from: WallId, to: WallId): Job {
  const renamedRef = (ref: SurfaceRef): SurfaceRef =>
    ref.kind === 'wall' && ref.roomId === roomId && ref.wallId === from ? { ...ref, wallId: to } : ref
  const openings = mapRecords(job, 'openings', (opening) =>
    opening.far?.roomId === roomId && opening.far.wallId === from
      ? { ...opening, far: { roomId, wallId: to } }
      : opening,
  )
  const trim = mapRecords(openings, 'trimRuns', (run) => {
    if (run.roomId !== roomId || !run.walls?.includes(from)) return run
    return { ...run, walls: [...new Set(run.walls.map((wallId) => (wallId === from ? to : wallId)))] }
  })
  const kept = mapRecords(trim, 'keptItems', (item) =>
    item.roomId === roomId && item.on.kind === 'wall' && item.on.wallId === from
      ? { ...item, on: { kind: 'wall', wallId: to } }
      : item,
  )
  const conditions = mapRecords(kept, 'conditions', (condition) => {
    if (condition.on.level !== 'surface') return condition
    const surface = renamedRef(condition.on.surface)
    return surface === condition.on.surface ? condition : { ...condition, on: { level: 'surface', surface } }
  })
  return renameChoices(renameChoices(conditions, 'existing', renamedRef), 'finishes', renamedRef)
}

/** One choice per surface: where the wall it goes to has its own already, that one stays. */
function renameChoices(
  job: Job,
  name: 'existing' | 'finishes',
  renamed: (ref: SurfaceRef) => SurfaceRef,
): Job {
  const taken = new Set(Object.values(job[name]).flatMap(({ scope }) => surfaceOf(scope)))
  return mapRecords(job, name, (choice) => {
    if (choice.scope.level !== 'surface') return choice
    const surface = renamed(choice.scope.surface)
    if (surface === choice.scope.surface) return choice
    return taken.has(surfaceKey(surface)) ? null : { ...choice, scope: { level: 'surface', surface } }
  })
}

function surfaceOf(scope: Scope): readonly string[] {
  return scope.level === 'surface' ? [surfaceKey(scope.surface)] : []
}
