import { expect, test } from 'vitest'
import { finishOf } from '../../core/schedule/model.ts'
import { localTimeIn } from '../../core/time/local-time.ts'
import { momentsIn } from '../../core/time/site-moment.ts'
import { absences } from '../../renderer/panels/calendar/absences.ts'
import { barId, tabStop, walked } from '../../renderer/panels/calendar/bar-walk.ts'
import { lanesOf } from '../../renderer/panels/calendar/lanes.ts'
import {
  hasNarrowDays,
  instantAt,
  placeOf,
  startsWeek,
  timeAxis,
} from '../../renderer/panels/calendar/time-axis.ts'
import { createSliced } from '../../renderer/state/planner-search.ts'
import { demoJob } from './station-jobs.ts'

const job = demoJob('old-house')
const search = createSliced(job, '2027-03-29T07:30', null)
search.step()
const found = search.current()
if (found === null) throw new Error('no plan was found')
const { problem, plan } = found
const local = localTimeIn(job.header.timeZone)
const axis = timeAxis({
  problem,
  local,
  from: Math.min(...plan.tasks.map((task) => task.start)),
  to: finishOf(plan),
  pixelsPerHour: 30,
})
const lanes = lanesOf(job, found, local)
const momentOf = momentsIn(job.header.timeZone)
const firstStart = Math.min(...plan.tasks.map((task) => task.start))

test('the axis runs on without gaps, and later is never farther left', () => {
  for (const [index, part] of axis.parts.entries()) {
    const next = axis.parts[index + 1]
    if (next === undefined) continue
    expect([next.from, next.left]).toEqual([part.to, part.right])
  }
  expect(axis.parts.at(-1)?.right).toBe(axis.width)
})

test('an hour of work is as wide as asked for, and a place leads back to its instant', () => {
  const hours = axis.parts.find((part) => part.kind === 'hours')
  if (hours === undefined) throw new Error('there are no working hours')
  expect(placeOf(axis, hours.from + 60) - placeOf(axis, hours.from)).toBeCloseTo(30)
  for (const task of plan.tasks) {
    expect(instantAt(axis, placeOf(axis, task.start), 5)).toBe(task.start)
  }
})

test('narrow days are told from wide ones, and a week begins after its days off', () => {
  // Monday 29 March 2027 is the first day; Friday 2 April is a holiday, and nobody works at weekends.
  const narrow = timeAxis({ problem, local, from: firstStart, to: firstStart + 14 * 1440, pixelsPerHour: 2 })
  expect([hasNarrowDays(axis), hasNarrowDays(narrow)]).toEqual([false, true])
  const begins = narrow.days.filter((_, index) => startsWeek(narrow, index)).map((day) => day.date)
  expect(begins).toEqual(['2027-03-29', '2027-04-05', '2027-04-12'])
})

test('every task that needs somebody is drawn in its room and with each of its people', () => {
  for (const task of plan.tasks) {
    if (task.segments.length === 0) continue
    const drawn = lanes.filter((lane) => lane.bars.some((bar) => bar.task.id === task.task))
    expect(drawn.map((lane) => lane.kind).toSorted()).toEqual([...task.people.map(() => 'person'), 'room'])
  }
})

test('within a line no two pieces of work overlap', () => {
  for (const lane of lanes) {
    for (let line = 0; line < lane.lines; line++) {
      const bars = lane.bars
        .filter((bar) => bar.line === line)
        .toSorted((one, other) => one.from - other.from)
      bars.forEach((bar, index) => {
        expect(bar.from).toBeGreaterThanOrEqual(bars[index - 1]?.to ?? bar.from)
      })
    }
  }
})

