import { renderToStaticMarkup } from 'react-dom/server'
import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import type { PinId } from '../../core/project/progress-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { localTimeIn } from '../../core/time/local-time.ts'
import { instantOf, momentsIn } from '../../core/time/site-moment.ts'
import { LaneDrawing } from '../../renderer/panels/calendar/LaneDrawing.tsx'
import type { Span } from '../../renderer/panels/calendar/lanes.ts'
import { NoPlan } from '../../renderer/panels/calendar/NoPlan.tsx'
import { drawingOf, planLook, triedStarts } from '../../renderer/panels/calendar/plan-look.ts'
import { TrialBar } from '../../renderer/panels/calendar/TrialBar.tsx'
import { taskWords } from '../../renderer/panels/calendar/task-words.ts'
import type { SearchState } from '../../renderer/state/planner.ts'
import { createSliced } from '../../renderer/state/planner-search.ts'
import { demoJob } from './station-jobs.ts'

const job = demoJob('old-house')
const specification = specify(job, takeOff(job))
const search = createSliced(job, '2027-03-29T07:30', null)
search.step()
const found = search.current()
if (found === null) throw new Error('no plan was found')
const words = taskWords(job, specification, found.workPlan)
const local = localTimeIn(job.header.timeZone)
const { axis, lanes } = drawingOf({ job, found, local, pixelsPerHour: 30 })
const room = lanes.find((lane) => lane.outOfUse !== null)
if (room === undefined) throw new Error('a room is out of use')

const searching: SearchState = {
  job,
  busy: {},
  status: 'searching',
  plan: null,
  isSettled: false,
  bound: null,
  clash: null,
  isFinished: false,
  broken: null,
}

function drawn(
  shown: Span,
  pickedId: string | null = null,
  ghosts: ReadonlyMap<string, number> = new Map(),
): string {
  const look = planLook({
    job,
    found: found as NonNullable<typeof found>,
    comparedTo: null,
    words,
    pins: [],
    pickedId,
    momentOf: momentsIn(job.header.timeZone),
  })
  return renderToStaticMarkup(
    <LaneDrawing
      axis={axis}
      lane={room as NonNullable<typeof room>}
      look={look}
      absences={[]}
      shown={shown}
      stop={null}
      ghosts={ghosts}
      onBegin={() => undefined}
      onKey={() => undefined}
    />,
  )
}

function countOf(markup: string, part: string): number {
  return markup.split(part).length - 1
}

const everything = { from: 0, to: Number.POSITIVE_INFINITY }

test('every piece of work in sight is a button that says what, when and who; what is far away is not drawn', () => {
  const whole = drawn(everything)
  expect(countOf(whole, 'role="button"')).toBe(room.bars.length)
  const [bar] = room.bars
  if (bar === undefined) throw new Error('there is work')
  const people = bar.planned.people.map((id) => job.crew[id]?.name ?? id)
  for (const word of [words.title(bar.task.id), ...people]) expect(whole).toContain(word)
  const morning = { from: bar.from, to: bar.from }
  const inSight = room.bars.filter((each) => each.from <= bar.from && each.to >= bar.from)
  expect(countOf(drawn(morning), 'role="button"')).toBe(inSight.length)
  expect(inSight.length).toBeLessThan(room.bars.length)
})

test('drying, the time out of use and the kind of work are drawn apart', () => {
  const whole = drawn(everything)
  expect(countOf(whole, 'class="plan-drying"')).toBe(room.wet.length)
  expect(countOf(whole, 'class="plan-out-of-use"')).toBe(1)
  const wet = room.bars.filter((bar) => bar.task.effects.touchDry !== null)
  expect(countOf(whole, 'plan-bar-wet')).toBe(wet.length)
})

test('the moment a room was promised back stands in its lane as a flag', () => {
  const flags = lanes.filter((lane) => lane.backBy !== null).map((lane) => lane.name)
  const promised = Object.values(job.rooms).filter((each) => each.backBy !== null)
  expect(flags).toEqual(promised.map((each) => each.name))
  expect(flags.length).toBeGreaterThan(0)
  expect(countOf(drawn(everything), 'plan-promised')).toBe(room.backBy === null ? 0 : 1)
})

