import type { JobHeader } from '../../core/project/job.ts'
import { federalLimits, mayHoldLead } from '../../core/specification/lead.ts'

/** What the age of the house brings, said where the year is typed. Never that a house is free of lead. */
export function ageSentence(yearBuilt: number | null): string {
  const { builtBefore } = federalLimits
  if (yearBuilt === null) {
    return `Not known: the house counts as one from before ${builtBefore}, and lead-safe rules apply to work that cuts into its paint.`
  }
  return mayHoldLead(yearBuilt)
    ? `Before ${builtBefore}: lead-safe rules apply to work that cuts into its paint.`
    : `${builtBefore} or later: the federal lead-safe rule does not reach this house. State rules and local codes may still.`
}

/** What it changes that people live in the house. */
export function dwellersSentence({
  occupied,
  childrenOrPets,
}: Pick<JobHeader, 'occupied' | 'childrenOrPets'>): string {
  const living = occupied
    ? 'Lived in: work takes longer around people and their things, and bedrooms are kept free of fumes at night.'
    : 'Empty: nobody needs a room back in the evening.'
  return childrenOrPets ? `${living} Cautions for children and pets go on the sheets.` : living
}