test('a room is drawn drying from the end of wet work until the last of it is dry', () => {
  const drying = plan.tasks.flatMap((planned) => {
    const task = problem.tasks.find((each) => each.id === planned.task)
    const touchDry = task?.effects.touchDry ?? 0
    return touchDry === 0
      ? []
      : [{ room: task?.room, from: planned.end as number, to: planned.end + touchDry }]
  })
  expect(drying.length).toBeGreaterThan(3)
  for (const { room, from, to } of drying) {
    const wet = lanes.find((lane) => lane.id === room)?.wet ?? []
    expect(wet.filter((span) => span.from <= from && to <= span.to)).toHaveLength(1)
  }
  const minutes = (spans: readonly { readonly from: number; readonly to: number }[]) =>
    spans.reduce((sum, span) => sum + span.to - span.from, 0)
  expect(minutes(lanes.flatMap((lane) => lane.wet))).toBeLessThanOrEqual(minutes(drying))
})

test('a room is out of use as long as the plan says', () => {
  expect(found.workPlan.roomsOutOfUse.length).toBeGreaterThan(3)
  for (const lane of lanes.filter((each) => each.kind === 'room')) {
    const stretches = found.workPlan.roomsOutOfUse.filter(({ roomId }) => roomId === lane.id)
    expect(momentOf(lane.outOfUse?.from ?? 0).slice(0, 10)).toBe(stretches[0]?.from.slice(0, 10))
    expect(momentOf(lane.outOfUse?.to ?? 0).slice(0, 10)).toBe(stretches.at(-1)?.to.slice(0, 10))
  }
})

test('over the work of a person stands the room they are in, each day anew', () => {
  for (const lane of lanes.filter((each) => each.kind === 'person')) {
    for (const bar of lane.bars) {
      const stays = lane.stays.filter((stay) => stay.from <= bar.from && bar.to <= stay.to)
      expect(stays.map((stay) => stay.roomId)).toEqual([bar.task.room])
    }
    for (const stay of lane.stays) expect(local.dayAt(stay.from)).toBe(local.dayAt(stay.to))
  }
})

test('nobody is drawn at work where they are drawn absent', () => {
  for (const lane of lanes.filter((each) => each.kind === 'person')) {
    for (const gap of absences(problem, local, axis, lane)) {
      for (const bar of lane.bars) {
        expect(bar.to <= gap.from || bar.from >= gap.to).toBe(true)
      }
    }
  }
})

test('arrow keys lead along a lane by time, and across lanes to what is nearest in time', () => {
  const [lane] = lanes.filter((each) => each.kind === 'room')
  const starts = (lane?.bars ?? [])
    .filter((bar) => bar.piece === 0)
    .toSorted((one, two) => one.from - two.from)
  const [first, second] = starts
  if (lane === undefined || first === undefined || second === undefined) throw new Error('the room has work')
  expect(walked(lanes, { lane, bar: first }, 'ArrowRight')?.bar.task.id).toBe(second.task.id)
  expect(walked(lanes, { lane, bar: second }, 'ArrowLeft')?.bar.task.id).toBe(first.task.id)
  expect(walked(lanes, { lane, bar: first }, 'ArrowLeft')).toBeNull()
  const above = walked(lanes, { lane, bar: first }, 'ArrowUp')
  expect(above?.lane.kind).toBe('person')
  const distance = Math.abs((above?.bar.from ?? 0) - first.from)
  for (const bar of above?.lane.bars ?? []) {
    if (bar.piece === 0) expect(Math.abs(bar.from - first.from)).toBeGreaterThanOrEqual(distance)
  }
})

test('the drawing has one tab stop: the picked task, or the first one in sight', () => {
  const [some] = lanes
  const last = some?.bars.at(-1)
  if (some === undefined || last === undefined) throw new Error('somebody works')
  const everything = { from: 0, to: Number.POSITIVE_INFINITY }
  expect(tabStop(lanes, null, everything)).toBe(barId(some, some.bars[0]?.task.id ?? ''))
  expect(tabStop(lanes, last.task.id, everything)).toBe(barId(some, last.task.id))
  // The picked one is out of sight: the first in sight takes its place.
  expect(tabStop(lanes, last.task.id, { from: firstStart, to: firstStart + 30 })).not.toContain(last.task.id)
  expect(tabStop(lanes, null, { from: 0, to: 1 })).toBeNull()
})
