import type { ContainerCount } from '../price/containers.ts'
import type { Estimate } from '../price/estimate-types.ts'
import type { MaterialLine } from '../price/materials.ts'
import type { SundryLine } from '../price/sundries.ts'
import { sundryRules } from '../price/sundry-rules.ts'
import { productClassWords, sheenWords } from '../specification/trade-words.ts'
import type { Operation, Step } from '../specification/types.ts'
import { roundToCents } from '../units/money.ts'
import { toolsByDay } from './crew-tools.ts'
import type { ShoppingLine, ShoppingList, ShoppingTotal } from './document-types.ts'
import { containersByTrip, type DatedNeed, piecesByTrip, tripFor, tripsOf } from './trips.ts'
import { earliest, type WorkPlanTask } from './work-plan.ts'

interface ShoppingInput {
  readonly steps: readonly Step[]
  readonly priced: Estimate
  readonly tasks: ReadonlyMap<string, readonly WorkPlanTask[]>
  /** Local date of the first day on site: what no task holds is needed then. */
  readonly startsOn: string
  readonly daysBetweenTrips: number
}

/** What to buy, trip by trip, with totals by product. Containers and pieces of all trips are those of the estimate. */
export function shoppingList(input: ShoppingInput): ShoppingList {
  const { steps, priced, daysBetweenTrips } = input
  const dateOf = firstDates(input)
  const dates = new Map(steps.map((step) => [step.key, dateOf(step.key)]))
  const needs = [
    ...priced.materials.flatMap((line) => line.steps.map(({ stepKey }) => stepKey)),
    ...steps.filter(usesSundries).map(({ key }) => key),
  ].map(dateOf)
  const trips = tripsOf(needs, daysBetweenTrips)
  const lines = [
    ...priced.materials.flatMap((line) => materialLines(line, dateOf, trips)),
    ...priced.sundries.flatMap((line) => sundryLines(line, steps, dateOf, trips)),
  ]
  const tools = toolsByDay(firstDays(steps, dates))
  return {
    daysBetweenTrips,
    trips: trips.map((trip) => ({
      ...trip,
      lines: lines.filter((line) => line.trip === trip.number),
      tools: tools.filter(({ date }) => tripFor(trips, date) === trip).map(({ tool }) => tool),
    })),
    totals: priced.materials.map(totalOf),
  }
}

/** Every line of the list, trip by trip. */
export function shoppingLines({ trips }: ShoppingList): readonly ShoppingLine[] {
  return trips.flatMap(({ lines }) => lines)
}

function firstDates({ tasks, startsOn }: ShoppingInput): (stepKey: string) => string {
  return (stepKey) =>
    earliest((tasks.get(stepKey) ?? []).map((task) => task.startsAt))?.slice(0, 10) ?? startsOn
}

function usesSundries(step: Step): boolean {
  return sundryRules.some((rule) => rule.amount(step) > 0)
}

function firstDays(
  steps: readonly Step[],
  dates: ReadonlyMap<string, string>,
): ReadonlyMap<Operation, string> {
  const days = new Map<Operation, string>()
  for (const { key, operation } of steps) {
    const [date, known] = [dates.get(key), days.get(operation)]
    if (date !== undefined && (known === undefined || date < known)) days.set(operation, date)
  }
  return days
}

type Trips = ReturnType<typeof tripsOf>

function materialLines(
  line: MaterialLine,
  dateOf: (stepKey: string) => string,
  trips: Trips,
): readonly ShoppingLine[] {
  const needs = line.steps.map(({ stepKey, gallons }) => ({ date: dateOf(stepKey), amount: gallons }))
  const bought = [...containersByTrip(line.containers, atOnce(line, needs), trips)]
  return bought.flatMap(([trip, containers]) =>
    containers.map((container) => containerLine(line, container, trip, neededFrom(needs, trips, trip))),
  )
}

/** A mixed color is one batch: all of it is bought with the first. */
function atOnce({ isMixed }: MaterialLine, needs: readonly DatedNeed[]): readonly DatedNeed[] {
  const date = earliest(needs.map((need) => need.date))
  return isMixed && date !== null ? needs.map(({ amount }) => ({ date, amount })) : needs
}

/** The first day of a trip on which any of it is needed. */
function neededFrom(needs: readonly DatedNeed[], trips: Trips, trip: number): string | null {
  return earliest(needs.map(({ date }) => date).filter((date) => tripFor(trips, date)?.number === trip))
}

function containerLine(
  line: MaterialLine,
  container: ContainerCount,
  trip: number,
  neededOn: string | null,
): ShoppingLine {
  return {
    trip,
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
    spareGallons: line.spareGallons,
    advice: adviceOn(line),
    unitPriceCents: container.priceCents,
    priceCents: roundToCents(container.priceCents * container.count),
    neededOn,
  }
}

/** Cans of one mix differ a little from each other; what is left is the spare. */
function adviceOn(line: MaterialLine): string {
  const cans = line.containers.reduce((total, each) => total + each.count, 0)
  const batch = !line.isMixed ? [] : cans > 1 ? ['one batch, boxed'] : []
  const spare = line.spareGallons > 0 ? ['keep the rest'] : []
  return [...batch, ...spare].join('; ')
}

/** The allowance by the hour has no pieces and stands in the estimate only. */
function sundryLines(
  line: SundryLine,
  steps: readonly Step[],
  dateOf: (stepKey: string) => string,
  trips: Trips,
): readonly ShoppingLine[] {
  const { pieces } = line
  const rule = sundryRules.find(({ key }) => key === line.key)
  if (pieces === null || rule === undefined) return []
  const needs = steps.flatMap((step): readonly DatedNeed[] => {
    const amount = rule.amount(step)
    return amount === 0 ? [] : [{ date: dateOf(step.key), amount }]
  })
  const unitPriceCents = roundToCents(line.priceCents / pieces)
  return [...piecesByTrip(rule.perPiece, needs, trips)].map(([trip, count]) => ({
    trip,
    item: line.name,
    brand: '',
    productClass: 'sundries',
    colour: '',
    colourCode: '',
    sheen: '',
    container: 'piece',
    containerGallons: null,
    count,
    neededGallons: null,
    spareGallons: 0,
    advice: '',
    unitPriceCents,
    priceCents: roundToCents(unitPriceCents * count),
    neededOn: neededFrom(needs, trips, trip),
  }))
}

function totalOf(line: MaterialLine): ShoppingTotal {
  return {
    item: line.productName,
    brand: line.brand,
    colour: line.colourName ?? '',
    colourCode: line.colourCode,
    sheen: line.sheen === null ? '' : sheenWords[line.sheen],
    neededGallons: line.gallons,
    spareGallons: line.spareGallons,
    boughtGallons: line.boughtGallons,
    containers: line.containers.map(({ count, name }) => ({ count, name })),
  }
}
