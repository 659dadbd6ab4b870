import { toFeet } from '../units/length.ts'
import { cutsIntoPaint } from './disturbed.ts'
import type { Group } from './groups.ts'
import { broadClasses, isWetWork, makesDust } from './operation-facts.ts'
import type { PlannedStep } from './planned-step.ts'
import type { RoomView } from './rule.ts'
import { isSuspect, mayHoldAsbestos } from './rules/asbestos.ts'
import { verdictOf } from './rules/lead-safe.ts'
import type { Caution, Operation } from './types.ts'

const defer = 'Local codes and the product label come first.'

/** A caution for a page that says once, for all of them, what comes before it. */
export function withoutDeferral(text: string): string {
  return text.replace(` ${defer}`, '')
}

const lead: Caution = {
  id: 'lead',
  text: `Take the old paint to hold lead: no flame, no power sanding without HEPA, no heat gun at 1,100 °F or more; keep the dust in, wet it, vacuum with HEPA, wash before eating. ${defer}`,
  rule: '40 CFR 745.85(a)(3) and (5); workers: 29 CFR 1926.62',
}
const asbestos: Caution = {
  id: 'asbestos',
  text: 'May hold asbestos: not to be scraped, sanded or drilled before a professional has sampled it.',
  rule: 'US EPA public text; local codes',
}
const dust: Caution = {
  id: 'dust',
  text: `Dust: respirator that fits, sheets over doors and ducts, wet or vacuum sanding. Plaster and compound may hold silica. ${defer}`,
  rule: '29 CFR 1910.134; 29 CFR 1926.1153 (50 ug/m3)',
}
const ladder: Caution = {
  id: 'ladder',
  text: 'Ladder: foot out by a quarter of its working length, 3 ft above a landing; nobody stands on the top cap or top step.',
  rule: '29 CFR 1926.1053(b)(1), (5), (13)',
}
const stair: Caution = {
  id: 'stair',
  text: 'Over stairs: level, secured footing (plank or stair ladder), no ladder on loose blocks, the way down kept clear.',
  rule: '29 CFR 1926.1053(b); common practice',
}
const solvent: Caution = {
  id: 'solvent',
  text: `Solvent vapor: air the room, no flame, no pilot light, no sparks; mask and gloves by the label. ${defer}`,
  rule: 'product label; common practice',
}
const oilyRags: Caution = {
  id: 'oilyRags',
  text: 'Oily rags can catch fire by themselves: dry them flat outdoors in one layer, or keep them under water in a closed metal can.',
  rule: 'NFPA figures on spontaneous heating; product label',
}
const alarmCovered: Caution = {
  id: 'alarmCovered',
  text: 'A covered alarm does not protect: cover it for working hours only, uncover it and test it before leaving.',
  rule: 'NFPA 72-2010 17.7.1.11; common practice',
}
const electricity: Caution = {
  id: 'electricity',
  text: 'Electricity: switch off at the breaker and test before a plate or fixture comes off or water gets near it; wiring is for an electrician.',
  rule: 'local electrical code; common practice',
}
const childrenAndPets: Caution = {
  id: 'childrenAndPets',
  text: 'Children and pets stay out of the room until it is cleaned and dry; chips, dust, rags and cans are out of reach.',
  rule: 'common practice',
}
const sleeping: Caution = {
  id: 'sleeping',
  text: 'A sleeping room: nobody sleeps here until the smell is gone and the coat touch dry.',
  rule: 'product label; common practice',
}
const bleach: Caution = {
  id: 'bleach',
  text: 'Never mix bleach with ammonia or acids; gloves, goggles, open window.',
  rule: 'product label; common practice',
}
const heat: Caution = {
  id: 'heat',
  text: 'Radiator off and cold before it is painted; off until the coat is dry.',
  rule: 'product label; common practice',
}
const glass: Caution = {
  id: 'glass',
  text: 'Old glass breaks and old cords let go: goggles, gloves, support the sash while it is cut free.',
  rule: 'common practice',
}
const overhead: Caution = {
  id: 'overhead',
  text: 'Loose plaster falls: prop it, keep people from under it, helmet and goggles.',
  rule: 'common practice',
}

const waterNearWiring: readonly Operation[] = ['stripWallpaper', 'washOffSize', 'washOffCalcimine']
const electricKinds = ['plate', 'lightFixture', 'sensor']
/** Oils that dry by taking up oxygen heat up in a heap; quick alkyds count, shellac (alcohol) does not. */
const dryingOil = (planned: PlannedStep) => planned.product?.base === 'oil'

