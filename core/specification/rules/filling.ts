import { records } from '../../project/job.ts'
import type { ProductClass } from '../../project/vocabulary.ts'
import type { Finding } from '../findings.ts'
import { type Contribution, commonPractice, type GroupView } from '../rule.ts'
import type { OrderStatement } from '../rule-facts.ts'
import { number, orderBecause, primer, primerExtent, stepAt } from '../step-requests.ts'

/** Deep first layer sets hard without shrinking; later layers sand easily (common practice). Wood takes wood filler. */
function fillerClass(view: GroupView, layer: number): ProductClass {
  if (view.group.substrate === 'wood' || view.group.substrate === 'metal') return 'woodFiller'
  return layer === 1 ? 'settingFiller' : 'dryingFiller'
}

/** Nail holes, dings and dents are shallow: what can be sanded the same day fills them, where the shop has it (common practice). */
export function smallFillerClass(view: GroupView): ProductClass {
  const hasLight = records(view.job.products).some(({ productClass }) => productClass === 'lightFiller')
  return hasLight ? 'lightFiller' : fillerClass(view, 2)
}

/** Fill in layers, sand, prime the patch: what every filled place gets. */
export function filling(view: GroupView, findings: readonly Finding[], layers: number): Contribution {
  const fills = Array.from({ length: layers }, (_, index) =>
    stepAt(findings, 'fill', { ordinal: `${index + 1}`, productClass: fillerClass(view, index + 1) }),
  )
  return {
    steps: [...fills, stepAt(findings, 'sandFill')],
    primers: [primer('patch', primerExtent(view, findings), findings)],
  }
}

/** The number of layers as the owner may change it. */
export const layers = (value: number, source = commonPractice) => ({
  layers: number(value, 'layers', 'Layers of filler', source),
})

export const fillingOrder: readonly OrderStatement[] = [
  orderBecause(
    ['fill/1'],
    ['fill/2', 'fill/3'],
    'Filler goes on in layers: a thick one shrinks, cracks and stays soft inside.',
  ),
  orderBecause(['fill/2'], ['fill/3'], 'Each layer of filler dries before the next covers it.'),
  orderBecause(
    ['fill/1', 'fill/flexible'],
    ['tapeCrack'],
    'The V is filled and dry before the tape bridges it.',
  ),
  orderBecause(
    ['tapeCrack'],
    ['fill/2', 'fill/3', 'skim', 'sandFill'],
    'The tape is covered by the next layer: bare, it shows.',
  ),
  orderBecause(['fill/flexible'], ['fill/2', 'fill/3'], 'Flexible filler is dry before it is covered.'),
  orderBecause(['fill'], ['sandFill'], 'Filler is sanded flat once it is dry: sanded soft, it tears.'),
  orderBecause(
    ['sandFill'],
    ['spotPrime', 'prime'],
    'Patches are primed after sanding: sanding cuts through the primer.',
  ),
]
