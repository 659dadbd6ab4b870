import type { Business } from '../../project/business-record.ts'
import type { Job } from '../../project/job.ts'
import { mayHoldLead } from '../../specification/lead.ts'
import { dateWordsWithYear } from '../../time/date-words.ts'
import type { WorkPlan } from '../work-plan.ts'

const assumedWords: Readonly<Record<Business['assumed'][number], string>> = {
  people: 'people, hours and wages',
  money: 'percentages and taxes',
  rates: 'production rates',
  products: 'prices of products',
  texts: 'terms and payment steps',
}

/** What the owner should settle before a proposal is given out; none of it stands on the page that is. */
export function proposalDoubts(job: Job, doubts: readonly string[], plan: WorkPlan): readonly string[] {
  const { business, header } = job
  const { assumed, paymentSteps, leadCertificate } = business
  const sum = paymentSteps.reduce((all, { percent }) => all + percent, 0)
  const isUnderLeadRule = mayHoldLead(header.yearBuilt)
  const { number, expiresOn } = leadCertificate
  return [
    ...doubts,
    ...(business.name === ''
      ? ['The shop has no name yet: fill in the shop sheet and bring this job up to date.']
      : []),
    ...(assumed.length === 0
      ? []
      : [`Shop assumptions still, not your own: ${assumed.map((part) => assumedWords[part]).join('; ')}.`]),
    ...(paymentSteps.length > 0 && sum !== 100 ? [`The payment steps add up to ${sum}%, not 100%.`] : []),
    ...(isUnderLeadRule && number === ''
      ? ['The shop sheet names no lead-safe certificate of the firm, which work covered by 40 CFR 745 needs.']
      : []),
    ...(isUnderLeadRule && expiresOn !== null && expiresOn < plan.finishesOn
      ? [
          `The lead-safe certificate runs out on ${dateWordsWithYear(expiresOn, header.unitSystem)}, before the work is done.`,
        ]
      : []),
  ]
}
