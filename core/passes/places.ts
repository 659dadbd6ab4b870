import type { Bundled } from './bundles.ts'
import { familiesOf, partOf } from './families.ts'
import { Layout, type PassPlace } from './layout.ts'
import { mergeSmall } from './small-passes.ts'
import { giveUpSmallWork } from './small-work.ts'
import type { PassTemplate } from './template.ts'

/** Where a bundle stands, and until when it is held or kept back. */
interface Placed {
  readonly place: PassPlace
  readonly until: string
}

/** Of all bundles, by their index; `held` says of each until when a hold keeps it. */
export function placeBundles(
  bundled: Bundled,
  held: readonly string[],
  template: PassTemplate,
): readonly Placed[] {
  const layout = new Layout(bundled, familiesOf(bundled), held, template)
  gatherLater(layout)
  gatherWoodwork(layout)
  gatherRadiators(layout)
  mergeSmall(layout, template)
  giveUpSmallWork(layout, template)
  mergeSmall(layout, template)
  giveUpSmallWork(layout, template)
  takeOffTape(layout)
  mergeSmall(layout, template)
  return bundled.bundles.map((_, index) => ({
    place: layout.row.placeAt(layout.placeOf(index)),
    until: layout.heldUntil(index),
  }))
}

const preparing = ['repair', 'sand', 'prime'] as const

/** Repairs, sanding and priming move to the latest place of their kind that is in use anyway: one pass for all that can go together. */
function gatherLater(layout: Layout): void {
  const order = [...layout.bundles.keys()].reverse()
  for (const family of preparing.toReversed()) {
    const list = order.filter((index) => layout.families[index] === family)
    const used = new Set(list.map((index) => layout.placeOf(index)))
    for (const index of list) {
      const fitting = [...used].filter(
        (place) => place <= layout.high(index) && place >= layout.placeOf(index),
      )
      layout.move([index], Math.max(...fitting))
    }
  }
}

/** Woodwork that has to be sanded and primed early, to be caulked say, takes the rest of the woodwork with it. */
function gatherWoodwork(layout: Layout): void {
  for (const family of ['sand', 'prime'] as const) {
    const wood = [...layout.bundles.keys()].filter(
      (index) => layout.families[index] === family && isWoodwork(layout, index),
    )
    const places = [...new Set(wood.map((index) => layout.placeOf(index)))]
    const minutesAt = (place: number) =>
      layout.minutesOf(wood.filter((index) => layout.placeOf(index) === place))
    const most = places.toSorted((one, other) => minutesAt(other) - minutesAt(one))[0]
    if (most === undefined) continue
    for (const index of wood) if (layout.mayStand([index], most)) layout.move([index], most)
  }
}

function isWoodwork({ bundles }: Layout, index: number): boolean {
  const surfaceClass = bundles[index]?.lead.surfaceClass ?? null
  return surfaceClass !== null && partOf(surfaceClass) === 'woodwork'
}

/** A radiator dries beside everything else: its first coat goes with the priming where it can. */
function gatherRadiators(layout: Layout): void {
  const primed = layout.used().filter((place) => layout.row.kindAt(place) === 'prime')
  for (const [index, { lead }] of layout.bundles.entries()) {
    if (lead.surfaceClass !== 'radiators' || lead.coat !== 1) continue
    const place = primed.find((one) => layout.mayStand([index], one))
    if (place !== undefined) layout.move([index], place)
  }
}

/** Tape comes off with the next pass in the room, at the latest when it is put back. */
function takeOffTape(layout: Layout): void {
  const taped = [...layout.bundles.keys()].filter((index) => layout.families[index] === 'unmask')
  const used = layout.passes().filter(({ list }) => list.some((index) => !taped.includes(index)))
  for (const index of taped) {
    const fitting = used.filter(({ place }) => layout.mayStand([index], place))
    const next = fitting.find(({ until }) => until <= layout.heldUntil(index)) ?? fitting[0]
    if (next === undefined) continue
    layout.move([index], next.place)
    layout.keepBack([index], next.until)
  }
}
