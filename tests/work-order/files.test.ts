import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import { labour } from '../../core/price/labour.ts'
import type { Job } from '../../core/project/job.ts'
import { planJob } from '../../core/schedule/plan-job.ts'
import { calendarText, contentLine } from '../../core/work-order/calendar-text.ts'
import { crewCalendar } from '../../core/work-order/crew-calendar.ts'
import { csvText } from '../../core/work-order/csv.ts'
import { type OutputName, outputJsonSchema, outputSchemas } from '../../core/work-order/output-schemas.ts'
import { headlessOutputs } from '../../core/work-order/outputs.ts'
import { shoppingLines } from '../../core/work-order/shopping.ts'
import { workOrder } from '../../core/work-order/work-order.ts'
import { plainPlan } from '../fixtures/plain-plan.ts'
import { ceilingPaint, linen, plainJob, plainSpecification, wallPaint } from '../fixtures/plain-room.ts'
import { granted } from '../storage/books.ts'
import { sampleInput } from './sample-order.ts'

const schemas = join(import.meta.dirname, '..', '..', 'demo-data', 'schemas')
const names = Object.keys(outputSchemas) as OutputName[]
const input = sampleInput()
const outputs = headlessOutputs(input)

function textOf(name: string): string {
  return outputs.files[name] ?? ''
}

function calendarOf(text: string) {
  return new ICAL.Component(ICAL.parse(text))
    .getAllSubcomponents('vevent')
    .map((each) => new ICAL.Event(each))
}

test('every file of the command is written, and the same input gives the same text', () => {
  expect(Object.keys(outputs.files).toSorted()).toEqual([
    'calendar-ada.ics',
    'calendar-ben.ics',
    'crew-calendar.ics',
    'estimate.json',
    'family-calendar.ics',
    'quantities.json',
    'schedule.json',
    'shopping-list.csv',
    'specification.json',
    'work-order.html',
    'work-order.json',
  ])
  expect(headlessOutputs(sampleInput())).toEqual(outputs)
})

test.each(names)('%s.json has the published form', (name) => {
  const checked = outputSchemas[name].safeParse(JSON.parse(textOf(`${name}.json`)))
  expect(checked.error?.issues ?? []).toEqual([])
})

/** After a wanted change of a form: `npx vitest run --config tests/vitest.config.ts work-order/files -u`. */
test.each(names)('the committed schema of %s is current', async (name) => {
  const path = join(schemas, `${name}.schema.json`)
  expect(existsSync(path)).toBe(true)
  await expect(outputJsonSchema(name)).toMatchFileSnapshot(path)
})

test('specification.json lists the passes: every step in one of them, and in one of its lines', () => {
  const { steps, passes, passOrder, roomSets } = outputSchemas.specification.parse(
    JSON.parse(textOf('specification.json')),
  )
  const keys = steps.map(({ stepKey }) => stepKey).toSorted()
  expect(passes.flatMap(({ stepKeys }) => stepKeys).toSorted()).toEqual(keys)
  expect(passes.flatMap(({ lines }) => lines.flatMap(({ stepKeys }) => stepKeys)).toSorted()).toEqual(keys)
  const place = new Map(passes.map(({ passKey }, index) => [passKey, index]))
  expect(passOrder.length).toBeGreaterThan(0)
  for (const { before, after } of passOrder) expect(place.get(before)).toBeLessThan(place.get(after) ?? -1)
  const sets = new Set(roomSets.map(({ roomSetId }) => roomSetId))
  expect(passes.every(({ roomSetId }) => sets.has(roomSetId))).toBe(true)
})

test('the schemas refuse a key without its unit', () => {
  const file = JSON.parse(textOf('schedule.json'))
  expect(outputSchemas.schedule.safeParse({ ...file, start: 1 }).success).toBe(false)
  const quantities = JSON.parse(readFileSync(join(schemas, 'quantities.schema.json'), 'utf8'))
  expect(JSON.stringify(quantities)).toContain('netAreaSqFt')
})

