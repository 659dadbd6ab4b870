import { groupedBy, groupedByEach, present } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import type { CrewMemberId } from '../project/shop-records.ts'
import type { Specification, Step } from '../specification/types.ts'
import { formatMinutes } from '../units/duration.ts'
import { type Cents, roundToCents, sumCents } from '../units/money.ts'
import type { EstimateLine } from './estimate-types.ts'
import type { Labour } from './labour.ts'
import { meanWage, workLine } from './labour-costs.ts'

/** What somebody is paid for on one day of a plan, in minutes. */
interface PaidDay {
  readonly crewMemberId: CrewMemberId
  /** `2027-03-31`. */
  readonly date: string
  readonly paidMinutes: number
  readonly setUpMinutes: number
  readonly leavingMinutes: number
  /** Moving to another room, changing product, setting a room up once more. */
  readonly betweenMinutes: number
}

/** A plan as its price is read from it: who is paid for how long, and who does which steps. */
export interface PaidPlan {
  /** `first`: nobody has accepted a plan; one that is always made in the same way stands in for it. */
  readonly from: 'accepted' | 'first'
  readonly days: readonly PaidDay[]
  readonly tasks: readonly {
    readonly stepKeys: readonly string[]
    readonly crewMemberIds: readonly CrewMemberId[]
  }[]
}

/** The last date that somebody is paid for; null where nobody is. */
export function lastPaidDate({ days }: PaidPlan): string | null {
  return days.reduce<string | null>((last, { date }) => (last === null || date > last ? date : last), null)
}

/** What everybody is paid: minutes x wage with burden, rounded once for each person. */
export function planPay(job: Job, { days }: PaidPlan): Cents {
  const minutes = new Map<CrewMemberId, number>()
  for (const day of days)
    minutes.set(day.crewMemberId, (minutes.get(day.crewMemberId) ?? 0) + day.paidMinutes)
  return sumCents(
    [...minutes].map(([id, paid]) => roundToCents((paid / 60) * burdened(job, wageOf(job, id)))),
  )
}

function wageOf(job: Job, id: CrewMemberId): number {
  return job.crew[id]?.wageCents ?? meanWage(job, null)
}

function burdened(job: Job, wage: number): number {
  return wage * (1 + job.houseRules.price.burdenPercent / 100)
}

/**
 * Labor as the plan pays for it: the work by room and class of surface at the wages of those who do it, setting up and leaving, moving and
 * changing product, and what is paid without work. Together they are the plan's pay to the cent, besides steps that the plan does not have.
 */
export function paidLabourCosts(
  job: Job,
  specification: Specification,
  hours: Labour,
  plan: PaidPlan,
): readonly EstimateLine[] {
  const work = workLines(job, specification, hours, plan)
  const inPlan = work.filter(({ isPlanned }) => isPlanned).map(({ line }) => line)
  const chores = [
    spentLine(
      job,
      plan,
      'labour:daily',
      'Setting up and clearing away each day',
      (day) => day.setUpMinutes + day.leavingMinutes,
    ),
    spentLine(
      job,
      plan,
      'labour:between',
      'Moving to another room, changing product',
      (day) => day.betweenMinutes,
    ),
  ].filter(({ cents }) => cents > 0)
  const pay = planPay(job, plan)
  const said = sumCents([...inPlan, ...chores].map(({ cents }) => cents))
  return [...work.map(({ line }) => line), ...chores, ...restLine(plan, pay, said)]
}

/** Steps that no task of the plan holds: found since it was accepted. Daily steps are chores of the plan's days. */
export function stepsNotPlanned(specification: Specification, { tasks }: PaidPlan): readonly Step[] {
  const planned = new Set(tasks.flatMap(({ stepKeys }) => stepKeys))
  return specification.steps.filter(({ key, daily }) => !daily && !planned.has(key))
}

interface WorkLine {
  readonly line: EstimateLine
  readonly isPlanned: boolean
}

function workLines(
  job: Job,
  specification: Specification,
  hours: Labour,
  plan: PaidPlan,
): readonly WorkLine[] {
  const minutes = new Map(hours.steps.map((line) => [line.stepKey, line.minutes]))
  const missing = new Set(stepsNotPlanned(specification, plan).map(({ key }) => key))
  const wages = wagesByStep(job, plan)
  const groups = groupedBy(
    specification.steps.filter(({ daily }) => !daily),
    (step) => `${missing.has(step.key)} ${step.roomId} ${step.surfaceClass ?? 'room'}`,
  )
  return [...groups.values()].map((steps): WorkLine => {
    const first = present(steps[0])
    const byWage = new Map<number, number>()
    for (const step of steps) {
      const wage = wages.get(step.key) ?? meanWage(job, step.skill)
      byWage.set(wage, (byWage.get(wage) ?? 0) + (minutes.get(step.key) ?? 0))
    }
    const isPlanned = !missing.has(first.key)
    const parts = [...byWage].map(([wage, sum]) => ({ wage, minutes: sum }))
    const line = workLine(job, first.roomId, first.surfaceClass, parts)
    return {
      line: isPlanned
        ? line
        : { ...line, key: `${line.key}:unplanned`, label: `${line.label}, not in the plan yet` },
      isPlanned,
    }
  })
}

/** Cents per hour before burden of those who work on each step, in equal shares. */
function wagesByStep(job: Job, { tasks }: PaidPlan): ReadonlyMap<string, number> {
  const byStep = groupedByEach(tasks, ({ stepKeys }) => stepKeys)
  const crews = [...byStep].map(
    ([key, own]) => [key, own.flatMap(({ crewMemberIds }) => crewMemberIds)] as const,
  )
  return new Map(
    crews.flatMap(([key, crew]) =>
      crew.length === 0
        ? []
        : [[key, crew.reduce((sum, id) => sum + wageOf(job, id), 0) / crew.length] as const],
    ),
  )
}

function spentLine(
  job: Job,
  { days }: PaidPlan,
  key: string,
  label: string,
  minutesOf: (day: PaidDay) => number,
): EstimateLine {
  const minutes = days.reduce((sum, day) => sum + minutesOf(day), 0)
  const cost = days.reduce(
    (sum, day) => sum + (minutesOf(day) / 60) * burdened(job, wageOf(job, day.crewMemberId)),
    0,
  )
  return {
    kind: 'labour',
    key,
    label,
    roomId: null,
    surfaceClass: null,
    cents: roundToCents(cost),
    derivation: `${formatMinutes(minutes)} on ${days.length} person-days of the plan, at the wages of those who are there with ${job.houseRules.price.burdenPercent}% burden`,
  }
}

/** What is left of the pay: half days that are paid at least, the plan's steps of five minutes, alarms and daily cleaning. */
function restLine({ days }: PaidPlan, pay: Cents, said: Cents): readonly EstimateLine[] {
  if (pay === said) return []
  const paid = days.reduce((sum, day) => sum + day.paidMinutes, 0)
  return [
    {
      kind: 'labour',
      key: 'labour:rest',
      label: 'On site besides: daily chores, half days, full five minutes',
      roomId: null,
      surfaceClass: null,
      cents: roundToCents(pay - said),
      derivation: `what the plan pays for ${formatMinutes(paid)} of attendance, less the work and the other time named above`,
    },
  ]
}
