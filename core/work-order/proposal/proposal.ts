import { nextVersion, offerMark } from '../../agreement/proposal-version.ts'
import { offerOf, pricedOptions, quoteSteps } from '../../agreement/quote.ts'
import { totalCents } from '../../agreement/taxed-money.ts'
import { priceJob } from '../../agreement/whole-price.ts'
import type { Estimate, RoomPrice } from '../../price/estimate-types.ts'
import { shareCents } from '../../price/price-shares.ts'
import type { PaymentStep } from '../../project/agreement-records.ts'
import type { Job } from '../../project/job.ts'
import { type RoomSet, roomSetsOf } from '../../project/room-sets.ts'
import type { RoomId } from '../../project/sketch-records.ts'
import { storeysUpwards } from '../../project/storeys.ts'
import { surfaceNoun } from '../../specification/trade-words.ts'
import type { Specification, Step } from '../../specification/types.ts'
import { addDays } from '../../time/local-date.ts'
import { type Cents, formatCents, sumCents } from '../../units/money.ts'
import { linesOf } from '../../words/text.ts'
import type { FamilyPage } from '../family-types.ts'
import type { WorkPlan } from '../work-plan.ts'
import { leadText } from './lead-text.ts'
import { proposalDoubts } from './proposal-doubts.ts'
import type { Proposal, ProposalFloor, ProposalOption, ProposalRoom } from './proposal-types.ts'
import { roomScope } from './room-scope.ts'

/** What is offered to the client: rooms with their scope and price, days, payment and terms. No wages, rates or margins. */
export function proposalOf(
  job: Job,
  specification: Specification,
  priced: Estimate,
  plan: WorkPlan,
  family: FamilyPage,
): Proposal {
  const { header, business, houseRules } = job
  const { texts, proposal } = business
  const options = pricedOptions(priceJob, job)
  const mark = offerMark(offerOf(job, priced, options))
  return {
    business,
    site: linesOf(header.site),
    number: header.proposalNumber,
    version: nextVersion(job, mark, 'paper'),
    mark,
    prices: proposal.prices,
    validDays: proposal.validDays,
    floors: floorsOf(job, specification, priced.rooms, family),
    beforeTax: priced.totals.beforeTax,
    tax: priced.totals.tax,
    total: priced.totals.total,
    options: optionsOf(options),
    payments: paymentsOf(quoteSteps(business), priced.totals.total),
    days: new Set(plan.tasks.flatMap(({ segments }) => segments.map(({ startsAt }) => startsAt.slice(0, 10))))
      .size,
    siteHours: houseRules.siteHours,
    colorsNeededOn: addDays(plan.startsOn, -proposal.colorsDaysBefore),
    colorsOpen: openColors(job, specification.steps),
    notIncluded: linesOf(texts.notIncluded),
    whoMoves: linesOf(texts.whoMoves),
    hidden: hiddenText(job),
    warranty: linesOf(texts.warranty),
    terms: linesOf(texts.terms),
    lead: leadText(job, specification.steps),
    doubts: proposalDoubts(job, [...priced.doubts, ...misfits(options)], plan),
  }
}

type PricedOptions = ReturnType<typeof pricedOptions>

function optionsOf(options: PricedOptions): readonly ProposalOption[] {
  const fitting = options.flatMap(({ option: { name, note, oneOf }, price }) =>
    price.ok ? [{ name, note, oneOf, cents: totalCents(price.value) }] : [],
  )
  const groups = [...new Set(fitting.map(({ oneOf }) => oneOf))].toSorted((one, other) =>
    one === '' ? -1 : other === '' ? 1 : 0,
  )
  return groups.flatMap((group) => fitting.filter(({ oneOf }) => oneOf === group))
}

function misfits(options: PricedOptions): readonly string[] {
  return options.flatMap(({ option, price }) =>
    price.ok ? [] : [`The option “${option.name}” is not printed. ${price.problem.sentence}`],
  )
}

function floorsOf(
  job: Job,
  specification: Specification,
  prices: readonly RoomPrice[],
  family: FamilyPage,
): readonly ProposalFloor[] {
  const centsOf = new Map(prices.map(({ roomId, cents }) => [roomId, cents]))
  const sets = roomSetsOf(job)
  return storeysUpwards(job)
    .map((storey): ProposalFloor => {
      const rooms = sets
        .filter(({ id }) => job.rooms[id]?.storeyId === storey.id)
        .map((set) => roomOf(job, specification.steps, centsOf, family, set))
        .filter(({ scope, cents }) => scope.length > 0 || cents !== 0)
      return { name: storey.name, rooms, cents: sumCents(rooms.map(({ cents }) => cents)) }
    })
    .filter(({ rooms }) => rooms.length > 0)
}

function roomOf(
  job: Job,
  steps: readonly Step[],
  centsOf: ReadonlyMap<RoomId, Cents>,
  family: FamilyPage,
  { id, name, roomIds }: RoomSet,
): ProposalRoom {
  const others = roomIds.filter((each) => each !== id).map((each) => job.rooms[each]?.name ?? each)
  return {
    name: others.length === 0 ? name : `${name} with ${others.join(' and ')}`,
    scope: roomScope(
      job,
      steps.filter((step) => roomIds.includes(step.roomId)),
    ),
    stretches: family.rooms.find(({ roomSetId }) => roomSetId === id)?.stretches ?? [],
    cents: sumCents(roomIds.flatMap((each) => centsOf.get(each) ?? [])),
  }
}

/** Shares of the whole price that sum to it, where the shop's steps make a whole. */
function paymentsOf(steps: readonly PaymentStep[], total: Cents): Proposal['payments'] {
  const shares = shareCents(
    total,
    steps.map(({ percent }) => percent),
  )
  return steps.map(({ name, percent }, index) => ({ name, percent, cents: shares[index] ?? total }))
}

/** `walls of Kitchen and Study`: what is painted and has no color yet. */
function openColors(job: Job, steps: readonly Step[]): readonly string[] {
  const open = steps.filter(({ operation, colourId }) => operation === 'coat' && colourId === null)
  const classes = [...new Set(open.flatMap(({ surfaceClass }) => surfaceClass ?? []))]
  return classes.map((each) => {
    const rooms = new Set(
      open
        .filter(({ surfaceClass }) => surfaceClass === each)
        .map(({ roomId }) => job.rooms[roomId]?.name ?? roomId),
    )
    return `${surfaceNoun(each)} of ${[...rooms].join(', ')}`
  })
}

function hiddenText({ business, houseRules }: Job): readonly string[] {
  const { hiddenHourCents } = business.proposal
  return [
    ...linesOf(business.texts.hiddenConditions),
    ...(hiddenHourCents > 0
      ? [`It is worked at ${formatCents(hiddenHourCents)} an hour for each person, with material besides.`]
      : []),
    ...(houseRules.price.contingencyPercent > 0
      ? ['The price holds an allowance for small things of this kind; only what goes beyond it is charged.']
      : []),
  ]
}
