import type { Room } from '../project/sketch-records.ts'
import type { Condition } from '../project/survey-records.ts'
import type { ExistingCoat } from '../project/vocabulary.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { formatTemperature } from '../units/temperature.ts'
import { enumerated } from '../words/text.ts'
import { missingGround } from './compatibility.ts'
import { degreeSource, degreeWords, surfaceDegree } from './degradation.ts'
import { conditionGlossary } from './glossary.ts'
import { type Group, isPlace, surfacesWithoutFinish } from './groups.ts'
import { leftOutInRoom } from './left-out.ts'
import type { PlannedStep } from './planned-step.ts'
import type { RoomFacts } from './room-facts.ts'
import { commonPractice, type RoomView, shopAssumption } from './rule.ts'
import { allRules } from './rule-list.ts'
import { existingCoatWords, productClassWords, surfaceNoun } from './trade-words.ts'
import type { Notice } from './types.ts'

/** One group with the steps planned on it. */
export interface GroupWork {
  readonly group: Group
  readonly steps: readonly PlannedStep[]
  /** The deglosser's least wait is as long as its longest: no batch fits in between. */
  readonly withoutWindow: boolean
}

/** What the owner must know of a room beyond the notices its groups' own rules give. */
export function roomNotices(view: RoomView, facts: RoomFacts, work: readonly GroupWork[]): readonly Notice[] {
  return [
    ...allRules.flatMap((rule) =>
      rule.level === 'room' && view.book.isOn(rule.id) ? rule.notices(view) : [],
    ),
    ...leftOutInRoom(view),
    ...work.flatMap((each) => groundNotice(view, each)),
    ...takenCoatNotice(view, work),
    ...work.flatMap(({ group }) => degreeNotice(view, group)),
    ...unfinishedNotice(view, facts),
    ...looseConditions(facts, work),
    ...unmeasuredNotices(view, work),
    ...productNotices(view, work),
    ...work.flatMap((each) => windowNotice(view, each)),
  ]
}

function notice(
  room: Room,
  kind: Notice['kind'],
  surfaceKeys: readonly string[],
  sentence: string,
  source: string,
  hold = false,
): Notice {
  return { kind, roomId: room.id, surfaceKeys, sentence, source, hold }
}

const keysOf = (group: Group) => group.quantities.map((quantity) => quantity.key)

/** What the coat is, as the end of "over …". */
function coatUnder(coat: ExistingCoat): string {
  return coat === 'unknown' ? 'a coat nobody has named' : existingCoatWords[coat]
}

/** A coat that is only usual is tested before it is relied on; an unknown one has a rule of its own. */
function takenCoatNotice({ room }: RoomView, work: readonly GroupWork[]): readonly Notice[] {
  const taken = work.map(({ group }) => group).filter((group) => group.coatTaken && group.coat !== 'unknown')
  if (taken.length === 0) return []
  const where = enumerated([...new Set(taken.map((group) => surfaceNoun(group.surfaceClass)))])
  const sentence = `Latex is taken for what is on ${where} of ${room.name}, as is usual at the age of the house; nobody has tested it. Rub a hidden spot with alcohol on a rag: latex softens, oil paint does not and is sanded and primed first. Note at Walk what it is.`
  return [notice(room, 'advice', taken.flatMap(keysOf), sentence, commonPractice)]
}

/** A finish that would not hold on what is there with the steps as planned (a rule switched off, an odd choice). */
function groundNotice({ room }: RoomView, { group, steps }: GroupWork): readonly Notice[] {
  const missing = missingGround(
    group.coat,
    group.finish.productClass,
    steps.map((each) => each.step),
  )
  if (missing === null) return []
  const sentence = `${room.name}, ${surfaceNoun(group.surfaceClass)}: ${productClassWords[group.finish.productClass]} over ${coatUnder(group.coat)}. ${missing.what}`
  return [
    notice(
      room,
      'compatibility',
      keysOf(group),
      sentence,
      missing.entry.source,
      missing.entry.verdict !== 'poor',
    ),
  ]
}

