import type { Business } from '../../project/business-record.ts'
import type { Cents } from '../../units/money.ts'
import type { FamilyStretch } from '../family-types.ts'
import type { LeadRule } from '../lead-rules.ts'

/** The offer to the client; no wages, rates or margins. */
export interface Proposal {
  readonly business: Business
  readonly site: readonly string[]
  /** Null until the first one of the job is given out. */
  readonly number: number | null
  /** Of the next one that is given out. */
  readonly version: number
  /** Of what it offers, `offerMark`. */
  readonly mark: string
  readonly prices: Business['proposal']['prices']
  readonly validDays: number
  readonly floors: readonly ProposalFloor[]
  readonly beforeTax: Cents
  readonly tax: Cents
  readonly total: Cents
  /** What the client may tick, alternatives one behind the other. */
  readonly options: readonly ProposalOption[]
  /** They sum to the total. */
  readonly payments: readonly { readonly name: string; readonly percent: number; readonly cents: Cents }[]
  /** On which somebody works. */
  readonly days: number
  readonly siteHours: { readonly from: string; readonly to: string }
  readonly colorsNeededOn: string
  /** What is painted and has no color yet. */
  readonly colorsOpen: readonly string[]
  readonly notIncluded: readonly string[]
  readonly whoMoves: readonly string[]
  readonly hidden: readonly string[]
  readonly warranty: readonly string[]
  readonly terms: readonly string[]
  readonly lead: ProposalLead | null
  /** For the owner: what to settle before it is given out. */
  readonly doubts: readonly string[]
}

export interface ProposalOption {
  readonly name: string
  readonly note: string
  /** The word that alternatives have in common, of which one can be ticked; empty for one that stands alone. */
  readonly oneOf: string
  /** With tax, added to the total; less than nothing where it takes work away. */
  readonly cents: Cents
}

export interface ProposalFloor {
  readonly name: string
  readonly rooms: readonly ProposalRoom[]
  readonly cents: Cents
}

/** A room with the small rooms worked with it. */
export interface ProposalRoom {
  readonly name: string
  readonly scope: readonly string[]
  readonly stretches: readonly FamilyStretch[]
  readonly cents: Cents
}

export interface ProposalLead {
  /** Some of the work is more than minor repair. */
  readonly isCovered: boolean
  readonly lines: readonly LeadRule[]
}
