import { schemesOf, withScheme } from '../agreement/color-schemes.ts'
import { gatherPasses } from '../passes/gather.ts'
import type { Passes } from '../passes/pass-types.ts'
import type { Estimate } from '../price/estimate-types.ts'
import { minutesByStep } from '../price/labour.ts'
import { type Job, records } from '../project/job.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import type { Specification } from '../specification/types.ts'
import { colorRecord } from './color-record.ts'
import { coverOf } from './cover.ts'
import type { WorkOrder } from './document-types.ts'
import { familyPage } from './family-page.ts'
import { houseColors } from './house-colors.ts'
import { housePicture } from './house-picture.ts'
import { houseWeeks } from './house-weeks.ts'
import { madeWhenAsked, once } from './once.ts'
import { proposalOf } from './proposal/proposal.ts'
import { roomSheets } from './room-sheet/room-sheet.ts'
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
  const tasks = once(() => tasksByStep(plan))
  const passes = once(() => gathered ?? gatherPasses(job, specification, minutesByStep(job, specification)))
  const order: WorkOrder = madeWhenAsked<WorkOrder>({
    ...factsOf(job, plan),
    cover: () => coverOf(job, specification, plan, passes(), order.rooms),
    rooms: () =>
      roomSheets({
        job,
        takeoff,
        specification,
        passes: passes(),
        tasks: tasks(),
        relaxed: plan.relaxed ?? [],
      }),
    days: () => siteDays(job, specification, plan),
    weeks: () => weekSheets(order.days),
    family: () => familyPage(job, specification, plan),
    house: () => houseWeeks(job, plan),
    colors: () => colorsPaper(job, takeoff),
    shopping: () =>
      shoppingList({
        steps: specification.steps,
        priced,
        tasks: tasks(),
        startsOn: plan.startsOn,
        daysBetweenTrips,
      }),
    proposal: () => proposalOf(job, specification, priced, plan, order.family),
    colorRecord: () => colorRecord(job, order.rooms, priced),
  })
  return order
}

/** What stands at the head of every document. */
function factsOf({ header }: Job, plan: JudgedPlan) {
  return {
    title: () => header.title,
    client: () => header.client,
    site: () => header.site,
    unitSystem: () => header.unitSystem,
    yearBuilt: () => header.yearBuilt,
    startsOn: () => plan.startsOn,
    finishesOn: () => plan.finishesOn,
  }
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
