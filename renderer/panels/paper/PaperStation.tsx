import '../parts/desk.css'
import './paper.css'
import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { Button, Label, Radio, RadioGroup } from 'react-aria-components'
import {
  type IssuedPaper,
  isPaper,
  nextPaperNumber,
  type PaperBody,
  sealedWords,
} from '../../../core/project/issued-records.ts'
import { records } from '../../../core/project/job.ts'
import { dateWords, momentWords } from '../../../core/time/date-words.ts'
import type { WorkOrder } from '../../../core/work-order/document-types.ts'
import {
  type DocumentPart,
  type PagedDocument,
  pagedDocument,
  wholeDocument,
} from '../../../core/work-order/html.ts'
import { headlessOutputs } from '../../../core/work-order/outputs.ts'
import { chosenDay, wholeJob } from '../../../core/work-order/paper-choice.ts'
import { noStamp, type PaperStamp } from '../../../core/work-order/paper-stamp.ts'
import { pocketFileName, pocketHtml, pocketParts } from '../../../core/work-order/pocket-page.ts'
import { workOrder } from '../../../core/work-order/work-order.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { PaperPreview, type PreviewHandle } from '../../print/PaperPreview.tsx'
import { useJob, useView } from '../../state/app.ts'
import { usePasses, useSpecification, useTakeoff } from '../../state/derived.ts'
import { newId } from '../../state/new-id.ts'
import { type SearchState, useForecast, usePaidEstimate } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { Callout } from '../parts/Callout.tsx'
import { Empty } from '../parts/Empty.tsx'
import { putRecord } from '../parts/edits.ts'
import { OneOf } from '../parts/OneOf.tsx'
import { loadMemory, type PaperMemory, saveMemory } from './choice-memory.ts'
import { type Delivered, printByHost, savePdf, saveText } from './deliver.ts'
import { type PaperDocument, paperDocuments, paperFileName, plainFiles } from './documents.ts'
import { heightsIn, type PageCount, pagesOf } from './page-count.ts'
import { WhatToPrint } from './WhatToPrint.tsx'

const sizes = [
  { id: 'letter', label: 'Letter' },
  { id: 'a4', label: 'A4' },
] as const

/** What goes out of the house: chosen, looked at exactly as printed, printed, saved. */
export function PaperStation() {
  const job = useJob()
  const forecast = useForecast()
  const accepted = useMemo(() => acceptedPlan(job), [job])
  const found = useSteadyPlan(forecast)
  const plan = accepted?.plan ?? found
  if (records(job.rooms).length === 0) {
    return (
      <section className="desk paper-station">
        <Empty title="No papers yet">
          <p>
            Papers are made from the sketch, what was found, the finishes and the plan. Draw the first room at
            House; the work order, the week sheets, the shopping list and the estimate follow.
          </p>
        </Empty>
      </section>
    )
  }
  if (plan === null) {
    return (
      <section className="desk paper-station">
        <Empty title="Papers need a plan">
          {forecast.clash === null ? (
            <p role="status">A plan is being looked for; the papers appear as soon as there is one.</p>
          ) : (
            <p>
              There is no plan to print from: {forecast.clash.sentence} Calendar shows it and lets you change
              crew, dates and house rules.
            </p>
          )}
        </Empty>
      </section>
    )
  }
  return <PaperDesk plan={plan} acceptedAt={accepted?.acceptedAt ?? null} />
}

/** The first plan, then the one the search rests at: papers are not laid out anew for every step between. */
function useSteadyPlan(forecast: SearchState): WorkPlan | null {
  const [steady, setSteady] = useState<WorkPlan | null>(null)
  const latest = forecast.plan?.workPlan ?? null
  const isDue = steady === null || forecast.status === 'resting'
  useEffect(() => {
    if (isDue) setSteady(latest)
  }, [isDue, latest])
  return latest === null ? null : (steady ?? latest)
}

