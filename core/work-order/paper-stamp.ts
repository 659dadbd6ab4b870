import { momentWords } from '../time/date-words.ts'
import type { SiteMoment } from '../time/site-moment.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { cssString } from './html-template.ts'
import { pageOfPages } from './print-style.ts'

/** What is printed across or below every page of a document. */
export type PaperStamp =
  | { readonly kind: 'none' }
  /** No plan is accepted yet: nothing may be worked by it. */
  | { readonly kind: 'draft' }
  /** Given out under a number, at a moment on site. */
  | {
      readonly kind: 'issued'
      readonly number: number
      readonly at: SiteMoment
      /** The number over all jobs of the shop, for a proposal. */
      readonly proposal: { readonly number: number; readonly version: number } | null
    }

type IssuedStamp = Extract<PaperStamp, { readonly kind: 'issued' }>

export const noStamp: PaperStamp = { kind: 'none' }

/** Style that puts the stamp on every page, a number beside the page's own at the right: in the middle it ran into the words at the left. What stays in its place on the screen is repeated on each page by a printing engine. */
export function stampStyle(stamp: PaperStamp, system: LengthUnitSystem): string {
  switch (stamp.kind) {
    case 'none':
      return ''
    case 'draft':
      return `
body::before { content: "DRAFT"; position: fixed; left: 0; right: 0; top: 38vh; text-align: center; z-index: 1; pointer-events: none;
  font: 700 92pt/1 Arial, sans-serif; letter-spacing: 8mm; color: rgba(0, 0, 0, 0.1); transform: rotate(-32deg); }
`
    case 'issued':
      return `
@page { @bottom-right { content: ${cssString(`${stampWords(stamp, system)} · `)} ${pageOfPages}; font-weight: 600; } }
`
  }
}

/** `No. 7, given out Mon Mar 29, 5:00 pm`, `Proposal 12, version 2`. */
function stampWords({ number, at, proposal }: IssuedStamp, system: LengthUnitSystem): string {
  return proposal === null
    ? `No. ${number}, given out ${momentWords(at, system)}`
    : `Proposal ${proposal.number}, version ${proposal.version}`
}
