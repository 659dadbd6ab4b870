import { Button, Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components'
import type { JobHeader } from '../../core/project/job.ts'
import { EntryField } from '../panels/parts/EntryField.tsx'
import { changeHeader } from '../panels/parts/edits.ts'
import { dateEntry, orNothing, wholeNumber, words } from '../panels/parts/entries.ts'
import { OneOf } from '../panels/parts/OneOf.tsx'
import { Tick } from '../panels/parts/Tick.tsx'
import { useJobState, useView, viewStore } from '../state/app.ts'
import { ageSentence, dwellersSentence } from './job-sheet-words.ts'

/** The facts of the job: whose house it is, how old, who lives there, when work starts. Opened from the title block, and first in a new job. */
export function JobSheet() {
  const page = useView((state) => state.jobSheet)
  const header = useJobState((state) => state.job?.header ?? null)
  if (header === null) return null
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

function JobFacts({ header }: { readonly header: JobHeader }) {
  const change = (action: string) => (next: Partial<JobHeader>) => changeHeader(action, next)
  return (
    <div className="job-facts">
      <EntryField
        label="Job"
        shown={header.title}
        read={words(200, true)}
        onCommit={(title) => change('Name the job')({ title })}
      />
      <EntryField
        label="Client"
        shown={header.client}
        read={words(200)}
        onCommit={(client) => change('Name the client')({ client })}
      />
      <EntryField
        label="Address of the house"
        width="wide"
        lines={2}
        shown={header.site}
        read={words(4000)}
        onCommit={(site) => change('Write down the address')({ site })}
      />
      <EntryField
        label="Year built"
        shown={header.yearBuilt === null ? '' : String(header.yearBuilt)}
        read={orNothing(wholeNumber(1600, 2200))}
        onCommit={(yearBuilt: number | null) => change('Say when the house was built')({ yearBuilt })}
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
        onChoose={(id) => change('Say whether the house is lived in')({ occupied: id === 'livedIn' })}
      />
      <div className="fact-follows">
        <Tick
          isOn={header.childrenOrPets}
          onChange={(childrenOrPets) => change('Say whether there are children or pets')({ childrenOrPets })}
        >
          Children or pets in the house
        </Tick>
      </div>
      <p className="fact-follows fact-wide">{dwellersSentence(header)}</p>
      <EntryField
        label="Work starts"
        kind="date"
        shown={header.startsOn}
        read={dateEntry}
        onCommit={(startsOn) => change('Choose the first day')({ startsOn })}
      />
      <OneOf
        label="Units"
        options={[
          { id: 'imperial', label: 'Feet and inches' },
          { id: 'metric', label: 'Meters' },
        ]}
        chosen={header.unitSystem}
        onChoose={(unitSystem) => change('Choose the units')({ unitSystem })}
      />
    </div>
  )
}
