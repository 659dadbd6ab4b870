import { type Cents, roundToCents, sumCents } from '../units/money.ts'
import type { Gallons } from '../units/volume.ts'
import { gallons } from '../units/volume.ts'

export interface ContainerSize {
  readonly name: string
  readonly gallons: number
  readonly priceCents: Cents
}

export interface ContainerCount extends ContainerSize {
  readonly count: number
}

export interface ContainerMix {
  readonly containers: readonly ContainerCount[]
  readonly gallons: Gallons
  readonly priceCents: Cents
}

/** Less than a drop: keeps 3 x 0.1 from asking for a fourth tin. */
const drop = 1e-9

/**
 * The cheapest whole containers that hold at least `needed`; among equal prices the least left over, then the fewest tins.
 * A search over counts, cut where even the best price per gallon cannot beat what is found; exact unless it would take more than
 * `mostTries`, then the best found by then. Sizes must have gallons above 0 and prices of 0 or more. Nothing needed gives an empty mix.
 */
export function cheapestContainers(needed: number, sizes: readonly ContainerSize[]): ContainerMix {
  if (needed <= drop) return mixOf([], [])
  const offered = worthwhile(sizes)
  if (offered.length === 0) throw new RangeError('A product needs at least one container size.')
  const limits = offered.map((size) => mostOf(size, offered))
  const search: Search = { offered, limits, counts: offered.map(() => 0), best: null, tries: 0 }
  tryCounts(search, 0, needed, 0)
  return mixOf(offered, search.best?.counts ?? [])
}

interface Found {
  readonly counts: readonly number[]
  readonly price: number
  readonly surplus: number
  readonly tins: number
}

interface Search {
  readonly offered: readonly ContainerSize[]
  readonly limits: readonly number[]
  readonly counts: number[]
  best: Found | null
  tries: number
}

/** Far more than any shelf of a shop asks for: some hundred. */
const mostTries = 200_000

/** Leaves out what another size beats in price and at least equals in contents, then puts the best price per gallon first. */
function worthwhile(sizes: readonly ContainerSize[]): readonly ContainerSize[] {
  return sizes
    .filter((size, index) => !sizes.some((other, place) => beats(other, size, place < index)))
    .toSorted((a, b) => perGallon(a) - perGallon(b) || b.gallons - a.gallons)
}

function beats(other: ContainerSize, size: ContainerSize, otherComesFirst: boolean): boolean {
  if (other.gallons < size.gallons) return false
  if (other.priceCents < size.priceCents) return true
  return otherComesFirst && other.priceCents === size.priceCents && other.gallons === size.gallons
}

function perGallon(size: ContainerSize): number {
  return size.priceCents / size.gallons
}

/** The most of a size worth trying: at some number one bigger tin holds as much for less (or the very same in one tin). */
function mostOf(size: ContainerSize, offered: readonly ContainerSize[]): number {
  if (size.priceCents <= 0) return Number.POSITIVE_INFINITY
  return Math.min(...offered.map((bigger) => replacedAt(size, bigger) - 1))
}

function replacedAt(size: ContainerSize, bigger: ContainerSize): number {
  if (bigger.gallons <= size.gallons) return Number.POSITIVE_INFINITY
  const same = bigger.priceCents / size.priceCents
  if (Number.isInteger(same) && Math.abs(same * size.gallons - bigger.gallons) <= drop) return same
  const dearer = Math.floor(same) + 1
  return dearer * size.gallons <= bigger.gallons + drop ? dearer : Number.POSITIVE_INFINITY
}

function tryCounts(search: Search, index: number, needed: number, price: number): void {
  const size = search.offered[index]
  search.tries++
  if (needed <= drop) {
    keepIfBetter(search, -needed, price)
    return
  }
  if (size === undefined) return
  if (search.best !== null && price + needed * perGallon(size) > search.best.price + 1e-6) return
  const most = Math.min(Math.ceil((needed - drop) / size.gallons), search.limits[index] ?? 0)
  for (let count = most; count >= 0 && search.tries < mostTries; count--) {
    search.counts[index] = count
    tryCounts(search, index + 1, needed - count * size.gallons, price + count * size.priceCents)
  }
  search.counts[index] = 0
}

function keepIfBetter(search: Search, surplus: number, price: number): void {
  const tins = search.counts.reduce((total, count) => total + count, 0)
  const found = { counts: [...search.counts], price, surplus, tins }
  if (search.best === null || isBetter(found, search.best)) search.best = found
}

function isBetter(found: Found, best: Found): boolean {
  if (found.price !== best.price) return found.price < best.price
  if (Math.abs(found.surplus - best.surplus) > drop) return found.surplus < best.surplus
  return found.tins < best.tins
}

/** As many of one size as hold `needed`. */
export function mixOfOne(needed: number, size: ContainerSize): ContainerMix {
  return mixOf([size], [Math.max(0, Math.ceil((needed - drop) / size.gallons))])
}

function mixOf(offered: readonly ContainerSize[], counts: readonly number[]): ContainerMix {
  const containers = offered
    .map((size, index) => ({ ...size, count: counts[index] ?? 0 }))
    .filter((each) => each.count > 0)
    .toSorted((a, b) => b.gallons - a.gallons)
  return {
    containers,
    gallons: gallons(containers.reduce((total, each) => total + each.count * each.gallons, 0)),
    priceCents: sumCents(containers.map((each) => roundToCents(each.count * each.priceCents))),
  }
}
