import { expect, test } from 'vitest'
import { type PlanAim, planAims } from '../../core/project/vocabulary.ts'
import { asAimed } from '../../core/schedule/choice/aims.ts'
import { type ComparedPlan, chosenPlans, isBetter } from '../../core/schedule/choice/choose.ts'
import { differenceSentence } from '../../core/schedule/choice/difference.ts'
import { figuresOf } from '../../core/schedule/judge/plan-costs.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import type { ScheduleProblem } from '../../core/schedule/model.ts'
import { createSearch } from '../../core/schedule/tries/search.ts'
import { link, person, problem, room, task } from './builders.ts'

/** A plan of which only the figures count: rooms out of use side by side from the first of March on. */
function plan(values: {
  readonly last: number
  readonly roomDays: number
  readonly pay: number
  readonly total: number
  readonly rooms?: number
  readonly people?: number
  readonly idle?: number
}): ComparedPlan {
  const { last, roomDays, pay, total, rooms = 2, people = 2, idle = 0 } = values
  const date = (day: number) => `2027-03-${String(day).padStart(2, '0')}`
  const each = roomDays / rooms
  return {
    finishesOn: date(last),
    roomDays,
    cost: { pay, total },
    roomsOutOfUse: Array.from({ length: rooms }, (_, index) => ({
      roomId: `room-${index}` as ComparedPlan['roomsOutOfUse'][number]['roomId'],
      from: `${date(1)}T00:00`,
      to: `${date(each)}T23:59`,
    })),
    days: Array.from({ length: last * people }, (_, index) => ({
      crewMemberId: `person-${index % people}` as ComparedPlan['days'][number]['crewMemberId'],
      date: date(1 + Math.floor(index / people)),
      from: '',
      to: '',
      paidMinutes: 480,
      setUpMinutes: 0,
      leavingMinutes: 0,
      betweenMinutes: 0,
      workMinutes: 480 - idle,
    })),
  }
}

const balanced = plan({ last: 10, roomDays: 16, pay: 400_000, total: 700_000 })
const soonest = plan({ last: 8, roomDays: 20, pay: 420_000, total: 720_000 })
const calmest = plan({ last: 12, roomDays: 14, pay: 410_000, total: 715_000 })
const cheapest = plan({ last: 12, roomDays: 18, pay: 390_000, total: 730_000 })

function chosen(found: readonly (readonly [PlanAim, ComparedPlan])[], others: readonly ComparedPlan[] = []) {
  return chosenPlans(new Map(found), others, (each) => each)
}

test('plans that are each best at what they were looked for stay where they are', () => {
  const found = [
    ['balanced', balanced],
    ['soonest', soonest],
    ['calmest', calmest],
    ['cheapest', cheapest],
  ] as const
  expect([...chosen(found)]).toEqual(found)
})

test('none is worse than another at its own aim, whichever was found for which', () => {
  const all = [balanced, soonest, calmest, cheapest]
  for (let turn = 0; turn < 4; turn++) {
    const found = planAims.map((aim, index) => [aim, all[(index + turn) % 4] as ComparedPlan] as const)
    const best = chosen(found)
    for (const [aim, own] of best) for (const other of all) expect(isBetter(aim, other, own)).toBe(false)
    expect(best.get('balanced')).toBe(balanced)
    expect(best.get('soonest')).toBe(soonest)
    expect(best.get('calmest')).toBe(calmest)
    expect(best.get('cheapest')).toBe(cheapest)
  }
})

test('the plan on screen is taken where it is better than what was found, and of two as good the own one stays', () => {
  const shown = plan({ last: 10, roomDays: 16, pay: 399_000, total: 699_000 })
  expect(chosen([['balanced', balanced]], [shown]).get('balanced')).toBe(shown)
  expect(chosen([['balanced', balanced]], [{ ...balanced }]).get('balanced')).toBe(balanced)
  expect([...chosen([['calmest', calmest]]).keys()]).toEqual(['calmest'])
})

