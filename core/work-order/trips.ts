import { present } from '../lists/lists.ts'
import type { ContainerCount } from '../price/containers.ts'
import { addDays } from '../time/local-date.ts'

/** Days from one trip to the store to the next, unless somebody says otherwise (shop assumption: every other week). */
export const usualDaysBetweenTrips = 14

/** A trip buys what is first needed from its own day to the day before the next. */
export interface TripDays {
  /** From 1. */
  readonly number: number
  /** Local dates of the first and the last day on which something of it is first needed. */
  readonly from: string
  readonly to: string
}

/** Puts the days on which something is first needed into trips at least so many days apart. */
export function tripsOf(neededOn: readonly string[], daysBetween: number): readonly TripDays[] {
  const trips: TripDays[] = []
  for (const date of [...new Set(neededOn)].toSorted()) {
    const last = trips.at(-1)
    if (last !== undefined && date < addDays(last.from, Math.max(1, daysBetween))) {
      trips[trips.length - 1] = { ...last, to: date }
    } else trips.push({ number: trips.length + 1, from: date, to: date })
  }
  return trips
}

/** The trip that buys for a day: the last that begins on it or before. */
export function tripFor(trips: readonly TripDays[], date: string): TripDays | undefined {
  return trips.findLast(({ from }) => from <= date) ?? trips[0]
}

/** What of something is needed from a day on. */
export interface DatedNeed {
  readonly date: string
  readonly amount: number
}

/** Less than a drop, and less than a rounding of pieces. */
const slack = 1e-9

/**
 * Containers trip by trip, so many that what is needed until the next trip is there: the largest first, each once, all of them in
 * the end. What is left over is bought with the last.
 */
export function containersByTrip(
  containers: readonly ContainerCount[],
  needs: readonly DatedNeed[],
  trips: readonly TripDays[],
): ReadonlyMap<number, readonly ContainerCount[]> {
  const wanted = amountsByTrip(needs, trips)
  const left = containers
    .toSorted((one, other) => other.gallons - one.gallons)
    .flatMap((container) => Array.from({ length: container.count }, () => ({ ...container, count: 1 })))
  const bought = new Map<number, readonly ContainerCount[]>()
  let short = 0
  for (const [index, { number, amount }] of wanted.entries()) {
    short += amount
    const isLast = index === wanted.length - 1
    const now: ContainerCount[] = []
    while (left.length > 0 && (isLast || short > slack)) {
      const can = present(left.shift())
      short -= can.gallons
      now.push(can)
    }
    if (now.length > 0) bought.set(number, counted(now))
  }
  return bought
}

/** Whole pieces trip by trip; together as many as of all the work at once. */
export function piecesByTrip(
  perPiece: number,
  needs: readonly DatedNeed[],
  trips: readonly TripDays[],
): ReadonlyMap<number, number> {
  const pieces = new Map<number, number>()
  let [needed, bought] = [0, 0]
  for (const { number, amount } of amountsByTrip(needs, trips)) {
    needed += amount
    const more = Math.ceil(needed / perPiece - slack) - bought
    if (more <= 0) continue
    bought += more
    pieces.set(number, more)
  }
  return pieces
}

function amountsByTrip(
  needs: readonly DatedNeed[],
  trips: readonly TripDays[],
): readonly { readonly number: number; readonly amount: number }[] {
  const byTrip = new Map<number, number>()
  for (const { date, amount } of needs) {
    const number = tripFor(trips, date)?.number ?? 1
    byTrip.set(number, (byTrip.get(number) ?? 0) + amount)
  }
  return [...byTrip]
    .map(([number, amount]) => ({ number, amount }))
    .toSorted((one, other) => one.number - other.number)
}

function counted(cans: readonly ContainerCount[]): readonly ContainerCount[] {
  const byName = new Map<string, ContainerCount>()
  for (const can of cans) {
    const known = byName.get(can.name)
    byName.set(can.name, { ...can, count: (known?.count ?? 0) + 1 })
  }
  return [...byName.values()]
}
