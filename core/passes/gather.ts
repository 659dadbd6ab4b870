import { groupedBy, present } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import { type RoomSet, roomSetsOf } from '../project/room-sets.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Specification, Step, StepOrder } from '../specification/types.ts'
import { elapsedMinutes, workingMinutes } from '../units/duration.ts'
import {
  apartByRule,
  expectedOn,
  type HoldsByStep,
  heldUntilWords,
  holdsByStep,
  holdsOfBundle,
} from './apart.ts'
import { type Bundled, bundleSteps, forwardOrder, minutesOnce } from './bundles.ts'
import type { PassPlace } from './layout.ts'
import { type Part, partsOf } from './parts.ts'
import { passLinesOf } from './pass-lines.ts'
import { passName } from './pass-names.ts'
import { passOrder } from './pass-order.ts'
import type { MinutesByStep, Pass, PassEffects, Passes, PassOrder } from './pass-types.ts'
import { placeBundles } from './places.ts'
import { type PassTemplate, templateOf } from './template.ts'

/**
 * Gathers the steps of a specification into passes, room set by room set. Every step is in exactly one pass, the order of passes has no
 * circle, and nothing has to dry inside a pass but between batches of an open time.
 */
export function gatherPasses(job: Job, specification: Specification, minutes: MinutesByStep): Passes {
  return createGatherPasses()(job, specification, minutes)
}

/** A `gatherPasses` that remembers the last answer: room sets that an edit does not touch keep their passes, the very same objects. */
export function createGatherPasses(): (
  job: Job,
  specification: Specification,
  minutes: MinutesByStep,
) => Passes {
  let known: ReadonlyMap<RoomId, Remembered> = new Map()
  return (job, specification, minutes) => {
    const works = worksOfSets(job, specification, minutes)
    const gathered = works.map((work): Remembered => {
      const before = known.get(work.set.id)
      return before !== undefined && isSameWork(before.work, work) ? before : { work, found: gatherSet(work) }
    })
    known = new Map(gathered.map((each) => [each.work.set.id, each]))
    return {
      sets: works.map(({ set }) => set),
      passes: gathered.flatMap(({ found }) => found.passes),
      order: gathered.flatMap(({ found }) => found.order),
    }
  }
}

interface SetPasses {
  readonly passes: readonly Pass[]
  readonly order: readonly PassOrder[]
}

interface Remembered {
  readonly work: WorkOfSet
  readonly found: SetPasses
}

/** All that the passes of one room set are made from. */
interface WorkOfSet {
  readonly job: Job
  readonly set: RoomSet
  readonly steps: readonly Step[]
  /** Pointing forwards only. */
  readonly order: readonly StepOrder[]
  readonly minutes: MinutesByStep
  readonly holds: HoldsByStep
  readonly template: PassTemplate
  /** What the lines and names say besides the steps. */
  readonly says: string
}

/** Of the sets in which something is worked, each with its own steps and order. */
function worksOfSets(job: Job, specification: Specification, minutes: MinutesByStep): readonly WorkOfSet[] {
  const sets = roomSetsOf(job)
  const mainOf = new Map(sets.flatMap(({ id, roomIds }) => roomIds.map((roomId) => [roomId, id] as const)))
  const roomOf = new Map(specification.steps.map(({ key, roomId }) => [key, roomId]))
  const steps = groupedBy(specification.steps, ({ roomId }) => mainOf.get(roomId) ?? roomId)
  const orders = groupedBy(specification.order, ({ before }) => {
    const roomId = roomOf.get(before)
    return roomId && mainOf.get(roomId)
  })
  const holds = holdsByStep(specification)
  return sets.flatMap((set): readonly WorkOfSet[] => {
    const own = steps.get(set.id) ?? []
    if (own.length === 0) return []
    const names = set.roomIds.map((id) => job.rooms[id]?.name ?? id)
    const held = own.flatMap(({ key }) => (holds.get(key) ?? []).map((hold) => [hold.key, hold.expectedOn]))
    const template = templateOf(job, present(job.rooms[set.id]))
    return [
      {
        job,
        set,
        steps: own,
        order: forwardOrder(own, orders.get(set.id) ?? []),
        minutes,
        holds,
        template,
        says: JSON.stringify([set.roomIds, names, held, template]),
      },
    ]
  })
}

/** Whether nothing that counts has changed from one work to the next. */
function isSameWork(before: WorkOfSet, after: WorkOfSet): boolean {
  return (
    before.says === after.says &&
    before.job.colours === after.job.colours &&
    sameItems(before.steps, after.steps) &&
    sameItems(before.order, after.order) &&
    after.steps.every(({ key }) => before.minutes.get(key) === after.minutes.get(key))
  )
}

function sameItems<Item>(before: readonly Item[], after: readonly Item[]): boolean {
  return before.length === after.length && before.every((item, index) => item === after[index])
}

function gatherSet(work: WorkOfSet): SetPasses {
  const { job, set, steps, order, minutes, holds, template } = work
  const bundled = bundleSteps(steps, order, minutes)
  const held = bundled.bundles.map((bundle) => heldUntilWords(bundle, holds))
  const placed = placeBundles(bundled, held, template)
  const places = placed.map(({ place }) => place)
  const passes = placesInOrder(places).flatMap(({ place, list, ordinal }) => {
    const parts = partsOf(list, {
      ...bundled,
      heldUntil: (index) => placed[index]?.until ?? '',
      apartBy: (index) => apartByRule(present(bundled.bundles[index]), place.kind, template),
      template,
      mainRoomId: set.id,
    })
    return parts.map((part) => passOf({ job, set, minutes, bundled, places, holds }, place, ordinal, part))
  })
  const byKey = new Map(steps.map((step) => [step.key, step]))
  return { passes, order: passOrder({ passes, steps: byKey, order, minutes }) }
}

