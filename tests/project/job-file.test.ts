import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { z } from 'zod'
import type { Job } from '../../core/project/job.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import { layOutJson } from '../../core/project/json-layout.ts'
import { findJsonFault } from '../../core/project/json-text.ts'
import type { Problem } from '../../core/project/problem.ts'
import { localDateSchema } from '../../core/project/schema-parts.ts'
import { feet, inches } from '../../core/units/length.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import { twoRooms } from '../sketch/two-rooms.ts'

interface Json {
  [name: string]: Json
}

/** The file of two rooms as plain data, changed in one place. */
function fileWith(change: (file: Json) => void): string {
  const file = JSON.parse(writeJobFile(twoRooms())) as Json
  change(file)
  return JSON.stringify(file)
}

function problemOf(text: string): Problem {
  const read = readJobFile(text)
  if (read.ok) throw new Error('this should have been refused')
  return read.problem
}

function set(place: string, value: unknown): (file: Json) => void {
  return (file) => {
    const steps = place.split('.')
    const last = steps.pop() ?? ''
    const target = steps.reduce<Json>((inner, step) => inner[step] as Json, file)
    if (value === undefined) delete target[last]
    else target[last] = value as never
  }
}

test('a job written and read is the very same job, and writes the very same text', () => {
  const job = twoRooms()
  const text = writeJobFile(job)
  expect(readJobFile(text)).toEqual({ ok: true, value: job })
  const read = readJobFile(text)
  expect(read.ok && writeJobFile(read.value)).toBe(text)
  expect(read.ok && read.value.rooms).toEqual(job.rooms)
})

/** A job file as an older version wrote it, with the job it reads as. */
function kept(version: number): Job {
  const text = readFileSync(
    join(import.meta.dirname, '..', 'fixtures', 'job-files', `version-${version}.json`),
    'utf8',
  )
  expect(JSON.parse(text)).toMatchObject({ version })
  const read = readJobFile(text)
  if (!read.ok) throw new Error(read.problem.sentence)
  return read.value
}

/** Collections of version 8. */
const nothingAfterwards = { receipts: {}, cansUsed: {}, ownJobs: {} }

test.each([1, 2, 3, 4, 5, 6, 7, 8, 9])('a file of version %i reads as a job of today', (version) => {
  const job = kept(version)
  const written = JSON.parse(writeJobFile(job)) as { readonly version: number }
  expect(written.version).toBe(10)
  expect(readJobFile(JSON.stringify(written))).toEqual({ ok: true, value: job })
})

test('nobody could say a brand or a color code in version 1', () => {
  const job = kept(1)
  expect(Object.values(job.products).map(({ brand }) => brand)).toEqual(['', ''])
  expect(Object.values(job.colours).map(({ code }) => code)).toEqual([''])
})

test('a task held in version 2 is held as a pass, and its plan is the usual one', () => {
  const job = kept(2)
  expect(Object.values(job.pins)).toEqual([
    expect.objectContaining({ passKey: 'study/walls', startsAt: '2027-03-30T08:00' }),
  ])
  expect(job.header.planFor).toBe('balanced')
  expect(job).toEqual({ ...everyRecordJob(), photos: {}, options: {}, dealings: {}, ...nothingAfterwards })
})

test('nothing was agreed in version 6, and nobody wrote down in version 7 what came of a job', () => {
  expect(kept(6)).toEqual({ ...everyRecordJob(), options: {}, dealings: {}, ...nothingAfterwards })
  expect(kept(7)).toEqual({ ...everyRecordJob(), ...nothingAfterwards })
})

test('a shop had no kinds of rooms of its own in version 9', () => {
  expect(kept(9)).toEqual(everyRecordJob())
  const tall = {
    name: 'Mudroom',
    use: 'utility',
    height: feet(8),
    trim: ['baseboard'],
    doors: 2,
    windows: 1,
    plates: 4,
    lights: 1,
  } as const
  const job = kept(9)
  const own = { ...job, houseRules: { ...job.houseRules, roomKinds: [tall] } }
  expect(readJobFile(writeJobFile(own))).toEqual({ ok: true, value: own })
})

test('nobody could say in version 3 that a piece of a room is sound', () => {
  expect(Object.values(kept(3).rooms).flatMap(({ lookedAt }) => lookedAt)).toEqual([])
})

test('nothing was said of the shop in version 4, and nothing is invented for it', () => {
  const job = kept(4)
  expect(job.business).toMatchObject({ name: '', paymentSteps: [], assumed: [] })
  expect(job.header).toMatchObject({ access: '', paper: 'letter', isDemonstration: false, isPutAway: false })
  expect(job).toEqual({ ...everyRecordJob(), photos: {}, options: {}, dealings: {}, ...nothingAfterwards })
})

