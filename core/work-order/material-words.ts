import { productOf } from '../price/materials.ts'
import type { Job } from '../project/job.ts'
import { productClassWords, sheenWords } from '../specification/trade-words.ts'
import type { Step } from '../specification/types.ts'
import type { LengthUnitSystem } from '../units/length.ts'
import { toLitres } from '../units/volume.ts'

/** Product class, product, color and sheen of a step, or nothing. */
export function materialWords(job: Job, step: Step): string {
  if (step.productClass === null) return ''
  const product = productOf(job, step)
  const colour = step.colourId === null ? undefined : job.colours[step.colourId]
  const words = productClassWords[step.productClass]
  const parts = [
    product === undefined || product.name.toLowerCase() === words ? words : `${words} (${product.name})`,
    ...(colour === undefined ? [] : [colour.name]),
    ...(step.sheen === null ? [] : [sheenWords[step.sheen]]),
  ]
  return parts.join(', ')
}

/** Small amounts in the measure a painter pours: fluid ounces or millilitres; nothing for nothing. */
export function volumeText(gallons: number, system: LengthUnitSystem): string {
  if (gallons === 0) return ''
  if (system === 'imperial') {
    return gallons < 0.2 ? `${Math.ceil(gallons * 128)} fl oz` : `${gallons.toFixed(2)} gal`
  }
  const litres = toLitres(gallons)
  return litres < 0.75 ? `${Math.ceil(litres * 100) * 10} ml` : `${litres.toFixed(1)} L`
}