function degreeNotice({ room, book }: RoomView, group: Group): readonly Notice[] {
  const degree = surfaceDegree(group.findings, group.amounts.area, book.number('spot-or-full', 'percent'))
  if (degree < 3) return []
  return [
    notice(
      room,
      'advice',
      keysOf(group),
      `${room.name}, ${surfaceNoun(group.surfaceClass)}: degree of degradation ${degree}. ${degreeWords[degree]}`,
      degreeSource,
    ),
  ]
}

function unfinishedNotice({ room, job }: RoomView, facts: RoomFacts): readonly Notice[] {
  const open = surfacesWithoutFinish(job, facts)
  if (open.length === 0) return []
  const classes = [...new Set(open.map((quantity) => surfaceNoun(quantity.surfaceClass)))].join(', ')
  return [
    notice(
      room,
      'advice',
      open.map((quantity) => quantity.key),
      `No finish is chosen in ${room.name} for: ${classes}. Nothing is planned there; choose one, or say that it stays as it is.`,
      commonPractice,
    ),
  ]
}

/** Conditions noted where nothing is to be painted, or on a surface that is not there any more. */
function looseConditions(
  { room, surfaces, conditions }: RoomFacts,
  work: readonly GroupWork[],
): readonly Notice[] {
  const placed = new Set(work.flatMap(({ group }) => group.findings.map((finding) => finding.condition.id)))
  return conditions
    .filter((condition) => !placed.has(condition.id))
    .map((condition) =>
      notice(
        room,
        'advice',
        surfaces.filter((each) => isOn(condition, each)).map((each) => each.key),
        `What was found in ${room.name} (${conditionGlossary[condition.kind].word}) is on nothing that gets painted, so no step follows from it.`,
        commonPractice,
      ),
    )
}

function isOn(condition: Condition, quantity: SurfaceQuantity): boolean {
  return condition.on.level === 'surface' && isPlace(condition.on.surface, quantity.surface)
}

function unmeasuredNotices({ room }: RoomView, work: readonly GroupWork[]): readonly Notice[] {
  return work.flatMap(({ group }) =>
    group.findings
      .filter((finding) => !finding.measured)
      .map((finding) =>
        notice(
          room,
          'advice',
          finding.surfaceKeys,
          `${room.name}, ${surfaceNoun(group.surfaceClass)}: “${conditionGlossary[finding.condition.kind].word}” was not measured; an amount is assumed from how bad it is (${finding.condition.severity}).`,
          shopAssumption,
        ),
      ),
  )
}

function windowNotice({ room }: RoomView, { group, withoutWindow }: GroupWork): readonly Notice[] {
  if (!withoutWindow) return []
  return [
    notice(
      room,
      'compatibility',
      keysOf(group),
      `${room.name}, ${surfaceNoun(group.surfaceClass)}: the deglosser's least wait is as long as its longest, so nothing can be coated in time. Correct its label figures or use a bonding primer.`,
      'product label',
      true,
    ),
  ]
}

/** Classes the shop's list lacks, products too cold to apply, sheens a product does not come in. */
function productNotices({ room, job }: RoomView, work: readonly GroupWork[]): readonly Notice[] {
  const steps = work.flatMap((each) => each.steps)
  const missing = new Set(
    steps.flatMap(({ step }) =>
      step.productClass !== null && step.productId === null ? [step.productClass] : [],
    ),
  )
  const air = Math.min(
    job.header.air.temperatureC,
    job.header.air.surfaceTemperatureC ?? job.header.air.temperatureC,
  )
  const cold = new Map(
    steps.flatMap(({ product }) =>
      product !== null && product.minimumTemperatureC > air ? [[product.id, product] as const] : [],
    ),
  )
  return [
    ...[...missing].map((productClass) =>
      notice(
        room,
        'missingProduct',
        [],
        `${room.name} needs a product of the class ${productClassWords[productClass]}, and the shop's list has none: add one, or its cost is missing.`,
        shopAssumption,
      ),
    ),
    ...[...cold.values()].map((product) =>
      notice(
        room,
        'dewPoint',
        [],
        `${room.name}: ${product.name} is not to be applied below ${formatTemperature(product.minimumTemperatureC, job.header.unitSystem)}; it is ${formatTemperature(air, job.header.unitSystem)} there.`,
        product.source,
        true,
      ),
    ),
  ]
}