test('the file says its format, version and units first, and lengths are millimetres', () => {
  const file = JSON.parse(writeJobFile(twoRooms())) as Json
  expect(Object.keys(file).slice(0, 3)).toEqual(['format', 'version', 'units'])
  expect(file.units).toEqual({ length: 'mm', money: 'cent' })
  // The study is 12 ft wide: 12 x 304.8 mm.
  expect(file.rooms?.[0]?.corners?.[1]?.x).toBe(3657.6)
})

test('sixty-fourths of an inch and hundredths of a millimetre survive the file', () => {
  const job = twoRooms()
  const study = job.rooms.study
  if (!study) throw new Error('the study is missing')
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 100 * 12 * 64 }),
      fc.integer({ min: 1, max: 20_000 }),
      (parts, hundredths) => {
        const corners = study.corners.map((corner, index) =>
          index === 2
            ? {
                ...corner,
                x: inches(parts / 64 + 200),
                y: ((feet(10) as number) + hundredths * 80) as typeof corner.y,
              }
            : corner,
        )
        const changed = { ...job, rooms: { ...job.rooms, study: { ...study, corners } } }
        const read = readJobFile(writeJobFile(changed))
        if (read.ok) expect(read.value).toEqual(changed)
        else expect(read.problem.kind).not.toBe('notValid')
      },
    ),
    { numRuns: 50 },
  )
})

