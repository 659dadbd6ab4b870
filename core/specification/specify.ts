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
  let lastJob: Job | null = null
  let known: ReadonlyMap<RoomId, KnownRoom> = new Map()
  return (job, takeoff) => {
    const before = lastJob !== null && sharesTables(lastJob, job) ? known : new Map<RoomId, KnownRoom>()
    const maker = stepMaker(job)
    const rooms = factsOfRooms(job, takeoff).map((facts): KnownRoom => {
      const same = before.get(facts.room.id)
      return same !== undefined && sameFacts(same.facts, facts)
        ? same
        : { facts, part: specifyRoom(maker, facts) }
    })
    lastJob = job
    known = new Map(rooms.map((room) => [room.facts.room.id, room]))
    return together(
      job,
      rooms.map(({ part }) => part),
    )
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