function PaperDesk({ plan, acceptedAt }: { readonly plan: WorkPlan; readonly acceptedAt: string | null }) {
  const job = useJob()
  const host = useView((state) => state.host)
  const { today } = useSiteNow()
  const preview = useRef<PreviewHandle>(null)
  const [memory, setMemory] = usePaperMemory()
  const [day, setDay] = useState<string | null>(null)
  const [delivered, setDelivered] = useState<Delivered | null>(null)
  const [old, setOld] = useState<string | null>(null)
  const [isPrintDue, setPrintDue] = useState(false)
  const [count, setCount] = useState<PageCount | null>(null)
  const chosen = documentOf(memory.documentId)
  const parts =
    chosen.id === 'crew' ? chosen.parts.filter((part) => memory.parts.includes(part)) : chosen.parts
  const order = useOrder(plan, memory.daysBetweenTrips)
  const firstDay = chosenDay(order.days, { ...wholeJob, day: today.slice(0, 10) })?.date ?? null
  const isDraft = chosen.isOfPlan && acceptedAt === null
  const build = useBuild(order, parts, memory, day ?? firstDay)
  const paged = useMemo(() => build(isDraft ? { kind: 'draft' } : noStamp), [build, isDraft])
  const kept = records(job.issued).filter(isPaper)
  const given = kept.find((each) => each.id === old)
  const oldPaper = given === undefined ? undefined : openBody(given)
  const shown = oldPaper?.html ?? paged
  const size = oldPaper?.size ?? memory.size
  const writesPdf = host?.writesPdf ?? false
  const system = job.header.unitSystem
  const isUnderWay = delivered?.kind === 'underWay'

  function change(changes: Partial<PaperMemory>) {
    setMemory({ ...memory, ...changes })
    setCount(null)
    setOld(null)
    setDelivered(null)
  }

  /** The paper as it goes out: numbered where it is kept. Printed twice, the same paper keeps its number. */
  function toGiveOut(): Outgoing {
    if (oldPaper !== undefined || isDraft || chosen.issuedAs === null)
      return { html: oldPaper?.html ?? wholeDocument(paged), record: null }
    const last = kept.findLast((each) => openBody(each)?.name === chosen.name)
    const lastBody = last && openBody(last)
    if (last !== undefined && lastBody !== undefined && lastBody.number !== null) {
      const stamp = { kind: 'issued', number: lastBody.number, at: last.issuedAt } as const
      if (lastBody.size === size && wholeDocument(build(stamp)) === lastBody.html)
        return { html: lastBody.html, record: last }
    }
    const number = nextPaperNumber(records(job.issued))
    const stamped = wholeDocument(build({ kind: 'issued', number, at: today }))
    const record = {
      id: newId('paper'),
      kind: chosen.issuedAs,
      issuedAt: today,
      body: { version: 2, number, name: chosen.name, size, html: stamped },
    } as const
    return { html: stamped, record }
  }

  function keep({ record }: Outgoing) {
    if (record === null || kept.some(({ id }) => id === record.id)) return
    putRecord(`Keep the ${chosen.name.toLowerCase()} as given out`, 'issued', record)
  }

  async function print() {
    const outgoing = toGiveOut()
    if (!writesPdf) {
      keep(outgoing)
      // A browser prints what is shown: the numbered paper is shown first.
      if (outgoing.record === null || outgoing.record.id === old) printShown()
      else {
        setOld(outgoing.record.id)
        setPrintDue(true)
      }
      return
    }
    setDelivered({ kind: 'underWay' })
    const done = await printByHost(outgoing.html, size)
    if (done.kind === 'handedToBrowser') keep(outgoing)
    setDelivered(done)
  }

  function printShown() {
    preview.current?.print()
    setDelivered({ kind: 'handedToBrowser' })
  }

  function look(inside: Document) {
    setCount(pagesOf(heightsIn(inside), size))
    if (!isPrintDue) return
    setPrintDue(false)
    printShown()
  }

  async function save() {
    setDelivered({ kind: 'underWay' })
    const outgoing = toGiveOut()
    const name = paperFileName(job.header.title, given?.kind ?? chosen.id, given?.issuedAt ?? today)
    const done = await savePdf(`${name}.pdf`, outgoing.html, size)
    if (done.kind === 'written') keep(outgoing)
    setDelivered(done)
  }

  return (
    <section className="desk paper-station" aria-label="Paper">
      <div className="paper-choices">
        <RadioGroup
          className="paper-list"
          value={old === null ? chosen.id : ''}
          onChange={(value) => change({ documentId: value as PaperDocument['id'] })}
        >
          <Label>Document</Label>
          {paperDocuments.map((each) => (
            <Radio key={each.id} value={each.id} className="paper-option">
              <strong>{each.name}</strong>
              <span className="quiet">{each.holds}</span>
            </Radio>
          ))}
        </RadioGroup>
        {oldPaper !== undefined ? null : (
          <WhatToPrint
            order={order}
            parts={parts}
            isPack={chosen.id === 'crew'}
            memory={memory}
            onChange={change}
            day={day ?? firstDay}
            onDay={(date) => {
              setDay(date)
              setOld(null)
            }}
          />
        )}
        <OneOf
          label="Sheet"
          options={sizes}
          chosen={size}
          onChoose={(next) => change({ size: next })}
          isDisabled={oldPaper !== undefined}
        />
        <div className="paper-go">
          <p role="status">{countWords(count)}</p>
          <div className="button-row">
            <Button className="act-button" onPress={print} isDisabled={isUnderWay || count?.pages === 0}>
              Print
            </Button>
            {writesPdf ? (
              <Button className="plain-button" onPress={save} isDisabled={isUnderWay || count?.pages === 0}>
                Save as PDF
              </Button>
            ) : null}
          </div>
        </div>
        <PocketPage
          order={order}
          parts={parts}
          memory={memory}
          day={day ?? firstDay}
          onDelivered={setDelivered}
        />
        {writesPdf ? null : <p className="quiet">To save a PDF, choose “Save as PDF” as the printer.</p>}
        <DeliveredWords delivered={delivered} />
        <p className="quiet">
          {acceptedAt === null
            ? 'The dates are those of the plan being looked for: DRAFT is printed across, and nothing is kept as given out. Accept a plan on Calendar before anything goes out.'
            : `The dates are those of the plan accepted ${momentWords(acceptedAt, system)}, ${dateWords(plan.startsOn, system)} to ${dateWords(plan.finishesOn, system)}.`}
        </p>
        <PlainFiles plan={plan} onDelivered={setDelivered} />
        <GivenOut kept={kept} old={old} onLook={setOld} />
      </div>
      <div className="paper-shown">
        <PaperPreview
          ref={preview}
          paper={shown}
          title={`${oldPaper?.name ?? chosen.name}, as printed`}
          onWhole={look}
        />
      </div>
    </section>
  )
}

