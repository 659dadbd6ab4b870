import { groupedBy, present } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import {
  type ExistingFacts,
  existingFactNames,
  ownExisting,
  resolveExisting,
  resolveFinish,
} from '../project/scopes.ts'
import type { Opening, Room } from '../project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../project/surface-ref.ts'
import type { Colour, Condition, Existing, Finish } from '../project/survey-records.ts'
import type { ColourDepth, ExistingCoat, Sheen, Substrate, SurfaceClass } from '../project/vocabulary.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { sumAreas } from '../units/area.ts'
import { sumLengths } from '../units/length.ts'
import { type Finding, findingOn, foundOnClass, wholeShare } from './findings.ts'
import type { RoomFacts } from './room-facts.ts'
import type { RuleBook } from './rule-book.ts'
import { takenUntilSaid } from './taken-until-said.ts'
import type { StepAmounts } from './types.ts'

/** Like surfaces of one room, worked together: same class, substrate, coat found and finish. */
export interface Group {
  /** `walls`; `walls+accent` where surfaces have their own record; never changes with the content of the records. */
  readonly key: string
  readonly surfaceClass: SurfaceClass
  /** Sash that cannot be moved; worked apart from sash that can. */
  readonly fixedSash: boolean
  readonly quantities: readonly SurfaceQuantity[]
  readonly amounts: StepAmounts
  readonly substrate: Substrate
  readonly coat: ExistingCoat
  /** Nobody has said what the coat is: `coat` is what is usual. */
  readonly coatTaken: boolean
  readonly sheenFound: Sheen
  /** Null where nobody has said what is there. */
  readonly depthFound: ColourDepth | null
  readonly textured: boolean
  readonly finish: Finish
  readonly colour: Colour | null
  readonly findings: readonly Finding[]
}

/** A surface with what was resolved for it. */
interface Member {
  readonly quantity: SurfaceQuantity
  readonly existing: ExistingFacts
  /** The record that speaks of this surface alone. */
  readonly ownExisting: Existing | null
  readonly finish: Finish
  readonly fixedSash: boolean
  /** Worked apart from the like of it, which need not wait for its hold. */
  readonly held: boolean
}

/** Groups of a room in the order of their first surface in the takeoff; surfaces left as they are belong to none. */
export function groupsOfRoom(
  job: Job,
  facts: RoomFacts,
  book: RuleBook,
  apart: ReadonlySet<string> = new Set(),
): readonly Group[] {
  const members = facts.surfaces.flatMap((quantity) => memberOf(job, quantity, apart.has(quantity.key)))
  const lists = [...groupedBy(members, contentOf).values()]
  const findings = findingsByGroup(facts, lists, book)
  return lists.map((list, index) => groupOf(job, list, findings[index] ?? []))
}

/** Surfaces for which nobody has chosen a finish, not even to leave them. */
export function surfacesWithoutFinish(job: Job, { surfaces }: RoomFacts): readonly SurfaceQuantity[] {
  return surfaces.filter((quantity) => resolveFinish(job, quantity.surface) === null)
}

function memberOf(job: Job, quantity: SurfaceQuantity, held: boolean): readonly Member[] {
  const finish = resolveFinish(job, quantity.surface)
  if (finish === null || !finish.paint) return []
  const { surface } = quantity
  const existing = resolveExisting(job, surface)
  return [
    {
      quantity,
      existing,
      ownExisting: ownExisting(job, surface),
      finish,
      fixedSash: isFixedSash(job, surface),
      held,
    },
  ]
}

function isFixedSash(job: Job, surface: SurfaceRef): boolean {
  if (surface.kind !== 'opening' || surface.part !== 'sash') return false
  const opening: Opening | undefined = job.openings[surface.openingId]
  return opening !== undefined && (opening.sash === null || opening.sash.operation === 'fixed')
}

function contentOf({ quantity, existing, finish, fixedSash, held }: Member): string {
  const found = existingFactNames.map((name) => existing[name] ?? 'unsaid').join(',')
  const wanted = [finish.productClass, finish.sheen, finish.colourId, finish.moreCoats ?? 0].join(',')
  return [quantity.surfaceClass, fixedSash, held, found, wanted].join('|')
}

/**
 * Surfaces at the room's or house's defaults make the group named by its class alone; one set apart by its own record is
 * named after that record's id, so that editing the record's content keeps the key. Held surfaces worked apart end in `+held`.
 */
