import { useState } from 'react'
import type { IssuedPaper, PaperBody } from '../../../core/project/issued-records.ts'
import { useView } from '../../state/app.ts'
import { putRecord } from '../parts/edits.ts'
import { type Delivered, printByHost, savePdf } from './deliver.ts'
import type { Outgoing } from './outgoing.ts'

interface GivenPaper {
  readonly name: string
  /** Without its ending. */
  readonly fileName: string
  readonly size: PaperBody['size']
  readonly kept: readonly IssuedPaper[]
  /** The kept paper that is looked at; null while the document chosen is shown. */
  readonly shownId: string | null
  readonly show: (id: string) => void
  readonly printShown: () => void
  /** The paper with its pictures put in; what is kept has only their names. */
  readonly pictured: (html: string) => string
  /** Null where it cannot go out, for a reason that was shown. */
  readonly outgoing: () => Promise<Outgoing | null>
}

export interface Giving {
  readonly writesPdf: boolean
  readonly delivered: Delivered | null
  readonly told: (delivered: Delivered | null) => void
  readonly print: () => void
  readonly save: () => void
  /** To be called whenever the preview shows a whole document. */
  readonly isShown: () => void
}

/** Prints and saves; what went out under a number is kept as it was. */
export function useGiving(paper: GivenPaper): Giving {
  const writesPdf = useView((state) => state.host)?.writesPdf ?? false
  const [delivered, setDelivered] = useState<Delivered | null>(null)
  const [isPrintDue, setPrintDue] = useState(false)

  function keep({ record }: Outgoing) {
    if (record === null || paper.kept.some(({ id }) => id === record.id)) return
    putRecord(`Keep the ${paper.name.toLowerCase()} as given out`, 'issued', record)
  }

  function printShown() {
    paper.printShown()
    setDelivered({ kind: 'handedToBrowser' })
  }

  async function printByBrowser() {
    const outgoing = await paper.outgoing()
    if (outgoing === null) return
    keep(outgoing)
    // A browser prints what is shown: the numbered paper is shown first.
    if (outgoing.record === null || outgoing.record.id === paper.shownId) printShown()
    else {
      paper.show(outgoing.record.id)
      setPrintDue(true)
    }
  }

  async function give(by: (outgoing: Outgoing) => Promise<Delivered>, isOut: Delivered['kind']) {
    setDelivered({ kind: 'underWay' })
    const outgoing = await paper.outgoing()
    if (outgoing === null) return setDelivered(null)
    const done = await by(outgoing)
    if (done.kind === isOut) keep(outgoing)
    setDelivered(done)
  }

  return {
    writesPdf,
    delivered,
    told: setDelivered,
    print() {
      if (writesPdf) void give(({ html }) => printByHost(paper.pictured(html), paper.size), 'handedToBrowser')
      else void printByBrowser()
    },
    save() {
      void give(({ html }) => savePdf(`${paper.fileName}.pdf`, paper.pictured(html), paper.size), 'written')
    },
    isShown() {
      if (!isPrintDue) return
      setPrintDue(false)
      printShown()
    },
  }
}
