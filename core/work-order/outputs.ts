import { gatherPasses } from '../passes/gather.ts'
import type { Estimate } from '../price/estimate-types.ts'
import { type Job, records } from '../project/job.ts'
import type { CrewMemberId } from '../project/shop-records.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import type { Specification } from '../specification/types.ts'
import { dateWordsWithYear } from '../time/date-words.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import { toSquareFeet, toSquareMetres } from '../units/area.ts'
import { formatMinutes } from '../units/duration.ts'
import { formatCents } from '../units/money.ts'
import { crewCalendar } from './crew-calendar.ts'
import type { WorkOrder } from './document-types.ts'
import { familyCalendar } from './family-calendar.ts'
import { gapWords } from './gap-words.ts'
import { holdLine } from './hold-words.ts'
import { workOrderHtml } from './html.ts'
import { estimateFile, quantitiesFile, scheduleFile, specificationFile } from './output-files.ts'
import { shoppingLines } from './shopping.ts'
import { shoppingFile } from './shopping-file.ts'
import { workOrder } from './work-order.ts'
import { workOrderFile } from './work-order-file.ts'
import type { JudgedPlan } from './work-plan.ts'

export interface HeadlessInput {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly estimate: Estimate
  readonly plan: JudgedPlan
  /** Local moment at which the files are made; the only clock in them. */
  readonly madeAt: SiteMoment
}

interface HeadlessOutputs {
  /** Text by file name. */
  readonly files: Readonly<Record<string, string>>
  /** A few lines for the person at the command line. */
  readonly summary: readonly string[]
}

/** Every file of a planned job. The same input gives the same text. */
export function headlessOutputs(input: HeadlessInput): HeadlessOutputs {
  const { job, takeoff, specification, estimate, plan } = input
  const minutes = new Map(estimate.labour.steps.map((line) => [line.stepKey, line.minutes]))
  const passes = gatherPasses(job, specification, minutes)
  const order = workOrder(job, takeoff, specification, estimate, plan, undefined, passes)
  const { paper } = job.header
  return {
    files: {
      'quantities.json': json(quantitiesFile(job, takeoff)),
      'specification.json': json(specificationFile(job, specification, passes)),
      'estimate.json': json(estimateFile(job, estimate)),
      'schedule.json': json(scheduleFile(job, plan)),
      'work-order.json': json(workOrderFile(job, order)),
      'work-order.html': workOrderHtml(order, paper),
      'shopping-list.csv': shoppingFile(shoppingLines(order.shopping)),
      ...calendarFiles(input, order),
    },
    summary: summaryOf(input),
  }
}

/** One for the crew, one for each person, one for the household. */
function calendarFiles(input: HeadlessInput, order: WorkOrder): Readonly<Record<string, string>> {
  const { job, specification, plan, madeAt } = input
  const own = records(job.crew).map(({ id }) => [
    personCalendarName(id),
    crewCalendar(job, specification, plan, madeAt, id),
  ])
  return {
    'crew-calendar.ics': crewCalendar(job, specification, plan, madeAt),
    ...Object.fromEntries(own),
    'family-calendar.ics': familyCalendar(job, order.family, madeAt),
  }
}

/** `calendar-ada.ics`: names may be alike, ids are not. */
export function personCalendarName(id: CrewMemberId): string {
  return `calendar-${id}.ics`
}

function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`
}

function summaryOf({ job, takeoff, specification, estimate, plan }: HeadlessInput): readonly string[] {
  const { title, unitSystem } = job.header
  const rooms = new Set(specification.steps.map((step) => step.roomId)).size
  const area = takeoff.surfaces.reduce((total, surface) => total + surface.netArea, 0)
  const areaText =
    unitSystem === 'imperial'
      ? `${Math.round(toSquareFeet(area))} sq ft`
      : `${Math.round(toSquareMetres(area))} m²`
  const relaxed = plan.relaxed ?? []
  const holds = specification.holds
    .filter((hold) => hold.cleared === null)
    .map((hold) => holdLine(hold, relaxed, unitSystem))
  const toDecide = specification.notices.filter((notice) => notice.hold && notice.holdKey === undefined)
  return [
    `${title}: ${rooms} ${rooms === 1 ? 'room' : 'rooms'}, ${specification.steps.length} steps, ${areaText} net`,
    `Work: ${formatMinutes(estimate.totals.labourMinutes)} of one person, ${estimate.materials.length} materials, price ${formatCents(estimate.totals.total)} with tax`,
    `Dates: ${dateWordsWithYear(plan.startsOn, unitSystem)} to ${dateWordsWithYear(plan.finishesOn, unitSystem)}, ${plan.tasks.length} tasks`,
    ...(plan.bound ? [gapWords(plan.bound.gapDays)] : []),
    ...someOf([
      ...holds.map(
        ({ reason, who, expected, alarm }) =>
          `Wait: ${alarm === null ? '' : `${alarm} `}${reason} ${who}; expected: ${expected}.`,
      ),
      ...toDecide.map((notice) => `Wait: ${notice.sentence}`),
    ]),
    ...specification.clashes.map((clash) => `Rules disagree: ${clash.sentence}`),
    ...estimate.doubts.map((doubt) => `Not settled: ${doubt}`),
  ]
}

const mostWaits = 12

/** So many lines of a long list, and how many more there are. */
function someOf(lines: readonly string[]): readonly string[] {
  if (lines.length <= mostWaits) return lines
  return [...lines.slice(0, mostWaits), `Wait: ${lines.length - mostWaits} more, all in the work order.`]
}
