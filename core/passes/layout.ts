import { present } from '../lists/lists.ts'
import { coatOrdinals } from '../specification/step-requests.ts'
import type { Step } from '../specification/types.ts'
import type { Bundle, Bundled, BundleEdge } from './bundles.ts'
import type { Family } from './families.ts'
import { partOf } from './families.ts'
import type { PassKind } from './pass-types.ts'
import type { PassTemplate } from './template.ts'

/** Where a pass stands in the order of a room set; later places stand behind earlier ones. */
export interface PassPlace {
  readonly index: number
  readonly kind: PassKind
  /** Of coats the first, second, third; of the rest 0. */
  readonly coat: number
}

/** Coats stand behind all preparation: so many rows of repairs, sanding and priming come before the first row of coats. */
const preparationRows = 12
const mostCoats = coatOrdinals.length

/** One row of places of a room set, repeated without end. */
export class Row {
  private readonly kinds: readonly Omit<PassPlace, 'index'>[]

  constructor({ parts }: PassTemplate) {
    const coats = parts.flatMap((kind) =>
      Array.from({ length: mostCoats }, (_, coat) => ({ kind, coat: coat + 1 })),
    )
    const before = (['setUp', 'slow', 'repair', 'sand', 'prime'] as const).map((kind) => ({ kind, coat: 0 }))
    this.kinds = [...before, ...coats, { kind: 'putBack', coat: 0 }]
  }

  placeAt(index: number): PassPlace {
    return { index, ...present(this.kinds[index % this.kinds.length]) }
  }

  kindAt(index: number): PassKind {
    return this.placeAt(index).kind
  }

  /** The first place that the lead of a bundle may take, not before `low`. */
  firstFrom(low: number, family: Family, lead: Step): number {
    const wanted = family === 'coat' ? partOf(lead.surfaceClass) : family === 'unmask' ? 'putBack' : family
    const coat = family === 'coat' ? Math.min(mostCoats, Math.max(1, lead.coat)) : 0
    const position = this.kinds.findIndex((place) => place.kind === wanted && place.coat === coat)
    const late = family === 'coat' || family === 'putBack' || family === 'unmask'
    const from = Math.max(low, late ? preparationRows * this.kinds.length : 0)
    return Math.ceil((from - position) / this.kinds.length) * this.kinds.length + position
  }
}

/** Bundles of one place that may go together. */
export interface PlacedPass {
  readonly place: number
  /** See `heldUntil`. */
  readonly until: string
  readonly list: readonly number[]
}

function later(one: string, other: string): string {
  return one > other ? one : other
}

const nobody: ReadonlySet<number> = new Set()

/** Bundles of one room set and the places they have so far; every order points forwards, strictly where something has to dry. */
export class Layout {
  readonly bundles: readonly Bundle[]
  readonly families: readonly Family[]
  readonly row: Row
  private readonly into: readonly BundleEdge[][]
  private readonly from: readonly BundleEdge[][]
  private readonly places: number[]
  private readonly held: string[]

  constructor(
    { bundles, edges }: Bundled,
    families: readonly Family[],
    held: readonly string[],
    template: PassTemplate,
  ) {
    this.bundles = bundles
    this.families = families
    this.held = [...held]
    this.row = new Row(template)
    this.into = bundles.map(() => [])
    this.from = bundles.map(() => [])
    for (const edge of edges) {
      this.into[edge.after]?.push(edge)
      this.from[edge.before]?.push(edge)
    }
    this.places = bundles.map(() => 0)
    for (const [index, { lead }] of bundles.entries()) {
      this.places[index] = this.row.firstFrom(this.low(index), present(families[index]), lead)
    }
    this.passOnHolds()
  }

  /** What a bundle waits for cannot go before a hold, nor can the bundle. */
  private passOnHolds(): void {
    for (const index of this.bundles.keys()) {
      for (const { before } of this.into[index] ?? [])
        this.held[index] = later(this.heldUntil(index), this.heldUntil(before))
    }
  }

  /** The day before which a bundle cannot be worked, in words that sort; empty where it is free. */
  heldUntil(index: number): string {
    return this.held[index] ?? ''
  }

  /** Keeps bundles, and what follows them, back until a day although they need not wait. */
  keepBack(indexes: Iterable<number>, until: string): void {
    for (const index of indexes) this.held[index] = later(this.heldUntil(index), until)
    this.passOnHolds()
  }

  placeOf(index: number): number {
    return this.places[index] ?? 0
  }

  /** All of them to one place; every one of `indexes` may stand there when the others do. */
  move(indexes: Iterable<number>, place: number): void {
    for (const index of indexes) this.places[index] = place
  }

  /** First place a bundle may take; bundles in `beside` move with it and are left out of account. */
  low(index: number, beside: ReadonlySet<number> = nobody): number {
    return (this.into[index] ?? [])
      .filter(({ before }) => !beside.has(before))
      .reduce((low, { before, wait }) => Math.max(low, this.placeOf(before) + Math.sign(wait)), 0)
  }

  /** Last place a bundle may take. */
  high(index: number, beside: ReadonlySet<number> = nobody): number {
    return (this.from[index] ?? [])
      .filter(({ after }) => !beside.has(after))
      .reduce((high, { after, wait }) => Math.min(high, this.placeOf(after) - Math.sign(wait)), Infinity)
  }

  /** Whether all of them may stand in one place together. */
  mayStand(indexes: readonly number[], place: number): boolean {
    const together = new Set(indexes)
    return indexes.every((index) => this.low(index, together) <= place && place <= this.high(index, together))
  }

  /** What has to move too where a bundle moves to a place: what it would otherwise come before, or what would come before it. */
  inTheWay(index: number, place: number): readonly number[] {
    const before = (this.into[index] ?? []).filter((edge) => this.placeOf(edge.before) > place)
    const after = (this.from[index] ?? []).filter((edge) => this.placeOf(edge.after) < place)
    return [...before.map((edge) => edge.before), ...after.map((edge) => edge.after)]
  }

  /** Whether one of them has to dry before another: they are never one pass. */
  isDryingAmong(indexes: readonly number[]): boolean {
    const among = new Set(indexes)
    return indexes.some((index) =>
      (this.from[index] ?? []).some(({ after, wait }) => wait > 0 && among.has(after)),
    )
  }

  /** Elapsed minutes of the longest wait before or behind a bundle. */
  longestWait(index: number): number {
    const around = [...(this.into[index] ?? []), ...(this.from[index] ?? [])]
    return Math.max(0, ...around.map(({ wait }) => wait))
  }

  /** Places in use, in their order. */
  used(): readonly number[] {
    return [...new Set(this.places)].toSorted((one, other) => one - other)
  }

  /** Passes as they stand, in the order of their places: what is held until another day is another pass. */
  passes(): readonly PlacedPass[] {
    const found = new Map<string, { place: number; until: string; list: number[] }>()
    for (const [index, place] of this.places.entries()) {
      const until = this.heldUntil(index)
      const known = found.get(`${place} ${until}`)
      if (known === undefined) found.set(`${place} ${until}`, { place, until, list: [index] })
      else known.list.push(index)
    }
    return [...found.values()].toSorted(
      (one, other) => one.place - other.place || (one.until < other.until ? -1 : 1),
    )
  }

  minutesOf(indexes: readonly number[]): number {
    return indexes.reduce((sum, index) => sum + (this.bundles[index]?.personMinutes ?? 0), 0)
  }
}
