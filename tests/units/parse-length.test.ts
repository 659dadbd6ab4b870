import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lengthAt, readWritten } from '../../core/sketch/tape-list/tape-lengths.ts'
import {
  formatFeetInches,
  unitsPer64thInch,
  unitsPerFoot,
  unitsPerInch,
  unitsPerMillimetre,
} from '../../core/units/length.ts'
import { parseLength } from '../../core/units/parse-length.ts'
import { readSides } from '../../renderer/canvas/tools/rectangle.ts'
import { plainJob } from '../fixtures/plain-room.ts'

const foot = unitsPerFoot
const inch = unitsPerInch
const metre = 1000 * unitsPerMillimetre

test.each([
  [`12'`, 12 * foot],
  [`12' 6"`, 12 * foot + 6 * inch],
  [`12'6"`, 12 * foot + 6 * inch],
  [`12'6`, 12 * foot + 6 * inch],
  [`12'-6"`, 12 * foot + 6 * inch],
  [`12' - 6 1/2"`, 12 * foot + 6.5 * inch],
  [`12' 6 1/2"`, 12 * foot + 6.5 * inch],
  [`12' 6-1/2"`, 12 * foot + 6.5 * inch],
  [`12' 6½"`, 12 * foot + 6.5 * inch],
  [`12′ 6″`, 12 * foot + 6 * inch],
  [`12’ 6”`, 12 * foot + 6 * inch],
  [`12' 6''`, 12 * foot + 6 * inch],
  [`12' 1/2"`, 12 * foot + 0.5 * inch],
  ['12 ft 6 in', 12 * foot + 6 * inch],
  ['12 ft. 6 in.', 12 * foot + 6 * inch],
  ['12ft6', 12 * foot + 6 * inch],
  ['12 feet 6 inches', 12 * foot + 6 * inch],
  ['2 foot 8', 2 * foot + 8 * inch],
  ['  7 FT ', 7 * foot],
  ['12-6', 12 * foot + 6 * inch],
  ['2-10', 2 * foot + 10 * inch],
  ['12-6 1/2', 12 * foot + 6.5 * inch],
  ['12 - 6"', 12 * foot + 6 * inch],
  ['12 6', 12 * foot + 6 * inch],
  ['12 6 1/2', 12 * foot + 6.5 * inch],
  ['12f6', 12 * foot + 6 * inch],
  ['12f', 12 * foot],
  ['12', 12 * foot],
  ['12.5', 12.5 * foot],
  ['.5', 0.5 * foot],
  ['12 1/2', 12.5 * foot],
  ['150 in', 150 * inch],
  ['150in', 150 * inch],
  ['4 1/2"', 4.5 * inch],
  ['5/8"', 0.625 * inch],
  ['3.81 m', 3.81 * metre],
  ['3,81 m', 3.81 * metre],
  ['3.81m', 3.81 * metre],
  ['381 cm', 3.81 * metre],
  ['3810 mm', 3.81 * metre],
  ['0', 0],
])('%s typed in a job in feet', (text, units) => {
  expect(parseLength(text, 'imperial')).toEqual({ ok: true, length: units })
})

test('a bare number is metres in a metric job and inches where the field is in inches', () => {
  expect(parseLength('3.81', 'metric')).toEqual({ ok: true, length: 3.81 * metre })
  expect(parseLength('4 1/2', 'imperial', 'in')).toEqual({ ok: true, length: 4.5 * inch })
  expect(parseLength('114', 'metric', 'mm')).toEqual({ ok: true, length: 114 * unitsPerMillimetre })
})

test.each(['12-6', '2-10', '12 6', '12f6', `12'6"`, '12-6 1/2', '12 6 1/2', '150in', '3.81m', '12.5', '12'])(
  '%s is the same length in a field, while drawing and in the list of rooms',
  (text) => {
    const written = lengthAt(text, 0)
    expect(written?.end).toBe(text.length)
    const listed = written && readWritten(text, written, 'imperial', null)
    expect(listed).toMatchObject(parseLength(text, 'imperial'))
    expect(readSides(`${text} x ${text}`, { job: plainJob() })).toMatchObject({
      width: listed?.ok ? listed.length : null,
    })
  },
)

test('where a bare number is inches or metric, only a hyphen makes feet of it, and only in an imperial job', () => {
  expect(parseLength('2-10', 'imperial', 'in')).toEqual({ ok: true, length: 34 * inch })
  expect(parseLength('2 10', 'imperial', 'in').ok).toBe(false)
  expect(parseLength('2-10', 'metric').ok).toBe(false)
})

test.each([
  '',
  '   ',
  '-3',
  `-12' 6"`,
  '12-14',
  'twelve',
  '12 13',
  `12' 6" 3`,
  '1/0"',
  '1e9',
  '12 yd',
  `'`,
  '"',
  '..',
  'NaN',
  '1 000',
])('%j is refused with a sentence', (text) => {
  const read = parseLength(text, 'imperial')
  expect(read.ok).toBe(false)
  if (!read.ok) expect(read.sentence).toMatch(/Write a length like/)
})

test('a comma that may mean thousands is not guessed at', () => {
  expect(parseLength('1,200 mm', 'metric')).toMatchObject({
    ok: false,
    sentence: expect.stringContaining('two ways'),
  })
})

test('a length longer than any house is refused, not stored', () => {
  expect(parseLength('99999999999999999999', 'imperial').ok).toBe(false)
  expect(parseLength('200 m', 'metric').ok).toBe(true)
  expect(parseLength('201 m', 'metric').ok).toBe(false)
})

test('what is shown in sixty-fourths reads back to the very same length', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 656 * 12 * 64 }), (sixtyFourths) => {
      const length = sixtyFourths * unitsPer64thInch
      expect(parseLength(formatFeetInches(length, 64), 'imperial')).toEqual({ ok: true, length })
    }),
  )
})

test('whole millimetres typed in mm, cm or m read the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 200_000 }), (mm) => {
      const length = mm * unitsPerMillimetre
      expect(parseLength(`${mm} mm`, 'metric')).toEqual({ ok: true, length })
      expect(parseLength(`${mm / 10} cm`, 'metric')).toEqual({ ok: true, length })
      expect(parseLength(`${mm / 1000} m`, 'metric')).toEqual({ ok: true, length })
    }),
  )
})

test('nothing typed makes it throw or answer with a length that is not whole', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...`0123456789'"/-. ftincm,½`) }), (text) => {
      const read = parseLength(text, 'imperial')
      if (read.ok) expect(Number.isSafeInteger(read.length) && read.length >= 0).toBe(true)
    }),
    { numRuns: 2000 },
  )
})
