import { type Job, records } from '../project/job.ts'
import type { Product } from '../project/shop-records.ts'
import type { ProductClass, Sheen } from '../project/vocabulary.ts'

/** What the shop has on its list, by class. */
export interface Stock {
  readonly classes: ReadonlySet<ProductClass>
  /** The first product of a class that comes in the sheen, else the first of the class; null where the shop has none. */
  readonly product: (productClass: ProductClass, sheen: Sheen | null) => Product | null
}

/** What the shop's list has. The first product of a class in the wanted sheen is taken, else the first of the class. */
export function stockOf(job: Job): Stock {
  const products = records(job.products)
  return {
    classes: new Set(products.map((product) => product.productClass)),
    product: (productClass, sheen) => {
      const ofClass = products.filter((product) => product.productClass === productClass)
      const inSheen = ofClass.find((product) => sheen !== null && product.sheens.includes(sheen))
      return inSheen ?? ofClass[0] ?? null
    },
  }
}
