import { dayOfDate } from '../../../../core/time/local-date.ts'
import { compareText } from '../../../../core/words/text.ts'
import type { Phase } from '../../../../core/work-order/phases.ts'

/** What the picture needs of one task of a plan. Moments are local, `2027-03-31T08:30`. */
export interface PictureTask {
  readonly key: string
  readonly phase: Phase
  readonly roomSetId: string
  readonly segments: readonly { readonly startsAt: string; readonly endsAt: string }[]
  readonly crewMemberIds: readonly string[]
  readonly dryUntil: string | null
}

/** Days a room set is out of use, as local dates or moments; both ends included. */
interface PictureStretch {
  readonly roomId: string
  readonly from: string
  readonly to: string
}

/** A stretch on the axis of half-days: half-day 0 is the morning of the first day, 1 its afternoon. Fractions share a half-day. */
export interface HalfDays {
  readonly from: number
  readonly to: number
}

export interface PhaseBlock extends HalfDays {
  readonly phase: Phase
  /** Tasks worked in it, in order. */
  readonly taskKeys: readonly string[]
}

export interface RoomRow {
  readonly roomSetId: string
  readonly blocks: readonly PhaseBlock[]
  /** While something is wet. */
  readonly drying: readonly HalfDays[]
  /** While the household cannot use the room. */
  readonly outOfUse: readonly HalfDays[]
  /** Between two stretches out of use. */
  readonly givenBack: readonly HalfDays[]
  /** Local date from which the room is back for good: the day after its last day out of use. */
  readonly lastDay: string
}

interface Stay extends HalfDays {
  readonly roomSetId: string
}

interface PersonRow {
  readonly crewMemberId: string
  /** Half-days one after another in one room set joined, nights too, days off not. */
  readonly stays: readonly Stay[]
  /** On another job of the book, within the days drawn. */
  readonly elsewhere: readonly HalfDays[]
}

/** Somebody on another job; local moments of this one. */
export interface PictureElsewhere {
  readonly crewMemberId: string
  readonly from: string
  readonly to: string
}

export interface Picture {
  /** Number of the first day, days since 1970. */
  readonly firstDay: number
  readonly days: number
  readonly rooms: readonly RoomRow[]
  readonly people: readonly PersonRow[]
}

/** Hours that a half-day is drawn for; what lies before or after is drawn at its edge. */
const morning = 7 * 60
const noon = 12 * 60
const evening = 17 * 60

/** The whole job by half-days: one row a room set in the order work begins, one row a person. */
export function pictureOf(
  tasks: readonly PictureTask[],
  stretches: readonly PictureStretch[],
  people: readonly string[],
  elsewhere: readonly PictureElsewhere[] = [],
): Picture {
  const worked = tasks.filter(({ segments }) => segments.length > 0)
  const firstDay = Math.min(
    ...worked.flatMap(({ segments }) => segments.map(({ startsAt }) => dayAt(startsAt))),
  )
  const lastDay = Math.max(
    ...worked.flatMap(({ segments, dryUntil }) => [
      ...segments.map(({ endsAt }) => dayAt(endsAt)),
      ...(dryUntil === null ? [] : [dayAt(dryUntil)]),
    ]),
    ...stretches.map(({ to }) => dayAt(to)),
  )
  const ids = [...new Set(worked.toSorted(byStart).map(({ roomSetId }) => roomSetId))]
  return {
    firstDay,
    days: lastDay - firstDay + 1,
    rooms: ids.map((id) =>
      roomRow(
        id,
        worked.filter(({ roomSetId }) => roomSetId === id),
        stretches.filter(({ roomId }) => roomId === id),
        firstDay,
      ),
    ),
    people: people.map((id) => ({
      crewMemberId: id,
      stays: staysOf(
        worked.filter(({ crewMemberIds }) => crewMemberIds.includes(id)),
        firstDay,
      ),
      elsewhere: elsewhereOf(
        elsewhere.filter(({ crewMemberId }) => crewMemberId === id),
        firstDay,
        lastDay,
      ),
    })),
  }
}

/** A noon break and a night are shorter than so many half-days as they are drawn; a free morning is not. */
const noonOrNight = 0.5

/** Stretches on other jobs joined over noons and nights, cut to the days drawn. */
function elsewhereOf(
  stretches: readonly PictureElsewhere[],
  firstDay: number,
  lastDay: number,
): readonly HalfDays[] {
  const end = 2 * (lastDay - firstDay + 1)
  const joined: HalfDays[] = []
  for (const { from, to } of stretches.toSorted((one, other) => (one.from < other.from ? -1 : 1))) {
    const [begin, stop] = [Math.max(0, halfDayAt(from, firstDay)), Math.min(end, halfDayAt(to, firstDay))]
    if (begin >= stop) continue
    const last = joined.at(-1)
    if (last !== undefined && begin - last.to < noonOrNight)
      joined[joined.length - 1] = { from: last.from, to: stop }
    else joined.push({ from: begin, to: stop })
  }
  return joined
}

