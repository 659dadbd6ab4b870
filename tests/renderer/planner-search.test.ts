import { expect, test } from 'vitest'
import { applyDiff, diffJobs } from '../../core/project/diff.ts'
import type { Issued } from '../../core/project/issued-records.ts'
import { type Job, records } from '../../core/project/job.ts'
import type { Pin, PinId } from '../../core/project/progress-records.ts'
import type { PlanBound } from '../../core/schedule/bound/bound.ts'
import { verifyPlan } from '../../core/schedule/judge/verify.ts'
import { finishOf } from '../../core/schedule/model.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { localTimeIn } from '../../core/time/local-time.ts'
import { feet, lengthFromUnits } from '../../core/units/length.ts'
import { verdictWords } from '../../renderer/panels/calendar/verdict-words.ts'
import { planBody } from '../../renderer/state/planner-accepted.ts'
import {
  createSliced,
  prepareSearch,
  type SlicedSearch,
  searchAsked,
} from '../../renderer/state/planner-search.ts'
import { demoJob } from './station-jobs.ts'

const job = demoJob('l-shaped-room')
const now = '2027-03-29T07:30'

function looked(search: SlicedSearch, slices: number): SlicedSearch {
  for (let slice = 0; slice < slices; slice++) if (search.step().isFinished) break
  return search
}

function planOf(changed: Job, slices = 4) {
  const found = looked(createSliced(changed, now, null), slices).current()
  if (found === null) throw new Error('no plan was found')
  return found
}

test('a plan that is told has passed the independent judge, and looking on never makes it worse', () => {
  const search = looked(createSliced(job, now, null), 1)
  const first = search.current()
  const later = looked(search, 4).current()
  if (first === null || later === null) throw new Error('no plan was found')
  expect(verifyPlan(later.problem, later.plan)).toEqual([])
  expect(later.workPlan.cost.total).toBeLessThanOrEqual(first.workPlan.cost.total)
  const bound = search.bound()
  expect(bound && later.workPlan.cost.total >= bound.cents).toBe(true)
})

test('the words say how good a plan is known to be, and that it is not known yet', () => {
  const found = planOf(job)
  const words = (bound: PlanBound | null) =>
    verdictWords(found, {
      job,
      busy: {},
      status: 'searching',
      plan: found,
      isSettled: true,
      bound,
      clash: null,
      isFinished: false,
      broken: null,
    })
  const local = localTimeIn(job.header.timeZone)
  const finish = local.dayAt(finishOf(found.plan) - 1) - local.dayAt(found.problem.clock.start)
  const boundAt = (day: number): PlanBound => ({ finish: day, cents: 0 })
  expect(words(null)).toBe('How much better it could be is being worked out.')
  expect(words(boundAt(finish - 2))).toBe('At most 2 days from the best possible for these tasks.')
  expect(words(boundAt(finish))).toBe('The last day is proved best for these tasks.')
})

test('a search prepared ahead is gone on with only for the same job, and finds what a new one finds', () => {
  const prepared = prepareSearch(job, now)
  const { search } = prepared
  expect(search.current()).not.toBe(null)
  // Nothing is marked on site, so that the plan begins on the first day whatever the clock says.
  expect(searchAsked(prepared, job, '2027-03-29T08:15', null)).toBe(search)
  expect(searchAsked(prepared, { ...job }, now, null)).not.toBe(search)
  expect(searchAsked(prepared, job, now, planOf(job).workPlan)).not.toBe(search)
  expect(looked(search, 3).current()?.workPlan).toEqual(planOf(job, 4).workPlan)
})

test('the same job gives the same plan', () => {
  expect(planOf(job).workPlan).toEqual(planOf(job).workPlan)
})

test('told only what changed, the planner plans as if it were told the whole job', () => {
  planOf(job)
  const ceiling = { kind: 'flat', height: lengthFromUnits(feet(11)) } as const
  const rooms = Object.fromEntries(records(job.rooms).map((room) => [room.id, { ...room, ceiling }]))
  const changed: Job = { ...job, rooms }
  const edited = applyDiff(job, structuredClone(diffJobs(job, changed)))
  expect(planOf(edited).workPlan).toEqual(planOf(structuredClone(changed)).workPlan)
  expect(planOf(edited).workPlan).not.toEqual(planOf(job).workPlan)
})

test('without a crew there is no plan, and the sentence says what to do', () => {
  const search = looked(createSliced({ ...job, crew: {} }, now, null), 1)
  expect(search.current()).toBeNull()
  expect(search.clash()).toMatchObject({ isProved: true, sentence: expect.stringContaining('Add somebody') })
})

test('a crew too large to keep apart is refused in a sentence', () => {
  const [member] = Object.values(job.crew)
  if (member === undefined) throw new Error('somebody is on the crew')
  const crew = Object.fromEntries(
    Array.from({ length: 31 }, (_, index) => [
      `crew-${index}`,
      { ...member, id: `crew-${index}` as typeof member.id },
    ]),
  )
  const search = looked(createSliced({ ...job, crew }, now, null), 1)
  expect(search.clash()?.sentence).toMatch(/^The plan cannot be made: 31 people are on the crew, .*\.$/)
})

