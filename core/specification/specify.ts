import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import { dryingOf } from './drying.ts'
import { holdNotice, holdsOf } from './holds.ts'
import { leftOutInHouse } from './left-out.ts'
import type { StepMaker } from './planned-step.ts'
import { factsOfRooms, type RoomFacts, sameFacts } from './room-facts.ts'
import { type RoomPart, specifyRoom } from './room-specification.ts'
import { bookOf } from './rule-book.ts'
import { allRules, ruleById } from './rule-list.ts'
import { leadInHouse } from './rules/lead-safe.ts'
import { stockOf } from './stock.ts'
import type { Specification } from './types.ts'

/**
 * Steps, their order, what the owner must know and where rules clash, for a whole job. Pure: the same job and takeoff
 * always give the same answer. Rooms in the file's order, ways out last.
 */
export function specify(job: Job, takeoff: Takeoff): Specification {
  return createSpecify()(job, takeoff)
}

interface KnownRoom {
  readonly facts: RoomFacts
  readonly part: RoomPart
}

/**
 * A `specify` that remembers the last job: an edit to one room works out that room again, the others keep their steps, the very same
 * objects. Edits to what all rooms share (products, rules, finishes, air) work out all of them.
 */
export function createSpecify(): (job: Job, takeoff: Takeoff) => Specification {
  const byRooms = createSpecifyByRooms()
  return (job, takeoff) => toTheEnd(byRooms(job, takeoff))
}

type ByRooms = (job: Job, takeoff: Takeoff) => Generator<void, Specification>

/**
 * The same with a stop behind each room that had to be worked out, for whoever has other things to do meanwhile. Asked again, for this job
 * or another, it goes on from what is worked out.
 */
export function createSpecifyByRooms(): ByRooms {
  let lastJob: Job | null = null
  const known = new Map<RoomId, KnownRoom>()
  const byRooms: ByRooms = function* (job, takeoff) {
    if (lastJob === null || !sharesTables(lastJob, job)) known.clear()
    lastJob = job
    const maker = stepMaker(job)
    const parts: RoomPart[] = []
    for (const facts of factsOfRooms(job, takeoff)) {
      const same = known.get(facts.room.id)
      const isKnown = same !== undefined && sameFacts(same.facts, facts)
      const part = isKnown ? same.part : specifyRoom(maker, facts)
      known.set(facts.room.id, { facts, part })
      parts.push(part)
      if (isKnown) continue
      yield
      // Another job was asked for at the stop.
      if (lastJob !== job) return yield* byRooms(job, takeoff)
    }
    for (const roomId of known.keys()) if (job.rooms[roomId] === undefined) known.delete(roomId)
    return together(job, parts)
  }
  return byRooms
}

/** What work in steps comes to, without a stop. */
export function toTheEnd<Value>(work: Iterator<void, Value>): Value {
  for (;;) {
    const { done, value } = work.next()
    if (done) return value
  }
}

function stepMaker(job: Job): StepMaker {
  const book = bookOf(job, allRules)
  return { job, book, stock: stockOf(job), drying: dryingOf(job, book), ruleById }
}

/** Everything `specifyRoom` reads besides the facts of its own room. */
const sharedTables = [
  'header',
  'houseRules',
  'storeys',
  'existing',
  'finishes',
  'colours',
  'products',
  'rates',
  'rules',
] as const satisfies readonly (keyof Job)[]

function sharesTables(before: Job, after: Job): boolean {
  return sharedTables.every((name) => before[name] === after[name])
}

/** Holds are looked up here, not room by room: what is said of one changes no step. */
function together(job: Job, parts: readonly RoomPart[]): Specification {
  const holds = holdsOf(
    job,
    parts.flatMap((part) => part.holds),
  )
  return {
    steps: parts.flatMap((part) => part.steps),
    order: parts.flatMap((part) => part.order),
    holds,
    notices: [
      ...leftOutInHouse(job),
      ...holds.filter((hold) => hold.cleared === null).map(holdNotice),
      ...parts.flatMap((part) => part.notices),
      ...leadInHouse(parts.flatMap((part) => part.notices)),
    ],
    clashes: parts.flatMap((part) => part.clashes),
  }
}
