import { useCallback, useMemo, useRef, useState } from 'react'
import { isPaper } from '../../../core/project/issued-records.ts'
import { records } from '../../../core/project/job.ts'
import { dateWords, momentWords } from '../../../core/time/date-words.ts'
import { type DocumentPart, picturedDocument, wholeDocument } from '../../../core/work-order/html.ts'
import { chosenDay, wholeJob } from '../../../core/work-order/paper-choice.ts'
import { noStamp } from '../../../core/work-order/paper-stamp.ts'
import { picturesNamed, withPictures } from '../../../core/work-order/pictured.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { PaperPreview, type PreviewHandle } from '../../print/PaperPreview.tsx'
import { useJob, viewStore } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { usePictures } from '../../state/pictures.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { changeHeader } from '../parts/edits.ts'
import { OneOf } from '../parts/OneOf.tsx'
import { proposalNumberOf } from '../parts/proposal-number.ts'
import type { PaperMemory } from './choice-memory.ts'
import { DocumentList } from './DocumentList.tsx'
import { type PaperDocument, paperDocuments, paperFileName } from './documents.ts'
import { useGiving } from './giving.ts'
import { openBody, outgoingPaper } from './outgoing.ts'
import { DeliveredWords, GivenOut, PlainFiles, PocketPage } from './PaperFiles.tsx'
import { GivingButtons } from './PaperGiving.tsx'
import { heightsIn, type PageCount, pagesOf } from './page-count.ts'
import { useBuild, useOrder, usePaperMemory } from './paper-order.ts'
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
  const chosen = documentOf(memory.documentId)
  const parts = usePartsOf(chosen, memory)
  const order = useOrder(plan, memory.daysBetweenTrips)
  const shownDay = day ?? chosenDay(order.days, { ...wholeJob, day: today.slice(0, 10) })?.date ?? null
  const isDraft = chosen.isOfPlan && acceptedAt === null
  const build = useBuild(order, parts, memory, shownDay)
  const paged = useMemo(() => build(isDraft ? { kind: 'draft' } : noStamp), [build, isDraft])
  const kept = records(job.issued).filter(isPaper)
  const given = kept.find((each) => each.id === old)
  const oldPaper = given === undefined ? undefined : openBody(given)
  const size = oldPaper?.size ?? job.header.paper
  const addressOf = usePaperPictures(oldPaper?.html ?? null)
  const shownPaper = useMemo(
    () =>
      oldPaper === undefined ? picturedDocument(paged, addressOf) : withPictures(oldPaper.html, addressOf),
    [oldPaper, paged, addressOf],
  )
  const giving = useGiving({
    name: chosen.name,
    fileName: paperFileName(job.header.title, given?.kind ?? chosen.id, given?.issuedAt ?? today),
    size,
    kept,
    shownId: old,
    show: setOld,
    printShown: () => preview.current?.print(),
    pictured: (html) => withPictures(html, addressOf),
    outgoing: async () => {
      const isNew = oldPaper === undefined && chosen.issuedAs === 'estimate'
      const proposalNumber = isNew ? await proposalNumberOf(job.header) : null
      if (isNew && proposalNumber === null) return null
      return outgoingPaper({
        proposalNumber,
        shown: oldPaper ?? null,
        chosen,
        size,
        isDraft,
        issued: records(job.issued),
        kept,
        at: today,
        id: newId('paper'),
        layOut: (stamp) => wholeDocument(build(stamp ?? noStamp)),
      })
    },
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
          pictured={(html) => withPictures(html, addressOf)}
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
          paper={shownPaper}
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

/** Addresses of the pictures of the job's photos, and of those in a paper given out before. */
function usePaperPictures(paper: string | null): (hash: string) => string | null {
  const job = useJob()
  const named = useMemo(
    () => [
      ...new Set([
        ...records(job.photos).map(({ small }) => small),
        ...(paper === null ? [] : picturesNamed(paper)),
      ]),
    ],
    [job.photos, paper],
  )
  const addresses = usePictures(named)
  return useCallback((hash) => addresses.get(hash) ?? null, [addresses])
}

/** The parts of a document; of the pack for the crew those that were chosen. */
function usePartsOf(chosen: PaperDocument, memory: PaperMemory): readonly DocumentPart[] {
  return useMemo(
    () => (chosen.id === 'crew' ? chosen.parts.filter((part) => memory.parts.includes(part)) : chosen.parts),
    [chosen, memory.parts],
  )
}

/** Which plan the dates are of. */
function PlanDates({ plan, acceptedAt }: { readonly plan: WorkPlan; readonly acceptedAt: string | null }) {
  const system = useJob().header.unitSystem
  return (
    <p className="quiet">
      {acceptedAt === null
        ? 'The dates are those of the plan being looked for: DRAFT is printed across, and nothing is kept as given out. Accept a plan on Calendar before anything goes out.'
        : `The dates are those of the plan accepted ${momentWords(acceptedAt, system)}, ${dateWords(plan.startsOn, system)} to ${dateWords(plan.finishesOn, system)}.`}
    </p>
  )
}

function documentOf(id: PaperDocument['id']): PaperDocument {
  const found = paperDocuments.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no document is called ${id}`)
  return found
}
