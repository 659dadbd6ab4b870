import { schemesOf, withScheme } from '../agreement/color-schemes.ts'
import { gatherPasses } from '../passes/gather.ts'
import type { Passes } from '../passes/pass-types.ts'
import type { Estimate } from '../price/estimate-types.ts'
import { minutesByStep } from '../price/labour.ts'
import { type Job, records } from '../project/job.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import type { Specification } from '../specification/types.ts'
import { compareText } from '../words/text.ts'
import { colorRecord } from './color-record.ts'
import { coverOf } from './cover.ts'
import type { WorkOrder } from './document-types.ts'
import { familyPage } from './family-page.ts'
import { houseColors } from './house-colors.ts'
import { housePicture } from './house-picture.ts'
import { houseWeeks } from './house-weeks.ts'
import { once } from './once.ts'
import { proposalOf } from './proposal/proposal.ts'
import { type RoomSheetInput, roomSheet } from './room-sheet/room-sheet.ts'
import type { RoomSheet } from './room-sheet/sheet-types.ts'
import { shoppingList } from './shopping.ts'
import { siteDays, weekSheets } from './site-days.ts'
import { usualDaysBetweenTrips } from './trips.ts'
import { houseWalls } from './wall-colors.ts'
import { type JudgedPlan, tasksByStep } from './work-plan.ts'

/** Of the house in its colors on either paper, in millimeters; what is left of a page is for its legend. */
const colorsPlace = { width: 188, height: 190, floorName: 4 }
/** Names of the colors below each of two schemes on a page, in millimeters. */
const schemeLegend = 20

/**
 * Every document of the job, each put together when it is first asked for. Room sets stand in the order in which the plan starts them.
 *
 * @param gathered the passes of the specification, where they are known
 */
export function workOrder(
  job: Job,
  takeoff: Takeoff,
  specification: Specification,
  priced: Estimate,
  plan: JudgedPlan,
  daysBetweenTrips = usualDaysBetweenTrips,
  gathered: Passes | null = null,
): WorkOrder {
  const made = makersOf({ job, takeoff, specification, priced, plan, daysBetweenTrips, gathered })
  return {
    title: job.header.title,
    client: job.header.client,
    site: job.header.site,
    unitSystem: job.header.unitSystem,
    yearBuilt: job.header.yearBuilt,
    startsOn: plan.startsOn,
    finishesOn: plan.finishesOn,
    get cover() {
      return made.cover()
    },
    get rooms() {
      return made.rooms()
    },
    get days() {
      return made.days()
    },
    get weeks() {
      return made.weeks()
    },
    get family() {
      return made.family()
    },
    get house() {
      return made.house()
    },
    get colors() {
      return made.colors()
    },
    get shopping() {
      return made.shopping()
    },
    get proposal() {
      return made.proposal()
    },
    get colorRecord() {
      return made.record()
    },
  }
}

interface WorkOrderInput {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly priced: Estimate
  readonly plan: JudgedPlan
  readonly daysBetweenTrips: number
  readonly gathered: Passes | null
}

/** Each makes its document when it is called first, and answers the same one from then on. */
function makersOf(input: WorkOrderInput) {
  const { job, takeoff, specification, priced, plan, daysBetweenTrips, gathered } = input
  const tasks = once(() => tasksByStep(plan))
  const passes = once(() => gathered ?? gatherPasses(job, specification, minutesByStep(job, specification)))
  const rooms = once(() =>
    roomSheets({
      job,
      takeoff,
      specification,
      passes: passes(),
      tasks: tasks(),
      relaxed: plan.relaxed ?? [],
    }),
  )
  const cover = once(() => coverOf(job, specification, plan, rooms()))
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
  const family = once(() => familyPage(job, specification, plan))
  const proposal = once(() => proposalOf(job, specification, priced, plan, family()))
  const house = once(() => houseWeeks(job, plan))
  const colors = once(() => colorsPaper(job, takeoff))
  const record = once(() => colorRecord(job, rooms(), priced))
  return { cover, rooms, days, weeks, family, house, colors, shopping, proposal, record }
}

function colorsPaper(job: Job, takeoff: Takeoff): WorkOrder['colors'] {
  const { width, height, floorName } = colorsPlace
  return {
    house: houseColors(job, takeoff),
    picture: housePicture(job, width, height, floorName),
    halfPicture: housePicture(job, width, (height - schemeLegend) / 2, floorName),
    walls: houseWalls(
      job,
      records(job.rooms).map(({ id }) => id),
    ),
    schemes: schemesOf(job).flatMap((scheme) => {
      const inScheme = withScheme(job, scheme)
      return inScheme.ok ? [{ name: scheme.name, house: houseColors(inScheme.value, takeoff) }] : []
    }),
  }
}

/** Numbered in the order in which the plan begins them; what nobody planned yet comes last, in the order of the job. */
export function roomSheets(input: RoomSheetInput): readonly RoomSheet[] {
  return input.passes.sets
    .map((set) => roomSheet(input, set))
    .toSorted((one, other) => compareText(one.firstDay ?? '9', other.firstDay ?? '9'))
    .map((sheet, index) => ({ ...sheet, number: index + 1 }))
}