test('a pin holds its task, and what was planned before stays where it can', () => {
  const before = planOf(job)
  const last = before.workPlan.tasks.at(-1)
  if (last === undefined) throw new Error('the plan is empty')
  const pin: Pin = {
    id: 'pin' as PinId,
    passKey: last.key,
    startsAt: last.startsAt,
    crewMemberIds: [],
  }
  const search = looked(createSliced({ ...job, pins: { pin } }, now, before.workPlan), 2)
  const after = search.current()
  expect(after?.workPlan.tasks.find((task) => task.key === last.key)?.startsAt).toBe(last.startsAt)
  // Of two plans that cost the same the one shown before stays; only a cheaper one moves something.
  const { movedTasks = 0, total = 0 } = after?.workPlan.cost ?? {}
  expect(movedTasks === 0 || total < before.workPlan.cost.total).toBe(true)
})

test('where nothing changed nothing of an accepted plan moves, and it costs no more, however long is looked on', () => {
  const first = createSliced(job, now, null)
  for (let slice = 0; slice < 3; slice++) first.step()
  const accepted = first.current()
  if (accepted === null) throw new Error('no plan was found')
  const promised: Job = {
    ...job,
    issued: {
      plan: {
        id: 'plan' as Issued['id'],
        kind: 'plan',
        issuedAt: '2027-03-29T08:00',
        body: planBody(accepted.workPlan, null),
      },
    },
  }
  const again = createSliced(promised, now, null)
  for (let slice = 0; slice < 6; slice++) {
    again.step()
    const { cost } = again.current()?.workPlan ?? {}
    expect(cost?.movedTasks).toBe(0)
    expect(cost?.total).toBeLessThanOrEqual(accepted.workPlan.cost.total)
  }
})

test('a coat accepted over two days counts as kept on both', () => {
  const house = demoJob('old-house')
  const first = createSliced(house, now, null)
  first.step()
  const accepted = first.current()
  if (accepted === null) throw new Error('no plan was found')
  expect(accepted.workPlan.tasks.some(({ key }) => key.endsWith('~2'))).toBe(true)
  const issued: Job['issued'] = {
    plan: {
      id: 'plan' as Issued['id'],
      kind: 'plan',
      issuedAt: '2027-03-29T08:00',
      body: planBody(accepted.workPlan, null),
    },
  }
  const again = createSliced({ ...house, issued }, now, null)
  again.step()
  expect(again.current()?.workPlan.cost.movedTasks).toBe(0)
})

test('a plan is a first guess until it was looked for long enough', () => {
  const search = looked(createSliced(job, now, null), 1)
  expect(search.current()).not.toBeNull()
  expect(search.isSettled()).toBe(false)
  expect(looked(search, 80).isSettled()).toBe(true)
  // Where there can be no plan nothing is a guess.
  expect(createSliced({ ...job, crew: {} }, now, null).isSettled()).toBe(true)
})

test('of two equal plans the one nearer to what was on screen is taken after an edit that changes nothing of the work', () => {
  const before = looked(createSliced(job, now, null), 20).current()
  if (before === null) throw new Error('no plan was found')
  const renamed = { ...job, header: { ...job.header, client: 'Somebody else' } }
  const after = looked(createSliced(renamed, now, before.workPlan), 20).current()
  const { movedTasks = -1, total = 0 } = after?.workPlan.cost ?? {}
  expect(total).toBeLessThanOrEqual(before.workPlan.cost.total)
  expect(movedTasks === 0 || total < before.workPlan.cost.total).toBe(true)
})

test('what a job looks for decides which plan is found', () => {
  const ofAim = (planFor: Job['header']['planFor']) => {
    const changed = { ...job, header: { ...job.header, planFor } }
    const found = looked(createSliced(changed, now, null), 1000).current()
    if (found === null) throw new Error('no plan was found')
    return found.workPlan
  }
  const plans = [ofAim('balanced'), ofAim('calmest'), ofAim('soonest'), ofAim('cheapest')]
  const [balanced, calmest, soonest, cheapest] = plans
  expect(balanced?.cost.total).toBe(Math.min(...plans.map(({ cost }) => cost.total)))
  expect(calmest?.roomDays).toBe(Math.min(...plans.map(({ roomDays }) => roomDays)))
  expect(soonest?.finishesOn).toBe(plans.map(({ finishesOn }) => finishesOn).toSorted()[0])
  expect(cheapest?.cost.pay).toBe(Math.min(...plans.map(({ cost }) => cost.pay)))
})

test('people busy on another job are planned around it, and a search made before that was known is not gone on with', () => {
  const [first] = planOf(job).plan.tasks.filter(({ people }) => people.length > 0)
  const somebody = first?.people[0]
  if (first === undefined || somebody === undefined) throw new Error('nobody works')
  const busy = { [somebody]: [{ start: first.start, end: epochMinutes(first.start + 600) }] }
  const found = looked(createSliced(job, now, null, busy), 4).current()
  if (found === null) throw new Error('no plan was found')
  const own = found.plan.tasks
    .filter(({ people }) => people.includes(somebody))
    .flatMap(({ segments }) => segments)
  expect(own.filter(({ start, end }) => start < first.start + 600 && end > first.start)).toEqual([])
  const prepared = prepareSearch(job, now)
  expect(searchAsked(prepared, job, now, null)).toBe(prepared.search)
  expect(searchAsked(prepared, job, now, null, busy)).not.toBe(prepared.search)
})