test('schedule.json says how good its plan is known to be, where that is known', () => {
  expect(JSON.parse(textOf('schedule.json'))).not.toHaveProperty('verdict')
  const job = plainJob()
  const minutes = new Map(labour(job, plainSpecification).steps.map((step) => [step.stepKey, step.minutes]))
  const plan = granted(planJob(job, plainSpecification, minutes, { seed: 1, iterations: 100 }))
  const planned = headlessOutputs({ ...input, plan })
  const file = JSON.parse(planned.files['schedule.json'] ?? '')
  expect(outputSchemas.schedule.safeParse(file).error?.issues ?? []).toEqual([])
  // Two coats with a night between them cannot be done in a day: Monday and Tuesday are proved best.
  expect(file.verdict).toMatchObject({
    rulesBroken: 0,
    earliestFinishOn: file.finishesOn,
    daysFromBestAtMost: 0,
    promisesMoved: 0,
    notKept: [],
  })
  expect(file.verdict.costCents.total).toBe(plan.cost.total)
  expect(file.verdict.leastCostCents).toBeLessThanOrEqual(plan.cost.total)
  expect(file.verdict.paidMinutes).toBe(plan.days.reduce((sum, { paidMinutes }) => sum + paidMinutes, 0))
  expect(file.roomsOutOfUse).toEqual(plan.roomsOutOfUse)
  const wet = file.tasks.filter((task: { dryUntil: string | null }) => task.dryUntil !== null)
  expect(wet.length).toBeGreaterThan(0)
  for (const task of wet) expect(task.dryUntil > task.endsAt).toBe(true)
  expect(planned.summary).toContain('The last day is proved best for these tasks.')
  const notProved = headlessOutputs({ ...input, plan: { ...plan, bound: null } })
  expect(JSON.parse(notProved.files['schedule.json'] ?? '').verdict).toMatchObject({
    earliestFinishOn: null,
    daysFromBestAtMost: null,
  })
})

test('specification.json holds the order of the steps with the waits between them and why', () => {
  const file = JSON.parse(textOf('specification.json'))
  expect(file.order).toHaveLength(plainSpecification.order.length)
  const [first] = plainSpecification.order
  expect(file.order[0]).toEqual({
    before: first?.before,
    after: first?.after,
    minimumWaitElapsedMinutes: first?.minimumWait,
    maximumWaitElapsedMinutes: first?.maximumWait,
    reason: first?.reason,
    source: first?.source,
  })
})

test('the figures of the hand-worked room stand in quantities.json', () => {
  const file = JSON.parse(textOf('quantities.json'))
  expect(file.rooms[0].totals).toMatchObject({ netAreaSqFt: 352 + 120, cuttingInFt: 44 + 44 })
  expect(file.rooms[0].surfaces[1]).toMatchObject({ netAreaSqFt: 12 * 8, surfaceClass: 'walls' })
  expect(file.rooms[0].surfaces[1].derivation[0]).toEqual({
    kind: 'gross',
    text: `12' 0" x 8' 0"`,
    areaSqFt: 96,
    lengthFt: null,
    sourceId: 'north',
  })
})

test('quantities.json and the printed sheet show the same figures', () => {
  const page = textOf('work-order.html')
  expect(page).toContain('Ceiling: 120 sq ft')
  expect(page).toContain('Walls: 352 sq ft')
})

test('the calendar is read by another program with the hours of the plan in the zone of the site', () => {
  const events = calendarOf(textOf('crew-calendar.ics'))
  const found = events.map((event) => [event.summary, event.startDate.toString(), event.endDate.toString()])
  // New York keeps summer time from 14 March: 08:15 there is 12:15 UTC. Ada's first day runs to 13:25.
  expect(found).toEqual([
    ['Ada: Study', '2027-03-29T12:15:00Z', '2027-03-29T17:25:00Z'],
    ['Ada: Study', '2027-03-30T12:15:00Z', '2027-03-30T14:25:00Z'],
    ['Ben: Study', '2027-03-29T12:55:00Z', '2027-03-29T13:25:00Z'],
  ])
  expect(events[0]?.location).toBe('1 Example Lane')
  expect(events[0]?.description.split('\n')).toEqual([
    'One plain room',
    'Morning',
    'Study: Cover the floor and what stays; Coat 1; Mask off',
    'Afternoon',
    'Study: Coat 1',
    'Cans: Ceiling paint, flat; Wall paint, Linen, eggshell',
  ])
})

test('no line of the calendar is longer than 75 octets and all end in CRLF', () => {
  const text = textOf('crew-calendar.ics')
  expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true)
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
  for (const line of text.split('\r\n')) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
})

test('a new plan changes the events that were there: person and day are the identifier', () => {
  const later = {
    ...plainPlan,
    tasks: plainPlan.tasks.map((task) => ({
      ...task,
      segments: task.segments.map((segment) => ({
        startsAt: segment.startsAt.replace(/T08:.5/, 'T09:00'),
        endsAt: segment.endsAt,
      })),
    })),
  }
  const read = (plan: typeof plainPlan) =>
    calendarOf(crewCalendar(input.job, input.specification, plan, '2027-03-26T18:00'))
  const uids = (plan: typeof plainPlan) => read(plan).map((event) => event.uid)
  expect(uids(later)).toEqual(uids(plainPlan))
  expect(new Set(uids(plainPlan)).size).toBe(3)
  expect(read(later)[0]?.startDate.toString()).toBe('2027-03-29T13:00:00Z')
})

