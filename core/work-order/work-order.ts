import type { Estimate } from '../price/estimate-types.ts'
import { type Job, records } from '../project/job.ts'
import type { Room } from '../project/sketch-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import type { Relaxed } from '../schedule/job/planning-site.ts'
import { gravestFirst } from '../specification/cautions.ts'
import type { Specification } from '../specification/types.ts'
import { clientEstimate } from './client-estimate.ts'
import type { Cover, RoomSheet, WorkOrder } from './document-types.ts'
import { holdLine } from './hold-words.ts'
import { once } from './once.ts'
import { roomSheet } from './room-sheet.ts'
import { shoppingList } from './shopping.ts'
import { siteDays, weekSheets } from './site-days.ts'
import { usualDaysBetweenTrips } from './trips.ts'
import { type JudgedPlan, tasksByStep } from './work-plan.ts'

/**
 * Every document of the job, each put together when it is first asked for. Rooms stand in the order in which the plan starts them.
 */
export function workOrder(
  job: Job,
  takeoff: Takeoff,
  specification: Specification,
  priced: Estimate,
  plan: JudgedPlan,
  daysBetweenTrips = usualDaysBetweenTrips,
): WorkOrder {
  const tasks = once(() => tasksByStep(plan))
  const relaxed = plan.relaxed ?? []
  const rooms = once(() =>
    roomsWithWork(job, specification)
      .map((room) => roomSheet({ job, takeoff, specification, tasks: tasks(), relaxed }, room))
      .toSorted(byStart),
  )
  const cover = once(() => coverOf(job, specification, rooms(), relaxed))
  const days = once(() => siteDays(job, specification, plan))
  const weeks = once(() => weekSheets(days()))
  const shopping = once(() =>
    shoppingList({
      steps: specification.steps,
      priced,
      tasks: tasks(),
      startsOn: plan.startsOn,
      daysBetweenTrips,
    }),
  )
  const forClient = once(() => clientEstimate(job, specification, priced))
  return {
    title: job.header.title,
    client: job.header.client,
    site: job.header.site,
    unitSystem: job.header.unitSystem,
    yearBuilt: job.header.yearBuilt,
    startsOn: plan.startsOn,
    finishesOn: plan.finishesOn,
    get cover() {
      return cover()
    },
    get rooms() {
      return rooms()
    },
    get days() {
      return days()
    },
    get weeks() {
      return weeks()
    },
    get shopping() {
      return shopping()
    },
    get estimate() {
      return forClient()
    },
  }
}

function roomsWithWork(job: Job, specification: Specification): readonly Room[] {
  const worked = new Set(specification.steps.map((step) => step.roomId))
  return records(job.rooms).filter((room) => worked.has(room.id))
}

/** Rooms nobody planned yet come last, in the order of the job. */
function byStart(a: RoomSheet, b: RoomSheet): number {
  const [first, second] = [a.dates.startsAt ?? '9', b.dates.startsAt ?? '9']
  return first < second ? -1 : first > second ? 1 : 0
}

function coverOf(
  job: Job,
  specification: Specification,
  rooms: readonly RoomSheet[],
  relaxed: readonly Relaxed[],
): Cover {
  return {
    rooms: rooms.map((room) => room.dates),
    crew: records(job.crew).map((person) => person.name),
    holds: specification.holds.map((hold) => holdLine(hold, relaxed, job.header.unitSystem)),
    toDecide: specification.notices.filter((notice) => notice.hold && notice.holdKey === undefined),
    notices: specification.notices.filter((notice) => !notice.hold && notice.roomId === null),
    cautions: gravestFirst(specification.steps.flatMap((step) => step.cautions)),
  }
}