test.each<[string, string, unknown, string]>([
  ['an unknown field', 'rooms.0.colour', 'red', 'rooms[0]'],
  ['an unknown collection', 'extras', [], ''],
  ['a missing field', 'rooms.0.name', undefined, 'rooms[0].name'],
  ['a missing collection', 'openings', undefined, 'openings'],
  ['a word for a number', 'rooms.0.corners.0.x', '12', 'rooms[0].corners[0].x'],
  ['nothing for a number', 'rooms.0.corners.0.x', null, 'rooms[0].corners[0].x'],
  ['a huge coordinate', 'rooms.0.corners.0.x', 1e9, 'rooms[0].corners[0].x'],
  ['a negative width', 'openings.0.width', -5, 'openings[0].width'],
  ['a width of nothing', 'openings.0.width', 0, 'openings[0].width'],
  ['a kind nobody knows', 'openings.0.kind', 'porthole', 'openings[0].kind'],
  ['a ceiling nobody knows', 'rooms.0.ceiling.kind', 'dome', 'rooms[0].ceiling.kind'],
  ['a list for a record', 'rooms.0', [], 'rooms[0]'],
  ['too few corners', 'rooms.0.corners', [], 'rooms[0].corners'],
  ['half a leaf', 'openings.0.slab.leaves', 1.5, 'openings[0].slab.leaves'],
  ['a day that is not in the calendar', 'header.startsOn', '2027-02-30', 'header.startsOn'],
  ['a start before anybody paints', 'header.startsOn', '0001-01-01', 'header.startsOn'],
  ['a start after all calendars', 'header.startsOn', '9999-12-31', 'header.startsOn'],
  ['an id with a space', 'rooms.0.id', 'the study', 'rooms[0].id'],
  ['an id that is a plain number', 'rooms.0.id', '12', 'rooms[0].id'],
  ['an id every object has', 'rooms.0.id', 'constructor', 'rooms[0].id'],
  [
    'a humidity over a hundred',
    'header.air.relativeHumidityPercent',
    101,
    'header.air.relativeHumidityPercent',
  ],
  ['a time zone nobody knows', 'header.timeZone', 'Moon/Tranquility', 'header.timeZone'],
  [
    'a day that ends before it begins',
    'houseRules.siteHours',
    { from: '17:00', to: '08:00' },
    'houseRules.siteHours',
  ],
  ['inches', 'units.length', 'in', 'units.length'],
  ['dollars', 'units.money', 'dollar', 'units.money'],
  ['another format', 'format', 'shopping-list', 'format'],
  ['no version', 'version', undefined, 'version'],
  ['half a version', 'version', 0.5, 'version'],
])('%s is refused at its place', (_name, place, value, path) => {
  const problem = problemOf(fileWith(set(place, value)))
  expect(problem.kind).toBe('notValid')
  expect(problem.path).toBe(path)
  expect(problem.sentence).toMatch(/\.$/)
  expect(problem.sentence).not.toMatch(/undefined|\[object|Invalid input/)
})

test.each<[string, string, unknown, string]>([
  ['an unknown collection', 'extras', [], 'This version knows no field "extras".'],
  [
    'an unknown field',
    'rooms.0.colour',
    'red',
    'At rooms[0]: this version knows no field "colour" (in "Study").',
  ],
  [
    'no version',
    'version',
    undefined,
    'This job file does not say its version; this program reads versions 1 to 10.',
  ],
  ['half a version', 'version', 0.5, 'This job file says version 0.5; this program reads versions 1 to 10.'],
])('%s is told in a plain sentence', (_name, place, value, sentence) => {
  expect(problemOf(fileWith(set(place, value))).sentence).toBe(sentence)
})

test.each<[string, string, unknown, string]>([
  ['a room on no storey', 'rooms.1.storeyId', 'cellar', 'rooms[1].storeyId'],
  ['an opening in no room', 'openings.0.roomId', 'attic', 'openings[0].roomId'],
  ['an opening on no wall', 'openings.1.wallId', 'up', 'openings[1].wallId'],
  ['a far side in no room', 'openings.0.far.roomId', 'attic', 'openings[0].far.roomId'],
  ['a far side on no wall', 'openings.0.far.wallId', 'up', 'openings[0].far.wallId'],
  ['trim on no wall', 'trimRuns.1.walls.1', 'up', 'trimRuns[1].walls[1]'],
  ['a kept item in no room', 'keptItems.0.roomId', 'attic', 'keptItems[0].roomId'],
  ['a kept item on no opening', 'keptItems.0.on.openingId', 'hole', 'keptItems[0].on.openingId'],
  ['a crack on no wall', 'conditions.0.on.surface.wallId', 'up', 'conditions[0].on.surface'],
  ['a finish on no side', 'finishes.0.scope.surface.part', 'sash', 'finishes[0].scope.surface'],
  ['a finish in no colour', 'finishes.0.colourId', 'blue', 'finishes[0].colourId'],
])('%s is a dangling reference', (_name, place, value, path) => {
  const problem = problemOf(fileWith(set(place, value)))
  expect(problem).toMatchObject({ kind: 'danglingReference', path })
})

test('a mark by a crew member who is not there is a dangling reference', () => {
  const mark = {
    id: 'm',
    stepKey: 's',
    mark: 'done',
    at: '2027-03-31T08:30',
    crewMemberIds: ['ada', 'zed'],
    actualMinutes: 1,
    note: '',
  }
  expect(problemOf(fileWith(set('marks', [mark])))).toMatchObject({
    kind: 'danglingReference',
    path: 'marks[0].crewMemberIds[1]',
  })
})

test('the same id twice is refused with the place of the second', () => {
  const text = fileWith((file) => (file.openings as unknown as Json[]).push(file.openings?.[0] as Json))
  expect(problemOf(text)).toMatchObject({ kind: 'duplicateId', path: 'openings[2].id' })
  expect(problemOf(fileWith(set('rooms.0.corners.1.wallId', 'north')))).toMatchObject({
    kind: 'duplicateId',
    path: 'rooms[0].corners[1].wallId',
  })
})

test('two finishes for one scope are refused, and so are two records of what is there now', () => {
  const finish = (scope: object) => (file: Json) => {
    const first = file.finishes?.[0] as Json
    file.finishes = [first, { ...first, id: 'one', scope }, { ...first, id: 'two', scope }] as unknown as Json
  }
  expect(problemOf(fileWith(finish({ level: 'room', roomId: 'study', surfaceClass: 'trim' })))).toEqual({
    kind: 'duplicateScope',
    sentence:
      '"one" and "two" both say the finish of the trim in Study. Take one of the two away, or give it another scope.',
    path: 'finishes[2].scope',
    ids: ['one', 'two'],
  })
  const said = (id: string, surfaceClass: string) => ({
    id,
    scope: { level: 'house', surfaceClass },
    substrate: 'wood',
    coat: 'latexFlat',
    sheen: 'satin',
    depth: 'light',
    textured: false,
  })
  const twice = problemOf(
    fileWith(set('existing', [said('a', 'doors'), said('b', 'sash'), said('c', 'doors')])),
  )
  expect(twice).toMatchObject({ kind: 'duplicateScope', path: 'existing[2].scope', ids: ['a', 'c'] })
  expect(twice.sentence).toContain('what is there now of the doors in the whole house')
  expect(readJobFile(fileWith(set('existing', [said('a', 'doors'), said('b', 'sash')]))).ok).toBe(true)
  const casing = problemOf(
    fileWith((file) => {
      const first = file.finishes?.[0] as Json
      file.finishes = [first, { ...first, id: 'again' }] as unknown as Json
    }),
  )
  expect(casing.sentence).toMatch(/^"far-casing" and "again" both say the finish of the surface opening:/)
})

test('a newer version is told apart from a damaged file, whatever else is in it', () => {
  expect(problemOf('{"format":"coatwright-job","version":11,"new":1}').kind).toBe('fileFromTheFuture')
})

test('text that is not JSON is refused with line and column', () => {
  expect(problemOf('{\n  "format": NaN\n}')).toMatchObject({ kind: 'notValid', path: 'line 2, column 13' })
  expect(problemOf('').path).toBe('line 1, column 1')
  expect(problemOf('{"a":1,\n"a":2}').sentence).toContain('a second time')
  expect(problemOf(`{"a":${'['.repeat(1_000_000)}`).sentence).toContain('nested too deep')
  expect(problemOf('{"__proto__":{"x":1}}').kind).toBe('notValid')
})

test('an infinite number hidden in an exponent is refused', () => {
  const text = writeJobFile(twoRooms()).replace('"x": 3657.6', '"x": 1e999')
  expect(problemOf(text).path).toBe('rooms[0].corners[1].x')
})

test('the text check agrees with the language on what JSON is', () => {
  const pieces = fc.array(
    fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"a"',
      '"b"',
      '1',
      '-0.5e3',
      'true',
      'null',
      ' ',
      '01',
      '"\\u00e9"',
      "'",
    ),
    {
      maxLength: 12,
    },
  )
  const texts = fc.oneof(
    pieces.map((parts) => parts.join('')),
    fc.json(),
    fc.string(),
  )
  fc.assert(
    fc.property(texts, (text) => {
      const fault = findJsonFault(text)
      if (fault === null) expect(() => JSON.parse(text)).not.toThrow()
      else if (!/second time|not allowed|too deep/.test(fault.sentence))
        expect(() => JSON.parse(text)).toThrow()
    }),
    { numRuns: 3000 },
  )
})

