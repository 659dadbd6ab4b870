import type { Job, Table } from './job.ts'
import type { RoomId, TrimRun, WallId } from './sketch-records.ts'
import { type SurfaceRef, surfaceKey } from './surface-ref.ts'
import type { Existing, Finish, Scope } from './survey-records.ts'
import type { SurfaceClass } from './vocabulary.ts'

/** The class a surface takes its defaults from; null for a floor and for a surface that is not in the job. */
export function surfaceClassOf(job: Job, surface: SurfaceRef): SurfaceClass | null {
  switch (surface.kind) {
    case 'ceiling':
      return 'ceiling'
    case 'floor':
      return null
    case 'wall':
      return hasWainscot(job, surface.roomId, surface.wallId, surface.zone) ? 'wainscot' : 'walls'
    case 'trim':
      return 'trim'
    case 'built':
      return builtClass(job, surface.builtItemId)
    case 'opening':
      return openingClass(job, surface)
  }
}

/** The room a surface is seen and painted from; null when its opening or far side is not in the job. */
export function roomOfSurface(job: Job, surface: SurfaceRef): RoomId | null {
  if (surface.kind !== 'opening') return surface.roomId
  const opening = job.openings[surface.openingId]
  if (opening === undefined) return null
  return surface.side === 'near' ? opening.roomId : (opening.far?.roomId ?? null)
}

/** What the surface shall become: its own choice, else the room's for its class, else the house's; null when none is made. */
export function resolveFinish(job: Job, surface: SurfaceRef): Finish | null {
  return resolve(job, job.finishes, surface)
}

/** What is on the surface now, by the same scopes; null when nobody has said. */
export function resolveExisting(job: Job, surface: SurfaceRef): Existing | null {
  return resolve(job, job.existing, surface)
}

function resolve<Item extends Scoped>(job: Job, table: Table<Item>, surface: SurfaceRef): Item | null {
  return scopedRecord(table, surfaceKey(surface), roomOfSurface(job, surface), surfaceClassOf(job, surface))
}

interface Scoped {
  readonly scope: Scope
}

/**
 * The record of the narrowest scope that fits: the surface's own, its room's, the house's. For callers that know a surface's room and
 * class already and ask for many.
 */
export function scopedRecord<Item extends Scoped>(
  table: Table<Item>,
  key: string,
  roomId: RoomId | null,
  surfaceClass: SurfaceClass | null,
): Item | null {
  const index = indexOf(table)
  return (
    index.get(key) ??
    index.get(`room:${roomId}:${surfaceClass}`) ??
    index.get(`house:${surfaceClass}`) ??
    null
  )
}

/** Tables never change in place, so each is indexed once. */
const indexes = new WeakMap<object, ReadonlyMap<string, unknown>>()

/** Records by their scope; a later one of the same scope replaces an earlier one. */
function indexOf<Item extends Scoped>(table: Table<Item>): ReadonlyMap<string, Item> {
  const known = indexes.get(table)
  if (known !== undefined) return known as ReadonlyMap<string, Item>
  const index = new Map(Object.values(table).map((item) => [scopeKey(item.scope), item]))
  indexes.set(table, index)
  return index
}

function scopeKey(scope: Scope): string {
  switch (scope.level) {
    case 'surface':
      return surfaceKey(scope.surface)
    case 'room':
      return `room:${scope.roomId}:${scope.surfaceClass}`
    case 'house':
      return `house:${scope.surfaceClass}`
  }
}

/** The part of a wall under a wainscot cap is wainscot; under a chair rail it stays wall. */
function hasWainscot(job: Job, roomId: RoomId, wallId: WallId, zone: string): boolean {
  return zone === 'lower' && Object.values(job.trimRuns).some((run) => capsWall(run, roomId, wallId))
}

function capsWall(run: TrimRun, roomId: RoomId, wallId: WallId): boolean {
  return (
    run.kind === 'wainscotCap' && run.roomId === roomId && (run.walls === null || run.walls.includes(wallId))
  )
}

function builtClass(job: Job, builtItemId: string): SurfaceClass | null {
  const item = job.builtItems[builtItemId]
  if (item === undefined) return null
  if (item.kind === 'stair') return 'stairs'
  return item.kind === 'radiator' ? 'radiators' : 'builtWork'
}

function openingClass(
  job: Job,
  surface: Extract<SurfaceRef, { readonly kind: 'opening' }>,
): SurfaceClass | null {
  const opening = job.openings[surface.openingId]
  if (opening === undefined) return null
  switch (surface.part) {
    case 'casing':
    case 'stool':
      return 'trim'
    case 'jamb':
      return opening.jambOf === 'wall' ? 'walls' : 'trim'
    case 'slab':
      return 'doors'
    case 'sash':
      return 'sash'
  }
}
