import { expect, test } from 'vitest'
import { present } from '../../core/lists/lists.ts'
import { ruleBook } from '../../core/specification/rule-settings.ts'
import type { StepOrder } from '../../core/specification/types.ts'
import { elapsedMinutes } from '../../core/units/duration.ts'
import { colourEntry } from '../../renderer/panels/finish/colour-entry.ts'
import { degrees, degreesEntry } from '../../renderer/panels/finish/degrees.ts'
import { countUses, numberHint, strictNumber } from '../../renderer/panels/finish/rule-entries.ts'
import { orderWaitWords } from '../../renderer/panels/finish/wait-words.ts'
import { chainOf } from '../../renderer/panels/parts/chain.ts'
import { twoRooms } from '../sketch/two-rooms.ts'
import { demoJob } from './station-jobs.ts'

test('degrees are shown and typed in the units of the job and come back as they were typed', () => {
  expect(degrees(10, true)).toBe('10')
  expect(degrees(10, false)).toBe('50')
  const read = degreesEntry([0, 40], false)
  for (const fahrenheit of [32, 45, 50, 68, 71, 104]) {
    const entry = read(String(fahrenheit))
    expect(entry.ok && degrees(entry.value, false)).toBe(String(fahrenheit))
  }
  expect(read('31').ok).toBe(false)
  expect(read('105').ok).toBe(false)
  expect(degreesEntry([0, 40], true)('7.2')).toEqual({ ok: true, value: 7.2 })
})

test('a color is six figures behind a sign, in either case', () => {
  expect(colourEntry(' #E4DCCB ')).toEqual({ ok: true, value: '#e4dccb' })
  for (const wrong of ['e4dccb', '#e4dcc', '#e4dccg', 'linen']) expect(colourEntry(wrong).ok).toBe(false)
})

const order: StepOrder = {
  before: 'a',
  after: 'b',
  minimumWait: elapsedMinutes(0),
  maximumWait: null,
  ruleId: 'rule',
  reason: '',
  source: '',
}

test('waits are said where there are any', () => {
  expect(orderWaitWords(order)).toBe('')
  expect(orderWaitWords({ ...order, minimumWait: elapsedMinutes(240) })).toBe('At least 4 h between. ')
  expect(
    orderWaitWords({ ...order, minimumWait: elapsedMinutes(60), maximumWait: elapsedMinutes(120) }),
  ).toBe('At least 1 h between. At most 2 h between. ')
})

const numbers = ruleBook(twoRooms()).flatMap((rule) => rule.numbers)
const builtBefore = present(numbers.find(({ name, limit }) => name === 'builtBefore' && limit !== null))

test('a number of a safety rule may be stricter than its limit and never weaker', () => {
  const { published } = present(builtBefore.limit)
  const read = strictNumber(builtBefore)
  expect(read(String(published + 2)).ok).toBe(true)
  expect(read(String(published)).ok).toBe(true)
  const weaker = read(String(published - 1))
  expect(weaker.ok ? '' : weaker.sentence).toMatch(/^It may only be made larger than .* the published limit/)
  expect(strictNumber({ ...builtBefore, limit: null })(String(published - 1)).ok).toBe(true)
})

test('below a number stands its limit, else where it comes from and what the book says', () => {
  expect(numberHint(builtBefore)).toMatch(/^may only be made larger/)
  const free = { ...builtBefore, limit: null, value: 5, source: 'common practice' }
  expect(numberHint({ ...free, changed: false })).toBe('common practice')
  expect(numberHint({ ...free, changed: true })).toBe('the book says 5 (common practice)')
})

test('a step counts for every rule that asked for it', () => {
  const { specification } = chainOf(demoJob('plain-room'))
  const uses = countUses(specification)
  const asked = specification.steps.flatMap(({ because }) => because.map(({ ruleId }) => ruleId))
  expect([...uses.values()].reduce((sum, count) => sum + count, 0)).toBe(asked.length)
  expect(uses.get(asked[0] ?? '')).toBe(asked.filter((ruleId) => ruleId === asked[0]).length)
  expect(uses.get('a rule that is none')).toBeUndefined()
})
