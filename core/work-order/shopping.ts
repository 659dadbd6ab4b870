import type { Estimate } from '../price/estimate-types.ts'
import type { MaterialLine } from '../price/materials.ts'
import type { SundryLine } from '../price/sundries.ts'
import { productClassWords, sheenWords } from '../specification/trade-words.ts'
import { type Cents, roundToCents } from '../units/money.ts'
import type { ShoppingLine } from './document-types.ts'
import { earliest, type WorkPlanTask } from './work-plan.ts'

/** One line per container size of each product and colour, then what is used up; by the day it is first needed. */
export function shoppingList(
  priced: Estimate,
  tasks: ReadonlyMap<string, readonly WorkPlanTask[]>,
): readonly ShoppingLine[] {
  const paint = priced.materials.flatMap((line) => materialLines(line, tasks))
  const byDay = paint.toSorted((a, b) =>
    (a.neededOn ?? '9') < (b.neededOn ?? '9') ? -1 : a.neededOn === b.neededOn ? 0 : 1,
  )
  return [...byDay, ...priced.sundries.flatMap(sundryLines)]
}

function materialLines(
  line: MaterialLine,
  tasks: ReadonlyMap<string, readonly WorkPlanTask[]>,
): readonly ShoppingLine[] {
  const starts = line.steps.flatMap((part) => (tasks.get(part.stepKey) ?? []).map((task) => task.startsAt))
  return line.containers.map((container) => ({
    item: line.productName,
    brand: line.brand,
    productClass: productClassWords[line.productClass],
    colour: line.colourName ?? '',
    colourCode: line.colourCode,
    sheen: line.sheen === null ? '' : sheenWords[line.sheen],
    container: container.name,
    containerGallons: container.gallons,
    count: container.count,
    neededGallons: line.gallons,
    advice: adviceOn(line),
    unitPriceCents: container.priceCents,
    priceCents: (container.priceCents * container.count) as Cents,
    neededOn: earliest(starts)?.slice(0, 10) ?? null,
  }))
}

/** Cans of one mix differ a little from each other; what is left is the spare. */
function adviceOn(line: MaterialLine): string {
  const cans = line.containers.reduce((total, each) => total + each.count, 0)
  const batch = !line.isMixed ? [] : cans > 1 ? ['one batch, box the cans'] : []
  const spare = line.spareGallons > 0 ? ['keep what is left'] : []
  return [...batch, ...spare].join('; ')
}

/** The allowance by the hour has no pieces and stands in the estimate only. */
function sundryLines(line: SundryLine): readonly ShoppingLine[] {
  if (line.pieces === null) return []
  return [
    {
      item: line.name,
      brand: '',
      productClass: 'sundries',
      colour: '',
      colourCode: '',
      sheen: '',
      container: 'piece',
      containerGallons: null,
      count: line.pieces,
      neededGallons: null,
      advice: '',
      unitPriceCents: roundToCents(line.priceCents / line.pieces),
      priceCents: line.priceCents,
      neededOn: null,
    },
  ]
}
