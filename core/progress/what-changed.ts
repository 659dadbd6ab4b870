import { movedRooms } from '../agreement/moved-rooms.ts'
import { groupedBy } from '../lists/lists.ts'
import type { Estimate } from '../price/estimate-types.ts'
import { type Job, records } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { stepTitle } from '../specification/trade-words.ts'
import type { Specification, Step } from '../specification/types.ts'
import { dateWords } from '../time/date-words.ts'
import { dayOfDate } from '../time/local-date.ts'
import { formatMinutes } from '../units/duration.ts'
import { formatCents } from '../units/money.ts'
import { enumerated } from '../words/text.ts'
import type { WorkPlan } from '../work-order/work-plan.ts'
import { compareChange } from './change-order.ts'

/** A job with what follows from it. */
export interface WorkedOut {
  readonly job: Job
  readonly specification: Specification
  readonly estimate: Estimate
  /** Null where none is known; then nothing is said of days. */
  readonly plan: WorkPlan | null
}

/** Steps, working minutes and cents before tax, of a room or of the house. */
export interface Sums {
  readonly steps: number
  readonly minutes: number
  readonly cents: number
}

export interface RoomChange {
  /** Null for what is in no room: setting up each day, and work for the house as a whole. */
  readonly roomId: RoomId | null
  readonly name: string
  readonly before: Sums
  readonly after: Sums
}

export interface WhatChanged {
  /** What is otherwise, the most telling first. */
  readonly lines: readonly string[]
  /** Rooms whose sums are otherwise, in the order of the job; those that are gone last. */
  readonly rooms: readonly RoomChange[]
  readonly whole: { readonly before: Sums; readonly after: Sums }
}

const noRoom = { id: '', name: 'The house as a whole' }
const nothing: Sums = { steps: 0, minutes: 0, cents: 0 }

/** Rooms named one by one; more are counted. */
const namedRooms = 3

/** What is otherwise in the second of two states of a job, in words and by room; null where nothing is. */
export function whatChanged(before: WorkedOut, after: WorkedOut): WhatChanged | null {
  const whole = { before: wholeSums(before), after: wholeSums(after) }
  const lines = [
    ...dayLines(before, after),
    ...stepLines(before, after),
    ...differenceLine(whole.after.minutes - whole.before.minutes, hours, 'work'),
    ...differenceLine(
      whole.after.cents - whole.before.cents,
      (cents) => formatCents(cents),
      'before tax, by hours',
    ),
  ]
  return lines.length === 0 ? null : { lines, rooms: changedRooms(before, after), whole }
}

function wholeSums({ specification, estimate: { totals } }: WorkedOut): Sums {
  return { steps: specification.steps.length, minutes: totals.labourMinutes, cents: totals.beforeTax }
}

/** By room; they add up to those of the house. */
function roomSums({ specification, estimate }: WorkedOut): ReadonlyMap<string, Sums> {
  const sums = new Map<string, Sums>()
  const add = (roomId: string, part: Partial<Sums>) => {
    const { steps, minutes, cents } = sums.get(roomId) ?? nothing
    sums.set(roomId, {
      steps: steps + (part.steps ?? 0),
      minutes: minutes + (part.minutes ?? 0),
      cents: cents + (part.cents ?? 0),
    })
  }
  for (const { roomId } of specification.steps) add(roomId, { steps: 1 })
  for (const { roomId, minutes } of estimate.labour.steps) add(roomId, { minutes })
  for (const { roomId, cents } of estimate.rooms) add(roomId, { cents })
  const { dailyChores, houseWork } = estimate.labour
  add(noRoom.id, {
    minutes: houseWork.reduce<number>((sum, { minutes }) => sum + minutes, dailyChores.minutes),
  })
  return sums
}

