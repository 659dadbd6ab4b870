import { present } from '../lists/lists.ts'
import type { Operation } from '../specification/types.ts'
import type { Layout, PlacedPass } from './layout.ts'
import { overflow } from './parts.ts'
import type { PassKind } from './pass-types.ts'
import type { PassTemplate } from './template.ts'

/** Repairs, sanding and what goes with them: done in many places of a room, a little in each; none of it needs a pass where it can go with another. */
const smallWork: ReadonlySet<Operation> = new Set([
  'fillSmall',
  'sandFill',
  'sandPatch',
  'sand',
  'spotPrime',
  'blockStain',
  'sealBare',
  'openCrack',
  'dampCrack',
  'tapeCrack',
  'fill',
  'scrape',
  'skim',
  'reattachPlaster',
  'driveFastener',
  'caulk',
  'vacuum',
  'dustOff',
  'cleanDaily',
  'bagSheeting',
  'cleanFinal',
  'wipeCheck',
])

const gathering: ReadonlySet<PassKind> = new Set(['repair', 'sand', 'prime'])

/**
 * Passes of nothing but small fills, their sanding and priming, and caulk are given up: their work goes into the repair, sanding and
 * priming passes that are there anyway, with the sanding that has to come before it. What has to dry in
 * between may force a pass of its own.
 */
export function giveUpSmallWork(layout: Layout, template: PassTemplate): void {
  while (giveUpOne(layout, template)) {}
}

function giveUpOne(layout: Layout, template: PassTemplate): boolean {
  const passes = layout.passes().filter(({ place }) => gathering.has(layout.row.kindAt(place)))
  const small = passes
    .filter(({ list }) => list.every((index) => isSmall(layout, index)))
    .toSorted((one, other) => layout.minutesOf(one.list) - layout.minutesOf(other.list))
  const now = passesNeeded(layout, template)
  for (const pass of small) {
    for (const target of targetsOf(layout, pass, passes)) {
      const moving = withOthers(layout, pass.list, target)
      if (moving === null) continue
      const places = moving.map((index) => layout.placeOf(index))
      layout.move(moving, target)
      if (passesNeeded(layout, template) < now) return true
      for (const [at, index] of moving.entries()) layout.move([index], present(places[at]))
    }
  }
  return false
}

function isSmall({ bundles }: Layout, index: number): boolean {
  const steps = bundles[index]?.steps ?? []
  return steps.every(({ operation }) => smallWork.has(operation))
}

/** Person-minutes; a pass that is left with fewer counts as one more: it is no visit. */
const leastLeft = 16

/** As many passes as the places make, larger places parted. */
function passesNeeded(layout: Layout, { largestPassMinutes }: PassTemplate): number {
  const largest = largestPassMinutes * overflow
  return layout
    .passes()
    .map(({ list }) => layout.minutesOf(list))
    .reduce((sum, each) => sum + (each < leastLeft ? 2 : Math.ceil(each / largest)), 0)
}

/** Repairs go to repairs first, then to the nearest place. */
function targetsOf(layout: Layout, pass: PlacedPass, passes: readonly PlacedPass[]): readonly number[] {
  const own = layout.row.kindAt(pass.place)
  const distance = (place: number) =>
    Math.abs(place - pass.place) + (layout.row.kindAt(place) === own ? 0 : 1000)
  const places = passes.filter(({ until }) => until === pass.until).map(({ place }) => place)
  return [...new Set(places)]
    .filter((place) => place !== pass.place)
    .toSorted((one, other) => distance(one) - distance(other))
}

/** The bundles and those which have to move with them to that place; null where one of these cannot. */
function withOthers(layout: Layout, list: readonly number[], target: number): readonly number[] | null {
  const moving = new Set(list)
  for (const index of moving) {
    for (const other of layout.inTheWay(index, target)) {
      if (!gathering.has(layout.row.kindAt(layout.placeOf(other)))) return null
      if (!isSmall(layout, other) || layout.bundles[other]?.lead.groupKey === 'room') return null
      moving.add(other)
    }
  }
  const all = [...moving]
  return layout.mayStand(all, target) && !layout.isDryingAmong(all) ? all : null
}
