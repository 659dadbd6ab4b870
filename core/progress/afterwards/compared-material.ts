import { groupedBy } from '../../lists/lists.ts'
import type { Estimate } from '../../price/estimate-types.ts'
import { type Job, records } from '../../project/job.ts'

/** One product in one color: gallons as counted, as bought by the estimate, and as used by the cans written down. */
export interface ComparedMaterial {
  readonly key: string
  readonly label: string
  readonly neededGallons: number
  readonly boughtGallons: number
  /** 0 where no can of it was written down. */
  readonly usedGallons: number
}

/** What was to be used and what was used, product by product; what was used and never counted stands there too. */
export function comparedMaterial(
  job: Job,
  { materials }: Pick<Estimate, 'materials'>,
): readonly ComparedMaterial[] {
  const counted = groupedBy(materials, ({ productId, colourId }) => `${productId} ${colourId ?? ''}`)
  const used = groupedBy(records(job.cansUsed), ({ productId, colourId }) => `${productId} ${colourId ?? ''}`)
  return [...new Set([...counted.keys(), ...used.keys()])].map((key) => {
    const [productId = '', colourId = ''] = key.split(' ')
    const lines = counted.get(key) ?? []
    const colour = job.colours[colourId]?.name
    const product = job.products[productId]?.name ?? productId
    return {
      key,
      label: colour === undefined ? product : `${product}, ${colour}`,
      neededGallons: lines.reduce((sum, { gallons }) => sum + gallons, 0),
      boughtGallons: lines.reduce((sum, { boughtGallons }) => sum + boughtGallons, 0),
      usedGallons: (used.get(key) ?? []).reduce((sum, { gallons, count }) => sum + gallons * count, 0),
    }
  })
}
