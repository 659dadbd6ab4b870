import { expect, test } from 'vitest'
import { stepMinutes } from '../../core/price/labour.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { stepLine } from '../../core/work-order/step-lines.ts'
import { oldHouse } from '../../demo-data/old-house.ts'

test('how doors, sash and stairs are coated stands with their coats; a wall needs no telling', () => {
  const job = oldHouse()
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  const input = { job, takeoff, specification, tasks: new Map(), cautions: [] }
  const told = (surfaceClass: string) =>
    specification.steps
      .filter((step) => step.surfaceClass === surfaceClass && step.coat === 1 && stepMinutes(job, step) > 0)
      .map((step) =>
        stepLine(input, step, 1)
          .reasons.map(({ reason }) => reason)
          .join(' '),
      )
  expect(told('doors').length).toBeGreaterThan(5)
  for (const words of told('doors')) expect(words).toContain('Panels first, then rails, then stiles')
  expect(told('sash').some((words) => words.includes('Glass edges first'))).toBe(true)
  for (const words of told('stairs')) expect(words).toContain('every other tread')
  expect(told('walls').filter((words) => words.includes('first'))).toEqual([])
})
