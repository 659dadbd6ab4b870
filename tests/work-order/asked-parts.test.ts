import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import { minutesByStep } from '../../core/price/labour.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { madeWhenAsked } from '../../core/work-order/once.ts'
import { roomSheets } from '../../core/work-order/room-sheet/room-sheet.ts'
import { manyRooms } from '../benchmarks/many-rooms.ts'

test('a part is made when it is first asked for, once', () => {
  const made: string[] = []
  const make = (name: string) => () => {
    made.push(name)
    return name
  }
  const parts = madeWhenAsked<{ readonly one: string; readonly other: string }>({
    one: make('one'),
    other: make('other'),
  })
  expect(made).toEqual([])
  expect([parts.other, parts.other]).toEqual(['other', 'other'])
  expect(made).toEqual(['other'])
  expect({ ...parts }).toEqual({ one: 'one', other: 'other' })
})

test('the name and number of a room sheet are said without looking at the quantities of the room', () => {
  const job = manyRooms(1)
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  const passes = gatherPasses(job, specification, minutesByStep(job, specification))
  const lookedAt: PropertyKey[] = []
  const watched = new Proxy(takeoff, {
    get: (target, name) => {
      lookedAt.push(name)
      return Reflect.get(target, name)
    },
  })
  const [sheet] = roomSheets({ job, takeoff: watched, specification, passes, tasks: new Map(), relaxed: [] })
  expect([sheet?.number, sheet?.name]).toEqual([1, passes.sets[0]?.name])
  expect(lookedAt).toEqual([])
  expect(sheet?.colors.length).toBeGreaterThan(0)
  expect(lookedAt.length).toBeGreaterThan(0)
})