function keyOf(list: readonly Member[]): string {
  const suffixes = list.map(({ ownExisting, finish }) =>
    [finish, ownExisting].flatMap((record) => (record?.scope.level === 'surface' ? [`+${record.id}`] : [])),
  )
  const shortest = suffixes.some((each) => each.length === 0)
    ? ''
    : (suffixes.map((each) => each.join('')).toSorted()[0] ?? '')
  const first = list[0]
  const base = first?.fixedSash ? 'fixedSash' : (first?.quantity.surfaceClass ?? 'walls')
  return `${base}${shortest}${first?.held ? '+held' : ''}`
}

function groupOf(job: Job, list: readonly Member[], findings: readonly Finding[]): Group {
  const { quantity, existing, finish, fixedSash } = present(list[0])
  const quantities = list.map((member) => member.quantity)
  const taken = takenUntilSaid(job.header, quantity.surfaceClass)
  return {
    key: keyOf(list),
    surfaceClass: quantity.surfaceClass,
    fixedSash,
    quantities,
    amounts: amountsOfSurfaces(quantities),
    substrate: existing.substrate ?? taken.substrate,
    coat: existing.coat ?? taken.coat,
    coatTaken: existing.coat === null,
    sheenFound: existing.sheen ?? taken.sheen,
    depthFound: existing.depth,
    textured: existing.textured ?? taken.textured,
    finish,
    colour: finish.colourId === null ? null : (job.colours[finish.colourId] ?? null),
    findings,
  }
}

/** The amounts of a step on all of these surfaces. */
export function amountsOfSurfaces(quantities: readonly SurfaceQuantity[]): StepAmounts {
  return {
    area: sumAreas(quantities.map((each) => each.netArea)),
    equivalentArea: sumAreas(quantities.map((each) => each.equivalentArea)),
    length: sumLengths(quantities.map((each) => each.length)),
    cuttingIn: sumLengths(quantities.map((each) => each.cuttingIn)),
    glassPerimeter: sumLengths(quantities.map((each) => each.glassPerimeter)),
    count: quantities.reduce((sum, each) => sum + each.count, 0),
  }
}

/** Conditions of the job as they lie on each list of like surfaces; one noted for a room is shared out by area. */
function findingsByGroup(
  { room, conditions }: RoomFacts,
  lists: readonly (readonly Member[])[],
  book: RuleBook,
): readonly (readonly Finding[])[] {
  const findings: Finding[][] = lists.map(() => [])
  for (const condition of conditions) {
    for (const [index, finding] of placeCondition(condition, room, lists, book)) {
      findings[index]?.push(finding)
    }
  }
  return findings
}

function placeCondition(
  condition: Condition,
  room: Room,
  lists: readonly (readonly Member[])[],
  book: RuleBook,
): readonly (readonly [number, Finding])[] {
  const places = lists.map((list) =>
    list.map((member) => member.quantity).filter((quantity) => liesOn(condition, room, quantity)),
  )
  if (condition.on.level === 'surface') {
    return places.flatMap((surfaces, index) =>
      surfaces.length === 0 ? [] : [[index, findingOn(condition, surfaces, wholeShare, book)] as const],
    )
  }
  return sharedOut(condition, places, book)
}

function liesOn(condition: Condition, room: Room, quantity: SurfaceQuantity): boolean {
  if (condition.on.level === 'room') {
    return condition.on.roomId === room.id && foundOnClass(condition, quantity.surfaceClass)
  }
  return isPlace(condition.on.surface, quantity.surface)
}

/**
 * A wall may have been split by a rail after the condition was noted, or made whole again: then what was noted on the whole
 * wall lies on its upper part, and what was noted on a part lies on the whole.
 */
export function isPlace(noted: SurfaceRef, surface: SurfaceRef): boolean {
  if (noted.kind !== 'wall' || surface.kind !== 'wall') return surfaceKey(noted) === surfaceKey(surface)
  if (noted.roomId !== surface.roomId || noted.wallId !== surface.wallId) return false
  return (
    noted.zone === surface.zone ||
    surface.zone === 'whole' ||
    (noted.zone === 'whole' && surface.zone === 'upper')
  )
}

function sharedOut(
  condition: Condition,
  places: readonly (readonly SurfaceQuantity[])[],
  book: RuleBook,
): readonly (readonly [number, Finding])[] {
  const areas = places.map((surfaces) => sumAreas(surfaces.map((each) => each.netArea)))
  const all = sumAreas(areas)
  let from = 0
  return places.flatMap((surfaces, index) => {
    if (surfaces.length === 0) return []
    const to = all === 0 ? 1 : from + (areas[index] ?? 0) / all
    const finding = findingOn(condition, surfaces, { from, to: Math.min(1, to) }, book)
    from = to
    return [[index, finding] as const]
  })
}
