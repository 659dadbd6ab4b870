import { expect, test } from 'vitest'
import { squareFeet, squareMetres } from '../../core/units/area.ts'
import { feet } from '../../core/units/length.ts'
import {
  areaEntry,
  areaText,
  dateEntry,
  decimalNumber,
  lengthEntry,
  moneyEntry,
  orNothing,
  wholeNumber,
} from '../../renderer/panels/parts/entries.ts'

test('a bare area is in the job’s own unit, a named one in its own', () => {
  expect(areaEntry('imperial')('4')).toEqual({ ok: true, value: squareFeet(4) })
  expect(areaEntry('metric')('1,5')).toEqual({ ok: true, value: squareMetres(1.5) })
  expect(areaEntry('imperial')('1.5 m²')).toEqual({ ok: true, value: squareMetres(1.5) })
  expect(areaEntry('metric')('12 sq ft')).toEqual({ ok: true, value: squareFeet(12) })
})

test('what is shown can be typed again', () => {
  for (const system of ['imperial', 'metric'] as const) {
    expect(areaEntry(system)(areaText(squareFeet(12), system)).ok).toBe(true)
  }
  expect(lengthEntry('imperial')(`6' 0"`)).toEqual({ ok: true, value: feet(6) })
})

test('what cannot be read is refused with what to type instead', () => {
  expect(areaEntry('imperial')('some')).toEqual({
    ok: false,
    sentence: 'Write an area like 12 sq ft or 1.1 m².',
  })
  expect(wholeNumber(1, 9)('2.5').ok).toBe(false)
  expect(wholeNumber(1, 9)('').ok).toBe(false)
  expect(decimalNumber(0, 10)('NaN').ok).toBe(false)
  expect(decimalNumber(0, 10)('11')).toEqual({ ok: false, sentence: 'Type a number from 0 to 10.' })
  expect(dateEntry('2027-13-01').ok).toBe(false)
  expect(moneyEntry('-3').ok).toBe(false)
})

test('money is whole cents, an empty optional entry is none', () => {
  expect(moneyEntry('$1,234.50')).toEqual({ ok: true, value: 123_450 })
  expect(orNothing(wholeNumber(0, 9))('  ')).toEqual({ ok: true, value: null })
})