test('what is traded is said in days, room-days and money, with what about the work explains it', () => {
  expect(differenceSentence('soonest', plan({ ...figures(soonest), rooms: 4 }), balanced)).toBe(
    'Soonest: 2 days sooner, 4 more room-days, $200 more pay: 4 rooms are out of use on a usual day instead of 2.',
  )
  expect(differenceSentence('soonest', plan({ ...figures(soonest), people: 3 }), balanced)).toBe(
    'Soonest: 2 days sooner, 4 more room-days, $200 more pay: 3 people come on a usual day instead of 2.',
  )
  expect(
    differenceSentence(
      'cheapest',
      plan({ last: 10, roomDays: 17, pay: 390_000, total: 730_000, rooms: 1 }),
      plan({ last: 10, roomDays: 16, pay: 400_000, total: 700_000, rooms: 1 }),
    ),
  ).toBe('Cheapest: 1 more room-day, $100 less pay.')
  expect(
    differenceSentence(
      'cheapest',
      plan({ last: 10, roomDays: 17, pay: 390_000, total: 730_000, rooms: 1 }),
      plan({ last: 10, roomDays: 16, pay: 400_000, total: 700_000, rooms: 1, idle: 30 }),
    ),
  ).toBe('Cheapest: 1 more room-day, $100 less pay: 10 h less is paid without work.')
})

test('a plan that is the balanced one is not said to trade anything', () => {
  expect(differenceSentence('calmest', balanced, balanced)).toBe('Calmest: no better than the balanced plan.')
})

function figures({ finishesOn, roomDays, cost }: ComparedPlan) {
  return { last: Number(finishesOn.slice(8)), roomDays, ...cost }
}

/** Two painters, four rooms of two passes with a night between: side by side it is over soon, one by one it is calm. */
const house: ScheduleProblem = problem({
  people: [person('Ann'), person('Ben')],
  rooms: ['a', 'b', 'c', 'd'].map((id) => room(id, { centsPerDay: 4000 })),
  tasks: ['a', 'b', 'c', 'd'].flatMap((id) => [
    task(`${id}1`, { room: id, work: 240, crew: { min: 1, max: 2 }, effects: { touchDry: 16 * 60 } }),
    task(`${id}2`, { room: id, work: 240, crew: { min: 1, max: 2 } }),
  ]),
  links: ['a', 'b', 'c', 'd'].map((id) => link(`${id}1`, `${id}2`, 16 * 60)),
  prices: { siteDay: 20_000, handOver: 1000, takeUp: 4000 },
})

test('an aim changes prices and nothing that a plan is judged by', () => {
  for (const aim of planAims) {
    const { prices, rooms, ...rest } = asAimed(house, aim)
    const { prices: _prices, rooms: _rooms, ...own } = house
    expect(rest).toEqual(own)
    expect(rooms.map(({ centsPerDay: _, centsPerDayWaiting: __, ...each }) => each)).toEqual(
      house.rooms.map(({ centsPerDay: _, centsPerDayWaiting: __, ...each }) => each),
    )
    const search = createSearch(asAimed(house, aim), 1)
    search.step(300)
    const best = search.best()
    if (best === undefined) throw new Error(`no plan was found for ${aim}`)
    expect(verifyPlan(house, best)).toEqual([])
  }
  expect(asAimed(house, 'balanced')).toBe(house)
})

test('where a job counts a room or a day for nothing, the calm and the soon plan count it all the same', () => {
  const free = { ...house, rooms: house.rooms.map((each) => ({ ...each, centsPerDay: 0 })) }
  expect(asAimed(free, 'calmest').rooms.every(({ centsPerDay }) => centsPerDay > 0)).toBe(true)
  const noDays = { ...house, prices: { ...house.prices, siteDay: 0 } }
  expect(asAimed(noDays, 'soonest').prices.siteDay).toBeGreaterThan(0)
  expect(asAimed(noDays, 'cheapest').prices.siteDay).toBe(0)
})

test('the searches find what they are for: the calm plan has fewest room-days, the soon one ends first, the cheap one pays least', () => {
  const costs = new Map(
    planAims.map((aim) => {
      const search = createSearch(asAimed(house, aim), 1)
      search.step(1500)
      const best = search.best()
      if (best === undefined) throw new Error(`no plan was found for ${aim}`)
      return [aim, figuresOf(house, best).cost] as const
    }),
  )
  const least = (part: 'roomDays' | 'siteDays' | 'pay' | 'total') =>
    Math.min(...[...costs.values()].map((cost) => cost[part]))
  expect(costs.get('calmest')?.roomDays).toBe(least('roomDays'))
  expect(costs.get('soonest')?.siteDays).toBe(least('siteDays'))
  expect(costs.get('cheapest')?.pay).toBe(least('pay'))
  expect(costs.get('balanced')?.total).toBe(least('total'))
})
