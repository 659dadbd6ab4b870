import type { Job } from '../../../core/project/job.ts'
import { changedSiteRule } from '../../../core/schedule/job/changed-site-rule.ts'
import { type SiteRule, siteRuleNumber, siteRules } from '../../../core/schedule/job/site-rules.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { decimalNumber, wholeNumber } from '../parts/entries.ts'
import { tryChange } from './trial.ts'

const { moving, dayCosts } = siteRules

interface Amount {
  readonly rule: SiteRule
  readonly name: string
  readonly label: string
  readonly hint: string
  readonly figure: typeof minutes | typeof dollars
}

const minutes = { unit: 'min', read: wholeNumber(0, 480) }
const dollars = { unit: '$', read: decimalNumber(0, 10_000) }
const percent = { unit: '% of a day out of use', read: wholeNumber(0, 100) }

function amount<Rule extends SiteRule>(
  rule: Rule,
  name: keyof Rule['numbers'] & string,
  label: string,
  hint = '',
  figure: Amount['figure'] = rule.id === moving.id ? minutes : dollars,
): Amount {
  return { rule, name, label, hint, figure }
}

const amounts: readonly Amount[] = [
  amount(moving, 'moveMinutes', 'Moving to another room', 'with everything that goes along'),
  amount(moving, 'productMinutes', 'Changing product', 'washing out and opening another'),
  amount(moving, 'leastPaidMinutes', 'Paid at least for a day', 'to whoever comes'),
  amount(dayCosts, 'siteDay', 'A day more on site', 'from the first day the job may begin'),
  amount(dayCosts, 'roomDayLivedIn', 'A room out of use for a day, lived in'),
  amount(dayCosts, 'roomDayEmpty', 'A room out of use for a day, empty'),
  amount(dayCosts, 'waitingPercent', 'A begun room that waits', 'given back, and not done', percent),
  amount(dayCosts, 'handOver', 'Handing a room over', 'to somebody who was not in it'),
  amount(dayCosts, 'takeUp', 'Taking a coat up again', 'after a night'),
]

/** What plans are compared by besides wages: time that goes between passes, and what days and hand-overs are worth. */
export function PlanMoneyBlock({ job }: { readonly job: Job }) {
  const change = ({ rule, name, label }: Amount, value: number) =>
    tryChange({
      key: `rules/${rule.id}/${name}`,
      name: `${label}: ${value}`,
      commands: [{ kind: 'putRecord', collection: 'rules', record: changedSiteRule(job, rule, name, value) }],
    })
  return (
    <section className="block">
      <h3>What plans are compared by</h3>
      <p className="quiet">
        Besides wages. Shop assumptions: put in your own numbers, and the plan goes by those.
      </p>
      <div className="field-grid">
        {amounts.map((each) => (
          <EntryField
            key={each.name}
            label={each.label}
            width="short"
            hint={each.hint}
            shown={String(siteRuleNumber(job, each.rule, each.name))}
            onCommit={(value) => change(each, value)}
            {...each.figure}
          />
        ))}
      </div>
    </section>
  )
}