test('laid out JSON is the same data', () => {
  fc.assert(
    fc.property(fc.jsonValue({ noUnicodeString: false }), (value) => {
      expect(JSON.parse(layOutJson(value))).toEqual(JSON.parse(JSON.stringify(value)))
    }),
  )
  expect(layOutJson({ short: [1, { a: 2 }] })).toBe('{ "short": [1, { "a": 2 }] }\n')
  expect(layOutJson(['x'.repeat(60), 'y'.repeat(60)])).toBe(
    `[\n  "${'x'.repeat(60)}",\n  "${'y'.repeat(60)}"\n]\n`,
  )
})

test('whatever is changed in a file, reading it never throws and never loads half', () => {
  const text = writeJobFile(twoRooms())
  const damage = fc.tuple(fc.nat(text.length - 1), fc.nat(30), fc.string({ maxLength: 6 }))
  fc.assert(
    fc.property(damage, ([at, length, put]) => {
      const read = readJobFile(text.slice(0, at) + put + text.slice(at + length))
      if (read.ok) expect(readJobFile(writeJobFile(read.value))).toEqual(read)
      else expect(read.problem.sentence.length).toBeGreaterThan(10)
    }),
    { numRuns: 300 },
  )
})

test('the patterns of the published schema tell every day of the calendar from those it does not have', () => {
  const { properties } = z.toJSONSchema(z.strictObject({ day: localDateSchema }), { io: 'input' })
  const day = properties?.day as {
    readonly pattern?: string
    readonly allOf?: readonly { readonly pattern: string }[]
  }
  const patterns = [
    ...(day.pattern === undefined ? [] : [day.pattern]),
    ...(day.allOf ?? []).map(({ pattern }) => pattern),
  ]
  const holds = (text: string) => patterns.every((pattern) => new RegExp(pattern, 'u').test(text))
  const two = (value: number) => String(value).padStart(2, '0')
  for (const year of [1969, 1970, 1999, 2000, 2024, 2027, 2100, 2199, 2200]) {
    for (let month = 0; month <= 13; month++) {
      for (let date = 0; date <= 32; date++) {
        const real = new Date(Date.UTC(year, month - 1, date))
        const exists = month >= 1 && month <= 12 && date >= 1 && real.getUTCMonth() === month - 1
        const text = `${year}-${two(month)}-${two(date)}`
        expect([text, holds(text)]).toEqual([text, exists && year >= 1970 && year < 2200])
      }
    }
  }
})

test('a file of before jobs had ids gets one from what it says: always the same, and another for another job', () => {
  const old = (title: string) => {
    const file = JSON.parse(writeJobFile(twoRooms())) as Json
    const { id: _id, ...header } = file.header as Json
    return JSON.stringify({ ...file, version: 1, header: { ...header, title } })
  }
  const idOf = (text: string) => {
    const read = readJobFile(text)
    if (!read.ok) throw new Error(read.problem.sentence)
    return read.value.header.id
  }
  expect(idOf(old('First'))).toMatch(/^job-[0-9a-f]{16}$/)
  expect(idOf(old('First'))).toBe(idOf(old('First')))
  expect(idOf(old('First'))).not.toBe(idOf(old('Second')))
})
