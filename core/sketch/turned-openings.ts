import type { Job } from '../project/job.ts'
import type { Opening, OpeningId } from '../project/sketch-records.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import { openingSides } from '../project/walls.ts'
import { lengthFromUnits } from '../units/length.ts'
import { mapRecords, withRecords } from './job-edits.ts'

/**
 * Openings between a room that goes and one that stays become the staying room's own: what was the far side is the near side
 * now, for the opening and for everything said about its surfaces. What was said about the side that goes, goes.
 */
export function turnOpeningsOf(job: Job, going: ReadonlySet<string>): Job {
  const turned = new Set<string>()
  const openings = mapRecords(job, 'openings', (opening) => {
    if (!going.has(opening.roomId) || opening.far === null || going.has(opening.far.roomId)) return opening
    turned.add(opening.id)
    return turnOpening(job, opening)
  })
  return turned.size === 0
    ? job
    : turnSurfaces(openings, (ref) => {
        if (ref.kind !== 'opening' || !turned.has(ref.openingId)) return ref
        return ref.side === 'far' ? { ...ref, side: 'near' } : null
      })
}

/**
 * An opening between two rooms becomes two openings, one for each room: the near room keeps the record, the far room's has the new id. What
 * was said about the far side, and what stays on it, goes to the new one.
 */
export function partedOpening(job: Job, opening: Opening, newId: OpeningId): Job {
  const own = turnOpening(job, opening)
  const { far } = opening
  if (far === null || own === null) return job
  const parted = withRecords(job, 'openings', [
    { ...opening, far: null, casingFar: null },
    { ...own, id: newId },
  ])
  const surfaces = turnSurfaces(parted, (ref) =>
    ref.kind === 'opening' && ref.openingId === opening.id && ref.side === 'far'
      ? { ...ref, openingId: newId, side: 'near' }
      : ref,
  )
  return mapRecords(surfaces, 'keptItems', (item) =>
    item.roomId === far.roomId && item.on.kind === 'opening' && item.on.openingId === opening.id
      ? { ...item, on: { ...item.on, openingId: newId } }
      : item,
  )
}

/** The same hole seen from its far side alone; null when it cannot be placed there. */
function turnOpening(job: Job, opening: Opening): Opening | null {
  const { far } = openingSides(job, opening)
  if (far === null || opening.far === null) return null
  const { slab } = opening
  return {
    ...opening,
    ...opening.far,
    offset: lengthFromUnits(far.place.from),
    far: null,
    casingNear: opening.casingFar,
    casingFar: null,
    slab: slab && {
      ...slab,
      paintNear: slab.paintFar,
      paintFar: slab.paintNear,
      edgesShow: slab.edgesShow === 'near' ? 'far' : 'near',
    },
  }
}

function turnSurfaces(job: Job, turnRef: (ref: SurfaceRef) => SurfaceRef | null): Job {
  const conditions = mapRecords(job, 'conditions', (condition) => {
    if (condition.on.level !== 'surface') return condition
    const surface = turnRef(condition.on.surface)
    if (surface === condition.on.surface) return condition
    return surface && { ...condition, on: { level: 'surface', surface } }
  })
  return turnChoices(turnChoices(conditions, 'existing', turnRef), 'finishes', turnRef)
}

function turnChoices(
  job: Job,
  name: 'existing' | 'finishes',
  turnRef: (ref: SurfaceRef) => SurfaceRef | null,
): Job {
  return mapRecords(job, name, (choice) => {
    if (choice.scope.level !== 'surface') return choice
    const surface = turnRef(choice.scope.surface)
    if (surface === choice.scope.surface) return choice
    return surface && { ...choice, scope: { level: 'surface', surface } }
  })
}
