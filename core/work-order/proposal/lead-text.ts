import type { Job } from '../../project/job.ts'
import { mainRoomOf } from '../../project/room-sets.ts'
import { federalLimits, mayHoldLead } from '../../specification/lead.ts'
import type { Step } from '../../specification/types.ts'
import { dateWordsWithYear } from '../../time/date-words.ts'
import type { ProposalLead } from './proposal-types.ts'

/**
 * What the federal rule has the client told before work in a house that may hold lead paint; null where it does not reach the house. It never
 * says that lead is there or is not.
 */
export function leadText(job: Job, steps: readonly Step[]): ProposalLead | null {
  const { yearBuilt, unitSystem } = job.header
  const { builtBefore, interiorSquareFeet } = federalLimits
  if (!mayHoldLead(yearBuilt)) return null
  const covered = [
    ...new Set(
      steps
        .filter(({ operation }) => operation === 'postSigns')
        .map(({ roomId }) => mainRoomOf(job, roomId))
        .map((roomId) => job.rooms[roomId]?.name ?? roomId),
    ),
  ]
  const age =
    yearBuilt === null
      ? `Nobody knows when the house was built, so it counts as one from before ${builtBefore}, whose paint may hold lead.`
      : `The house was built in ${yearBuilt}; paint from before ${builtBefore} may hold lead.`
  if (covered.length === 0) {
    return {
      isCovered: false,
      lines: [
        {
          text: `${age} As planned, no more than ${interiorSquareFeet} sq ft of paint is disturbed in a room, which the federal rule exempts. Should it come to more, the rule applies to that room.`,
          source: '40 CFR 745.83',
        },
      ],
    }
  }
  const { number, expiresOn } = job.business.leadCertificate
  const until = expiresOn === null ? '' : `, valid until ${dateWordsWithYear(expiresOn, unitSystem)}`
  return {
    isCovered: true,
    lines: [
      {
        text: `${age} Lead-safe work is planned and priced in ${covered.join(', ')}.`,
        source: '40 CFR 745 Subpart E',
      },
      {
        text: `The work is done by a certified firm${number === '' ? '' : ` (certificate ${number}${until})`} and directed by a certified renovator.`,
        source: '40 CFR 745.81, 745.89, 745.90',
      },
      {
        text: 'Before work begins, and no more than 60 days before, you receive the pamphlet “Renovate Right” of the EPA and sign for it below.',
        source: '40 CFR 745.84',
      },
      {
        text: 'Rooms in lead-safe work are closed off with signs and plastic; nobody but the crew goes in until cleaning has been verified.',
        source: '40 CFR 745.85',
      },
      {
        text: 'With the final invoice, at the latest 30 days after the work, you receive the record of what was done.',
        source: '40 CFR 745.86',
      },
    ],
  }
}
