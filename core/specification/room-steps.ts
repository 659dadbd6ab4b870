import { polygonSignedDoubleArea } from '../geometry/polygon.ts'
import type { Room } from '../project/sketch-records.ts'
import type { KeptItem, KeptItemId } from '../project/survey-records.ts'
import type { SurfaceQuantity } from '../quantities/takeoff-types.ts'
import { type Area, areaFromSquareUnits, sumAreas, zeroArea } from '../units/area.ts'
import { elapsedMinutes } from '../units/duration.ts'
import { feet, lengthFromUnits } from '../units/length.ts'
import type { Group } from './groups.ts'
import { makesDust, skillFor } from './operation-facts.ts'
import { becauseOf, type PlannedStep, type StepMaker } from './planned-step.ts'
import { noAmounts } from './step-drafts.ts'
import type { Because, Operation, StepAmounts } from './types.ts'

/** Steps on the room as a whole, apart from those on its groups of surfaces. */
export function roomSteps(
  maker: StepMaker,
  room: Room,
  groups: readonly Group[],
  keptItems: readonly KeptItem[],
  dusty: boolean,
  heldDust: ReadonlySet<string>,
): readonly PlannedStep[] {
  const kept = keptSteps(maker, room, keptItems)
  return [
    ...when(maker, 'protect-room', () => [protectStep(maker, room)]),
    ...kept.before,
    ...when(maker, 'dust-down', () => dustDownSteps(maker, room, groups, heldDust)),
    ...(dusty
      ? when(maker, 'sand-before-coats', () => [
          roomStep(maker, room, 'vacuum', 'sand-before-coats', { amounts: { area: floorArea(room) } }),
        ])
      : []),
    ...kept.after,
    ...when(maker, 'clean-up', () => [
      roomStep(maker, room, 'cleanUp', 'clean-up', { amounts: { area: floorArea(room), count: 1 } }),
      roomStep(maker, room, 'inspect', 'clean-up', { amounts: { count: 1 } }),
    ]),
    ...kept.evening,
  ]
}

function when(
  { book }: StepMaker,
  ruleId: string,
  make: () => readonly PlannedStep[],
): readonly PlannedStep[] {
  return book.isOn(ruleId) ? make() : []
}

/** The area inside the outline, stairs as seen from above. */
export function floorArea(room: Room): Area {
  return areaFromSquareUnits(Math.abs(polygonSignedDoubleArea(room.corners)) / 2)
}

function protectStep(maker: StepMaker, room: Room): PlannedStep {
  const amounts = { area: floorArea(room), count: 1 }
  const planned = roomStep(maker, room, 'protectRoom', 'protect-room', { amounts })
  const ruleIds = maker.book.isOn('floors-kept') ? ['protect-room', 'floors-kept'] : ['protect-room']
  const because = becauseOf(
    maker,
    ruleIds.map((ruleId) => ({ ruleId, conditionIds: [] })),
  )
  return { ...planned, step: { ...planned.step, because } }
}

/** One step, or two where dust must not be stirred up on some surfaces before they are cleared. */
function dustDownSteps(
  maker: StepMaker,
  room: Room,
  groups: readonly Group[],
  held: ReadonlySet<string>,
): readonly PlannedStep[] {
  const surfaces = groups.flatMap((group) => group.quantities)
  const parts = [
    { ordinal: '1', list: surfaces.filter(({ key }) => !held.has(key)) },
    { ordinal: 'held', list: surfaces.filter(({ key }) => held.has(key)) },
  ]
  return parts
    .filter(({ list }) => list.length > 0)
    .map(({ ordinal, list }) => {
      const { step, ...planned } = dustDownStep(maker, room, groups, list)
      const key = `${room.id}/room/dustDown/${ordinal}`
      return { ...planned, role: `dustDown/${ordinal}`, step: { ...step, key } }
    })
}

/** What was noted as dust or cobwebs is one more reason for it; it is done anyway. */
function dustDownStep(
  maker: StepMaker,
  room: Room,
  groups: readonly Group[],
  surfaces: readonly SurfaceQuantity[],
): PlannedStep {
  const found = groups
    .flatMap((group) => group.findings)
    .filter(({ condition }) => condition.kind === 'dustAndCobwebs')
    .map(({ condition }) => condition.id)
  const area = sumAreas(surfaces.map((each) => each.netArea))
  const planned = roomStep(maker, room, 'dustDown', 'dust-down', { amounts: { area } })
  const because = becauseOf(maker, [{ ruleId: 'dust-down', conditionIds: [...new Set(found)] }])
  const surfaceKeys = surfaces.map(({ key }) => key)
  return { ...planned, step: { ...planned.step, because, surfaceKeys } }
}

