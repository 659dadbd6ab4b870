/** What is known of the work in one room of a house, for the federal renovation rule (40 CFR 745 Subpart E). */
export interface LeadWork {
  /** Null when nobody knows: then the house counts as old. */
  readonly yearBuilt: number | null
  readonly place: 'interior' | 'exterior'
  /** Painted surface this work disturbs: in the room, or outside in all. */
  readonly squareFeet: number
  /** Disturbed in the same room by jobs of the last 30 days. */
  readonly earlierSquareFeet: number
  /** Painted components taken out; each counts with the whole of its area. */
  readonly removedSquareFeet: number
  /** Windows replaced, painted surface demolished. */
  readonly replacesWindow: boolean
  readonly demolishes: boolean
  /** Flame, torch, power tool without shroud and HEPA exhaust, heat gun at 1,100 °F or more: 40 CFR 745.85(a)(3). */
  readonly prohibitedPractice: boolean
}

interface LeadLimits {
  readonly builtBefore: number
  readonly interiorSquareFeet: number
  readonly exteriorSquareFeet: number
}

/** 40 CFR 745.83: at most 6 sq ft per room inside, 20 outside, in houses built before 1978. */
export const federalLimits: LeadLimits = {
  builtBefore: 1978,
  interiorSquareFeet: 6,
  exteriorSquareFeet: 20,
}

/** The federal rule reaches the house: it was built before the limit, or nobody knows when. It does not say that there is lead. */
export function mayHoldLead(
  yearBuilt: number | null,
  { builtBefore }: Pick<LeadLimits, 'builtBefore'> = federalLimits,
): boolean {
  return yearBuilt === null || yearBuilt < builtBefore
}

/**
 * `outsideRule` says only that the federal rule does not reach the house; `belowThreshold` only that the minor-repair exemption does
 * apply. Neither says that there is no lead.
 */
export interface LeadVerdict {
  readonly kind: 'outsideRule' | 'belowThreshold' | 'covered'
  /** This work, whole components and the 30 days before, together. */
  readonly squareFeet: number
  readonly why: 'built' | 'area' | 'windowReplacement' | 'demolition' | 'prohibitedPractice'
}

/** Decides whether the renovation rule covers the work in a room. Exactly at the limit is still exempt (at most 6 sq ft). */
export function leadVerdict(work: LeadWork, limits: LeadLimits = federalLimits): LeadVerdict {
  const squareFeet = work.squareFeet + work.earlierSquareFeet + work.removedSquareFeet
  const verdict = (kind: LeadVerdict['kind'], why: LeadVerdict['why']) => ({ kind, squareFeet, why })
  if (!mayHoldLead(work.yearBuilt, limits)) return verdict('outsideRule', 'built')
  if (work.prohibitedPractice) return verdict('covered', 'prohibitedPractice')
  if (work.replacesWindow) return verdict('covered', 'windowReplacement')
  if (work.demolishes) return verdict('covered', 'demolition')
  const limit = work.place === 'interior' ? limits.interiorSquareFeet : limits.exteriorSquareFeet
  return verdict(squareFeet > limit + 1e-9 ? 'covered' : 'belowThreshold', 'area')
}
