import { stepGallons } from '../price/consumption.ts'
import { edgesBrushed, stepMinutes } from '../price/labour.ts'
import { productOf } from '../price/materials.ts'
import type { Job } from '../project/job.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import { productClassWords, sheenWords, stepTitle } from '../specification/trade-words.ts'
import type { Because, Caution, Operation, Specification, Step, StepOrder } from '../specification/types.ts'
import { partWords } from '../specification/woodwork.ts'
import { formatArea } from '../units/area.ts'
import { formatLength, type LengthUnitSystem } from '../units/length.ts'
import { toLitres } from '../units/volume.ts'
import { ordersBefore } from './by-room.ts'
import type { StepLine } from './document-types.ts'
import { momentAfter, type SiteMoment } from './site-time.ts'
import { stepPlace } from './surface-words.ts'
import { earliest, latest, type WorkPlanTask } from './work-plan.ts'

/** Done in any room by anybody; their reasons are not printed unless something found asked for them. */
const routine: ReadonlySet<Operation> = new Set<Operation>([
  'protectRoom',
  'takeOff',
  'loosenHanging',
  'dustDown',
  'vacuum',
  'dustOff',
  'maskOff',
  'unmask',
  'coverAlarm',
  'restoreAlarm',
  'coat',
  'refitHanging',
  'putBack',
  'cleanUp',
  'inspect',
  'fillSmall',
  'touchUp',
])

/** What every room has; their reasons are not printed on each sheet. */
const usualRules: ReadonlySet<string> = new Set(['allowance-dings', 'allowance-joints'])

export interface StepLineInput {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly tasks: ReadonlyMap<string, readonly WorkPlanTask[]>
  /** Cautions of the room in the order they are numbered. */
  readonly cautions: readonly Caution[]
}

export function stepLine(input: StepLineInput, step: Step, number: number): StepLine {
  const { job, takeoff } = input
  const tasks = input.tasks.get(step.key) ?? []
  return {
    stepKey: step.key,
    number,
    what: stepTitle(step),
    where: stepPlace(job, takeoff, step),
    material: materialWords(job, step),
    amounts: amountWords(job, step),
    volume: volumeWords(job, step),
    minutes: stepMinutes(job, step),
    daily: step.daily,
    startsAt: earliest(tasks.map((task) => task.startsAt)),
    endsAt: latest(tasks.map((task) => task.endsAt)),
    people: peopleOf(job, tasks),
    notBefore: notBefore(input, step),
    notAfter: notAfter(input, step),
    reasons: unusualReasons(step),
    reasonsAt: [],
    cautions: step.cautions
      .map((caution) => input.cautions.findIndex((each) => each.id === caution.id) + 1)
      .filter((number) => number > 0)
      .toSorted((a, b) => a - b),
  }
}

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

export function peopleOf(job: Job, tasks: readonly WorkPlanTask[]): readonly string[] {
  const ids = new Set(tasks.flatMap((task) => task.crewMemberIds))
  return [...ids].map((id) => job.crew[id]?.name ?? id)
}

/** What the step's hours and paint go by; edges only where they are brushed, pieces only where nothing else is measured. */
function amountWords(job: Job, step: Step): readonly string[] {
  const system = job.header.unitSystem
  const { area, length, count } = step.amounts
  const brushed = edgesBrushed(step)
  return [
    ...(area > 0 ? [formatArea(area, system)] : []),
    ...(length > 0 ? [formatLength(length, system)] : []),
    ...(step.surfaceClass === 'trim' ? step.parts.map((part) => partWords(part, system)) : []),
    ...(brushed.cutIn > 0 ? [`cut in ${formatLength(brushed.cutIn, system)}`] : []),
    ...(brushed.glassEdge > 0 ? [`glass ${formatLength(brushed.glassEdge, system)}`] : []),
    ...(count > 0 && area === 0 && length === 0 ? [`${count} pc`] : []),
  ]
}

function volumeWords(job: Job, step: Step): string {
  const product = productOf(job, step)
  return product === undefined ? '' : volumeText(stepGallons(product, step), job.header.unitSystem)
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

/** Rules whose reason says how the brush goes: it changes what a hand does, so it is printed with the coat. */
const handRules = ['doors', 'moving-sash', 'fixed-sash', 'stairs']

function unusualReasons(step: Step): readonly Because[] {
  const found = step.because.filter(
    ({ conditionIds, ruleId }) => conditionIds.length > 0 || handRules.includes(ruleId),
  )
  const unusual = step.because.filter(({ ruleId }) => !usualRules.has(ruleId))
  return routine.has(step.operation) && step.coat < 3 ? found : unusual
}

type Limit = { readonly at: SiteMoment; readonly reason: string }

function limits(
  input: StepLineInput,
  step: Step,
  waitOf: (order: StepOrder) => number | null,
): readonly Limit[] {
  return ordersBefore(input.specification, step.key).flatMap((order) => {
    const wait = waitOf(order)
    if (wait === null || wait === 0) return []
    const end = latest((input.tasks.get(order.before) ?? []).map((task) => task.endsAt))
    if (end === null) return []
    return [{ at: momentAfter(end, wait, input.job.header.timeZone), reason: order.reason }]
  })
}

/** The latest moment any drying before this step ends, as planned. */
function notBefore(input: StepLineInput, step: Step): Limit | null {
  const all = limits(input, step, (order) => order.minimumWait)
  return all.toSorted((a, b) => (a.at < b.at ? 1 : -1))[0] ?? null
}

/** The soonest moment an open time before this step runs out, as planned. */
function notAfter(input: StepLineInput, step: Step): Limit | null {
  const all = limits(input, step, (order) => order.maximumWait)
  return all.toSorted((a, b) => (a.at < b.at ? -1 : 1))[0] ?? null
}
