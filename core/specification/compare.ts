import type { ProductClass } from '../project/vocabulary.ts'
import type { Notice, Specification, Step } from './types.ts'

/** What another state of the job would change in its steps. Hours and money are added from the price. */
interface SpecificationChange {
  readonly appearing: readonly Step[]
  readonly going: readonly Step[]
  /** Steps of both that stand elsewhere among the steps they share. */
  readonly moved: readonly Step[]
  /** Same step with other amounts, product, colour or reasons. */
  readonly changed: readonly { readonly before: Step; readonly after: Step }[]
  readonly productsAppearing: readonly ProductClass[]
  readonly productsGoing: readonly ProductClass[]
  readonly newNotices: readonly Notice[]
  readonly endedNotices: readonly Notice[]
}

/** What is more, less and otherwise after a change of the job: steps by key, products by name, notices by sentence. */
export function compareSpecifications(before: Specification, after: Specification): SpecificationChange {
  const was = new Map(before.steps.map((step) => [step.key, step]))
  const is = new Map(after.steps.map((step) => [step.key, step]))
  const [oldProducts, newProducts] = [productsOf(before), productsOf(after)]
  const [oldNotices, newNotices] = [sentencesOf(before), sentencesOf(after)]
  return {
    appearing: after.steps.filter((step) => !was.has(step.key)),
    going: before.steps.filter((step) => !is.has(step.key)),
    moved: movedSteps(before, after),
    changed: after.steps.flatMap((step) => {
      const old = was.get(step.key)
      return old === undefined || looksSame(old, step) ? [] : [{ before: old, after: step }]
    }),
    productsAppearing: [...newProducts].filter((each) => !oldProducts.has(each)),
    productsGoing: [...oldProducts].filter((each) => !newProducts.has(each)),
    newNotices: after.notices.filter((notice) => !oldNotices.has(notice.sentence)),
    endedNotices: before.notices.filter((notice) => !newNotices.has(notice.sentence)),
  }
}

function productsOf({ steps }: Specification): ReadonlySet<ProductClass> {
  return new Set(steps.flatMap((step) => (step.productClass === null ? [] : [step.productClass])))
}

function sentencesOf({ notices }: Specification): ReadonlySet<string> {
  return new Set(notices.map((notice) => notice.sentence))
}

/** Everything but the cautions, which follow from the rest. */
function looksSame(old: Step, step: Step): boolean {
  return JSON.stringify({ ...old, cautions: [] }) === JSON.stringify({ ...step, cautions: [] })
}

/** Shared steps outside the longest run that keeps its order. */
function movedSteps(before: Specification, after: Specification): readonly Step[] {
  const is = new Set(after.steps.map((step) => step.key))
  const shared = before.steps.map((step) => step.key).filter((key) => is.has(key))
  const oldPlace = new Map(shared.map((key, index) => [key, index]))
  const common = after.steps.filter((step) => oldPlace.has(step.key))
  const staying = longestRising(common.map((step) => oldPlace.get(step.key) ?? 0))
  return common.filter((_, index) => !staying.has(index))
}

/** Indexes of a longest rising subsequence, by patience sorting. */
function longestRising(values: readonly number[]): ReadonlySet<number> {
  const tops: number[] = []
  const previous: number[] = []
  for (const [index, value] of values.entries()) {
    let low = 0
    let high = tops.length
    while (low < high) {
      const middle = (low + high) >> 1
      if ((values[tops[middle] ?? 0] ?? 0) < value) low = middle + 1
      else high = middle
    }
    previous.push(low > 0 ? (tops[low - 1] ?? -1) : -1)
    tops[low] = index
  }
  const chosen = new Set<number>()
  for (let at = tops.at(-1) ?? -1; at >= 0; at = previous[at] ?? -1) chosen.add(at)
  return chosen
}
