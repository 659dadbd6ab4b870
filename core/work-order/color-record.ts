import type { Estimate } from '../price/estimate-types.ts'
import type { Job } from '../project/job.ts'
import { sheenWords } from '../specification/trade-words.ts'
import type { ColorRecord } from './document-types.ts'
import type { RoomSheet } from './room-sheet/sheet-types.ts'

/** What the client keeps: what is on every surface, what was kept back of it, how to look after it, and the papers of lead-safe work. */
export function colorRecord(job: Job, sheets: readonly RoomSheet[], priced: Estimate): ColorRecord {
  const finishes = priced.materials.filter(({ spareGallons }) => spareGallons > 0)
  return {
    client: job.header.client,
    site: job.header.site,
    rooms: sheets.map(({ roomSetId, name, alongside, colors, unpainted }) => ({
      roomSetId,
      name,
      alongside,
      colors: colors.filter(({ coats }) => coats > 0),
      unpainted,
    })),
    paints: finishes.map((line) => ({
      productId: line.productId,
      product: line.productName,
      brand: line.brand,
      color: line.colourName ?? '',
      code: line.colourCode,
      sheen: line.sheen === null ? '' : sheenWords[line.sheen],
      spareGallons: line.spareGallons,
      roomNames: sheets
        .filter(({ colors }) =>
          colors.some(
            ({ productId, colourId, sheen }) =>
              productId === line.productId && colourId === line.colourId && sheen === line.sheen,
          ),
        )
        .map(({ name }) => name),
    })),
    care,
    leadPapers: sheets.some(({ leadSafe }) => leadSafe) ? leadPapers : [],
  }
}

/** Common practice; the label of the can says more. */
const care: readonly string[] = [
  'New paint keeps hardening for about a month: until then do not wash or scrub it, and do not lean or stick anything on it.',
  'After that wash it with a soft cloth, warm water and a little mild soap, rubbing lightly; flat paint shows rubbing, so dab it.',
  'Doors and sash may stick in their first weeks: open them once a day.',
  'Touch up from the same can: stir it, use little, with the same kind of brush or roller as before, and feather the edge. A paint that has aged for years may show all the same; then paint from corner to corner.',
  'Keep the cans closed, upside down or well tapped shut, where they do not freeze, and out of the reach of children.',
]

/** 40 CFR 745.84 and 745.86: what the firm keeps for three years, and of what the owner gets a copy. */
const leadPapers: readonly string[] = [
  'Receipt for the lead pamphlet, signed and dated (745.84)',
  'Reports or test kit results where paint was tested: kit, places, results (745.86)',
  'Name of the certified renovator, copy of the certificate, and how the others were trained (745.86)',
  'Signs, containment, cleaning: that they were done as the rule asks (745.86)',
  'Cleaning verification: rooms, number of wipes, results, by whom and when (745.86)',
  'Copy to the owner, and to whoever lives there, with the final invoice or within 30 days (745.86)',
]
