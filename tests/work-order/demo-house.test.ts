import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import type { z } from 'zod'
import { estimate } from '../../core/price/estimate.ts'
import { stepMinutes } from '../../core/price/labour.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { specify } from '../../core/specification/specify.ts'
import type { estimateSchema } from '../../core/work-order/output-forms/estimate-form.ts'
import type { specificationSchema } from '../../core/work-order/output-forms/specification-form.ts'
import { type OutputName, outputSchemas, type workOrderSchema } from '../../core/work-order/output-schemas.ts'
import { headlessOutputs } from '../../core/work-order/outputs.ts'

const folder = join(import.meta.dirname, '..', '..', 'demo-data')

/** A job of the demonstration data through the whole chain, with one attempt at the plan. */
function outputsOf(fileName: string) {
  const read = readJobFile(readFileSync(join(folder, fileName), 'utf8'))
  if (!read.ok) throw new Error(read.problem.sentence)
  const job = read.value
  const takeoff = takeOff(job)
  const specification = specify(job, takeoff)
  const minutes = new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)]))
  const plan = planJob(job, specification, minutes, { seed: 1, iterations: 1 })
  if (!plan.ok) throw new Error(plan.problem.sentence)
  const priced = estimate(job, takeoff, specification)
  const outputs = headlessOutputs({
    job,
    takeoff,
    specification,
    estimate: priced,
    plan: plan.value,
    madeAt: '2027-03-01T09:00',
  })
  return { files: outputs.files, priced, plan: plan.value }
}

test('the hand-worked room has the same figures in quantities.json and on paper', () => {
  const { files } = outputsOf('plain-room.json')
  const surfaces: { surfaceClass: string; netAreaSqFt: number }[] = JSON.parse(files['quantities.json'] ?? '')
    .rooms[0].surfaces
  const sum = (name: string) =>
    surfaces
      .filter((surface) => surface.surfaceClass === name)
      .reduce((total, surface) => total + surface.netAreaSqFt, 0)
  // demo-data/plain-room.md: a ceiling of 12 ft x 10 ft, walls 44 ft x 8 ft less a window of 3 x 4 ft and a door of 32 x 80 in.
  expect(sum('ceiling')).toBeCloseTo(12 * 10, 5)
  expect(sum('walls')).toBeCloseTo(44 * 8 - 3 * 4 - (32 * 80) / 144, 5)
  const page = files['work-order.html'] ?? ''
  expect(page).toContain('<td>Ceiling: 120 sq ft</td>')
  expect(page).toContain('<td>Walls: 322 sq ft</td>')
})

test.each(['plain-room.json', 'l-shaped-room.json', 'old-house.json'])(
  'the files of %s keep their published forms and agree with each other',
  (fileName) => {
    const { files, priced, plan } = outputsOf(fileName)
    for (const name of Object.keys(outputSchemas) as OutputName[]) {
      const checked = outputSchemas[name].safeParse(JSON.parse(files[`${name}.json`] ?? ''))
      expect([name, checked.error?.issues ?? []]).toEqual([name, []])
    }
    expect(priced.doubts).toEqual([])
    expect(priced.lines.reduce((total, line) => total + line.cents, 0)).toBe(priced.totals.total)
    expect(priced.rooms.reduce((total, room) => total + room.cents, 0)).toBe(priced.totals.beforeTax)
    const page = files['work-order.html'] ?? ''
    const planned = new Set(plan.tasks.flatMap((task) => task.stepKeys))
    const steps: { stepKey: string; daily: boolean }[] = JSON.parse(files['specification.json'] ?? '').steps
    expect(steps.filter((step) => !step.daily && !planned.has(step.stepKey))).toEqual([])
    const passes: { passKey: string }[] = JSON.parse(files['specification.json'] ?? '').passes
    // A tick box for each pass at least; repairs, things to buy and things taken off have their own.
    expect(page.match(/class="box"/g)?.length).toBeGreaterThan(passes.length)
    expect(page).not.toMatch(/undefined|NaN|\[object/)
    const events = new ICAL.Component(ICAL.parse(files['crew-calendar.ics'] ?? '')).getAllSubcomponents(
      'vevent',
    )
    const uids = events.map((event) => String(event.getFirstPropertyValue('uid')))
    expect(new Set(uids).size).toBe(uids.length)
    expect(uids.length).toBeGreaterThan(0)
  },
)

/** Of one product in one color and sheen. */
interface Paint {
  readonly productId: string | null
  readonly colourId: string | null
  readonly sheen: string | null
}

test('the room sheets of the old house show the figures of the other files', () => {
  const { files } = outputsOf('old-house.json')
  const read = (name: OutputName) => outputSchemas[name].parse(JSON.parse(files[`${name}.json`] ?? ''))
  const sheets = (read('work-order') as z.output<typeof workOrderSchema>).rooms
  const { passes } = read('specification') as z.output<typeof specificationSchema>
  const { materials } = read('estimate') as z.output<typeof estimateSchema>
  // Hours of every pass, in the order of the specification.
  const hours = sheets.flatMap((sheet) =>
    sheet.passes.map(({ passKey, name, personMinutes }) => ({ passKey, name, personMinutes })),
  )
  const byKey = (one: { passKey: string }, other: { passKey: string }) =>
    one.passKey < other.passKey ? -1 : 1
  expect(hours.toSorted(byKey)).toEqual(
    passes.map(({ passKey, name, personMinutes }) => ({ passKey, name, personMinutes })).toSorted(byKey),
  )
  // What the coats of all rooms take is what is bought for them.
  const isOf = (one: Paint, other: Paint) =>
    one.productId === other.productId && one.colourId === other.colourId && one.sheen === other.sheen
  const finishes = materials.filter((line) =>
    sheets.some(({ colors }) => colors.some((each) => isOf(each, line))),
  )
  expect(finishes.length).toBeGreaterThan(5)
  for (const line of finishes) {
    const taken = sheets.flatMap(({ colors }) => colors.filter((each) => isOf(each, line)))
    expect(taken.reduce((sum, { gallons }) => sum + gallons, 0)).toBeCloseTo(line.neededGallons, 4)
  }
})
