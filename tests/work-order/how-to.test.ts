import { expect, test } from 'vitest'
import { gatherPasses } from '../../core/passes/gather.ts'
import { minutesByStep } from '../../core/price/labour.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { roomSheets } from '../../core/work-order/room-sheet/room-sheet.ts'
import { oldHouse } from '../../demo-data/old-house.ts'

test('how doors, sash and stairs are coated stands on the sheets of their rooms, once', () => {
  const job = oldHouse()
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  const passes = gatherPasses(job, specification, minutesByStep(job, specification))
  const sheets = roomSheets({ job, takeoff, specification, passes, tasks: new Map(), relaxed: [] })
  const told = (words: string) =>
    sheets.filter(({ handling }) => handling.filter((each) => each.includes(words)).length === 1)
  const coating = (surfaceClass: string) =>
    sheets.filter(({ passes: of }) => {
      const keys = new Set(of.flatMap(({ stepKeys }) => stepKeys))
      return specification.steps.some(
        (step) => keys.has(step.key) && step.operation === 'coat' && step.surfaceClass === surfaceClass,
      )
    })
  expect(coating('doors').length).toBeGreaterThan(5)
  expect(told('Panels first, then rails, then stiles')).toEqual(coating('doors'))
  expect(told('Glass edges first').length).toBeGreaterThan(5)
  expect(told('every other tread')).toEqual(coating('stairs'))
})
