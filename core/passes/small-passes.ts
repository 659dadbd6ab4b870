import type { Layout } from './layout.ts'
import { unitOf } from './parts.ts'
import type { PassKind } from './pass-types.ts'
import type { PassTemplate } from './template.ts'

/** Elapsed minutes; a small thing that waits or is waited for longer than this is not joined to what would wait with it. */
const longWait = 12 * 60

/** Person-minutes; a coat below this goes with a neighbor, a larger one is a pass of its own. No pass at all should be below. */
const smallest = 16

const preparation: ReadonlySet<PassKind> = new Set(['setUp', 'slow', 'repair', 'sand', 'prime'])

/** Passes too small for a visit go with a neighbor, or draw to them what may as well be done with them. */
export function mergeSmall(layout: Layout, template: PassTemplate): void {
  while (mergeOne(layout, template)) {}
  drawSanding(layout, template)
  while (mergeOne(layout, template)) {}
}

/** Joins the smallest pass that has a neighbor which it need not wait for and which need not wait for it. */
function mergeOne(layout: Layout, { smallestPassMinutes }: PassTemplate): boolean {
  const small = [...layout.used()]
    .map(([place, list]) => ({ place, list, minutes: layout.minutesOf(list) }))
    .filter(({ place, minutes }) => {
      const isCoat = !preparation.has(layout.row.kindAt(place))
      return minutes < (isCoat ? smallest : smallestPassMinutes)
    })
    .toSorted((one, other) => one.minutes - other.minutes)
  for (const { place, list } of small) {
    const target = neighborOf(layout, place, list)
    if (target === undefined) continue
    layout.move(list, target)
    return true
  }
  return false
}

function neighborOf(layout: Layout, place: number, moved: readonly number[]): number | undefined {
  const waitsLong = moved.some((index) => layout.longestWait(index) > longWait)
  const isTiny = layout.minutesOf(moved) < smallest
  const own = layout.row.kindAt(place)
  const fits = (other: number): boolean => {
    const kind = layout.row.kindAt(other)
    if (other === place || kind === 'slow' || own === 'setUp') return false
    if (waitsLong && kind !== own && !(isTiny && kind === 'repair')) return false
    if (preparation.has(kind) !== preparation.has(own) && kind !== 'putBack') return false
    return layout.mayStand(moved, other)
  }
  const distance = (other: number) => Math.abs(other - place) + (layout.row.kindAt(other) === own ? 0 : 1000)
  return [...layout.used().keys()].filter(fits).toSorted((one, other) => distance(one) - distance(other))[0]
}

/**
 * Small repairs between two waits, a second layer of filler say, take sanding of the room to them, so that whoever comes for them has
 * something to do meanwhile: each so much that it is worth a visit, the last all that there is.
 */
function drawSanding(layout: Layout, template: PassTemplate): void {
  const small = [...layout.used()].filter(([place, list]) => {
    const kind = layout.row.kindAt(place)
    return (kind === 'repair' || kind === 'slow') && layout.minutesOf(list) < template.smallestPassMinutes
  })
  for (const [at, [place]] of small.entries()) {
    const isLast = at === small.length - 1 && layout.row.kindAt(place) === 'repair'
    const enough = isLast ? template.largestPassMinutes : 2 * template.smallestPassMinutes
    for (const unit of sandingElsewhere(layout, place)) {
      const minutes = layout.minutesOf(layout.used().get(place) ?? [])
      const isTooMuch = minutes + layout.minutesOf(unit) > template.largestPassMinutes
      if (minutes < enough && !isTooMuch && layout.mayStand(unit, place)) layout.move(unit, place)
    }
  }
}

/** Sanding of each group of surfaces in each other place, the nearest place first. */
function sandingElsewhere(layout: Layout, place: number): readonly (readonly number[])[] {
  return [...layout.used()]
    .filter(([other]) => other !== place && layout.row.kindAt(other) === 'sand')
    .toSorted(([one], [other]) => Math.abs(one - place) - Math.abs(other - place))
    .flatMap(([, list]) => {
      const units = new Map<string, number[]>()
      for (const index of list) {
        const bundle = layout.bundles[index]
        if (bundle === undefined || bundle.lead.groupKey === 'room') continue
        units.set(unitOf(bundle), [...(units.get(unitOf(bundle)) ?? []), index])
      }
      return [...units.values()]
    })
}
