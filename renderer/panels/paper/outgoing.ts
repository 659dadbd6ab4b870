import { proposalPaperId, versionOfPaper } from '../../../core/agreement/proposal-version.ts'
import {
  type Issued,
  type IssuedId,
  type IssuedPaper,
  nextPaperNumber,
  type PaperBody,
} from '../../../core/project/issued-records.ts'
import type { PaperStamp } from '../../../core/work-order/paper-stamp.ts'
import type { PaperDocument } from './documents.ts'

/** A paper on its way out of the house. */
export interface Outgoing {
  readonly html: string
  /** What is kept of it; null keeps nothing. */
  readonly record: IssuedPaper | null
}

interface PaperToGive {
  /** A paper given out before, which goes out again as it was. */
  readonly shown: PaperBody | null
  readonly chosen: PaperDocument
  readonly size: PaperBody['size']
  readonly isDraft: boolean
  /** All that was given out so far, in its order. */
  readonly issued: readonly Issued[]
  readonly kept: readonly IssuedPaper[]
  /** Moment on site. */
  readonly at: string
  readonly id: IssuedId
  /** Of a proposal: its number over all jobs of the shop, and what it offers in which version; null for every other paper. */
  readonly proposal: ProposalToGive | null
  /** The whole document under a stamp; null is without one. */
  readonly layOut: (stamp: PaperStamp | null) => string
}

interface ProposalToGive {
  readonly number: number
  readonly version: number
  /** `offerMark` */
  readonly mark: string
}

/** A kept paper that can be opened; undefined where it comes from a newer program. */
export function openBody({ body }: IssuedPaper): PaperBody | undefined {
  return body.version === null ? undefined : body
}

/** The paper as it goes out: numbered where it is kept. The same paper given out again keeps its number. */
export function outgoingPaper(paper: PaperToGive): Outgoing {
  const { shown, chosen, size, layOut } = paper
  if (shown !== null) return { html: shown.html, record: null }
  if (paper.isDraft || chosen.issuedAs === null)
    return { html: layOut(paper.isDraft ? { kind: 'draft' } : null), record: null }
  const last = paper.kept.findLast((each) => openBody(each)?.name === chosen.name)
  const lastBody = last && openBody(last)
  if (last !== undefined && lastBody !== undefined && lastBody.number !== null && lastBody.size === size) {
    const stamp = issuedStamp(paper, lastBody.number, last.issuedAt, versionOfPaper(paper.issued, last.id))
    const again = layOut(stamp)
    if (again === lastBody.html) return { html: again, record: last }
  }
  const number = nextPaperNumber(paper.issued)
  const { proposal } = paper
  const html = layOut(issuedStamp(paper, number, paper.at, proposal?.version ?? 1))
  const id = proposal === null ? paper.id : proposalPaperId(proposal.version, proposal.mark)
  const body = { version: 2, number, name: chosen.name, size, html } as const
  return { html, record: { id, kind: chosen.issuedAs, issuedAt: paper.at, body } }
}

function issuedStamp({ proposal }: PaperToGive, number: number, at: string, version: number): PaperStamp {
  return {
    kind: 'issued',
    number,
    at,
    proposal: proposal === null ? null : { number: proposal.number, version },
  }
}
