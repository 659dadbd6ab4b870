import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { safetyRules } from '../../core/project/safety-limits.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { allRules, ruleById } from '../../core/specification/rule-list.ts'
import { changedRule, ruleBook } from '../../core/specification/rule-settings.ts'
import { specify } from '../../core/specification/specify.ts'
import { oneSurfaceJob } from './one-surface.ts'

const reason = {
  testedBy: 'I. Spector, certificate 12',
  reportNumber: 'R-7',
  testedOn: '2027-02-03',
  found: 'All painted surfaces of the house tested, none with lead.',
}

test('every rule about lead-safe work or asbestos is in the table of safety rules, with the numbers of the book', () => {
  // A new one is added to core/project/safety-limits.ts, with the limits that are published for its numbers.
  const themed = allRules.filter(({ theme }) => theme === 'lead' || theme === 'asbestos')
  expect(themed.length).toBeGreaterThan(1)
  for (const rule of themed) {
    expect(Object.keys(safetyRules)).toContain(rule.id)
    for (const [name, limit] of Object.entries(safetyRules[rule.id] ?? {})) {
      expect([rule.id, name, rule.numbers[name]?.value]).toEqual([rule.id, name, limit.published])
    }
  }
})

test('a safety rule takes stricter numbers, holds weaker ones to the limit, and is not just switched off', () => {
  const job = oneSurfaceJob({ surfaceClass: 'walls' })
  expect(changedRule(job, 'lead-safe', { numbers: { interiorSquareFeet: 2 } })?.numbers).toEqual({
    interiorSquareFeet: 2,
  })
  expect(changedRule(job, 'lead-safe', { numbers: { interiorSquareFeet: 20 } })).toBeNull()
  expect(() => changedRule(job, 'lead-safe', { on: false })).toThrow('written reason')
  const leftOut = changedRule(job, 'lead-safe', { leftOut: reason })
  expect(leftOut).toEqual({ id: 'lead-safe', on: false, numbers: {}, leftOut: reason })
  if (leftOut === null) throw new Error('left out')
  const without = { ...job, rules: { 'lead-safe': leftOut } }
  expect(changedRule(without, 'lead-safe', { numbers: { interiorSquareFeet: 3 } })).toMatchObject({
    on: false,
    leftOut: reason,
  })
  expect(changedRule(without, 'lead-safe', { on: true })).toBeNull()
  expect(ruleBook(without).find(({ facts }) => facts.id === 'lead-safe')).toMatchObject({
    safety: true,
    on: false,
    leftOut: reason,
  })
})

test('a rule that is left out says so, and why, once for the house and in each room it would speak in', () => {
  const old = oneSurfaceJob({ surfaceClass: 'walls', conditions: [['loosePaint', { areaMm2: 2e6 }]] })
  const job: Job = { ...old, header: { ...old.header, yearBuilt: 1927 } }
  const takeoff = takeOff(job)
  // Once for the room, once for the house.
  expect(specify(job, takeoff).notices.filter(({ kind }) => kind === 'leadSafe')).toHaveLength(2)
  const setting = changedRule(job, 'lead-safe', { leftOut: reason })
  if (setting === null) throw new Error('it is left out')
  const { notices } = specify({ ...job, rules: { [setting.id]: setting } }, takeoff)
  expect(notices.filter(({ kind }) => kind === 'leadSafe')).toEqual([])
  const said = notices.filter(({ kind }) => kind === 'leftOut')
  expect(said.map(({ roomId }) => roomId)).toEqual([null, 'r'])
  for (const { sentence } of said) {
    expect(sentence).toContain(ruleById.get('lead-safe')?.title)
    for (const text of Object.values(reason)) expect(sentence).toContain(text)
  }
})
