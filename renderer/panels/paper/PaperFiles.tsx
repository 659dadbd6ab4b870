import { Button } from 'react-aria-components'
import { type IssuedPaper, sealedWords } from '../../../core/project/issued-records.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import type { WorkOrder } from '../../../core/work-order/document-types.ts'
import type { DocumentPart } from '../../../core/work-order/html.ts'
import { headlessOutputs } from '../../../core/work-order/outputs.ts'
import { pocketFileName, pocketHtml, pocketParts } from '../../../core/work-order/pocket-page.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { useJob, useView } from '../../state/app.ts'
import { useSpecification, useTakeoff } from '../../state/derived.ts'
import { usePaidEstimate } from '../../state/planner.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import { Callout } from '../parts/Callout.tsx'
import type { PaperMemory } from './choice-memory.ts'
import { type Delivered, saveText } from './deliver.ts'
import { plainFiles } from './documents.ts'
import type { Giving } from './giving.ts'
import { openBody } from './outgoing.ts'

export function PlainFiles(props: {
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
export function PocketPage(props: {
  readonly order: WorkOrder
  readonly parts: readonly DocumentPart[]
  readonly memory: PaperMemory
  readonly day: string | null
  readonly pictured: (html: string) => string
  readonly onDelivered: (delivered: Delivered) => void
}) {
  const { order, memory, day, pictured, onDelivered } = props
  const { id, title } = useJob().header
  const host = useView((state) => state.host)
  const { today } = useSiteNow()
  const parts = pocketParts.filter((part) => props.parts.includes(part))
  if (parts.length === 0) return null

  async function savePocket() {
    const { rooms, people, weeks } = memory
    const page = pocketHtml(order, parts, { rooms, people, weeks, day }, `${id}-${today}`)
    const name = pocketFileName(title, today.slice(0, 10))
    onDelivered(await saveText(name, 'text/html', pictured(page), host?.host === 'desktop'))
  }

  return (
    <div>
      <Button className="plain-button" onPress={savePocket}>
        Save for a phone
      </Button>
      <p className="quiet">
        One file to send by email or message. It works without a network; its check marks stay on that phone.
      </p>
    </div>
  )
}

export function GivenOut(props: {
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

export function DeliveredWords({ giving }: { readonly giving: Giving }) {
  return (
    <>
      {giving.writesPdf ? null : <p className="quiet">To save a PDF, choose “Save as PDF” as the printer.</p>}
      {deliveredWords(giving.delivered)}
    </>
  )
}

function deliveredWords(delivered: Delivered | null) {
  switch (delivered?.kind) {
    case 'underWay':
      return (
        <Callout kind="wait" title="Laying it out" isLive>
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
          You closed the dialog, so nothing was saved or printed.
        </Callout>
      )
    default:
      return null
  }
}