test('everybody has a calendar of their own, with its name and without the others’ days', () => {
  const own = textOf('calendar-ben.ics')
  expect(calendarOf(own).map((event) => [event.summary, event.startDate.toString()])).toEqual([
    ['Study', '2027-03-29T12:55:00Z'],
  ])
  const names = (text: string) => {
    const calendar = new ICAL.Component(ICAL.parse(text))
    return ['name', 'x-wr-calname'].map((name) => calendar.getFirstPropertyValue(name))
  }
  expect(names(own)).toEqual(['One plain room: Ben', 'One plain room: Ben'])
  expect(names(textOf('crew-calendar.ics'))).toEqual(['One plain room', 'One plain room'])
})

test('any text comes back from a calendar as it went in', () => {
  const words = fc.string({
    unit: fc.constantFrom('a', ',', ';', '\\', '\n', ':', '"', ' ', 'ü', '漢', '🪜', "'"),
  })
  fc.assert(
    fc.property(words, (text) => {
      const lines = ['BEGIN:VCALENDAR\r\n', contentLine('SUMMARY', calendarText(text)), 'END:VCALENDAR\r\n']
      for (const line of lines.join('').split('\r\n')) {
        expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75)
      }
      const read = new ICAL.Component(ICAL.parse(lines.join(''))).getFirstPropertyValue('summary')
      expect(read ?? '').toBe(text)
    }),
    { numRuns: 300, seed: 11 },
  )
})

/** A small reader of RFC 4180, written apart from the writer. */
function readCsv(marked: string): string[][] {
  expect(marked.startsWith('\ufeff')).toBe(true)
  const text = marked.slice(1)
  const rows: string[][] = [[]]
  let field = ''
  let quoted = false
  for (let at = 0; at < text.length; at++) {
    const letter = text[at]
    if (quoted) {
      if (letter === '"' && text[at + 1] === '"') {
        field += '"'
        at++
      } else if (letter === '"') quoted = false
      else field += letter
    } else if (letter === '"') quoted = true
    else if (letter === ',') {
      rows.at(-1)?.push(field)
      field = ''
    } else if (letter === '\r' && text[at + 1] === '\n') {
      rows.at(-1)?.push(field)
      field = ''
      rows.push([])
      at++
    } else field += letter
  }
  return rows.slice(0, -1)
}

test('commas, quotes and line breaks come back from the comma-separated file', () => {
  const odd = ['plain', 'a,b', 'say "white"', 'two\r\nlines', '', 'ü 漢']
  expect(readCsv(csvText(['a', 'b', 'c', 'd', 'e', 'f'], [odd]))).toEqual([
    ['a', 'b', 'c', 'd', 'e', 'f'],
    odd,
  ])
  expect(csvText(['x'], [['say "white"']])).toBe('\ufeffx\r\n"say ""white"""\r\n')
})

test('any text that is no formula comes back, and a formula becomes text', () => {
  fc.assert(
    fc.property(fc.array(fc.string(), { minLength: 1, maxLength: 5 }), (row) => {
      const safe = row.map((text) => (/^[\t\r]|^\s*[=+\-@＝＋－＠]/.test(text) ? `'${text}` : text))
      expect(readCsv(csvText(row, []))).toEqual([safe])
    }),
    { seed: 3 },
  )
  expect(csvText(['x'], [['=SUM(A1)'], [-5]])).toBe("\ufeffx\r\n'=SUM(A1)\r\n-5\r\n")
})

test.each(['=1+1', '  =1+1', '\u00a0-2', '\u3000@x', ' \t+3', '＝1+1', ' ＋2', '－3', '＠cmd', '\t=1'])(
  '%j does not reach a spreadsheet as a formula',
  (text) => {
    expect(readCsv(csvText(['x'], [[text]]))[1]?.[0]?.startsWith("'")).toBe(true)
  },
)

test('letters with accents are marked as UTF-8 for spreadsheets, in the first three bytes of the file', () => {
  const bytes = new TextEncoder().encode(textOf('shopping-list.csv'))
  expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf])
})

