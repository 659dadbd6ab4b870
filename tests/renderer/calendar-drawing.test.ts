import { expect, test } from 'vitest'
import { localTimeIn } from '../../core/schedule/calendar.ts'
import { absences } from '../../renderer/panels/calendar/absences.ts'
import { lanesOf } from '../../renderer/panels/calendar/lanes.ts'
import { instantAt, placeOf, timeAxis } from '../../renderer/panels/calendar/time-axis.ts'
import { createSliced } from '../../renderer/state/planner-search.ts'
import { demoJob } from './station-jobs.ts'

const job = demoJob('l-shaped-room')
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
  to: plan.finishInstant,
  pixelsPerHour: 30,
})
const lanes = lanesOf(job, problem, plan)

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

test('every task that needs somebody is drawn in its room and with each of its people', () => {
  for (const task of plan.tasks) {
    if (task.segments.length === 0) continue
    const drawn = lanes.filter((lane) => lane.bars.some((bar) => bar.task.id === task.task))
    expect(drawn.map((lane) => lane.kind).toSorted()).toEqual([...task.people.map(() => 'person'), 'room'])
  }
})

test('within a line of a room nothing overlaps, drying included', () => {
  for (const lane of lanes.filter((each) => each.kind === 'room')) {
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

test('nobody is drawn at work where they are drawn absent', () => {
  for (const lane of lanes.filter((each) => each.kind === 'person')) {
    for (const gap of absences(problem, local, axis, lane)) {
      for (const bar of lane.bars) {
        expect(bar.to <= gap.from || bar.from >= gap.to).toBe(true)
      }
    }
  }
})
