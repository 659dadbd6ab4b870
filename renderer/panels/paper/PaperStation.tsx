import '../parts/desk.css'
import './paper.css'
import { useEffect, useMemo, useRef, useState } from 'react'
import { Button, Label, Radio, RadioGroup } from 'react-aria-components'
import { type Issued, type IssuedId, sealedWords } from '../../../core/project/issued-records.ts'
import { records } from '../../../core/project/job.ts'
import { dateWords, momentWords } from '../../../core/work-order/date-words.ts'
import { workOrderHtml } from '../../../core/work-order/html.ts'
import { headlessOutputs } from '../../../core/work-order/outputs.ts'
import { workOrder } from '../../../core/work-order/work-order.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { PaperPreview, printPreview } from '../../print/PaperPreview.tsx'
import { newId, useJob, useView } from '../../state/app.ts'
import { useSpecification, useTakeoff } from '../../state/derived.ts'
import { type SearchState, useForecast, usePaidEstimate } from '../../state/planner.ts'
import { acceptedPlan } from '../../state/planner-accepted.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { Callout } from '../parts/Callout.tsx'
import { Empty } from '../parts/Empty.tsx'
import { putRecord } from '../parts/edits.ts'
import { OneOf } from '../parts/OneOf.tsx'
import { type Delivered, printByHost, savePdf, saveText } from './deliver.ts'
import { type PaperDocument, paperDocuments, paperFileName, plainFiles } from './documents.ts'

type Size = 'letter' | 'a4'
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
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = usePaidEstimate()
  const host = useView((state) => state.host)
  const { today } = useSiteNow()
  const frame = useRef<HTMLIFrameElement>(null)
  const [documentId, setDocumentId] = useState<PaperDocument['id']>('workOrder')
  const [size, setSize] = useState<Size>(job.header.unitSystem === 'imperial' ? 'letter' : 'a4')
  const [delivered, setDelivered] = useState<Delivered | null>(null)
  const [old, setOld] = useState<string | null>(null)
  const chosen = paperDocuments.find((each) => each.id === documentId)
  const order = useMemo(
    () => workOrder(job, takeoff, specification, estimate, plan),
    [job, takeoff, specification, estimate, plan],
  )
  const html = useMemo(() => workOrderHtml(order, size, chosen?.parts), [order, size, chosen])
  const kept = records(job.issued).filter(isPaper)
  const given = kept.find((each) => each.id === old)
  const oldBody = given?.body
  const oldPaper = oldBody === undefined || oldBody.version === null ? undefined : oldBody
  const shown = oldPaper?.html ?? html
  const writesPdf = host?.writesPdf ?? false
  const system = job.header.unitSystem
  const isUnderWay = delivered?.kind === 'underWay'

  function keep() {
    if (chosen?.issuedAs == null || oldPaper !== undefined) return
    // Printed twice, the same paper is kept once.
    if (kept.some(({ body }) => body.version !== null && body.html === html)) return
    putRecord(`Keep the ${chosen.name.toLowerCase()} as given out`, 'issued', {
      id: newId('paper') as IssuedId,
      kind: chosen.issuedAs,
      issuedAt: today,
      body: { version: 1, name: chosen.name, size, html },
    })
  }

  async function print() {
    if (!writesPdf) {
      if (frame.current !== null) printPreview(frame.current)
      keep()
      setDelivered({ kind: 'handedToBrowser' })
      return
    }
    setDelivered({ kind: 'underWay' })
    const done = await printByHost(shown, oldPaper?.size ?? size)
    if (done.kind === 'handedToBrowser') keep()
    setDelivered(done)
  }

  async function save() {
    setDelivered({ kind: 'underWay' })
    const name = paperFileName(
      job.header.title,
      given?.kind ?? chosen?.id ?? 'paper',
      given?.issuedAt ?? today,
    )
    const done = await savePdf(`${name}.pdf`, shown, oldPaper?.size ?? size)
    if (done.kind === 'written') keep()
    setDelivered(done)
  }

  async function savePlain(name: string, mediaType: string) {
    const input = { job, takeoff, specification, estimate, plan, madeAt: today }
    const text = headlessOutputs(input).files[name]
    if (text === undefined) throw new Error(`no plain file is called ${name}`)
    setDelivered(await saveText(name, mediaType, text, host?.host === 'desktop'))
  }

  return (
    <section className="desk paper-station" aria-label="Paper">
      <div className="paper-choices">
        <RadioGroup
          className="paper-list"
          value={old === null ? documentId : ''}
          onChange={(value) => {
            setDocumentId(value as PaperDocument['id'])
            setOld(null)
            setDelivered(null)
          }}
        >
          <Label>Document</Label>
          {paperDocuments.map((each) => (
            <Radio key={each.id} value={each.id} className="paper-option">
              <strong>{each.name}</strong>
              <span className="quiet">{each.holds}</span>
            </Radio>
          ))}
        </RadioGroup>
        <OneOf
          label="Sheet"
          options={sizes}
          chosen={size}
          onChoose={setSize}
          isDisabled={oldPaper !== undefined}
        />
        <div className="button-row">
          <Button className="act-button" onPress={print} isDisabled={isUnderWay}>
            Print
          </Button>
          {writesPdf ? (
            <Button className="plain-button" onPress={save} isDisabled={isUnderWay}>
              Save as PDF
            </Button>
          ) : null}
        </div>
        {writesPdf ? null : <p className="quiet">To save a PDF, choose “Save as PDF” as the printer.</p>}
        <DeliveredWords delivered={delivered} />
        <p className="quiet">
          {acceptedAt === null
            ? 'The dates are those of the plan being looked for. Accept a plan on Calendar before anything goes out.'
            : `The dates are those of the plan accepted ${momentWords(acceptedAt, system)}, ${dateWords(plan.startsOn, system)} to ${dateWords(plan.finishesOn, system)}.`}
        </p>
        <section className="block" aria-label="Plain files">
          <h3>Plain files</h3>
          <ul className="plain-files">
            {plainFiles.map((file) => (
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
        {kept.length === 0 ? null : (
          <section className="block" aria-label="Given out">
            <h3>Given out</h3>
            <ul className="plain-files">
              {kept.map((each) => (
                <li key={each.id}>
                  {each.body.version === null ? (
                    <strong>{sealedWords}</strong>
                  ) : (
                    <Button
                      className="plain-button"
                      aria-pressed={each.id === old}
                      onPress={() => setOld(each.id === old ? null : each.id)}
                    >
                      {each.body.name}
                    </Button>
                  )}
                  <span className="quiet">{momentWords(each.issuedAt, system)}, as it was</span>
                </li>
              ))}
            </ul>
          </section>
        )}
      </div>
      <div className="paper-shown">
        <PaperPreview ref={frame} html={shown} title={`${oldPaper?.name ?? chosen?.name}, as printed`} />
      </div>
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

type IssuedPaper = Extract<Issued, { readonly kind: 'workOrder' | 'estimate' }>

function isPaper(issued: Issued): issued is IssuedPaper {
  return issued.kind === 'workOrder' || issued.kind === 'estimate'
}
