import { expect, test } from 'vitest'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import { safetyRules } from '../../core/project/safety-limits.ts'
import { ruleSettingSchema } from '../../core/project/shop-records.ts'
import { twoRooms } from '../sketch/two-rooms.ts'

const reason = {
  testedBy: 'I. Spector, certificate 12',
  reportNumber: 'R-7',
  testedOn: '2027-02-03',
  found: 'All painted surfaces of the house tested, none with lead.',
}

const cases = Object.entries(safetyRules).flatMap(([id, limits]) =>
  Object.entries(limits).map(([name, limit]) => ({ id, name, ...limit })),
)

test.each(cases)('$name of $id may be made $stricter than $published, not weaker', (each) => {
  const step = each.stricter === 'larger' ? 1 : -1
  const setting = (value: number) => ({ id: each.id, on: true, numbers: { [each.name]: value } })
  for (const value of [each.published, each.published + step]) {
    expect(ruleSettingSchema.safeParse(setting(value)).success).toBe(true)
    expect(ruleSettingSchema.safeEncode(setting(value) as never).success).toBe(true)
  }
  const weaker = setting(each.published - step)
  expect(ruleSettingSchema.safeParse(weaker).error?.issues[0]).toMatchObject({ path: ['numbers', each.name] })
  expect(ruleSettingSchema.safeParse(weaker).error?.issues[0]?.message).toContain(String(each.published))
  expect(ruleSettingSchema.safeEncode(weaker as never).success).toBe(false)
})

test.each(Object.keys(safetyRules))('%s is left out only with a written reason', (id) => {
  const isRight = (setting: object) => ruleSettingSchema.safeParse({ id, numbers: {}, ...setting }).success
  expect(isRight({ on: true })).toBe(true)
  expect(isRight({ on: false })).toBe(false)
  expect(isRight({ on: false, leftOut: reason })).toBe(true)
  expect(isRight({ on: true, leftOut: reason })).toBe(false)
  for (const field of Object.keys(reason)) {
    expect(isRight({ on: false, leftOut: { ...reason, [field]: '' } })).toBe(false)
  }
})

test('an ordinary rule is switched without a reason and takes none', () => {
  const setting = { id: 'dust-down', on: false, numbers: {} }
  expect(ruleSettingSchema.safeParse(setting).success).toBe(true)
  expect(ruleSettingSchema.safeParse({ ...setting, leftOut: reason }).success).toBe(false)
})

/** A job file of version 1 with these rule settings. */
function oldFile(rules: readonly object[]): string {
  return JSON.stringify({ ...JSON.parse(writeJobFile(twoRooms())), version: 1, rules })
}

test('an older file whose safety rules were weakened or switched off is brought to the limits, in words', () => {
  const read = readJobFile(
    oldFile([
      { id: 'lead-safe', on: false, numbers: { interiorSquareFeet: 20, builtBefore: 1990 } },
      { id: 'asbestos-suspicion', on: true, numbers: { builtBefore: 1960 } },
      { id: 'dust-down', on: false, numbers: {} },
    ]),
  )
  if (!read.ok) throw new Error(read.problem.sentence)
  expect(read.value.rules['lead-safe']).toEqual({
    id: 'lead-safe',
    on: true,
    numbers: { interiorSquareFeet: 6, builtBefore: 1990 },
    raised:
      'Put right when this job was opened: the square feet that count as minor repair in a room stood at 20 and is 6 again, the published limit (40 CFR 745.83); it was switched off without a written reason and is on again.',
  })
  expect(read.value.rules['asbestos-suspicion']?.numbers).toEqual({ builtBefore: 1980 })
  expect(read.value.rules['asbestos-suspicion']?.raised).toContain('stood at 1960')
  expect(read.value.rules['dust-down']).toEqual({ id: 'dust-down', on: false, numbers: {} })
})

test('a file of today with a weakened number is refused with its place and the limit', () => {
  const rules = [{ id: 'lead-safe', on: true, numbers: { interiorSquareFeet: 20 } }]
  const read = readJobFile(JSON.stringify({ ...JSON.parse(writeJobFile(twoRooms())), rules }))
  expect(read).toMatchObject({ ok: false, problem: { path: 'rules[0].numbers.interiorSquareFeet' } })
  expect(read.ok ? '' : read.problem.sentence).toContain('6, the published limit (40 CFR 745.83)')
})
