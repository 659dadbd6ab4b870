import { type Job, records, type Table } from './job.ts'
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

/** What was said of a surface, each fact by the narrowest record that says it; a fact is null where no record does. */
export type ExistingFacts = Pick<Existing, (typeof existingFactNames)[number]>

export const existingFactNames = ['substrate', 'coat', 'sheen', 'depth', 'textured'] as const

/** What is on the surface now, fact by fact, by the same scopes. */
export function resolveExisting(job: Job, surface: SurfaceRef): ExistingFacts {
  return factsOf(scopedRecords(job, job.existing, surface))
}

/** The facts of records given from narrow to wide. */
export function factsOf(records: readonly ExistingFacts[]): ExistingFacts {
  const said = <Name extends keyof ExistingFacts>(name: Name): ExistingFacts[Name] | null =>
    records.find((record) => record[name] !== null)?.[name] ?? null
  return {
    substrate: said('substrate'),
    coat: said('coat'),
    sheen: said('sheen'),
    depth: said('depth'),
    textured: said('textured'),
  }
}

/** The record that says something of this one surface alone; null where there is none. */
export function ownExisting(job: Job, surface: SurfaceRef): Existing | null {
  return scopeIndex(job.existing).surfaces.get(surfaceKey(surface)) ?? null
}

/** The record that says something of exactly this scope; undefined where none does. */
export function ownAt<Item extends Scoped>(table: Table<Item>, scope: Scope): Item | undefined {
  const { surfaces, rooms, house } = scopeIndex(table)
  switch (scope.level) {
    case 'surface':
      return surfaces.get(surfaceKey(scope.surface))
    case 'room':
      return rooms.get(scope.roomId)?.get(scope.surfaceClass)
    case 'house':
      return house.get(scope.surfaceClass)
  }
}

function resolve<Item extends Scoped>(job: Job, table: Table<Item>, surface: SurfaceRef): Item | null {
  return findScoped(scopeIndex(table), surface, roomOfSurface(job, surface), surfaceClassOf(job, surface))
}

function scopedRecords<Item extends Scoped>(
  job: Job,
  table: Table<Item>,
  surface: SurfaceRef,
): readonly Item[] {
  return findAllScoped(scopeIndex(table), surface, roomOfSurface(job, surface), surfaceClassOf(job, surface))
}

/** The same text for the same scope and for no other. Of two records with one scope only one could count (see `scopeProblems`). */
export function scopeKey(scope: Scope): string {
  switch (scope.level) {
    case 'surface':
      return `surface/${surfaceKey(scope.surface)}`
    case 'room':
      return `room/${scope.roomId}/${scope.surfaceClass}`
    case 'house':
      return `house/${scope.surfaceClass}`
  }
}

interface Scoped {
  readonly scope: Scope
}

/** Records by what they reach. A job that may be stored has one for each scope; were there several, the last would count. */
interface ScopeIndex<Item> {
  readonly surfaces: ReadonlyMap<string, Item>
  readonly rooms: ReadonlyMap<RoomId, ReadonlyMap<SurfaceClass | null, Item>>
  readonly house: ReadonlyMap<SurfaceClass | null, Item>
}

/**
 * The record of the narrowest scope that fits: the surface's own, its room's, the house's. For callers that know a surface's room and
 * class already and ask for many.
 */
export function findScoped<Item>(
  index: ScopeIndex<Item>,
  surface: SurfaceRef,
  roomId: RoomId | null,
  surfaceClass: SurfaceClass | null,
): Item | null {
  return findAllScoped(index, surface, roomId, surfaceClass)[0] ?? null
}

/** All records that reach a surface, the narrowest first. */
function findAllScoped<Item>(
  index: ScopeIndex<Item>,
  surface: SurfaceRef,
  roomId: RoomId | null,
  surfaceClass: SurfaceClass | null,
): readonly Item[] {
  const own = index.surfaces.size === 0 ? undefined : index.surfaces.get(surfaceKey(surface))
  const ofRoom = roomId === null ? undefined : index.rooms.get(roomId)?.get(surfaceClass)
  return [own, ofRoom, index.house.get(surfaceClass)].filter((item) => item !== undefined)
}

/** Tables never change in place, so each is indexed once. */
const indexes = new WeakMap<object, ScopeIndex<unknown>>()

/** Records by their scope, worked out once for each table. */
export function scopeIndex<Item extends Scoped>(table: Table<Item>): ScopeIndex<Item> {
  const known = indexes.get(table)
  if (known !== undefined) return known as ScopeIndex<Item>
  const index = buildIndex(records(table))
  indexes.set(table, index)
  return index
}

function buildIndex<Item extends Scoped>(items: readonly Item[]): ScopeIndex<Item> {
  const surfaces = new Map<string, Item>()
  const rooms = new Map<RoomId, Map<SurfaceClass | null, Item>>()
  const house = new Map<SurfaceClass | null, Item>()
  for (const item of items) {
    const { scope } = item
    if (scope.level === 'surface') surfaces.set(surfaceKey(scope.surface), item)
    else if (scope.level === 'house') house.set(scope.surfaceClass, item)
    else {
      const ofRoom = rooms.get(scope.roomId) ?? new Map<SurfaceClass | null, Item>()
      rooms.set(scope.roomId, ofRoom.set(scope.surfaceClass, item))
    }
  }
  return { surfaces, rooms, house }
}

/** The part of a wall under a wainscot cap is wainscot; under a chair rail it stays wall. */
function hasWainscot(job: Job, roomId: RoomId, wallId: WallId, zone: string): boolean {
  return zone === 'lower' && capsOf(job.trimRuns).some((run) => capsWall(run, roomId, wallId))
}

const caps = new WeakMap<object, readonly TrimRun[]>()

/** The few caps of wainscot among all trim, found once for each table. */
function capsOf(trimRuns: Job['trimRuns']): readonly TrimRun[] {
  const known = caps.get(trimRuns) ?? records(trimRuns).filter(({ kind }) => kind === 'wainscotCap')
  caps.set(trimRuns, known)
  return known
}

function capsWall(run: TrimRun, roomId: RoomId, wallId: WallId): boolean {
  return run.roomId === roomId && (run.walls === null || run.walls.includes(wallId))
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
