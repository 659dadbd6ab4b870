import type { SurfaceClass } from '../project/vocabulary.ts'
import type { Operation, Step } from '../specification/types.ts'
import type { Bundle, Bundled, BundleEdge } from './bundles.ts'
import { isFilm } from './bundles.ts'
import type { PassKind } from './pass-types.ts'
import type { PartOfRoom, PassTemplate } from './template.ts'

/** Where a pass stands in the order of a room set; later places stand behind earlier ones. */
export interface Place {
  readonly index: number
  readonly kind: PassKind
  /** Of coats the first, second, third; of the rest 0. */
  readonly coat: number
}

/** What a bundle is, and so which places it may take. */
type Family = 'setUp' | 'slow' | 'repair' | 'sand' | 'prime' | 'coat' | 'unmask' | 'putBack'

/** Elapsed minutes. What dries longer than this is a visit of its own, together with all that has to come before it. */
const slowWait = 2 * 1440

/** Coats stand behind all preparation: so many rows of repairs, sanding and priming come before the first row of coats. */
const preparationRows = 12
const mostCoats = 6

const families: Partial<Readonly<Record<Operation, Family>>> = {
  protectRoom: 'setUp',
  takeOff: 'setUp',
  loosenHanging: 'setUp',
  coverAlarm: 'setUp',
  dustDown: 'setUp',
  sandPatch: 'sand',
  sandFill: 'sand',
  sand: 'sand',
  vacuum: 'sand',
  dustOff: 'sand',
  coat: 'coat',
  unmask: 'unmask',
  refitHanging: 'putBack',
  putBack: 'putBack',
  cleanUp: 'putBack',
  inspect: 'putBack',
  restoreAlarm: 'putBack',
}

function familyOf({ operation, groupKey }: Step): Family {
  if (groupKey === 'room' && operation === 'maskOff') return 'setUp'
  if (groupKey === 'room' && operation === 'unmask') return 'putBack'
  if (operation === 'maskOff' || operation === 'degloss') return 'prime'
  return families[operation] ?? (isFilm(operation) ? 'prime' : 'repair')
}

/** Whatever is neither ceiling, walls nor stairs is woodwork, radiators too: one hand with one brush goes round. */
export function partOf(surfaceClass: SurfaceClass | null): PartOfRoom {
  return surfaceClass === 'ceiling' || surfaceClass === 'walls' || surfaceClass === 'stairs'
    ? surfaceClass
    : 'woodwork'
}

/** One row of places of a room set, repeated without end; a bundle takes the first it may that is not before `low`. */
class Row {
  readonly kinds: readonly { readonly kind: PassKind; readonly coat: number }[]
  constructor({ parts }: PassTemplate) {
    const coats = parts.flatMap((kind) => count(mostCoats).map((coat) => ({ kind, coat })))
    const before = (['setUp', 'slow', 'repair', 'sand', 'prime'] as const).map((kind) => ({ kind, coat: 0 }))
    this.kinds = [...before, ...coats, { kind: 'putBack', coat: 0 }]
  }
  placeAt(index: number): Place {
    const { kind, coat } = this.kinds[index % this.kinds.length] as Row['kinds'][number]
    return { index, kind, coat }
  }
  firstFrom(low: number, family: Family, lead: Step): number {
    const wanted = family === 'coat' ? partOf(lead.surfaceClass) : family === 'unmask' ? 'putBack' : family
    const coat = family === 'coat' ? Math.min(mostCoats, Math.max(1, lead.coat)) : 0
    const position = this.kinds.findIndex((place) => place.kind === wanted && place.coat === coat)
    const late = family === 'coat' || family === 'putBack' || family === 'unmask'
    const from = Math.max(low, late ? preparationRows * this.kinds.length : 0)
    const row = Math.ceil((from - position) / this.kinds.length)
    return row * this.kinds.length + position
  }
}

function count(to: number): readonly number[] {
  return Array.from({ length: to }, (_, index) => index + 1)
}

/** Places of all bundles, by their index: every order points forwards, strictly where something has to dry. */
export function placeBundles(bundled: Bundled, template: PassTemplate): readonly Place[] {
  const row = new Row(template)
  const slow = slowBundles(bundled)
  const families = bundled.bundles.map(({ lead }, index): Family => {
    const family = familyOf(lead)
    return slow.has(index) && family !== 'setUp' ? 'slow' : family
  })
  const links = new Links(bundled)
  const places = bundled.bundles.map(() => 0)
  for (const [index, { lead }] of bundled.bundles.entries()) {
    places[index] = row.firstFrom(links.low(places, index), families[index] as Family, lead)
  }
  gatherLater(bundled, families, links, places)
  gatherRadiators(bundled.bundles, row, links, places)
  takeOffTape(families, links, places)
  mergeSmall(bundled.bundles, row, links, places, template.smallestPassMinutes)
  return places.map((place) => row.placeAt(place))
}

/** What stands before and behind each bundle. */
class Links {
  private readonly into: readonly BundleEdge[][]
  private readonly from: readonly BundleEdge[][]
  constructor({ bundles, edges }: Bundled) {
    this.into = bundles.map(() => [])
    this.from = bundles.map(() => [])
    for (const edge of edges) {
      this.into[edge.after]?.push(edge)
      this.from[edge.before]?.push(edge)
    }
  }
  /** First place it may take; bundles in `beside` are left out of account. */
  low(places: readonly number[], index: number, beside: ReadonlySet<number> = nobody): number {
    return (this.into[index] ?? [])
      .filter(({ before }) => !beside.has(before))
      .reduce((low, { before, wait }) => Math.max(low, (places[before] ?? 0) + Math.sign(wait)), 0)
  }
  /** Last place it may take. */
  high(places: readonly number[], index: number, beside: ReadonlySet<number> = nobody): number {
    return (this.from[index] ?? [])
      .filter(({ after }) => !beside.has(after))
      .reduce((high, { after, wait }) => Math.min(high, (places[after] ?? 0) - Math.sign(wait)), Infinity)
  }
  /** Elapsed minutes of the longest wait before or behind it. */
  longestWait(index: number): number {
    return Math.max(0, ...[...(this.into[index] ?? []), ...(this.from[index] ?? [])].map(({ wait }) => wait))
  }
}
const nobody: ReadonlySet<number> = new Set()

