import type { Job } from '../project/job.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import type { Specification } from '../specification/types.ts'
import { type WorkingMinutes, workingMinutes } from '../units/duration.ts'
import { roundToCents, sumCents } from '../units/money.ts'
import { plainWords } from '../words/text.ts'
import { additions } from './additions.ts'
import type { Estimate, EstimateLine, EstimateLineKind, EstimateTotals } from './estimate-types.ts'
import { type Labour, labour } from './labour.ts'
import { houseWorkLines, labourCosts } from './labour-costs.ts'
import { type MaterialLine, materials, stepsWithoutProduct } from './materials.ts'
import { type PaidPlan, paidLabourCosts, stepsNotPlanned } from './paid-plan.ts'
import { rateName } from './rate-names.ts'
import { roomPrices } from './room-prices.ts'
import { type SundryLine, sundries } from './sundries.ts'

/**
 * The whole price. Cost = labour with burden + materials + sundries; overhead is a percentage of cost; contingency of cost and
 * overhead; profit is added to all of that as a markup (share of cost) or so that it is the named share of the price (margin);
 * tax comes last. Each line is rounded to the cent once, and sums add rounded lines. Labor is what `plan` pays for; without one (nobody on the
 * crew, or no plan made yet) it is counted from the hours with a plain allowance for each day.
 */
export function estimate(
  job: Job,
  takeoff: Takeoff,
  specification: Specification,
  plan: PaidPlan | null = null,
): Estimate {
  const hours = labour(job, specification)
  const bought = materials(job, specification)
  const usedUp = sundries(job, specification, hours.minutes)
  const labourLines =
    plan === null
      ? labourCosts(job, specification, hours)
      : [...paidLabourCosts(job, specification, hours, plan), ...houseWorkLines(job, hours)]
  const direct = [...labourLines, ...bought.map(materialEstimateLine), ...usedUp.map(sundryEstimateLine)]
  const added = additions(job.houseRules.price, direct)
  const lines = [...direct, ...added]
  const totals = totalsOf(lines, plan === null ? hours.minutes : paidMinutes(hours, plan))
  return {
    lines,
    totals,
    labour: hours,
    materials: bought,
    sundries: usedUp,
    rooms: roomPrices(job, specification, labourLines, bought, totals.beforeTax),
    basis: plan?.from ?? 'hours',
    doubts: [...doubtsOf(job, takeoff, specification, hours), ...planDoubts(specification, plan)],
  }
}

/** All that the plan pays for, and what is done in no plan. */
function paidMinutes(hours: Labour, { days }: PaidPlan): WorkingMinutes {
  const ofHouse = hours.houseWork.reduce((sum, { minutes }) => sum + minutes, 0)
  return workingMinutes(days.reduce((sum, day) => sum + day.paidMinutes, ofHouse))
}

function planDoubts(specification: Specification, plan: PaidPlan | null): readonly string[] {
  const missing = plan === null ? 0 : stepsNotPlanned(specification, plan).length
  if (missing === 0) return []
  const are = counted(missing, 'step is', 'steps are')
  return [
    `${are} not in the plan that labor is priced by: priced at average wages until the work is planned again.`,
  ]
}

function materialEstimateLine(line: MaterialLine): EstimateLine {
  const cans = line.containers.map((each) => `${each.count} x ${each.name}`).join(' + ')
  return {
    kind: 'material',
    key: `material:${line.key}`,
    label: line.colourName === null ? line.productName : `${line.productName}, ${line.colourName}`,
    roomId: null,
    surfaceClass: null,
    cents: line.priceCents,
    derivation: `${line.derivation}; cans that hold it: ${cans}${line.isMixed ? ', from one batch' : ''}`,
  }
}

function sundryEstimateLine(line: SundryLine): EstimateLine {
  return {
    kind: 'sundry',
    key: `sundry:${line.key}`,
    label: line.name,
    roomId: null,
    surfaceClass: null,
    cents: line.priceCents,
    derivation: line.derivation,
  }
}

function totalsOf(lines: readonly EstimateLine[], labourMinutes: WorkingMinutes): EstimateTotals {
  const of = (...kinds: readonly EstimateLineKind[]) =>
    sumCents(lines.filter((line) => kinds.includes(line.kind)).map((line) => line.cents))
  const total = sumCents(lines.map((line) => line.cents))
  const tax = of('materialsTax', 'labourTax')
  return {
    labourMinutes,
    labour: of('labour'),
    materials: of('material'),
    sundries: of('sundry'),
    overhead: of('overhead'),
    contingency: of('contingency'),
    profit: of('profit'),
    beforeTax: roundToCents(total - tax),
    tax,
    total,
  }
}

function doubtsOf(
  job: Job,
  takeoff: Takeoff,
  specification: Specification,
  hours: Labour,
): readonly string[] {
  const missing = new Set(stepsWithoutProduct(job, specification).map((step) => step.productClass))
  const known = new Set(takeoff.surfaces.map((surface) => surface.key))
  const unknown = specification.steps.filter((step) => step.surfaceKeys.some((key) => !known.has(key)))
  const idle = hours.steps.filter((line) => line.minutes === 0)
  return [
    ...[...missing].map(
      (each) => `The shop's list has no ${plainWords(each ?? '')}: its material is not in the price.`,
    ),
    ...(Object.keys(job.crew).length === 0
      ? ['Nobody is on the crew, so hours are priced at $0.00. Add people at Calendar, Crew.']
      : []),
    ...defaultRateDoubts(job, hours),
    ...(unknown.length > 0
      ? [
          `${counted(unknown.length, 'step is', 'steps are')} for surfaces that are not in the takeoff; specify the job again.`,
        ]
      : []),
    ...(idle.length > 0
      ? [
          `${counted(idle.length, 'step has', 'steps have')} no amount to count hours by: ${idle[0]?.stepKey}.`,
        ]
      : []),
  ]
}

/** A job carries its own rates; where one is missing the default steps in, which is said once for all of them. */
function defaultRateDoubts(job: Job, { steps }: Labour): readonly string[] {
  const used = new Set(steps.flatMap((line) => line.parts.map(({ rate }) => rate.id)))
  const missing = [...used].filter((id) => job.rates[id] === undefined)
  if (missing.length === 0) return []
  const named = missing.slice(0, mostNamed).map((id) => `“${rateName(id)}”`)
  const more = missing.length - named.length
  const names = `${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`
  return [
    missing.length === used.size
      ? 'The job has none of the rates it needs: all hours are counted by the default rates. Set its own at Figures, Rates.'
      : `The job has no rate for ${names}: these hours are counted by the default ${missing.length === 1 ? 'rate' : 'rates'}. Set its own at Figures, Rates.`,
  ]
}

const mostNamed = 3

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`
}
