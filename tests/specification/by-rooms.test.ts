import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import type { Finish } from '../../core/project/survey-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { createSpecifyByRooms, specify, toTheEnd } from '../../core/specification/specify.ts'
import { manyRooms } from '../benchmarks/many-rooms.ts'

const job = manyRooms(6)
const walls = job.finishes['finish-walls'] as Finish
const left: Job = { ...job, finishes: { ...job.finishes, [walls.id]: { ...walls, paint: false } } }

function stopsOf(work: Generator<void, unknown>): number {
  let stops = 0
  while (!work.next().done) stops++
  return stops
}

test('steps worked out room by room are those of the whole house, and are worked out once', () => {
  const byRooms = createSpecifyByRooms()
  const takeoff = takeOff(job)
  expect(stopsOf(byRooms(job, takeoff))).toBe(6)
  expect(toTheEnd(byRooms(job, takeoff))).toEqual(specify(job, takeoff))
  expect(stopsOf(byRooms(job, takeoff))).toBe(0)
})

test('what another job asked for at a stop does not get into the steps of the first', () => {
  const byRooms = createSpecifyByRooms()
  const begun = byRooms(job, takeOff(job))
  begun.next()
  begun.next()
  expect(toTheEnd(byRooms(left, takeOff(left)))).toEqual(specify(left, takeOff(left)))
  expect(toTheEnd(begun)).toEqual(specify(job, takeOff(job)))
  expect(specify(left, takeOff(left)).steps.length).toBeLessThan(specify(job, takeOff(job)).steps.length)
})
