import { expect, test } from 'vitest'
import { type PlanAim, planAims } from '../../core/project/vocabulary.ts'
import { type ComparedPlan, isBetter } from '../../core/schedule/choice/choose.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import { choicePicture } from '../../renderer/panels/calendar/choice/choice-picture.ts'
import { createComparison } from '../../renderer/state/planner-comparison.ts'
import { createSliced } from '../../renderer/state/planner-search.ts'
import { demoJob } from './station-jobs.ts'

const frame = { width: 340, height: 176, left: 40, right: 16, top: 14, bottom: 34 }

function plan(finishesOn: string, roomDays: number, pay: number): ComparedPlan {
  return { finishesOn, roomDays, cost: { pay, total: pay }, days: [], roomsOutOfUse: [] }
}

const balanced = plan('2027-06-04', 210, 3_400_000)
const soon = plan('2027-06-01', 240, 3_500_000)
const calm = plan('2027-06-14', 170, 3_600_000)

test('a later last day lies further right, more room-days further up, inside the frame', () => {
  const picture = choicePicture(
    new Map<PlanAim, ComparedPlan>([
      ['balanced', balanced],
      ['soonest', soon],
      ['calmest', calm],
    ]),
    null,
    frame,
  )
  const dot = (aim: PlanAim) => picture.dots.find(({ aims }) => aims.includes(aim))
  expect(dot('soonest')?.x).toBeLessThan(dot('balanced')?.x ?? 0)
  expect(dot('balanced')?.x).toBeLessThan(dot('calmest')?.x ?? 0)
  expect(dot('soonest')?.y).toBeLessThan(dot('balanced')?.y ?? 0)
  expect(dot('balanced')?.y).toBeLessThan(dot('calmest')?.y ?? 0)
  for (const { x, y } of picture.dots) {
    expect(x > frame.left && x < frame.width - frame.right).toBe(true)
    expect(y > frame.top && y < frame.height - frame.bottom).toBe(true)
  }
  expect(picture.days.map(({ date }) => date)).toEqual(['2027-06-01', '2027-06-08', '2027-06-14'])
  expect(picture.roomDays.map(({ count }) => count)).toEqual([170, 205, 240])
})

test('plans alike are one dot with all their names, and the plan on screen is ringed or a dot of its own', () => {
  const plans = new Map<PlanAim, ComparedPlan>([
    ['balanced', balanced],
    ['soonest', balanced],
    ['calmest', calm],
  ])
  expect(
    choicePicture(plans, balanced, frame).dots.map(({ aims, onScreen }) => [aims.join(' '), onScreen]),
  ).toEqual([
    ['balanced soonest', true],
    ['calmest', false],
  ])
  expect(
    choicePicture(plans, soon, frame).dots.map(({ aims, onScreen }) => [aims.join(' '), onScreen]),
  ).toEqual([
    ['', true],
    ['balanced soonest', false],
    ['calmest', false],
  ])
})

test('where the plan on screen has become cheaper since, its dot is still the one that was taken', () => {
  const cheaper = { ...calm, cost: { pay: 3_590_000, total: 3_590_000 } }
  const plans = new Map<PlanAim, ComparedPlan>([
    ['balanced', balanced],
    ['calmest', calm],
  ])
  expect(
    choicePicture(plans, cheaper, frame).dots.map(({ aims, onScreen }) => [aims.join(' '), onScreen]),
  ).toEqual([
    ['balanced', false],
    ['calmest', true],
  ])
})

test('words of dots that lie on one another stand apart', () => {
  const near = new Map<PlanAim, ComparedPlan>([
    ['balanced', balanced],
    ['soonest', { ...balanced, roomDays: 211 }],
    ['calmest', { ...balanced, roomDays: 209 }],
    ['cheapest', { ...calm, roomDays: 210 }],
  ])
  const { dots } = choicePicture(near, null, frame)
  const rows = dots.filter(({ label }) => label.anchor === 'start').map(({ label }) => label.y)
  expect(rows).toHaveLength(3)
  for (const [index, y] of rows.slice(1).entries()) expect(y - (rows[index] ?? 0)).toBeGreaterThanOrEqual(15)
  expect(dots.find(({ aims }) => aims.includes('cheapest'))?.label.anchor).toBe('end')
})

const job = demoJob('l-shaped-room')
const now = '2027-03-29T07:30'

/** A clock on which every question takes 10 ms. */
function ticking(): () => number {
  let at = 0
  return () => {
    at += 10
    return at
  }
}

test('four plans are looked for, each as long, and none is worse than another or than the one on screen at its own aim', () => {
  const shown = createSliced(job, now, null)
  for (let slice = 0; slice < 4; slice++) shown.step()
  const onScreen = shown.current()?.workPlan
  if (onScreen === undefined) throw new Error('no plan was found')
  const comparison = createComparison(job, { now, shown: onScreen, busy: {}, seconds: 0.1 }, ticking())
  if (comparison === null) throw new Error('there is nothing in the way of a plan')
  let steps = 0
  while (comparison.share() < 1) {
    comparison.step()
    steps++
  }
  // 100 ms for each of four, 10 ms a slice.
  expect(steps).toBe(40)
  comparison.step()
  expect(comparison.share()).toBe(1)
  const plans = comparison.plans()
  expect([...plans.keys()]).toEqual([...planAims])
  for (const [aim, { problem, plan: found, workPlan }] of plans) {
    expect(verifyPlan(problem, found)).toEqual([])
    for (const other of plans.values()) expect(isBetter(aim, other.workPlan, workPlan)).toBe(false)
    expect(isBetter(aim, onScreen, workPlan)).toBe(false)
  }
})

test('before anything was looked for there is no plan to choose', () => {
  const comparison = createComparison(job, { now, shown: null, busy: {}, seconds: 1 }, ticking())
  expect(comparison?.plans().size).toBe(0)
  expect(comparison?.share()).toBe(0)
})

test('a job that cannot be planned has no plans to choose from', () => {
  expect(
    createComparison({ ...job, crew: {} }, { now, shown: null, busy: {}, seconds: 1 }, ticking()),
  ).toBeNull()
})
