import type { Room } from '../project/sketch-records.ts'
import type { KeptItem } from '../project/survey-records.ts'
import type { RoomOrder, SurfaceClass } from '../project/vocabulary.ts'
import { waits } from './group-precedences.ts'
import { isWetWork } from './operation-facts.ts'
import type { Precedence } from './order.ts'
import type { PlannedStep, StepMaker } from './planned-step.ts'
import { orderOfRoom } from './room-order.ts'
import { isDustyPreparation } from './rules/dust.ts'

interface Saying {
  readonly ruleId: string
  readonly reason: string
}

/** Precedences between the room's own steps and its groups, and between the groups. */
export function roomPrecedences(
  maker: StepMaker,
  room: Room,
  whole: readonly PlannedStep[],
  onGroups: readonly PlannedStep[],
  keptItems: readonly KeptItem[],
): readonly Precedence[] {
  return [
    ...aroundPrecedences(maker, whole, onGroups),
    ...hangingOrder(maker, whole, onGroups, keptItems),
    ...sandingFirst(maker, whole, onGroups),
    ...primingFirst(maker, onGroups),
    ...washingFirst(maker, onGroups),
    ...classPrecedences(maker, room, onGroups),
  ]
}

/**
 * Every one of `befores` ends before any of `afters` begins.
 *
 * @param extraWait minutes on the clock beside what dries
 */
export function stepsInOrder(
  maker: StepMaker,
  befores: readonly PlannedStep[],
  afters: readonly PlannedStep[],
  { ruleId, reason }: Saying,
  special: boolean,
  extraWait = 0,
): readonly Precedence[] {
  const source = maker.ruleById.get(ruleId)?.source ?? ''
  return befores.flatMap((before) =>
    afters
      .filter((after) => after !== before)
      .map((after) => ({
        before: before.step.key,
        after: after.step.key,
        minimumWait: waits(before, after).minimumWait + extraWait,
        maximumWait: null,
        ruleId,
        reason,
        source,
        special,
      })),
  )
}

/** The steps of these operations, in their order. */
export const byOperation = (steps: readonly PlannedStep[], ...operations: readonly string[]) =>
  steps.filter((each) => operations.includes(each.step.operation))

/** Protect, take off, dust down; the work; refit, put back, clean up, inspect. Daily steps stand outside the order. */
function aroundPrecedences(
  maker: StepMaker,
  whole: readonly PlannedStep[],
  work: readonly PlannedStep[],
): readonly Precedence[] {
  const of = (...operations: readonly string[]) => byOperation(whole, ...operations)
  const start = [of('protectRoom'), of('takeOff', 'maskOff'), of('dustDown')]
  const end = [of('unmask'), of('refitHanging', 'putBack'), of('cleanUp'), of('inspect')]
  const say = (ruleId: string, reason: string) => ({ ruleId, reason })
  const protectedFirst = say('protect-room', 'The room is covered and cleared before work makes dust in it.')
  const dustFirst = say(
    'dust-down',
    'Cobwebs and dust are off before anything is worked on: a coat over dust is a defect.',
  )
  const back = say('clean-up', 'The room is put back and cleaned when everything in it is dry.')
  const chain = (stages: readonly (readonly PlannedStep[])[], saying: Saying) =>
    stages.flatMap((stage, index) =>
      stages.slice(index + 1).flatMap((later) => stepsInOrder(maker, stage, later, saying, false)),
    )
  const alarms = stepsInOrder(
    maker,
    of('coverAlarm'),
    of('restoreAlarm'),
    say('cover-alarm', 'What is covered in the morning is uncovered and tested in the evening.'),
    true,
  )
  return [
    ...chain(start, protectedFirst),
    ...stepsInOrder(maker, of('protectRoom', 'takeOff', 'maskOff'), work, protectedFirst, false),
    ...of('dustDown').flatMap((dusting) =>
      stepsInOrder(maker, [dusting], dustedBefore(dusting, work), dustFirst, false),
    ),
    ...stepsInOrder(maker, work, end.flat(), back, false),
    ...chain(end, back),
    ...alarms,
  ]
}

/** Dusting that waits for a hold comes before the work on its own surfaces; the rest of the room goes on. */
function dustedBefore({ role, step }: PlannedStep, work: readonly PlannedStep[]): readonly PlannedStep[] {
  if (role !== 'dustDown/held') return work
  const dusted = new Set(step.surfaceKeys)
  return work.filter((each) => each.step.surfaceKeys.some((key) => dusted.has(key)))
}

/** A hanging is loosened before its own surfaces get anything wet, and refitted when they are done and dry. */
function hangingOrder(
  maker: StepMaker,
  whole: readonly PlannedStep[],
  work: readonly PlannedStep[],
  keptItems: readonly KeptItem[],
): readonly Precedence[] {
  const loosen = byOperation(whole, 'loosenHanging')
  if (loosen.length === 0) return []
  const classes = new Set(
    keptItems
      .filter((item) => item.handling === 'loosen')
      .map((item): SurfaceClass => (item.on.kind === 'ceiling' ? 'ceiling' : 'walls')),
  )
  const wet = work.filter(
    ({ step }) => step.surfaceClass !== null && classes.has(step.surfaceClass) && isWetWork(step.operation),
  )
  const saying = {
    ruleId: 'loosen-hanging',
    reason: 'It is loosened so that the wall behind it is painted too.',
  }
  return [
    ...stepsInOrder(maker, byOperation(whole, 'protectRoom'), loosen, saying, false),
    ...stepsInOrder(maker, loosen, wet, saying, true),
    ...stepsInOrder(maker, loosen, byOperation(whole, 'refitHanging'), saying, false),
  ]
}

