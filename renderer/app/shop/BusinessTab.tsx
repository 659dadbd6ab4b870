import type { Business } from '../../../core/project/business-record.ts'
import { EntryField } from '../../panels/parts/EntryField.tsx'
import { changeBusiness } from '../../panels/parts/edits.ts'
import { dateEntry, orNothing, wholeNumber, words } from '../../panels/parts/entries.ts'
import { LogoPart } from './LogoPart.tsx'

type TextName = 'name' | 'phone' | 'mail' | 'license' | 'insurance'

const lines: readonly (readonly [TextName, string, string?])[] = [
  ['name', 'Business name', 'It is printed at the top of every proposal.'],
  ['phone', 'Phone'],
  ['mail', 'Mail'],
  ['license', 'License', 'Kind and number, as your state asks for it.'],
  ['insurance', 'Insurance', 'Who insures you, and the number of the policy.'],
]

/** Who the shop is: the letterhead, the papers it holds, and the next numbers. */
export function BusinessTab({ business }: { readonly business: Business }) {
  const { leadCertificate, nextNumbers } = business
  return (
    <div className="scroll tab-pad shop-tab">
      <section className="block">
        <h3>Letterhead</h3>
        <div className="job-facts">
          {lines.map(([name, label, hint]) => (
            <EntryField
              key={name}
              label={label}
              shown={business[name]}
              read={words(200)}
              onCommit={(text) => changeBusiness(`Change the ${label.toLowerCase()}`, { [name]: text })}
              {...(hint === undefined ? {} : { hint })}
            />
          ))}
          <EntryField
            label="Address"
            width="wide"
            lines={2}
            shown={business.address}
            read={words(4000)}
            onCommit={(address) => changeBusiness('Change the address of the shop', { address })}
          />
        </div>
      </section>
      <LogoPart logo={business.logo} />
      <section className="block">
        <h3>Lead-safe certificate of the firm</h3>
        <p className="quiet">
          Houses from before 1978 need one for work that disturbs paint (40 CFR 745.81, 745.89). A proposal
          for such a house says the number, or says that it is missing or has run out.
        </p>
        <div className="job-facts">
          <EntryField
            label="Number"
            shown={leadCertificate.number}
            read={words(200)}
            onCommit={(number) =>
              changeBusiness('Change the lead-safe certificate', {
                leadCertificate: { ...leadCertificate, number },
              })
            }
          />
          <EntryField
            label="Valid until"
            kind="date"
            shown={leadCertificate.expiresOn ?? ''}
            read={orNothing(dateEntry)}
            onCommit={(expiresOn: string | null) =>
              changeBusiness('Change the lead-safe certificate', {
                leadCertificate: { ...leadCertificate, expiresOn },
              })
            }
          />
        </div>
      </section>
      <section className="block">
        <h3>Next numbers</h3>
        <p className="quiet">
          Each paper takes its number when it is first given out; no number is given twice.
        </p>
        <div className="field-grid">
          {(['proposal', 'changeOrder', 'invoice'] as const).map((kind) => (
            <EntryField
              key={kind}
              label={numberWords[kind]}
              width="short"
              shown={String(nextNumbers[kind])}
              read={wholeNumber(1, 1_000_000)}
              onCommit={(number) =>
                changeBusiness('Change the next number', { nextNumbers: { ...nextNumbers, [kind]: number } })
              }
            />
          ))}
        </div>
      </section>
    </div>
  )
}

const numberWords = { proposal: 'Proposal', changeOrder: 'Change order', invoice: 'Invoice' } as const