test('a task pinned in what is tried is outlined where it would begin', () => {
  const [bar] = room.bars
  if (bar === undefined) throw new Error('there is work')
  const id = bar.task.id
  const pin = { id: 'pin' as PinId, passKey: id, startsAt: '2027-04-06T10:00', crewMemberIds: [] }
  const tried = triedStarts(found, [pin], job.header.timeZone)
  expect([...tried]).toEqual([[id, instantOf('2027-04-06T10:00', job.header.timeZone)]])
  expect(countOf(drawn(everything, null, tried), 'class="plan-ghost"')).toBe(1)
  const same = { ...pin, startsAt: momentsIn(job.header.timeZone)(bar.planned.start) }
  expect(triedStarts(found, [same], job.header.timeZone).size).toBe(0)
})

test('what a picked task waits for and holds up is marked at the side that touches it', () => {
  const link = found.problem.links.find(({ from, to }) => {
    return [from, to].every((id) => room.bars.some((bar) => bar.task.id === id))
  })
  if (link === undefined) throw new Error('steps in the room wait for one another')
  expect(drawn(everything)).not.toContain('plan-edge')
  expect(drawn(everything, link.to)).toContain('plan-edge-before')
  expect(drawn(everything, link.from)).toContain('plan-edge-after')
})

function said(changed: {
  readonly job?: Job
  readonly steps?: 'none'
  readonly state?: Partial<SearchState>
}) {
  return renderToStaticMarkup(
    <NoPlan
      job={changed.job ?? job}
      specification={changed.steps === 'none' ? { ...specification, steps: [] } : specification}
      state={{ ...searching, ...changed.state }}
      titleOf={words.title}
      onCrew={() => {}}
    />,
  )
}

test('without steps, without a crew and before the first plan the station says what is missing', () => {
  expect(said({ steps: 'none' })).toContain('No steps to plan yet')
  expect(said({ job: { ...job, crew: {} } })).toContain('Nobody to plan with')
  expect(said({})).toContain('The first plan is being worked out.')
  expect(said({ state: { broken: 'The planner failed: no memory' } })).toContain('no memory')
})

test('a clash is named with its steps, and called impossible only where that is proved', () => {
  const taskIds = found.problem.tasks.slice(0, 2).map((task) => task.id)
  const clash = { sentence: 'Two steps wait for one another.', taskIds }
  const proved = said({ state: { clash: { ...clash, isProved: true } } })
  expect(proved).toContain('There can be no plan')
  expect(proved).not.toContain('Keep improving')
  for (const id of taskIds) expect(proved).toContain(words.title(id))
  const open = said({ state: { clash: { ...clash, isProved: false } } })
  expect(open).toContain('No plan found yet')
  expect(open).toContain('Keep improving')
})

function triedWith(search: Partial<SearchState>, present: typeof found | null, isPresentSettled = true) {
  const trial = { changes: [{ key: 'crew', name: 'Add somebody', commands: [] }], job, problem: null }
  return renderToStaticMarkup(
    <TrialBar
      trial={trial}
      present={{ ...searching, plan: present, isSettled: isPresentSettled }}
      search={{ ...searching, ...search }}
    />,
  )
}

test('what is tried is compared with the present plan before it can be taken', () => {
  const compared = triedWith({ plan: found, isSettled: true, bound: { finish: 400, cents: 0 } }, found)
  expect(compared).toContain('Present plan')
  expect(compared).toContain('It holds: every rule was checked. The last day is proved best')
  expect(compared).toContain('No pass moves to another day or to others.')
  expect(countOf(compared, 'disabled=""')).toBe(0)
  expect(countOf(triedWith({}, found), 'disabled=""')).toBe(1)
})

test('a first guess, of what is tried or of the present plan, is no answer and cannot be taken', () => {
  const guess = triedWith({ plan: found }, found)
  expect(guess).not.toContain('Present plan')
  expect(guess).toContain('A plan with this is being worked out.')
  expect(countOf(guess, 'disabled=""')).toBe(1)
  const beside = triedWith({ plan: found, isSettled: true }, found, false)
  expect(beside).not.toContain('Present plan')
  expect(countOf(beside, 'disabled=""')).toBe(1)
})

test('what leaves no plan cannot be taken, unless there was none to lose', () => {
  const clash = { isProved: true, sentence: 'Nobody is on the crew.', taskIds: [] }
  const impossible = triedWith({ clash }, found)
  expect(impossible).toContain('Impossible')
  expect(countOf(impossible, 'disabled=""')).toBe(1)
  const neither = triedWith({ clash }, null)
  expect(neither).toContain('No plan with this either')
  expect(countOf(neither, 'disabled=""')).toBe(0)
})