/** All dry work and the vacuuming after it come before the first finish coat on anything in the room. */
function sandingFirst(
  maker: StepMaker,
  whole: readonly PlannedStep[],
  work: readonly PlannedStep[],
): readonly Precedence[] {
  const vacuum = byOperation(whole, 'vacuum')
  if (vacuum.length === 0) return []
  const dusty = work.filter(isDustyWork)
  const saying = {
    ruleId: 'sand-before-coats',
    reason:
      'Dust settles on wet paint: the room is sanded and vacuumed before the first finish coat on anything.',
  }
  return [
    ...stepsInOrder(maker, [...dusty, ...byOperation(work, 'vacuum')], vacuum, saying, true),
    ...stepsInOrder(maker, byOperation(whole, 'dustDown'), vacuum, saying, false),
    ...stepsInOrder(maker, vacuum, firstCoatSteps(work), saying, true),
  ]
}

const primings = ['sealChalk', 'sealBare', 'blockStain', 'spotPrime', 'prime'] as const

/** Everything that is primed in a room is primed before any finish coat in it. A deglosser's own coat follows inside its window. */
function primingFirst(maker: StepMaker, work: readonly PlannedStep[]): readonly Precedence[] {
  if (!maker.book.isOn('prime-before-coats')) return []
  const saying = {
    ruleId: 'prime-before-coats',
    reason: 'All primer in the room is on before the first finish coat: a red primer spots fresh white trim.',
  }
  const coats = firstCoatSteps(work)
  return byOperation(work, ...primings).flatMap((before) =>
    stepsInOrder(maker, [before], others(coats, before), saying, false).map((precedence) => ({
      ...precedence,
      minimumWait: 0,
    })),
  )
}

/** Grease and dirt are off everything in the room before anything in it is sanded. */
function washingFirst(maker: StepMaker, work: readonly PlannedStep[]): readonly Precedence[] {
  if (!maker.book.isOn('wash-before-sanding')) return []
  const saying = {
    ruleId: 'wash-before-sanding',
    reason: 'The room is washed before anything in it is sanded: sanding drives grease into the surface.',
  }
  const dusty = work.filter(isDustyWork)
  return byOperation(work, 'wash').flatMap((before) =>
    stepsInOrder(maker, [before], others(dusty, before), saying, false).map((precedence) => ({
      ...precedence,
      minimumWait: 0,
    })),
  )
}

/** Steps of other groups; within a group its own rules say what waits how long. */
function others(steps: readonly PlannedStep[], one: PlannedStep): readonly PlannedStep[] {
  return steps.filter(({ step }) => step.groupKey !== one.step.groupKey)
}

function isDustyWork({ step, role }: PlannedStep): boolean {
  return isDustyPreparation({ operation: step.operation, ordinal: role.split('/')[1] ?? '' })
}

/** What opens the coating of a group: dusting off (and wiping) for the first coat, and the coat. */
export function firstCoatSteps(work: readonly PlannedStep[]): readonly PlannedStep[] {
  return work.filter(({ role }) => /^(dustOff\/1|degloss\/2(\..*)?|coat\/1(\..*)?)$/.test(role))
}

type Part = 'ceiling' | 'walls' | 'trim' | 'stairs'

/** Nothing is cut against a radiator: it dries beside everything else. Stairs are the way out and come last. */
function partOf(surfaceClass: SurfaceClass | null): Part | null {
  if (surfaceClass === null || surfaceClass === 'radiators') return null
  return surfaceClass === 'ceiling' || surfaceClass === 'walls' || surfaceClass === 'stairs'
    ? surfaceClass
    : 'trim'
}

const partsInOrder: Readonly<
  Record<Exclude<RoomOrder, 'byProfile'>, { readonly parts: readonly Part[]; readonly reason: string }>
> = {
  trimFirst: {
    parts: ['trim', 'ceiling', 'walls', 'stairs'],
    reason: 'Trim first where it is profiled: ceiling and walls are then cut to finished trim in one pass.',
  },
  ceilingFirst: {
    parts: ['ceiling', 'trim', 'walls', 'stairs'],
    reason: 'The ceiling first, as it drips on everything; the walls last, cut to finished trim.',
  },
  trimLast: {
    parts: ['ceiling', 'walls', 'trim', 'stairs'],
    reason: 'Trim last: it covers what the wall roller spattered.',
  },
}

function classPrecedences(maker: StepMaker, room: Room, work: readonly PlannedStep[]): readonly Precedence[] {
  if (!maker.book.isOn('room-order')) return []
  const { parts, reason } = partsInOrder[orderOfRoom(maker.job, room)]
  const hold = maker.book.number('room-order', 'trimHoldHours') * 60
  const saying = { ruleId: 'room-order', reason }
  return parts.flatMap((part, index) =>
    parts
      .slice(index + 1)
      .flatMap((later) => afterCoats(maker, work, part, later, saying, part === 'trim' ? hold : 0)),
  )
}

function afterCoats(
  maker: StepMaker,
  work: readonly PlannedStep[],
  first: Part,
  later: Part,
  saying: Saying,
  extraWait: number,
): readonly Precedence[] {
  const coats = work.filter(({ step }) => step.operation === 'coat' && partOf(step.surfaceClass) === first)
  const opening = firstCoatSteps(work).filter(({ step }) => partOf(step.surfaceClass) === later)
  return stepsInOrder(maker, coats, opening, saying, true, extraWait)
}