interface Outgoing {
  readonly html: string
  /** What is kept of it; null keeps nothing. */
  readonly record: IssuedPaper | null
}

function documentOf(id: PaperDocument['id']): PaperDocument {
  const found = paperDocuments.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no document is called ${id}`)
  return found
}

function openBody({ body }: IssuedPaper): PaperBody | undefined {
  return body.version === null ? undefined : body
}

function countWords(count: PageCount | null): string {
  if (count === null) return 'Sheets are being counted.'
  if (count.pages === 0) return 'Nothing is chosen.'
  return `${count.isExact ? '' : 'About '}${count.pages} ${count.pages === 1 ? 'sheet' : 'sheets'} of paper`
}

/** The last choice of this job, by the memory of the browser. */
function usePaperMemory(): readonly [PaperMemory, (memory: PaperMemory) => void] {
  const { id, unitSystem } = useJob().header
  const [memory, setMemory] = useState(() => loadMemory(id, unitSystem === 'imperial' ? 'letter' : 'a4'))
  return [
    memory,
    (next) => {
      setMemory(next)
      saveMemory(id, next)
    },
  ]
}

function useOrder(plan: WorkPlan, daysBetweenTrips: number): WorkOrder {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = usePaidEstimate()
  const passes = usePasses()
  return useMemo(
    () => workOrder(job, takeoff, specification, estimate, plan, daysBetweenTrips, passes),
    [job, takeoff, specification, estimate, plan, daysBetweenTrips, passes],
  )
}

/** Lays out what is chosen, under a stamp. */
function useBuild(
  order: WorkOrder,
  parts: readonly DocumentPart[],
  memory: PaperMemory,
  day: string | null,
): (stamp: PaperStamp) => PagedDocument {
  const { rooms, people, weeks, size } = memory
  const partList = parts.join(' ')
  return useCallback(
    (stamp) =>
      pagedDocument(
        order,
        size,
        partList.split(' ').filter((part) => part !== '') as DocumentPart[],
        { rooms, people, weeks, day },
        stamp,
      ),
    [order, size, partList, rooms, people, weeks, day],
  )
}

function PlainFiles(props: {
  readonly plan: WorkPlan
  readonly onDelivered: (delivered: Delivered) => void
}) {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = usePaidEstimate()
  const host = useView((state) => state.host)
  const { today } = useSiteNow()

  async function savePlain(name: string, mediaType: string) {
    const input = { job, takeoff, specification, estimate, plan: props.plan, madeAt: today }
    const text = headlessOutputs(input).files[name]
    if (text === undefined) throw new Error(`no plain file is called ${name}`)
    props.onDelivered(await saveText(name, mediaType, text, host?.host === 'desktop'))
  }

  return (
    <section className="block" aria-label="Plain files">
      <h3>Plain files</h3>
      <ul className="plain-files">
        {plainFiles(job).map((file) => (
          <li key={file.name}>
            <Button
              className="plain-button"
              aria-label={`Save ${file.name}`}
              onPress={() => savePlain(file.name, file.mediaType)}
            >
              {file.name}
            </Button>
            <span className="quiet">{file.holds}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** The same papers for a phone; only those of the crew. */
function PocketPage(props: {
  readonly order: WorkOrder
  readonly parts: readonly DocumentPart[]
  readonly memory: PaperMemory
  readonly day: string | null
  readonly onDelivered: (delivered: Delivered) => void
}) {
  const { order, memory, day, onDelivered } = props
  const { id, title } = useJob().header
  const host = useView((state) => state.host)
  const { today } = useSiteNow()
  const parts = pocketParts.filter((part) => props.parts.includes(part))
  if (parts.length === 0) return null

  async function savePocket() {
    const { rooms, people, weeks } = memory
    const page = pocketHtml(order, parts, { rooms, people, weeks, day }, `${id}-${today}`)
    const name = pocketFileName(title, today.slice(0, 10))
    onDelivered(await saveText(name, 'text/html', page, host?.host === 'desktop'))
  }

  return (
    <div>
      <Button className="plain-button" onPress={savePocket}>
        Save for a phone
      </Button>
      <p className="quiet">
        One file to send by mail or message. It works without network; its ticks stay on that phone.
      </p>
    </div>
  )
}

function GivenOut(props: {
  readonly kept: readonly IssuedPaper[]
  readonly old: string | null
  readonly onLook: (id: string | null) => void
}) {
  const { kept, old, onLook } = props
  const system = useJob().header.unitSystem
  if (kept.length === 0) return null
  return (
    <section className="block" aria-label="Given out">
      <h3>Given out</h3>
      <ul className="plain-files">
        {kept.map((each) => {
          const body = openBody(each)
          return (
            <li key={each.id}>
              {body === undefined ? (
                <strong>{sealedWords}</strong>
              ) : (
                <Button
                  className="plain-button"
                  aria-pressed={each.id === old}
                  onPress={() => onLook(each.id === old ? null : each.id)}
                >
                  {body.number === null ? body.name : `No. ${body.number}, ${body.name}`}
                </Button>
              )}
              <span className="quiet">{momentWords(each.issuedAt, system)}, as it was</span>
            </li>
          )
        })}
      </ul>
    </section>
  )
}

function DeliveredWords({ delivered }: { readonly delivered: Delivered | null }) {
  switch (delivered?.kind) {
    case 'underWay':
      return (
        <Callout kind="wait" title="Being laid out" isLive>
          A whole house takes some seconds.
        </Callout>
      )
    case 'written':
      return (
        <Callout kind="done" title="Saved" isLive>
          {delivered.path}
        </Callout>
      )
    case 'handedToBrowser':
      return (
        <Callout kind="done" title="Handed over" isLive>
          The printer or the download folder has it.
        </Callout>
      )
    case 'givenUp':
      return (
        <Callout kind="note" title="Nothing written" isLive>
          The dialog was closed without a choice.
        </Callout>
      )
    default:
      return null
  }
}
