import type { ProductClass } from '../project/vocabulary.ts'

/** What a primer must do on a surface. */
const primerNeeds = [
  'patch',
  'hide',
  'porous',
  'bond',
  'newPlaster',
  'pasteResidue',
  'bareWood',
  'bareMetal',
  'stain',
  'knots',
  'overShellac',
  'chalk',
] as const
export type PrimerNeed = (typeof primerNeeds)[number]

interface PrimerFacts {
  readonly productClass: ProductClass
  readonly does: readonly PrimerNeed[]
}

/**
 * Which class of primer does what, plainest first: the first that does everything asked is taken. Common practice; the label
 * of the product bought decides. Calcimine: a sealer made for it or an oil primer (common practice).
 */
const primerTable: readonly PrimerFacts[] = [
  { productClass: 'acrylicPrimer', does: ['patch', 'hide', 'porous'] },
  { productClass: 'bondingPrimer', does: ['patch', 'hide', 'porous', 'bond'] },
  { productClass: 'plasterSealer', does: ['patch', 'hide', 'porous', 'newPlaster', 'pasteResidue'] },
  { productClass: 'calcimineSealer', does: ['patch', 'hide', 'porous', 'chalk'] },
  {
    productClass: 'oilPrimer',
    does: ['patch', 'hide', 'porous', 'bond', 'pasteResidue', 'bareWood', 'chalk'],
  },
  { productClass: 'metalPrimer', does: ['patch', 'hide', 'bond', 'bareMetal'] },
  {
    productClass: 'stainBlockingPrimer',
    does: ['patch', 'hide', 'porous', 'bond', 'pasteResidue', 'bareWood', 'stain'],
  },
  {
    productClass: 'shellacPrimer',
    does: [
      'patch',
      'hide',
      'porous',
      'bond',
      'pasteResidue',
      'bareWood',
      'bareMetal',
      'stain',
      'knots',
      'overShellac',
    ],
  },
]

/**
 * The plainest primer that does all that is asked, one the shop stocks if it can be; null when no class does it all. Of those in stock
 * one that is quick enough comes first, where there is one.
 */
export function choosePrimer(
  needs: readonly PrimerNeed[],
  stocked: ReadonlySet<ProductClass>,
  isQuick: (productClass: ProductClass) => boolean = () => true,
): ProductClass | null {
  const able = primerTable
    .map((each) => each.productClass)
    .filter((productClass) => needs.every((need) => primerDoes(productClass, need)))
  const inStock = able.filter((productClass) => stocked.has(productClass))
  return inStock.find(isQuick) ?? inStock[0] ?? able[0] ?? null
}

/** Whether a primer of this class meets the need, by the table of primers. */
export function primerDoes(productClass: ProductClass, need: PrimerNeed): boolean {
  return primerTable.find((each) => each.productClass === productClass)?.does.includes(need) ?? false
}

/** Two needs no single primer meets, for saying which rules clash; null when one does. */
export function clashingNeeds(needs: readonly PrimerNeed[]): readonly [PrimerNeed, PrimerNeed] | null {
  for (const [index, first] of needs.entries()) {
    for (const second of needs.slice(index + 1)) {
      if (choosePrimer([first, second], new Set()) === null) return [first, second]
    }
  }
  return null
}
