import { groupedByEach } from '../lists/lists.ts'
import { nobodyKnows } from './apart.ts'
import type { Layout, PlacedPass } from './layout.ts'
import { overflow, unitOf } from './parts.ts'
import type { PassKind } from './pass-types.ts'
import type { PassTemplate } from './template.ts'

/** Elapsed minutes; a small thing that waits or is waited for longer than this is not joined to what would wait with it. */
const longWait = 12 * 60

/** Person-minutes; a coat below this goes with a neighbor, a larger one is a pass of its own. No pass at all should be below. */
const smallest = 16

const preparation: ReadonlySet<PassKind> = new Set(['setUp', 'slow', 'repair', 'sand', 'prime'])

/** Passes too small for a visit go with a neighbor, or draw to them what may as well be done with them. */
export function mergeSmall(layout: Layout, template: PassTemplate): void {
  mergeAll(layout, template)
  drawSanding(layout, template)
  mergeAll(layout, template)
  waitTogether(layout, template)
}

function mergeAll(layout: Layout, template: PassTemplate): void {
  while (mergeOne(layout, template)) {}
}

/** Joins the smallest pass that has a neighbor which it need not wait for and which need not wait for it. */
function mergeOne(layout: Layout, template: PassTemplate): boolean {
  const passes = layout.passes()
  const small = passes
    .filter((pass) => layout.minutesOf(pass.list) < leastOf(layout, pass, template))
    .toSorted((one, other) => layout.minutesOf(one.list) - layout.minutesOf(other.list))
  for (const pass of small) {
    const target = neighborOf(layout, pass, passes)
    if (target === undefined) continue
    layout.move(pass.list, target)
    return true
  }
  return false
}

function leastOf(layout: Layout, { place }: PlacedPass, { smallestPassMinutes }: PassTemplate): number {
  return preparation.has(layout.row.kindAt(place)) ? smallestPassMinutes : smallest
}

function neighborOf(layout: Layout, pass: PlacedPass, passes: readonly PlacedPass[]): number | undefined {
  const { place, list, until } = pass
  const waitsLong = list.some((index) => layout.longestWait(index) > longWait)
  const isTiny = layout.minutesOf(list) < smallest
  const own = layout.row.kindAt(place)
  const fits = (other: PlacedPass): boolean => {
    const kind = layout.row.kindAt(other.place)
    if (other.place === place || other.until !== until || kind === 'slow' || own === 'setUp') return false
    if (waitsLong && kind !== own && !(isTiny && kind === 'repair')) return false
    if (preparation.has(kind) !== preparation.has(own) && kind !== 'putBack') return false
    return layout.mayStand(list, other.place)
  }
  const distance = (other: number) => Math.abs(other - place) + (layout.row.kindAt(other) === own ? 0 : 1000)
  return passes
    .filter(fits)
    .map((other) => other.place)
    .toSorted((one, other) => distance(one) - distance(other))[0]
}

/**
 * Small repairs between two waits, a second layer of filler say, take sanding of the room to them, so that whoever comes for them has
 * something to do meanwhile: each so much that it is worth a visit, the last all that there is. Sanding drawn to what is held waits with it.
 */
function drawSanding(layout: Layout, template: PassTemplate): void {
  const small = layout.passes().filter(({ place, list, until }) => {
    const kind = layout.row.kindAt(place)
    const isSmall = layout.minutesOf(list) < template.smallestPassMinutes
    return (kind === 'repair' || kind === 'slow') && isSmall && until !== nobodyKnows
  })
  for (const [at, { place, until, list }] of small.entries()) {
    const isLast = at === small.length - 1 && layout.row.kindAt(place) === 'repair' && until === ''
    const enough = isLast ? template.largestPassMinutes : 2 * template.smallestPassMinutes
    let minutes = layout.minutesOf(list)
    for (const unit of sandingElsewhere(layout, place, until)) {
      const more = layout.minutesOf(unit)
      if (minutes >= enough || minutes + more > template.largestPassMinutes) continue
      if (!layout.mayStand(unit, place)) continue
      layout.move(unit, place)
      layout.keepBack(unit, until)
      minutes += more
    }
  }
}

/** Sanding of each group of surfaces in each other place that need not wait for a later day, the nearest place first. */
function sandingElsewhere(layout: Layout, place: number, until: string): readonly (readonly number[])[] {
  return layout
    .passes()
    .filter((pass) => pass.place !== place && layout.row.kindAt(pass.place) === 'sand' && pass.until <= until)
    .toSorted((one, other) => Math.abs(one.place - place) - Math.abs(other.place - place))
    .flatMap(({ list }) => unitsIn(layout, list))
}

/** Bundles by group of surfaces; those on the room as a whole belong to none. */
function unitsIn(layout: Layout, list: readonly number[]): readonly (readonly number[])[] {
  const units = groupedByEach(list, (index) => {
    const bundle = layout.bundles[index]
    return bundle === undefined || bundle.lead.groupKey === 'room' ? [] : [unitOf(bundle)]
  })
  return [...units.values()]
}

/** Person-minutes; coats of fewer wait for the day on which the rest of their place may be coated. */
const coatsWorthComingFor = 60

/**
 * What may be done sooner than the rest of its place, but is too small for a visit, waits with the rest; what is held and too small takes
 * enough of the rest with it, and so much besides as saves a pass. What nobody knows the day of keeps nothing else back.
 */
function waitTogether(layout: Layout, template: PassTemplate): void {
  for (const place of layout.used()) {
    const isPreparation = preparation.has(layout.row.kindAt(place))
    const least = isPreparation ? template.smallestPassMinutes : coatsWorthComingFor
    const here = () => layout.passes().filter((pass) => pass.place === place && pass.until !== nobodyKnows)
    for (const { until } of here()) {
      const pass = here().find((one) => one.until === until)
      const later = here().find((one) => one.until > until)
      if (pass === undefined || later === undefined) continue
      if (layout.minutesOf(pass.list) < least) layout.keepBack(pass.list, later.until)
      else keepSomeBack(layout, pass, later, least, template.largestPassMinutes * overflow)
    }
  }
}

/** The smallest groups of surfaces first. */
function keepSomeBack(
  layout: Layout,
  pass: PlacedPass,
  later: PlacedPass,
  least: number,
  largest: number,
): void {
  let [own, held] = [layout.minutesOf(pass.list), layout.minutesOf(later.list)]
  const partsOf = (minutes: number) => Math.ceil(minutes / largest)
  const isSaved = partsOf(own) + partsOf(held) > partsOf(own + held)
  const [ownMost, heldLeast] = isSaved
    ? [(partsOf(own + held) - partsOf(held)) * largest, least]
    : [own, least]
  const units = [...unitsIn(layout, pass.list)].toSorted(
    (one, other) => layout.minutesOf(one) - layout.minutesOf(other),
  )
  for (const unit of units) {
    const more = layout.minutesOf(unit)
    if (own <= ownMost && held >= heldLeast) return
    const leavesScraps = own - more > 0 && own - more < least
    if (leavesScraps || held + more > partsOf(held) * largest) continue
    layout.keepBack(unit, later.until)
    own -= more
    held += more
  }
}
