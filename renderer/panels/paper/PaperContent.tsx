import { useRef, useState } from 'react'
import { type Job, records } from '../../../core/project/job.ts'
import { dateWords, momentWords } from '../../../core/time/date-words.ts'
import { wholeDocument } from '../../../core/work-order/html.ts'
import { noStamp } from '../../../core/work-order/paper-stamp.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { PaperPreview, type PreviewHandle } from '../../print/PaperPreview.tsx'
import { useJob, viewStore } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { changeHeader } from '../parts/edits.ts'
import { OneOf } from '../parts/OneOf.tsx'
import { proposalNumberOf } from '../parts/proposal-number.ts'
import type { PaperMemory } from './choice-memory.ts'
import { DocumentList } from './DocumentList.tsx'
import { paperFileName } from './documents.ts'
import { useGiving } from './giving.ts'
import { type Outgoing, outgoingPaper } from './outgoing.ts'
import { DeliveredWords, GivenOut, PlainFiles, PocketPage } from './PaperFiles.tsx'
import { GivingButtons } from './PaperGiving.tsx'
import { heightsIn, type PageCount, pagesOf } from './page-count.ts'
import { usePaperMemory } from './paper-order.ts'
import { type ShownPaper, useShownPaper } from './shown-paper.ts'
import { WhatToPrint } from './WhatToPrint.tsx'

const sizes = [
  { id: 'letter', label: 'Letter' },
  { id: 'a4', label: 'A4' },
] as const

/** The paper that another station sent the user here for; asked for once. */
function takeAskedPaper(): string | null {
  const { paperId } = viewStore.getState()
  if (paperId !== null) queueMicrotask(() => viewStore.setState({ paperId: null }))
  return paperId
}

/** What can be printed beside the paper as it will be; needs a plan. */
export function PaperContent({
  plan,
  acceptedAt,
}: {
  readonly plan: WorkPlan
  readonly acceptedAt: string | null
}) {
  const job = useJob()
  const { today } = useSiteNow()
  const preview = useRef<PreviewHandle>(null)
  const [memory, setMemory] = usePaperMemory()
  const [day, setDay] = useState<string | null>(null)
  const [old, setOld] = useState(takeAskedPaper)
  const [count, setCount] = useState<PageCount | null>(null)
  const paper = useShownPaper({ plan, acceptedAt, memory, day, oldId: old })
  const { chosen, parts, order, shownDay, kept, given, oldPaper, size } = paper
  const giving = useGiving({
    name: chosen.name,
    fileName: paperFileName(job.header.title, given?.kind ?? chosen.id, given?.issuedAt ?? today),
    size,
    kept,
    shownId: old,
    show: setOld,
    printShown: () => preview.current?.print(),
    pictured: paper.pictured,
    outgoing: () => outgoingOf(job, paper, today),
  })

  function pickDay(date: string) {
    setDay(date)
    setOld(null)
  }

  function change(changes: Partial<PaperMemory>) {
    setMemory({ ...memory, ...changes })
    setCount(null)
    setOld(null)
    giving.told(null)
  }

  return (
    <section className="station-page paper-station" aria-label="Paper">
      <div className="paper-choices">
        <h2 className="unseen">What to print</h2>
        <DocumentList
          chosen={old === null ? chosen.id : null}
          onChoose={(documentId) => change({ documentId })}
        />
        {oldPaper !== undefined ? null : (
          <WhatToPrint
            order={order}
            parts={parts}
            isPack={chosen.id === 'crew'}
            memory={memory}
            onChange={change}
            day={shownDay}
            onDay={pickDay}
          />
        )}
        <OneOf
          label="Sheet"
          options={sizes}
          chosen={size}
          onChoose={(paper) => changeHeader('Choose the paper', { paper })}
          isDisabled={oldPaper !== undefined}
        />
        <GivingButtons giving={giving} count={count} />
        <PocketPage
          order={order}
          parts={parts}
          memory={memory}
          day={shownDay}
          pictured={paper.pictured}
          onDelivered={giving.told}
        />
        <DeliveredWords giving={giving} />
        <PlanDates plan={plan} acceptedAt={acceptedAt} />
        <PlainFiles plan={plan} onDelivered={giving.told} />
        <GivenOut kept={kept} old={old} onLook={setOld} />
      </div>
      <div className="paper-shown">
        <PaperPreview
          ref={preview}
          paper={paper.html}
          title={`${oldPaper?.name ?? chosen.name}, as printed`}
          onWhole={(inside) => {
            setCount(pagesOf(heightsIn(inside), size))
            giving.isShown()
          }}
        />
      </div>
    </section>
  )
}

/** What is looked at, as it leaves the house; null where it cannot, for a reason that was shown. */
async function outgoingOf(job: Job, paper: ShownPaper, at: string): Promise<Outgoing | null> {
  const { chosen, size, isDraft, kept, oldPaper, build, order } = paper
  const isNew = oldPaper === undefined && chosen.issuedAs === 'estimate'
  const proposalNumber = isNew ? await proposalNumberOf(job.header) : null
  if (isNew && proposalNumber === null) return null
  return outgoingPaper({
    proposal:
      proposalNumber === null
        ? null
        : { number: proposalNumber, version: order.proposal.version, mark: order.proposal.mark },
    shown: oldPaper ?? null,
    chosen,
    size,
    isDraft,
    issued: records(job.issued),
    kept,
    at,
    id: newId('paper'),
    layOut: (stamp) => wholeDocument(build(stamp ?? noStamp)),
  })
}

/** Which plan the dates are of. */
function PlanDates({ plan, acceptedAt }: { readonly plan: WorkPlan; readonly acceptedAt: string | null }) {
  const system = useJob().header.unitSystem
  return (
    <p className="quiet">
      {acceptedAt === null
        ? 'The dates are those of a plan still being worked out: DRAFT is printed across, and nothing is kept as given out. Accept a plan on Calendar before anything goes out.'
        : `The dates are those of the plan accepted ${momentWords(acceptedAt, system)}, ${dateWords(plan.startsOn, system)} to ${dateWords(plan.finishesOn, system)}.`}
    </p>
  )
}
