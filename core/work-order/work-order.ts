import type { Estimate } from '../price/estimate-types.ts'
import { type Job, records } from '../project/job.ts'
import type { Room } from '../project/sketch-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import type { Relaxed } from '../schedule/job/planning-site.ts'
import { gravestFirst } from '../specification/cautions.ts'
import type { Specification } from '../specification/types.ts'
import { clientEstimate } from './client-estimate.ts'
import { daySheets } from './day-sheets.ts'
import type { Cover, RoomSheet, WorkOrder } from './document-types.ts'
import { holdLine } from './hold-words.ts'
import { roomSheet } from './room-sheet.ts'
import { shoppingList } from './shopping.ts'
import { type JudgedPlan, tasksByStep } from './work-plan.ts'

/** Puts together every document of the job. Rooms stand in the order in which the plan starts them. */
export function workOrder(
  job: Job,
  takeoff: Takeoff,
  specification: Specification,
  priced: Estimate,
  plan: JudgedPlan,
): WorkOrder {
  const tasks = tasksByStep(plan)
  const relaxed = plan.relaxed ?? []
  const rooms = roomsWithWork(job, specification)
    .map((room) => roomSheet({ job, takeoff, specification, tasks, relaxed }, room))
    .toSorted(byStart)
  return {
    title: job.header.title,
    client: job.header.client,
    site: job.header.site,
    unitSystem: job.header.unitSystem,
    yearBuilt: job.header.yearBuilt,
    startsOn: plan.startsOn,
    finishesOn: plan.finishesOn,
    cover: coverOf(job, specification, rooms, relaxed),
    rooms,
    daySheets: daySheets(job, takeoff, specification, plan),
    shopping: shoppingList(priced, tasks),
    estimate: clientEstimate(job, specification, priced),
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