/** Highest reach from the floor without a ladder, feet; common practice. */
const reachFromFloor = 7

interface Case {
  readonly caution: Caution
  readonly applies: (view: RoomView, planned: PlannedStep, group: Group | null) => boolean
}

const cases: readonly Case[] = [
  { caution: lead, applies: (view, planned) => isOldPaint(view) && cutsIntoPaint(planned) },
  {
    caution: asbestos,
    applies: (view, planned, group) =>
      group !== null && mayHoldAsbestos(view) && isSuspect(group) && touchesOldSurface(planned),
  },
  { caution: dust, applies: (_, { step }) => makesDust(step.operation) },
  {
    caution: overhead,
    applies: (_, { step }) => step.operation === 'reattachPlaster',
  },
  {
    caution: ladder,
    applies: (_, planned, group) => group !== null && reach(planned, group) > reachFromFloor,
  },
  {
    caution: stair,
    applies: ({ room }, _, group) =>
      room.floor.kind === 'stair' && group !== null && broadClasses.includes(group.surfaceClass),
  },
  { caution: solvent, applies: (_, { step }) => step.effects.fumes },
  { caution: oilyRags, applies: (_, planned) => dryingOil(planned) && isWetWork(planned.step.operation) },
  {
    caution: alarmCovered,
    applies: (_, { step }) => step.operation === 'coverAlarm' || step.operation === 'restoreAlarm',
  },
  { caution: electricity, applies: isNearWiring },
  { caution: bleach, applies: (_, { step }) => step.operation === 'washMildew' },
  { caution: glass, applies: (_, { step }) => step.operation === 'freeSash' },
  {
    caution: heat,
    applies: (_, { step }, group) => group?.surfaceClass === 'radiators' && isWetWork(step.operation),
  },
  { caution: sleeping, applies: ({ room }, { step }) => room.use === 'bedroom' && step.effects.fumes },
  {
    caution: childrenAndPets,
    applies: ({ job }, { step }) =>
      job.header.childrenOrPets &&
      (makesDust(step.operation) || step.effects.fumes || step.effects.closesRoom),
  },
]

/** Hold wherever anybody works in the house: said once, on the cover, not in every room. */
const houseWide: ReadonlySet<Caution> = new Set([lead, dust, ladder, solvent, oilyRags, childrenAndPets])

/** More than these nobody reads on the sheet of a room. */
const mostOfRoom = 4

const gravity: ReadonlyMap<string, number> = new Map(cases.map(({ caution }, index) => [caution.id, index]))

/** Each caution once, the gravest first. */
export function gravestFirst(cautions: readonly Caution[]): readonly Caution[] {
  const once = new Map(cautions.map((caution) => [caution.id, caution]))
  return [...once.values()].toSorted((a, b) => (gravity.get(a.id) ?? 0) - (gravity.get(b.id) ?? 0))
}

/** For the sheet of a room: at most four, the gravest of those that need a hand to do something there. */
export function cautionsOfRoom(cautions: readonly Caution[]): readonly Caution[] {
  const isHouseWide = new Set([...houseWide].map(({ id }) => id))
  return gravestFirst(cautions)
    .filter(({ id }) => !isHouseWide.has(id))
    .slice(0, mostOfRoom)
}

/** The cautions of one step, the gravest first. `group` is null for a step on the room as a whole. */
export function cautionsFor(view: RoomView, planned: PlannedStep, group: Group | null): readonly Caution[] {
  return cases.filter(({ applies }) => applies(view, planned, group)).map(({ caution }) => caution)
}

function isOldPaint(view: RoomView): boolean {
  return verdictOf(view).kind !== 'outsideRule'
}

function touchesOldSurface(planned: PlannedStep): boolean {
  return cutsIntoPaint(planned) || planned.step.operation === 'skim'
}

function reach({ step }: PlannedStep, group: Group): number {
  const touched = new Set(step.surfaceKeys)
  return Math.max(
    0,
    ...group.quantities.filter((each) => touched.has(each.key)).map((each) => toFeet(each.reachHeight)),
  )
}

function isNearWiring(view: RoomView, { step }: PlannedStep): boolean {
  if (waterNearWiring.includes(step.operation)) return true
  if (step.operation !== 'takeOff' && step.operation !== 'putBack') return false
  return view.keptItems.some(
    (item) => step.keptItemIds.includes(item.id) && electricKinds.includes(item.kind),
  )
}
