import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { ContainerCount } from '../../core/price/containers.ts'
import { addDays } from '../../core/time/local-date.ts'
import type { Cents } from '../../core/units/money.ts'
import { shoppingList } from '../../core/work-order/shopping.ts'
import { containersByTrip, piecesByTrip, tripFor, tripsOf } from '../../core/work-order/trips.ts'
import { tasksByStep } from '../../core/work-order/work-plan.ts'
import { sampleInput } from './sample-order.ts'

const can = (name: string, gallons: number, count: number): ContainerCount => ({
  name,
  gallons,
  count,
  priceCents: 1000 as Cents,
})
const days = ['2027-03-29', '2027-03-31', '2027-04-05', '2027-04-14']

test('trips are as many days apart as asked for, and each buys until the next', () => {
  expect(tripsOf(days.toReversed(), 7)).toEqual([
    { number: 1, from: '2027-03-29', to: '2027-03-31' },
    { number: 2, from: '2027-04-05', to: '2027-04-05' },
    { number: 3, from: '2027-04-14', to: '2027-04-14' },
  ])
  expect(tripsOf(days, 30)).toEqual([{ number: 1, from: '2027-03-29', to: '2027-04-14' }])
  expect(tripsOf([], 7)).toEqual([])
})

test('cans come with the trip that needs them: the large ones first, what is left with the last', () => {
  const trips = tripsOf(days, 7)
  const needs = [
    { date: '2027-03-30', amount: 3 },
    { date: '2027-04-05', amount: 1.5 },
    { date: '2027-04-14', amount: 1 },
  ]
  const bought = containersByTrip([can('quart', 0.25, 3), can('gallon', 1, 5)], needs, trips)
  // 3 gallons; 4.5 gallons in all take two more; then what is left.
  expect(
    [...bought].map(([trip, cans]) => [trip, cans.map(({ name, count }) => `${count} ${name}`)]),
  ).toEqual([
    [1, ['3 gallon']],
    [2, ['2 gallon']],
    [3, ['3 quart']],
  ])
})

test('whatever the needs, every can and piece is bought once, and never too late', () => {
  const need = fc.record({ day: fc.nat(60), amount: fc.double({ min: 0.01, max: 4, noNaN: true }) })
  fc.assert(
    fc.property(
      fc.array(need, { minLength: 1, maxLength: 12 }),
      fc.integer({ min: 1, max: 20 }),
      (asked, apart) => {
        const needs = asked.map(({ day, amount }) => ({ date: addDays('2027-03-29', day), amount }))
        const total = needs.reduce((sum, { amount }) => sum + amount, 0)
        const trips = tripsOf(
          needs.map(({ date }) => date),
          apart,
        )
        const bought = containersByTrip(
          [can('gallon', 1, Math.ceil(total)), can('quart', 0.25, 1)],
          needs,
          trips,
        )
        const pieces = piecesByTrip(1.5, needs, trips)
        const gallonsUntil = (number: number) =>
          [...bought].reduce(
            (sum, [trip, cans]) =>
              sum + (trip > number ? 0 : cans.reduce((all, each) => all + each.gallons * each.count, 0)),
            0,
          )
        const piecesUntil = (number: number) =>
          [...pieces].reduce((sum, [trip, count]) => sum + (trip > number ? 0 : count), 0)
        for (const { number } of trips) {
          const needed = needs
            .filter(({ date }) => (tripFor(trips, date)?.number ?? 0) <= number)
            .reduce((sum, { amount }) => sum + amount, 0)
          expect(gallonsUntil(number)).toBeGreaterThan(needed - 1e-6)
          expect(piecesUntil(number) * 1.5).toBeGreaterThan(needed - 1e-6)
        }
        expect(gallonsUntil(Infinity)).toBeCloseTo(Math.ceil(total) + 0.25, 6)
        expect(piecesUntil(Infinity)).toBe(Math.ceil(total / 1.5 - 1e-9))
      },
    ),
    { numRuns: 100, seed: 7 },
  )
})

test('a color mixed to order is bought with its first trip, tools come with the first that needs them', () => {
  const { job, specification, estimate, plan } = sampleInput()
  // The second coat of the walls a fortnight later.
  const later = {
    ...plan,
    tasks: plan.tasks.map((task) =>
      task.stepKeys.includes('study/walls/coat-2')
        ? { ...task, startsAt: '2027-04-13T08:15', endsAt: '2027-04-13T10:25' }
        : task,
    ),
  }
  const list = shoppingList({
    steps: specification.steps,
    priced: estimate,
    tasks: tasksByStep(later),
    startsOn: plan.startsOn,
    daysBetweenTrips: 7,
  })
  expect(job.header.startsOn).toBe('2027-03-29')
  expect(list.trips.map(({ from }) => from)).toEqual(['2027-03-29', '2027-04-13'])
  const paint = list.trips.map(({ lines }) =>
    lines.filter(({ item }) => item === 'Wall paint').map(({ count }) => count),
  )
  expect(paint).toEqual([[3], []])
  expect(list.trips[0]?.tools).toContain('Roller frames 9 and 4 in, trays, extension pole')
  expect(list.trips[1]?.tools).toEqual([])
  // Totals are those of the estimate.
  expect(list.totals.map(({ boughtGallons }) => boughtGallons)).toEqual(
    estimate.materials.map(({ boughtGallons }) => boughtGallons),
  )
})