interface KeptSteps {
  readonly before: readonly PlannedStep[]
  readonly after: readonly PlannedStep[]
  readonly evening: readonly PlannedStep[]
}

/** Alarms and sensors never stay down over night, whatever handling was noted. */
function isAlarm(item: KeptItem): boolean {
  return item.kind === 'smokeAlarm' || item.kind === 'carbonMonoxideAlarm' || item.kind === 'sensor'
}

function keptSteps(maker: StepMaker, room: Room, items: readonly KeptItem[]): KeptSteps {
  const others = items.filter((item) => !isAlarm(item))
  const handled = (handling: KeptItem['handling']) => others.filter((item) => item.handling === handling)
  const alarms = [...items.filter(isAlarm), ...handled('coverDaily')]
  const pair = (list: readonly KeptItem[], ruleId: string, first: Operation, last: Operation) =>
    list.length === 0 || !maker.book.isOn(ruleId)
      ? { first: [], last: [] }
      : {
          first: [keptStep(maker, room, first, ruleId, list)],
          last: [keptStep(maker, room, last, ruleId, list)],
        }
  const daily = pair(alarms, 'cover-alarm', 'coverAlarm', 'restoreAlarm')
  const off = pair(handled('takeOff'), 'take-off-hardware', 'takeOff', 'putBack')
  const loose = pair(handled('loosen'), 'loosen-hanging', 'loosenHanging', 'refitHanging')
  const masked = pair(handled('maskInPlace'), 'mask-in-place', 'maskOff', 'unmask')
  return {
    before: [...daily.first, ...off.first, ...masked.first, ...loose.first],
    after: [...masked.last, ...loose.last, ...off.last],
    evening: daily.last,
  }
}

function keptStep(
  maker: StepMaker,
  room: Room,
  operation: Operation,
  ruleId: string,
  items: readonly KeptItem[],
): PlannedStep {
  const count = items.reduce((sum, item) => sum + item.count, 0)
  const tape = operation === 'maskOff' || operation === 'unmask'
  const length = tape ? lengthFromUnits(feet(count * maker.book.number(ruleId, 'feetPerPiece'))) : undefined
  return roomStep(maker, room, operation, ruleId, {
    amounts: { count, ...(length === undefined ? {} : { length }) },
    keptItemIds: items.map((item) => item.id),
    daily: operation === 'coverAlarm' || operation === 'restoreAlarm',
  })
}

interface RoomStepFacts {
  readonly amounts: Partial<StepAmounts>
  readonly keptItemIds?: readonly KeptItemId[]
  readonly daily?: boolean
}

/** A step of the room as a whole, on no surface of it. */
export function roomStep(
  maker: StepMaker,
  room: Room,
  operation: Operation,
  ruleId: string,
  facts: RoomStepFacts,
): PlannedStep {
  const amounts = { ...noAmounts, equivalentArea: facts.amounts.area ?? zeroArea, ...facts.amounts }
  const because: readonly Because[] = becauseOf(maker, [{ ruleId, conditionIds: [] }])
  return {
    step: {
      key: `${room.id}/room/${operation}/1`,
      roomId: room.id,
      surfaceClass: null,
      groupKey: 'room',
      surfaceKeys: [],
      keptItemIds: facts.keptItemIds ?? [],
      operation,
      coat: 0,
      productClass: null,
      productId: null,
      colourId: null,
      sheen: null,
      amounts,
      parts: [],
      difficulty: roomDifficulty(maker),
      skill: skillFor(operation, null),
      effects: { wet: false, dusty: makesDust(operation), fumes: false, closesRoom: false },
      touchDry: elapsedMinutes(0),
      splittable: 'night',
      daily: facts.daily ?? false,
      because,
      cautions: [],
    },
    role: `${operation}/1`,
    product: null,
    recoatMinimum: 0,
    recoatMaximum: null,
    touchedArea: zeroArea,
    extent: 'whole',
    findings: [],
  }
}

function roomDifficulty({ job, book }: StepMaker): number {
  const added =
    book.isOn('difficulty') && job.header.occupied ? book.number('difficulty', 'occupiedPercent') : 0
  return Math.round(100 + added) / 100
}