interface UsedPlace {
  readonly place: PassPlace
  readonly list: readonly number[]
  /** Among the places of its kind and coat, from 1. */
  readonly ordinal: number
}

function placesInOrder(places: readonly PassPlace[]): readonly UsedPlace[] {
  const found = new Map<number, { readonly place: PassPlace; readonly list: number[] }>()
  for (const [index, place] of places.entries()) {
    const known = found.get(place.index)
    if (known === undefined) found.set(place.index, { place, list: [index] })
    else known.list.push(index)
  }
  const counts = new Map<string, number>()
  return [...found.values()]
    .toSorted((one, other) => one.place.index - other.place.index)
    .map(({ place, list }) => {
      const kind = `${place.kind}/${place.coat}`
      const ordinal = (counts.get(kind) ?? 0) + 1
      counts.set(kind, ordinal)
      return { place, list, ordinal }
    })
}

interface SetWork {
  readonly job: Job
  readonly set: RoomSet
  readonly minutes: MinutesByStep
  readonly bundled: Bundled
  readonly places: readonly PassPlace[]
  readonly holds: HoldsByStep
}

function passOf(work: SetWork, place: PassPlace, ordinal: number, part: Part): Pass {
  const { job, set, minutes, bundled, holds } = work
  const bundles = part.bundles.map((index) => present(bundled.bundles[index]))
  const steps = bundles.flatMap((bundle) => bundle.steps)
  const held = [...new Set(bundles.flatMap((bundle) => holdsOfBundle(bundle, holds)))]
  const personMinutes = steps.reduce((sum, step) => sum + minutesOnce(step, minutes), 0)
  const breaking = neverBroken(place, steps) ? 'never' : 'natural'
  const worked = new Set(steps.map(({ roomId }) => roomId))
  return {
    key: keyOf(set, place, ordinal, part),
    roomSetId: set.id,
    roomIds: set.roomIds.filter((id) => worked.has(id)),
    kind: place.kind,
    name: nameOf(work, place, steps),
    stepKeys: steps.map(({ key }) => key),
    lines: passLinesOf(job, set, place.kind, steps, minutes),
    personMinutes: workingMinutes(personMinutes),
    people: { min: 1, max: personMinutes < minutesForTwo ? 1 : 2 },
    skills: [...new Set(steps.map(({ skill }) => skill))].toSorted(),
    breaking,
    smallestPart: breaking === 'never' ? null : workingMinutes(Math.min(60, personMinutes)),
    paint: paintOf(steps, minutes),
    effects: effectsOf(steps),
    holdKeys: held.map(({ key }) => key),
    notBefore: expectedOn(held),
    cautions: [...new Map(steps.flatMap((step) => step.cautions).map((each) => [each.id, each])).values()],
  }
}

/** Person-minutes; below this a second person is in the way (shop assumption). */
const minutesForTwo = 90

/** `bedroom-1/woodwork/2`, `bedroom-1/sand/1`; a second part `bedroom-1/woodwork/2.2`. */
function keyOf(set: RoomSet, place: PassPlace, ordinal: number, part: Part): string {
  const base = place.coat === 0 ? `${ordinal}` : ordinal === 1 ? `${place.coat}` : `${place.coat}-${ordinal}`
  return `${set.id}/${place.kind}/${base}${part.number === 1 ? '' : `.${part.number}`}`
}

function neverBroken(place: PassPlace, steps: readonly Step[]): boolean {
  return (
    (place.kind === 'ceiling' || place.kind === 'walls') &&
    steps.some(({ operation }) => operation === 'coat')
  )
}

function nameOf({ job, set, bundled, places }: SetWork, place: PassPlace, steps: readonly Step[]): string {
  const sameKind = places.filter(({ kind }) => kind === place.kind)
  const beside = bundled.bundles.filter((_, index) => places[index]?.index === place.index)
  return passName({
    kind: place.kind,
    coat: place.coat,
    coats: Math.max(0, ...sameKind.map(({ coat }) => coat)),
    steps,
    beside: beside.flatMap((bundle) => bundle.steps),
    mainRoomId: set.id,
    roomName: (roomId) => job.rooms[roomId]?.name ?? roomId,
  })
}

/** What is in the brush for the longest time. */
function paintOf(steps: readonly Step[], minutes: MinutesByStep): string | null {
  const byPaint = new Map<string, number>()
  for (const step of steps) {
    if (step.productId === null) continue
    const paint = `${step.productId}/${step.colourId ?? ''}`
    byPaint.set(paint, (byPaint.get(paint) ?? 0) + minutesOnce(step, minutes))
  }
  return [...byPaint].toSorted(([, one], [, other]) => other - one)[0]?.[0] ?? null
}

function effectsOf(steps: readonly Step[]): PassEffects {
  const dryOf = (list: readonly Step[]) =>
    elapsedMinutes(Math.max(0, ...list.map(({ touchDry }) => Math.ceil(touchDry))))
  const wet = steps.filter(({ effects }) => effects.wet)
  const fuming = steps.filter(({ effects }) => effects.fumes)
  const closing = steps.filter(({ effects }) => effects.closesRoom)
  return {
    touchDry: wet.length > 0 ? dryOf(wet) : null,
    dusty: steps.some(({ effects }) => effects.dusty),
    fumesFor: fuming.length > 0 ? dryOf(fuming) : null,
    closedFor: closing.length > 0 ? dryOf(closing.filter(({ effects }) => effects.wet)) : null,
  }
}