/** Everything that something slow waits for, and the slow thing: putty that forms its skin, plaster that cures. */
function slowBundles({ bundles, edges }: Bundled): ReadonlySet<number> {
  const slow = new Set(edges.filter(({ wait }) => wait >= slowWait).map(({ before }) => before))
  for (const { before, after } of edges.toSorted((one, other) => other.after - one.after)) {
    if (slow.has(after)) slow.add(before)
  }
  return new Set([...slow].filter((index) => bundles[index]?.lead.groupKey !== 'room'))
}

/** Repairs, sanding and priming move to the latest place of their kind that is in use anyway: one pass for all that can go together. */
function gatherLater(
  { bundles }: Bundled,
  families: readonly Family[],
  links: Links,
  places: number[],
): void {
  for (const family of ['prime', 'sand', 'repair'] as const) {
    const used = new Set(places.filter((_, index) => families[index] === family))
    for (const index of [...bundles.keys()].reverse()) {
      if (families[index] !== family) continue
      const high = links.high(places, index)
      places[index] = Math.max(...[...used].filter((place) => place <= high && place >= (places[index] ?? 0)))
    }
  }
}

/** A radiator dries beside everything else: its first coat goes with the priming where it can. */
function gatherRadiators(bundles: readonly Bundle[], row: Row, links: Links, places: number[]): void {
  const primed = [...new Set(places)].filter((place) => row.placeAt(place).kind === 'prime').sort(ascending)
  for (const [index, { lead }] of bundles.entries()) {
    if (lead.surfaceClass !== 'radiators' || lead.coat !== 1) continue
    const low = links.low(places, index)
    const place = primed.find((one) => one >= low)
    if (place !== undefined) places[index] = place
  }
}

/** Tape comes off with the next pass in the room, at the latest when it is put back. */
function takeOffTape(families: readonly Family[], links: Links, places: number[]): void {
  const used = new Set(places.filter((_, index) => families[index] !== 'unmask'))
  for (const [index, family] of families.entries()) {
    if (family !== 'unmask') continue
    const [low, high] = [links.low(places, index), links.high(places, index)]
    const next = [...used].filter((place) => place >= low && place <= high).sort(ascending)[0]
    if (next !== undefined) places[index] = next
  }
}

function ascending(one: number, other: number): number {
  return one - other
}

/** Elapsed minutes; a small thing that is waited for longer than this is not joined to what would wait with it. */
const longWait = 12 * 60

const preparation: ReadonlySet<PassKind> = new Set(['setUp', 'repair', 'sand', 'prime'])

/** A pass too small for a visit goes with a neighbor that it need not wait for and that need not wait for it. */
function mergeSmall(
  bundles: readonly Bundle[],
  row: Row,
  links: Links,
  places: number[],
  smallest: number,
): void {
  for (;;) {
    const inPlaces = byPlace(places)
    const minutes = new Map(
      [...inPlaces].map(([place, list]) => [
        place,
        list.reduce((sum, index) => sum + (bundles[index]?.personMinutes ?? 0), 0),
      ]),
    )
    const small = [...inPlaces.keys()]
      .filter((place) => (minutes.get(place) ?? 0) < smallest)
      .sort((one, other) => (minutes.get(one) ?? 0) - (minutes.get(other) ?? 0))
    const found = small.flatMap((place) => {
      const target = neighborOf(place, inPlaces, row, links, places)
      return target === undefined ? [] : [[inPlaces.get(place) ?? [], target] as const]
    })[0]
    if (found === undefined) return
    for (const index of found[0]) places[index] = found[1]
  }
}

function neighborOf(
  place: number,
  inPlaces: ReadonlyMap<number, readonly number[]>,
  row: Row,
  links: Links,
  places: readonly number[],
): number | undefined {
  const moved = new Set(inPlaces.get(place))
  const low = Math.max(0, ...[...moved].map((index) => links.low(places, index, moved)))
  const high = Math.min(...[...moved].map((index) => links.high(places, index, moved)))
  const waitsLong = [...moved].some((index) => links.longestWait(index) > longWait)
  const own = row.placeAt(place)
  const fits = (other: number): boolean => {
    const { kind } = row.placeAt(other)
    if (other === place || other < low || other > high || kind === 'slow') return false
    if (waitsLong && kind !== own.kind) return false
    return preparation.has(kind) === preparation.has(own.kind) || kind === 'putBack'
  }
  const near = (other: number) => Math.abs(other - place) + (row.placeAt(other).kind === own.kind ? 0 : 1000)
  return [...inPlaces.keys()].filter(fits).sort((one, other) => near(one) - near(other))[0]
}

function byPlace(places: readonly number[]): ReadonlyMap<number, readonly number[]> {
  const found = new Map<number, number[]>()
  for (const [index, place] of places.entries()) {
    const list = found.get(place)
    if (list === undefined) found.set(place, [index])
    else list.push(index)
  }
  return found
}