function roomRow(
  roomSetId: string,
  tasks: readonly PictureTask[],
  stretches: readonly PictureStretch[],
  firstDay: number,
): RoomRow {
  const outOfUse = stretches
    .map(({ from, to }) => ({ from: 2 * (dayAt(from) - firstDay), to: 2 * (dayAt(to) - firstDay) + 2 }))
    .toSorted((one, other) => one.from - other.from)
  const last =
    stretches
      .map(({ to }) => to)
      .toSorted()
      .at(-1) ?? ''
  return {
    roomSetId,
    blocks: joined(pieces(tasks, firstDay)),
    drying: tasks.flatMap((task) => dryingOf(task, firstDay)),
    outOfUse,
    givenBack: outOfUse.slice(1).map((next, index) => ({ from: outOfUse[index]?.to ?? 0, to: next.from })),
    lastDay: last.slice(0, 10),
  }
}

function byStart(one: PictureTask, other: PictureTask): number {
  const [a, b] = [one.segments[0]?.startsAt ?? '', other.segments[0]?.startsAt ?? '']
  return compareText(a, b)
}

interface Piece extends HalfDays {
  readonly phase: Phase
  readonly key: string
}

/** Each segment on the axis; what overlaps in a room (two people) follows one another, so that both are seen. */
function pieces(tasks: readonly PictureTask[], firstDay: number): readonly Piece[] {
  const all = tasks
    .flatMap(({ key, phase, segments }) =>
      segments.map(({ startsAt, endsAt }) => ({
        phase,
        key,
        from: halfDayAt(startsAt, firstDay),
        to: halfDayAt(endsAt, firstDay),
      })),
    )
    .toSorted((one, other) => one.from - other.from || one.to - other.to)
  const placed: Piece[] = []
  for (const piece of all) {
    const from = Math.max(piece.from, placed.at(-1)?.to ?? piece.from)
    if (piece.to > from) placed.push({ ...piece, from })
  }
  return placed
}

/** Shorter pauses than this, in half-days, do not part a block: a noon break, a night. */
const parting = 1.01

function joined(list: readonly Piece[]): readonly PhaseBlock[] {
  const blocks: PhaseBlock[] = []
  for (const { phase, key, from, to } of list) {
    const last = blocks.at(-1)
    if (last !== undefined && last.phase === phase && from - last.to < parting) {
      blocks[blocks.length - 1] = { ...last, to, taskKeys: [...new Set([...last.taskKeys, key])] }
    } else blocks.push({ phase, from, to, taskKeys: [key] })
  }
  return blocks
}

function dryingOf({ segments, dryUntil }: PictureTask, firstDay: number): readonly HalfDays[] {
  const end = segments.at(-1)?.endsAt
  if (end === undefined || dryUntil === null || dryUntil <= end) return []
  return [{ from: halfDayAt(end, firstDay), to: halfDayAt(dryUntil, firstDay) }]
}

/** Where somebody is by half-days: the room set with most of its minutes. */
function staysOf(tasks: readonly PictureTask[], firstDay: number): readonly Stay[] {
  const minutes = new Map<number, Map<string, number>>()
  for (const { roomSetId, segments } of tasks) {
    for (const { startsAt, endsAt } of segments) {
      for (const [half, spent] of halvesOf(startsAt, endsAt, firstDay)) {
        const rooms = minutes.get(half) ?? new Map<string, number>()
        rooms.set(roomSetId, (rooms.get(roomSetId) ?? 0) + spent)
        minutes.set(half, rooms)
      }
    }
  }
  const stays: Stay[] = []
  for (const [half, rooms] of [...minutes].toSorted(([one], [other]) => one - other)) {
    const [roomSetId] = [...rooms].reduce((most, each) => (each[1] > most[1] ? each : most))
    const last = stays.at(-1)
    if (last?.roomSetId === roomSetId && last.to === half) stays[stays.length - 1] = { ...last, to: half + 1 }
    else stays.push({ roomSetId, from: half, to: half + 1 })
  }
  return stays
}

/** Minutes of a segment in each half-day it touches. */
function halvesOf(
  startsAt: string,
  endsAt: string,
  firstDay: number,
): readonly (readonly [number, number])[] {
  const half = 2 * (dayAt(startsAt) - firstDay)
  const [from, to] = [minuteAt(startsAt), minuteAt(endsAt)]
  const parts = [
    [half, Math.min(to, noon) - from],
    [half + 1, to - Math.max(from, noon)],
  ] as const
  return parts.filter(([, spent]) => spent > 0)
}

export function dayAt(moment: string): number {
  return dayOfDate(moment.slice(0, 10))
}

function minuteAt(moment: string): number {
  const [hours = 0, minutes = 0] = moment.slice(11, 16).split(':').map(Number)
  return hours * 60 + minutes
}

/** A moment on the axis of half-days. */
export function halfDayAt(moment: string, firstDay: number): number {
  const minute = Math.min(evening, Math.max(morning, minuteAt(moment)))
  const part = minute <= noon ? (minute - morning) / (noon - morning) : 1 + (minute - noon) / (evening - noon)
  return 2 * (dayAt(moment) - firstDay) + part
}
