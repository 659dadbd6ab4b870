import { useEffect, useState } from 'react'
import { Button, Heading } from 'react-aria-components'
import { type Outcome, succeed } from '../../../../core/project/problem.ts'
import type { PdfFile } from '../../../state/pdf-pages.ts'
import { EntryField } from '../../parts/EntryField.tsx'
import { wholeNumber } from '../../parts/entries.ts'

/** Pixels; enough to tell one floor from another. */
const previewSide = 900

/** Which page of a PDF goes under a floor, with a picture of it. */
export function PagePick(props: {
  readonly name: string
  readonly pdf: PdfFile
  readonly isBusy: boolean
  readonly onTake: (page: number) => void
  readonly onLeave: () => void
}) {
  const { pdf } = props
  const [page, setPage] = useState(1)
  const shown = usePage(pdf, page)
  return (
    <>
      <Heading slot="title">Which page of {props.name}?</Heading>
      <div className="button-row underlay-line">
        <Button className="plain-button" isDisabled={page === 1} onPress={() => setPage(page - 1)}>
          Previous page
        </Button>
        <EntryField
          label={`Page, 1 to ${pdf.pages}`}
          shown={String(page)}
          read={wholeNumber(1, pdf.pages)}
          onCommit={setPage}
          width="short"
        />
        <Button className="plain-button" isDisabled={page === pdf.pages} onPress={() => setPage(page + 1)}>
          Next page
        </Button>
      </div>
      <div className="underlay-page" aria-live="polite">
        {shown === null ? (
          <p className="quiet">Drawing …</p>
        ) : shown.ok ? (
          <img src={shown.value} alt={`Page ${page}`} />
        ) : (
          <p>{shown.problem.sentence}</p>
        )}
      </div>
      <div className="button-row sheet-end">
        <Button
          className="act-button"
          isDisabled={props.isBusy || shown?.ok !== true}
          onPress={() => props.onTake(page)}
        >
          Put page {String(page)} under the sketch
        </Button>
        <Button className="plain-button" onPress={props.onLeave}>
          Cancel
        </Button>
      </div>
    </>
  )
}

/** An address of the page's picture; null while it is drawn. */
function usePage(pdf: PdfFile, page: number): Outcome<string> | null {
  const [drawn, setDrawn] = useState<{ readonly page: number; readonly address: Outcome<string> } | null>(
    null,
  )
  useEffect(() => {
    let isWanted = true
    void pdf.draw(page, previewSide).then((answer) => {
      const address = answer.ok ? succeed(answer.value.toDataURL('image/png')) : answer
      if (isWanted) setDrawn({ page, address })
    })
    return () => {
      isWanted = false
    }
  }, [pdf, page])
  return drawn?.page === page ? drawn.address : null
}
