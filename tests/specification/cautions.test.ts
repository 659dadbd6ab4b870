import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Operation, Step } from '../../core/specification/types.ts'
import { oldHouse } from '../../demo-data/old-house.ts'

const house = oldHouse()
const takeoff = takeOff(house)
const stepsOf = (header: Partial<Job['header']>) =>
  specify({ ...house, header: { ...house.header, ...header } }, takeoff).steps
const steps = stepsOf({})

const has = (step: Step, id: string) => step.cautions.some((caution) => caution.id === id)
/** Steps of these operations with the caution and without it. */
const counts = (operations: readonly Operation[], id: string) => {
  const asked = steps.filter(({ operation }) => operations.includes(operation))
  const warned = asked.filter((step) => has(step, id))
  return [warned.length > 0, asked.length - warned.length]
}
const operationsWith = (id: string, among = steps) =>
  [...new Set(among.filter((step) => has(step, id)).map(({ operation }) => operation))].toSorted()

const dusty: readonly Operation[] = [
  'sand',
  'sandFill',
  'sandPatch',
  'scrape',
  'openCrack',
  'reattachPlaster',
]

test('whatever makes dust says so, and keeps children and pets out of the room', () => {
  expect(counts(dusty, 'dust')).toEqual([true, 0])
  expect(counts(dusty, 'childrenAndPets')).toEqual([true, 0])
  expect(operationsWith('dust').filter((operation) => !dusty.includes(operation))).toEqual(['treatRust'])
})

test('children and pets stay out of solvent and of closed rooms, not of quiet work, and are named only where there are any', () => {
  const smelling = steps.filter((step) => has(step, 'solvent'))
  expect(smelling.length).toBeGreaterThan(0)
  expect(smelling.filter((step) => !has(step, 'childrenAndPets'))).toEqual([])
  const closing = steps.filter(({ effects }) => effects.closesRoom)
  expect(closing.length).toBeGreaterThan(0)
  expect(closing.filter((step) => !has(step, 'childrenAndPets'))).toEqual([])
  expect(counts(['caulk', 'maskOff', 'vacuum', 'putBack'], 'childrenAndPets')[0]).toBe(false)
  expect(operationsWith('childrenAndPets', stepsOf({ childrenOrPets: false }))).toEqual([])
})

test('nobody sleeps in solvent: said in bedrooms, nowhere else', () => {
  const warned = steps.filter((step) => has(step, 'sleeping'))
  expect(warned.length).toBeGreaterThan(0)
  expect(warned.filter(({ roomId }) => house.rooms[roomId]?.use !== 'bedroom')).toEqual([])
  const smelling = steps.filter((step) => has(step, 'solvent') && house.rooms[step.roomId]?.use === 'bedroom')
  expect(smelling.filter((step) => !has(step, 'sleeping'))).toEqual([])
})

test('cautions of one kind of work stand with that work alone', () => {
  expect(operationsWith('alarmCovered')).toEqual(['coverAlarm', 'restoreAlarm'])
  expect(operationsWith('bleach')).toEqual(['washMildew'])
  expect(operationsWith('glass')).toEqual(['freeSash'])
  expect(operationsWith('overhead')).toEqual(['reattachPlaster'])
  expect(operationsWith('electricity')).toEqual(['putBack', 'stripWallpaper', 'takeOff', 'washOffSize'])
  const hot = steps.filter((step) => has(step, 'heat'))
  expect(new Set(hot.map(({ surfaceClass }) => surfaceClass))).toEqual(new Set(['radiators']))
  expect(hot.some(({ operation }) => operation === 'coat')).toBe(true)
  expect(counts(['vacuum', 'dustOff', 'inspect'], 'heat')[0]).toBe(false)
})

test('rags of oil are named with oil, never with water-borne or shellac alone', () => {
  const oily = steps.filter((step) => has(step, 'oilyRags'))
  const baseOf = ({ productId }: Step) => (productId === null ? null : house.products[productId]?.base)
  expect(new Set(oily.map(baseOf))).toEqual(new Set(['oil']))
  const wetOil = steps.filter(
    (step) => baseOf(step) === 'oil' && ['coat', 'prime', 'sealBare'].includes(step.operation),
  )
  expect(wetOil.filter((step) => !has(step, 'oilyRags'))).toEqual([])
})

test('lead is named with work that cuts into the paint of an old house, not in a new one', () => {
  const cutting = operationsWith('lead')
  expect(cutting).toEqual(
    expect.arrayContaining(['scrape', 'sand', 'sandPatch', 'openCrack', 'stripWallpaper']),
  )
  expect(cutting).not.toContain('coat')
  expect(counts(['scrape', 'sandPatch', 'openCrack'], 'lead')).toEqual([true, 0])
  expect(operationsWith('lead', stepsOf({ yearBuilt: 1990 }))).toEqual([])
})
