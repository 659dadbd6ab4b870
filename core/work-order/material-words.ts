import { productOf } from '../price/materials.ts'
import type { Job } from '../project/job.ts'
import { classBesideName, productClassWords, sheenWords } from '../specification/trade-words.ts'
import type { Step } from '../specification/types.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { formatVolume } from '../units/volume.ts'

/** Product class, product, color and sheen of a step, or nothing. */
export function materialWords(job: Job, step: Step): string {
  if (step.productClass === null) return ''
  const product = productOf(job, step)
  const colour = step.colourId === null ? undefined : job.colours[step.colourId]
  const words = productClassWords[step.productClass]
  const isNamed = product !== undefined && classBesideName(words, product.name) !== ''
  const parts = [
    isNamed ? `${words} (${product.name})` : words,
    ...(colour === undefined ? [] : [colour.name]),
    ...(step.sheen === null ? [] : [sheenWords[step.sheen]]),
  ]
  return parts.join(', ')
}

/** How much of a product; nothing for nothing. */
export function volumeText(gallons: number, system: LengthUnitSystem): string {
  return gallons === 0 ? '' : formatVolume(gallons, system)
}
