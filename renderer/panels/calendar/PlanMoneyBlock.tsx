import type { Job } from '../../../core/project/job.ts'
import { changedSiteRule } from '../../../core/schedule/job/changed-site-rule.ts'
import { siteRuleNumber, siteRules } from '../../../core/schedule/job/site-rules.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { decimalNumber, wholeNumber } from '../parts/entries.ts'
import { tryChange } from './trial.ts'

const { moving, dayCosts } = siteRules

const minutes: readonly (readonly [keyof typeof moving.numbers, string, string])[] = [
  ['moveMinutes', 'Moving to another room', 'with everything that goes along'],
  ['productMinutes', 'Changing product', 'washing out and opening another'],
  ['leastPaidMinutes', 'Paid at least for a day', 'to whoever comes'],
]

const dollars: readonly (readonly [keyof typeof dayCosts.numbers, string, string])[] = [
  ['siteDay', 'A day more on site', 'from the first day the job may begin'],
  ['roomDayLivedIn', 'A room out of use for a day, lived in', ''],
  ['roomDayEmpty', 'A room out of use for a day, empty', ''],
  ['handOver', 'Handing a room over', 'to somebody who was not in it'],
  ['takeUp', 'Taking a coat up again', 'after a night'],
]

/** What plans are compared by besides wages: time that goes between passes, and what days and hand-overs are worth. */
export function PlanMoneyBlock({ job }: { readonly job: Job }) {
  const change = (rule: typeof moving | typeof dayCosts, name: string, label: string, value: number) =>
    tryChange({
      key: `rules/${rule.id}/${name}`,
      name: `${label}: ${value}`,
      commands: [{ kind: 'putRecord', collection: 'rules', record: changedSiteRule(job, rule, name, value) }],
    })
  return (
    <section className="block">
      <h3>What plans are compared by</h3>
      <p className="quiet">
        Besides wages. Shop assumptions: give them your own numbers, and the plan is looked for by those.
      </p>
      <div className="field-grid">
        {minutes.map(([name, label, hint]) => (
          <EntryField
            key={name}
            label={label}
            width="short"
            unit="min"
            hint={hint}
            shown={String(siteRuleNumber(job, moving, name))}
            read={wholeNumber(0, 480)}
            onCommit={(value) => change(moving, name, label, value)}
          />
        ))}
        {dollars.map(([name, label, hint]) => (
          <EntryField
            key={name}
            label={label}
            width="short"
            unit="$"
            hint={hint}
            shown={String(siteRuleNumber(job, dayCosts, name))}
            read={decimalNumber(0, 10_000)}
            onCommit={(value) => change(dayCosts, name, label, value)}
          />
        ))}
      </div>
    </section>
  )
}
