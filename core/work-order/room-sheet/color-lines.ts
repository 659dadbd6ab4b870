import { groupedBy } from '../../lists/lists.ts'
import { stepGallons } from '../../price/consumption.ts'
import { productOf } from '../../price/materials.ts'
import type { Job } from '../../project/job.ts'
import { amountsSum } from '../../specification/amounts.ts'
import { productClassWords, surfaceNoun } from '../../specification/trade-words.ts'
import type { Operation, Step } from '../../specification/types.ts'
import { capital } from '../../words/text.ts'
import { inRoom } from '../by-room.ts'
import type { SetContext } from './set-context.ts'
import type { ColorLine } from './sheet-types.ts'
import { amountWords, surfaceList } from './surface-list.ts'

/** Put on before the finish so that it holds; fillers and caulk are repairs. */
const priming: ReadonlySet<Operation> = new Set<Operation>([
  'prime',
  'spotPrime',
  'sealChalk',
  'sealBare',
  'blockStain',
])
const onSpots: ReadonlySet<Operation> = new Set<Operation>(['spotPrime', 'sealBare', 'blockStain'])

/** Like surfaces of one room: they get the same coats. */
interface Unit {
  readonly coats: readonly Step[]
  readonly primers: readonly Step[]
}

/** What goes on every surface of the set, ceiling first; what is alike in all but its place is one line. */
export function colorLines(context: SetContext): readonly ColorLine[] {
  const lines = groupedBy(unitsOf(context), (unit) => lineKey(context, unit))
  return [...lines.values()]
    .map((units) => colorLine(context, units))
    .toSorted((one, other) => rankOf(one) - rankOf(other))
}

const ranks = ['Ceiling', 'Walls']

function rankOf({ surface }: ColorLine): number {
  const rank = ranks.findIndex((each) => surface.startsWith(each))
  return rank < 0 ? ranks.length : rank
}

function unitsOf({ steps }: SetContext): readonly Unit[] {
  const units = new Map<string, { coats: Step[]; primers: Step[] }>()
  for (const step of steps) {
    if (step.surfaceClass === null) continue
    const isCoat = step.operation === 'coat'
    if (!isCoat && !priming.has(step.operation)) continue
    const key = `${step.roomId}/${step.groupKey}`
    const unit = units.get(key) ?? { coats: [], primers: [] }
    units.set(key, unit)
    if (isCoat) unit.coats.push(step)
    else unit.primers.push(step)
  }
  return [...units.values()]
}

function lineKey(context: SetContext, { coats, primers }: Unit): string {
  const [first] = coats
  const finish = [first?.productId ?? first?.productClass, first?.colourId, first?.sheen, coats.length]
  const kind = first?.surfaceClass ?? primers[0]?.surfaceClass
  const broad = kind === 'ceiling' || kind === 'walls' ? kind : 'woodwork'
  return [broad, ...finish, primerWords(context.job, primers)].join('|')
}

function colorLine(context: SetContext, units: readonly Unit[]): ColorLine {
  const { job } = context
  const coats = units.flatMap((unit) => unit.coats)
  const primers = units.flatMap((unit) => unit.primers)
  const once = coats.filter(({ coat }) => coat === 1)
  const shown = once.length > 0 ? once : primers
  const [first] = coats
  const colour = first?.colourId == null ? undefined : job.colours[first.colourId]
  return {
    surface: capital(surfaceList(context, shown, false)),
    productId: first?.productId ?? null,
    product: first === undefined ? '' : productName(job, first),
    colourId: colour?.id ?? null,
    color: colour?.name ?? '',
    code: colour?.code ?? '',
    sheen: first?.sheen ?? null,
    primer: primerWords(job, primers),
    coats: Math.max(0, ...coats.map(({ coat }) => coat)),
    amount: amountOf(context, shown),
    gallons: gallonsOf(job, coats),
    primerGallons: gallonsOf(job, primers),
    stepKeys: [...primers, ...coats].map(({ key }) => key),
  }
}

/** The name of the product, with its class where the name does not say it. */
function productName(job: Job, step: Step): string {
  const product = productOf(job, step)
  const words = step.productClass === null ? '' : productClassWords[step.productClass]
  if (product === undefined) return words
  const brand = product.brand === '' ? '' : `${product.brand} `
  return `${brand}${product.name}`
}

function primerWords(job: Job, primers: readonly Step[]): string {
  const words = primers.map((step) => {
    const { operation, productClass, colourId, surfaceClass } = step
    const name = productClass === null ? 'primer' : productClassWords[productClass]
    const tint = colourId === null ? '' : ` tinted ${job.colours[colourId]?.name ?? colourId}`
    const isTogether = surfaceClass !== null && onSpots.has(operation)
    return isTogether ? `${name}${tint} on ${spotWords(operation)}` : `${name}${tint}`
  })
  return [...new Set(words)].join('; ')
}

function spotWords(operation: Operation): string {
  if (operation === 'blockStain') return 'stains'
  return operation === 'sealBare' ? 'bare places' : 'patches'
}

/** Of broad surfaces the area; of woodwork each kind. */
function amountOf(context: SetContext, steps: readonly Step[]): string {
  const classes = new Set(steps.map(({ surfaceClass }) => surfaceClass))
  const [only] = classes
  if (classes.size === 1 && only !== 'trim') {
    return amountWords(context, amountsSum(steps.map(({ amounts }) => amounts)), only ?? null)
  }
  return capital(surfaceList(context, steps, true))
}

function gallonsOf(job: Job, steps: readonly Step[]): number {
  return steps.reduce((sum, step) => {
    const product = productOf(job, step)
    return product === undefined ? sum : sum + stepGallons(product, step)
  }, 0)
}

/** Surfaces of the set that get no finish: whole classes, `doors`, or part of one, `part of the doors`. */
export function unpaintedOf({ takeoff, set, steps }: SetContext): readonly string[] {
  const coats = steps.filter(({ operation }) => operation === 'coat')
  const coated = new Set(coats.flatMap(({ surfaceKeys }) => surfaceKeys))
  const here = set.roomIds.flatMap((roomId) => inRoom(takeoff.surfaces, roomId))
  const left = new Set(here.filter(({ key }) => !coated.has(key)).map(({ surfaceClass }) => surfaceClass))
  const painted = new Set(here.filter(({ key }) => coated.has(key)).map(({ surfaceClass }) => surfaceClass))
  return [...left].map((each) => `${painted.has(each) ? 'part of the ' : ''}${surfaceNoun(each)}`)
}