test('amounts of the shopping list can be summed: plain numbers, the units in the head', () => {
  const [columns = [], ...rows] = readCsv(textOf('shopping-list.csv'))
  const price = columns.indexOf('Price ($)')
  const total = rows.reduce((sum, row) => sum + Number(row[price]), 0)
  const order = workOrder(input.job, input.takeoff, input.specification, input.estimate, input.plan)
  expect(total).toBeCloseTo(
    shoppingLines(order.shopping).reduce((sum, line) => sum + line.priceCents, 0) / 100,
    6,
  )
})

test('events of two jobs never meet, and a job keeps its own whatever its file is called', () => {
  const uids = (id: string) => {
    const job = { ...input.job, header: { ...input.job.header, id: id as Job['header']['id'] } }
    return calendarOf(crewCalendar(job, input.specification, plainPlan, '2027-03-26T18:00')).map(
      ({ uid }) => uid,
    )
  }
  const [one, other] = [uids('job-one'), uids('job-two')]
  expect(one.filter((uid) => other.includes(uid))).toEqual([])
  expect(one[0]?.startsWith('job-one.')).toBe(true)
})

test('days of an accepted plan that the new plan has not are cancelled, the others go on; a later file counts as newer', () => {
  const body = {
    version: 1,
    plan: {
      ...plainPlan,
      tasks: plainPlan.tasks.map((task) => ({ ...task, dryUntil: null })),
      roomsOutOfUse: [],
      bound: null,
    },
    judged: {},
  } as const
  const accepted = { id: 'p' as never, kind: 'plan', issuedAt: '2027-03-20T08:00', body } as const
  const job = { ...input.job, issued: { [accepted.id]: accepted } }
  // Ben, who was to come on the first day, does not; Ada keeps both her days.
  const alone = {
    ...plainPlan,
    tasks: plainPlan.tasks.map((task) => ({
      ...task,
      crewMemberIds: task.crewMemberIds.filter((id) => id !== 'ben'),
    })),
  }
  const statuses = (madeAt: string) =>
    calendarOf(crewCalendar(job, input.specification, alone, madeAt)).map((event) => [
      event.summary,
      event.component.getFirstPropertyValue('status'),
    ])
  expect(statuses('2027-03-26T18:00')).toEqual([
    ['Ada: Study', null],
    ['Ada: Study', null],
    ['Ben', 'CANCELLED'],
  ])
  const sequence = (madeAt: string) =>
    calendarOf(crewCalendar(job, input.specification, alone, madeAt)).map((event) => event.sequence)
  expect(Math.min(...sequence('2027-03-26T18:01'))).toBeGreaterThan(Math.max(...sequence('2027-03-26T18:00')))
})

test('the shopping list file names its columns with their units', () => {
  const [columns, first] = readCsv(textOf('shopping-list.csv'))
  expect(columns).toContain('Container (US gal)')
  expect(columns).toContain('Price each ($)')
  expect(first).toEqual([
    '1',
    '2027-03-29',
    '1',
    'gallon',
    '1',
    '3.785',
    'Ceiling paint',
    '',
    'latex ceiling paint',
    '',
    '',
    'flat',
    '0.352',
    '1.333',
    '0.011',
    '0.04',
    '36',
    '36',
    'keep the rest',
  ])
})

test('brand and color code stand on the shopping list, in the file and on paper, where somebody has said them', () => {
  const named = sampleInput({
    products: {
      [wallPaint.id]: { ...wallPaint, brand: 'Invented Paint Works' },
      [ceilingPaint.id]: ceilingPaint,
    },
    colours: { [linen.id]: { ...linen, code: 'IP-104' } },
  })
  const { files } = headlessOutputs(named)
  const [columns = [], ...rows] = readCsv(files['shopping-list.csv'] ?? '')
  const said = (name: string) => rows.slice(0, 3).map((row) => row[columns.indexOf(name)])
  expect(said('Item')).toEqual(['Ceiling paint', 'Wall paint', 'Masking tape, roll of 180 ft'])
  expect(said('Brand')).toEqual(['', 'Invented Paint Works', ''])
  expect(said('Color code')).toEqual(['', 'IP-104', ''])
  expect(files['work-order.html']).toContain('Invented Paint Works, latex wall paint')
  expect(files['work-order.html']).toContain('Linen, IP-104, eggshell')
})

test('the summary says what waits and what is not settled', () => {
  expect(outputs.summary[0]).toBe('One plain room: 2 rooms, 30 steps, 472 sq ft net')
  expect(outputs.summary).toContain('Wait: The gutter must be put right before the stain is blocked.')
  expect(outputs.summary.at(-1)).toContain('Not settled: ')
})