function changedRooms(before: WorkedOut, after: WorkedOut): readonly RoomChange[] {
  const [was, is] = [roomSums(before), roomSums(after)]
  const all = [
    ...records(after.job.rooms),
    ...records(before.job.rooms).filter(({ id }) => !(id in after.job.rooms)),
  ]
  const places = [
    ...all.map(({ id, name }) => ({ key: String(id), roomId: id, name })),
    { key: noRoom.id, roomId: null, name: noRoom.name },
  ]
  return places.flatMap(({ key, roomId, name }) => {
    const change = { roomId, name, before: was.get(key) ?? nothing, after: is.get(key) ?? nothing }
    return isAlike(change) ? [] : [change]
  })
}

function isAlike({ before, after }: RoomChange): boolean {
  return (
    before.steps === after.steps &&
    before.cents === after.cents &&
    Math.abs(before.minutes - after.minutes) < 1e-6
  )
}

function differenceLine(
  difference: number,
  words: (amount: number) => string,
  of: string,
): readonly string[] {
  const said = words(Math.abs(difference))
  return said === words(0) ? [] : [`${said} ${difference > 0 ? 'more' : 'less'} ${of}`]
}

function hours(minutes: number): string {
  return formatMinutes(Math.round(minutes))
}

/** `3 more steps in Kitchen: …`, then steps that go, then those that stay and are otherwise. */
function stepLines(before: WorkedOut, after: WorkedOut): readonly string[] {
  const change = compareChange({ ...before, finishesOn: null }, { ...after, finishesOn: null })
  const changed = change.changed.map((each) => each.after)
  const steps = (count: number) => (count === 1 ? 'step' : 'steps')
  return [
    ...linesOfSteps(change.added, after.job, (count) => `${count} more ${steps(count)}`),
    ...linesOfSteps(change.removed, before.job, (count) => `${count} fewer ${steps(count)}`),
    ...linesOfSteps(changed, after.job, (count) => `${count} ${steps(count)} changed`),
  ]
}

function linesOfSteps(steps: readonly Step[], job: Job, words: (count: number) => string): readonly string[] {
  const byRoom = groupedBy(steps, ({ roomId }) => roomId)
  if (byRoom.size > namedRooms) return [`${words(steps.length)} in ${byRoom.size} rooms`]
  return [...byRoom].map(([roomId, own]) => {
    const titles = [...new Set(own.map(stepTitle))]
    const named = titles.length > 3 ? '' : `: ${enumerated(titles)}`
    return `${words(own.length)} in ${job.rooms[roomId]?.name ?? roomId}${named}`
  })
}

function dayLines(before: WorkedOut, after: WorkedOut): readonly string[] {
  if (before.plan === null || after.plan === null) return []
  const moved = movedRooms(before.plan, after.plan).flatMap(({ roomId, before: was, after: is }) =>
    was === null || is === null ? [] : [{ roomId, days: dayOfDate(is) - dayOfDate(was) }],
  )
  const [was, is] = [before.plan.finishesOn, after.plan.finishesOn]
  const last = dateWords(is, after.job.header.unitSystem)
  return [
    ...(was === is ? [] : [`Last day of work ${daysWords(dayOfDate(is) - dayOfDate(was))}: ${last}`]),
    ...roomDayLines(moved, after.job),
  ]
}

function roomDayLines(
  moved: readonly { readonly roomId: string; readonly days: number }[],
  job: Job,
): readonly string[] {
  if (moved.length <= namedRooms)
    return moved.map(({ roomId, days }) => `${job.rooms[roomId]?.name ?? roomId}: ready ${daysWords(days)}`)
  const later = moved.filter(({ days }) => days > 0).length
  const parts = [
    later === 0 ? [] : [`${later} ready later`],
    later === moved.length ? [] : [`${moved.length - later} ready earlier`],
  ].flat()
  return [`Rooms: ${parts.join(', ')}`]
}

function daysWords(days: number): string {
  const count = Math.abs(days)
  return `${count} ${count === 1 ? 'day' : 'days'} ${days > 0 ? 'later' : 'earlier'}`
}
