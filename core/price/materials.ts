import { type Job, records } from '../project/job.ts'
import type { Product, ProductId } from '../project/shop-records.ts'
import type { ColourId } from '../project/survey-records.ts'
import type { ProductClass, Sheen } from '../project/vocabulary.ts'
import type { Specification, Step } from '../specification/types.ts'
import type { Cents } from '../units/money.ts'
import { formatVolume, type Gallons, gallons } from '../units/volume.ts'
import { cansFor, isMixed, spareOf, sparePercent } from './buying.ts'
import { consumptionText, stepGallons } from './consumption.ts'
import type { ContainerCount } from './containers.ts'

/** All of one product in one colour and sheen for the whole job, with the cans to buy. */
export interface MaterialLine {
  /** Stable: product, colour and sheen. */
  readonly key: string
  readonly productId: ProductId
  readonly productName: string
  /** Empty where the shop has not said. */
  readonly brand: string
  readonly productClass: ProductClass
  readonly colourId: ColourId | null
  readonly colourName: string | null
  /** What the store tints it by; empty where nobody has said. */
  readonly colourCode: string
  readonly sheen: Sheen | null
  /** What the steps take, exact. */
  readonly gallons: Gallons
  /** Bought besides for touching up later. */
  readonly spareGallons: Gallons
  /** Tinted to order: all of it from one batch. */
  readonly isMixed: boolean
  readonly containers: readonly ContainerCount[]
  readonly boughtGallons: Gallons
  readonly priceCents: Cents
  /** Where the product's figures come from. */
  readonly source: string
  readonly derivation: string
  readonly steps: readonly { readonly stepKey: string; readonly gallons: Gallons }[]
}

/** The product of a step: the one it names, else the shop's first of its class; undefined when the shop has none. */
export function productOf(job: Job, step: Step): Product | undefined {
  if (step.productId !== null) return job.products[step.productId]
  if (step.productClass === null) return undefined
  return records(job.products).find((product) => product.productClass === step.productClass)
}

/** Materials in the order in which the work first needs them; steps without a product of the shop's list are left out. */
export function materials(job: Job, specification: Specification): readonly MaterialLine[] {
  const groups = new Map<string, { readonly product: Product; readonly steps: Step[] }>()
  for (const step of specification.steps) {
    const product = productOf(job, step)
    if (product === undefined || stepGallons(product, step) === 0) continue
    const key = materialKey(product, step)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, { product, steps: [step] })
    else group.steps.push(step)
  }
  return [...groups].map(([key, { product, steps }]) => materialLine(job, key, product, steps))
}

/** Steps that need a product the shop's list has not got; an estimate without them would be too low. */
export function stepsWithoutProduct(job: Job, specification: Specification): readonly Step[] {
  return specification.steps.filter(
    (step) => step.productClass !== null && productOf(job, step) === undefined,
  )
}

function materialKey(product: Product, step: Step): string {
  return [product.id, step.colourId ?? 'uncoloured', step.sheen ?? 'anySheen'].join(':')
}

function materialLine(job: Job, key: string, product: Product, steps: readonly Step[]): MaterialLine {
  const parts = steps.map((step) => ({ stepKey: step.key, gallons: stepGallons(product, step) }))
  const needed = gallons(parts.reduce((total, part) => total + part.gallons, 0))
  const first = steps[0]
  const colour = first?.colourId ? job.colours[first.colourId] : undefined
  const spare = gallons(spareOf(needed, steps))
  const mix = cansFor(needed + spare, product.containers, isMixed(colour))
  return {
    key,
    productId: product.id,
    productName: product.name,
    brand: product.brand,
    productClass: product.productClass,
    colourId: colour?.id ?? null,
    colourName: colour?.name ?? null,
    colourCode: colour?.code ?? '',
    sheen: first?.sheen ?? null,
    gallons: needed,
    spareGallons: spare,
    isMixed: isMixed(colour),
    containers: mix.containers,
    boughtGallons: mix.gallons,
    priceCents: mix.priceCents,
    source: product.source,
    derivation: derivationOf(job, product, steps, needed, spare),
    steps: parts,
  }
}

function derivationOf(
  job: Job,
  product: Product,
  steps: readonly Step[],
  needed: Gallons,
  spare: Gallons,
): string {
  const { unitSystem } = job.header
  const used = consumptionText(product, steps, needed, unitSystem)
  if (spare === 0) return used
  return `${used}; and ${formatVolume(spare, unitSystem)} to keep for touching up (${sparePercent}%, shop assumption)`
}
