import { type Job, records } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { addDays, type LocalDate } from '../time/local-date.ts'
import { compareText } from '../words/text.ts'
import type { Finding } from './findings.ts'
import type { Group } from './groups.ts'
import type { Hold, HoldKind, Notice, Step } from './types.ts'

/** What a rule asks to be cleared before surfaces are touched. */
export interface HoldNeed {
  readonly kind: HoldKind
  readonly surfaceKeys: readonly string[]
  readonly reason: string
  /** What cures by itself counts from the day it was found; null, for what somebody has to do, from the job's first day. */
  readonly since: LocalDate | null
  /** Days until it is usually cleared. */
  readonly days: number
  readonly source: string
}

/** A need in its room, with the steps that wait for it; what was said of it is not looked up yet. */
export interface RoomHold extends HoldNeed {
  readonly key: string
  readonly roomId: RoomId
  readonly stepKeys: readonly string[]
}

/** Who usually sees to it, until somebody is named. */
const whoUsually: Readonly<Record<HoldKind, string>> = {
  asbestos: 'A sampling professional, called by the client',
  leak: 'The client, with a roofer or plumber',
  mildewCause: 'The client',
  newPlaster: 'The painter, by looking and touching',
  movingCrack: 'The client, with somebody who knows the structure',
  loosePlaster: 'The client, with a plasterer',
  dewPoint: 'The painter, with a surface thermometer',
  unknownCoat: 'The painter, by the wipe and alcohol tests',
}

const noticeKinds: Readonly<Record<HoldKind, Notice['kind']>> = {
  asbestos: 'asbestosSuspicion',
  leak: 'cause',
  mildewCause: 'cause',
  newPlaster: 'cause',
  movingCrack: 'cause',
  loosePlaster: 'cause',
  dewPoint: 'dewPoint',
  unknownCoat: 'advice',
}

/** A hold on the places of one finding, with the days that the rule says. */
export function holdFor(
  kind: HoldKind,
  { condition, surfaceKeys }: Finding,
  days: number,
  reason: string,
  source: string,
): HoldNeed {
  const since = kind === 'newPlaster' ? condition.foundOn : null
  return { kind, surfaceKeys, reason, since, days, source }
}

/** Surfaces that may not even be dusted before they are cleared. */
export function heldFromDusting(needs: readonly HoldNeed[]): ReadonlySet<string> {
  return new Set(needs.flatMap(({ kind, surfaceKeys }) => (kind === 'asbestos' ? surfaceKeys : [])))
}

/** Held surfaces of groups that have free ones too: they are worked apart, so that the free ones need not wait. */
export function heldApart(groups: readonly Group[], needs: readonly HoldNeed[]): ReadonlySet<string> {
  const held = new Set(needs.flatMap(({ surfaceKeys }) => surfaceKeys))
  return new Set(
    groups.flatMap(({ quantities }) => {
      const keys = quantities.map(({ key }) => key)
      return keys.every((key) => held.has(key)) ? [] : keys.filter((key) => held.has(key))
    }),
  )
}

/** The holds of one room, one for each kind and set of surfaces, with every step on these surfaces. */
export function roomHolds(
  roomId: RoomId,
  needs: readonly HoldNeed[],
  steps: readonly Step[],
): readonly RoomHold[] {
  const byKey = new Map<string, HoldNeed>()
  for (const need of needs) {
    const key = `${roomId}/${need.kind}/${need.surfaceKeys.toSorted().join('+')}`
    const known = byKey.get(key)
    byKey.set(key, known === undefined ? need : bothNeeds(known, need))
  }
  return [...byKey].map(([key, need]) => ({ ...need, key, roomId, stepKeys: stepsOn(need, steps) }))
}

function bothNeeds(one: HoldNeed, other: HoldNeed): HoldNeed {
  const latest = [one.since, other.since].toSorted((a, b) => compareText(a ?? '9', b ?? '9'))[1] ?? null
  return {
    ...one,
    reason: one.reason === other.reason ? one.reason : `${one.reason} ${other.reason}`,
    since: latest,
    days: Math.max(one.days, other.days),
  }
}

/**
 * Steps on the room as a whole (covering, taking off, dusting down) belong to no class and do not wait; only dusting down what may hold
 * asbestos does, for that stirs it up.
 */
function stepsOn({ kind, surfaceKeys }: HoldNeed, steps: readonly Step[]): readonly string[] {
  const held = new Set(surfaceKeys)
  return steps
    .filter(
      ({ surfaceClass, operation }) =>
        surfaceClass !== null || (kind === 'asbestos' && operation === 'dustDown'),
    )
    .filter((step) => step.surfaceKeys.some((key) => held.has(key)))
    .map((step) => step.key)
}

/** The holds of a job with what was said of each. */
export function holdsOf(job: Job, holds: readonly RoomHold[]): readonly Hold[] {
  const said = new Map(records(job.holds).map((record) => [record.holdKey, record]))
  return holds.map((hold): Hold => {
    const { key, roomId, surfaceKeys, kind, reason, stepKeys, source } = hold
    const record = said.get(key)
    const usual = addDays(hold.since ?? job.header.startsOn, hold.days)
    const named = record?.whoSeesToIt.trim() ?? ''
    return {
      key,
      roomId,
      surfaceKeys,
      kind,
      reason,
      whoSeesToIt: named === '' ? whoUsually[kind] : named,
      expectedOn: record === undefined ? usual : record.expectedOn,
      expectedIsAssumed: record === undefined,
      usualDays: hold.days,
      cleared: clearedBy(record?.clearedOn ?? null, record?.clearedBy ?? ''),
      stepKeys,
      source,
    }
  })
}

function clearedBy(on: LocalDate | null, by: string): Hold['cleared'] {
  return on === null || by.trim() === '' ? null : { on, by: by.trim() }
}

/** A hold as one of the notices, with the key it is cleared by. */
export function holdNotice(hold: Hold): Notice {
  return {
    kind: noticeKinds[hold.kind],
    roomId: hold.roomId,
    surfaceKeys: hold.surfaceKeys,
    sentence: hold.reason,
    source: hold.source,
    hold: true,
    holdKey: hold.key,
  }
}

type HeldUntil =
  | { readonly kind: 'free' }
  /** Its steps may not be planned before this day. */
  | { readonly kind: 'until'; readonly on: LocalDate }
  /** Nobody knows. A plan may only assume: tomorrow where the day has passed, else the usual number of days from today. */
  | { readonly kind: 'noDate'; readonly isOverdue: boolean; readonly assumedOn: LocalDate }

/** Before which day the steps of a hold may not be planned, as seen on a day. */
export function heldUntil(
  hold: Pick<Hold, 'cleared' | 'expectedOn' | 'usualDays'>,
  today: LocalDate,
): HeldUntil {
  if (hold.cleared !== null) return { kind: 'free' }
  if (hold.expectedOn === null) {
    return { kind: 'noDate', isOverdue: false, assumedOn: addDays(today, Math.max(1, hold.usualDays)) }
  }
  return hold.expectedOn < today
    ? { kind: 'noDate', isOverdue: true, assumedOn: addDays(today, 1) }
    : { kind: 'until', on: hold.expectedOn }
}
