import type { CollectionName, Job, RecordOf } from '../../project/job.ts'
import { factsOf, findScoped, ownAt, scopeIndex } from '../../project/scopes.ts'
import type {
  Condition,
  Existing,
  ExistingId,
  Finish,
  FinishId,
  KeptItem,
} from '../../project/survey-records.ts'
import { usualFinishes } from '../../project/usual-finishes.ts'
import type { SketchCommand } from '../commands.ts'
import type { Picked, PickedScope } from './picked.ts'

/** Facts of what is there now that are said of every scope; a null takes back what was said there. */
export type SaidFacts = Partial<Omit<Existing, 'id' | 'scope'>>

/** Says the same of all scopes; what was said of each besides stays. A record that says nothing any more goes. */
export function existingOnMany(
  job: Job,
  places: readonly PickedScope[],
  said: SaidFacts,
  newId: () => ExistingId,
): readonly SketchCommand[] {
  return places.flatMap(({ scope }): readonly SketchCommand[] => {
    const own = ownAt(job.existing, scope)
    const facts = { ...factsOf(own === undefined ? [] : [own]), ...said }
    if (Object.values(facts).some((fact) => fact !== null))
      return [put('existing', { id: own?.id ?? newId(), scope, ...facts })]
    return own === undefined ? [] : [{ kind: 'removeRecord', collection: 'existing', id: own.id }]
  })
}

export type SaidFinish = Partial<Omit<Finish, 'id' | 'scope'>>

/** Gives all scopes the same; what is not said stays as each has it or inherits it. A color or a product means that it is painted. */
export function finishOnMany(
  job: Job,
  places: readonly PickedScope[],
  said: SaidFinish,
  newId: () => FinishId,
): readonly SketchCommand[] {
  const isPaint = said.colourId != null || said.productClass !== undefined
  return places.map((place) => {
    const { scope } = place
    const held = finishAt(job, place)
    const id = ownAt(job.finishes, scope)?.id ?? newId()
    return put('finishes', { ...held, paint: held.paint || isPaint, ...said, id, scope })
  })
}

/** What holds at a scope: its own choice, the room's or the house's; the usual of its class, not painted, where none was made. */
export function finishAt(job: Job, place: PickedScope): SaidFinish & Omit<Finish, 'id' | 'scope'> {
  const found = heldAt(job.finishes, place)
  return found ?? { paint: false, colourId: null, ...usualFinishes[place.surfaceClass] }
}

/** What was said of a scope itself, to be shown as said; null where nothing was. */
export function existingAt(job: Job, place: PickedScope): Existing | null {
  return ownAt(job.existing, place.scope) ?? null
}

function heldAt(table: Job['finishes'], { scope, roomId, surfaceClass }: PickedScope): Finish | null {
  const index = scopeIndex(table)
  if (scope.level === 'surface') return findScoped(index, scope.surface, roomId, surfaceClass)
  return index.rooms.get(roomId)?.get(surfaceClass) ?? index.house.get(surfaceClass) ?? null
}

/** One finding for each place; amounts are those of each place, not of all together. Rooms as a whole are named without a class. */
export function findingOnMany(
  places: readonly Condition['on'][],
  found: Omit<Condition, 'id' | 'on'>,
  newId: () => Condition['id'],
): readonly SketchCommand[] {
  return places.map((on) => put('conditions', { id: newId(), on, ...found }))
}

/** Where findings on a class of what is picked are kept. */
export function findingPlaces(places: readonly PickedScope[]): readonly Condition['on'][] {
  return places.map(({ scope, roomId, surfaceClass }) =>
    scope.level === 'surface'
      ? { level: 'surface', surface: scope.surface }
      : { level: 'room', roomId, surfaceClass },
  )
}

/**
 * Puts what stays into every room, onto every opening and onto every wall that is picked. Where there is some of the same kind and name
 * at the same place already, its count and handling are set instead of a second one being added.
 */
export function keptOnMany(
  job: Job,
  { rooms, openings, walls }: Picked,
  item: Pick<KeptItem, 'kind' | 'name' | 'count' | 'handling' | 'wired'>,
  newId: () => KeptItem['id'],
): readonly SketchCommand[] {
  const places: readonly Pick<KeptItem, 'roomId' | 'on'>[] = [
    ...rooms.map(({ id }) => ({ roomId: id, on: { kind: 'room' } as const })),
    ...openings.map(({ id, roomId }) => ({ roomId, on: { kind: 'opening', openingId: id } as const })),
    ...walls.map(({ id, roomId }) => ({ roomId, on: { kind: 'wall', wallId: id } as const })),
  ]
  return places.map((place) => {
    const same = Object.values(job.keptItems).find(
      (one) => isSamePlace(one, place) && one.kind === item.kind && one.name === item.name,
    )
    return put('keptItems', { id: same?.id ?? newId(), ...place, ...item, note: same?.note ?? '' })
  })
}

function isSamePlace(one: KeptItem, place: Pick<KeptItem, 'roomId' | 'on'>): boolean {
  if (one.roomId !== place.roomId) return false
  if (one.on.kind === 'opening' && place.on.kind === 'opening') return one.on.openingId === place.on.openingId
  if (one.on.kind === 'wall' && place.on.kind === 'wall') return one.on.wallId === place.on.wallId
  return one.on.kind === place.on.kind
}

function put<Name extends CollectionName>(collection: Name, record: RecordOf<Name>): SketchCommand {
  return { kind: 'putRecord', collection, record }
}
