import { useState } from 'react'
import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import type { HouseRules, JobHeader } from '../../core/project/job.ts'
import { EntryField } from '../panels/parts/EntryField.tsx'
import { changeHeader, changeHouseRules } from '../panels/parts/edits.ts'
import { dateEntry, orNothing, timeEntry, wholeNumber, words } from '../panels/parts/entries.ts'
import { OneOf } from '../panels/parts/OneOf.tsx'
import { Tick } from '../panels/parts/Tick.tsx'
import { useJobState, useView, viewStore } from '../state/app.ts'
import { openShop } from './job-book.ts'
import { ageSentence, dwellersSentence } from './job-sheet-words.ts'
import { ShopComparison } from './shop/ShopComparison.tsx'

/** The facts of the job: whose house it is, how old, who lives there, when work starts. Opened from the title block, and first in a new job. */
export function JobSheet() {
  const page = useView((state) => state.jobSheet)
  const header = useJobState((state) => state.job?.header ?? null)
  const hours = useJobState((state) => state.job?.houseRules.siteHours ?? null)
  if (header === null || hours === null) return null
  const close = () => viewStore.setState({ jobSheet: 'closed' })
  return (
    <ModalOverlay
      isOpen={page !== 'closed'}
      onOpenChange={(isOpen) => {
        if (!isOpen) close()
      }}
      isDismissable
      className="veil"
    >
      <Modal className="dialog-frame">
        <Dialog className="dialog">
          <Heading slot="title">Job sheet</Heading>
          {page === 'first' ? (
            <p className="quiet">
              Fill in what you know; the rest can wait. The title block along the lower edge brings this sheet
              back at any time.
            </p>
          ) : null}
          <JobFacts header={header} />
          <SiteFacts header={header} hours={hours} />
          {page === 'first' ? null : <ShopCopy />}
          <div className="button-row sheet-end">
            <Button className="act-button" onPress={close}>
              {page === 'first' ? 'Sketch the house' : 'Done'}
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  )
}

/** The job's copy of the shop sheet; compared when it is asked for. */
function ShopCopy() {
  const [isCompared, setIsCompared] = useState(false)
  return (
    <section className="shop-copy">
      <h3>Shop sheet</h3>
      <p className="quiet">
        This job works with its own copy of the shop’s figures and texts, taken when it began; it never
        changes by itself.
      </p>
      {isCompared ? (
        <ShopComparison />
      ) : (
        <div className="button-row">
          <Button className="plain-button" onPress={() => setIsCompared(true)}>
            Compare with the shop sheet
          </Button>
          <Button
            className="plain-button"
            onPress={() => {
              viewStore.setState({ jobSheet: 'closed' })
              void openShop()
            }}
          >
            Open the shop sheet
          </Button>
        </div>
      )}
    </section>
  )
}

function JobFacts({ header }: { readonly header: JobHeader }) {
  return (
    <div className="job-facts">
      <EntryField
        label="Job"
        shown={header.title}
        read={words(200, true)}
        onCommit={(title) => changeHeader('Name the job', { title })}
      />
      <EntryField
        label="Client"
        shown={header.client}
        read={words(200)}
        onCommit={(client) => changeHeader('Name the client', { client })}
      />
      <EntryField
        label="Phones"
        lines={2}
        shown={header.phones}
        read={words(4000)}
        onCommit={(phones) => changeHeader('Change the phones', { phones })}
        hint="One to a line, with who answers it."
      />
      <EntryField
        label="Email"
        shown={header.mail}
        read={words(200)}
        onCommit={(mail) => changeHeader('Change the email', { mail })}
      />
      <EntryField
        label="Address of the house"
        width="wide"
        lines={2}
        shown={header.site}
        read={words(4000)}
        onCommit={(site) => changeHeader('Change the address', { site })}
      />
      <EntryField
        label="How to get in"
        width="wide"
        lines={2}
        shown={header.access}
        read={words(4000)}
        onCommit={(access) => changeHeader('Change how to get in', { access })}
        hint="For the crew’s cover only."
      />
      <EntryField
        label="Year built"
        shown={header.yearBuilt === null ? '' : String(header.yearBuilt)}
        read={orNothing(wholeNumber(1600, 2200))}
        onCommit={(yearBuilt: number | null) => changeHeader('Set the year built', { yearBuilt })}
        hint="Leave it empty when nobody knows."
      />
      <p className="fact-follows" data-testid="age-follows">
        {ageSentence(header.yearBuilt)}
      </p>
      <OneOf
        label="During the work the house is"
        options={[
          { id: 'livedIn', label: 'Lived in' },
          { id: 'empty', label: 'Empty' },
        ]}
        chosen={header.occupied ? 'livedIn' : 'empty'}
        onChoose={(id) => changeHeader('Set whether the house is lived in', { occupied: id === 'livedIn' })}
      />
      <div className="fact-follows">
        <Tick
          isOn={header.childrenOrPets}
          onChange={(childrenOrPets) =>
            changeHeader('Set whether there are children or pets', { childrenOrPets })
          }
        >
          Children or pets in the house
        </Tick>
      </div>
      <p className="fact-follows fact-wide">{dwellersSentence(header)}</p>
    </div>
  )
}

type SiteHours = HouseRules['siteHours']

/** When work goes on, and how the job is measured and printed. */
function SiteFacts({ header, hours }: { readonly header: JobHeader; readonly hours: SiteHours }) {
  const setHours = (next: Partial<SiteHours>) =>
    changeHouseRules('Change the hours on site', { siteHours: { ...hours, ...next } })
  return (
    <div className="job-facts">
      <EntryField
        label="Work starts"
        kind="date"
        shown={header.startsOn}
        read={dateEntry}
        onCommit={(startsOn) => changeHeader('Choose the first day', { startsOn })}
      />
      <div className="field-grid">
        <EntryField
          label="On site from"
          kind="time"
          width="short"
          shown={hours.from}
          read={timeEntry}
          onCommit={(from) => setHours({ from })}
        />
        <EntryField
          label="until"
          kind="time"
          width="short"
          shown={hours.to}
          read={timeEntry}
          onCommit={(to) => setHours({ to })}
        />
      </div>
      <OneOf
        label="Units"
        options={[
          { id: 'imperial', label: 'Feet and inches' },
          { id: 'metric', label: 'Meters' },
        ]}
        chosen={header.unitSystem}
        onChoose={(unitSystem) => changeHeader('Choose the units', { unitSystem })}
      />
      <OneOf
        label="Paper"
        options={[
          { id: 'letter', label: 'Letter' },
          { id: 'a4', label: 'A4' },
        ]}
        chosen={header.paper}
        onChoose={(paper) => changeHeader('Choose the paper', { paper })}
      />
    </div>
  )
}
