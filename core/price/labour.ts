import type { MinutesByStep } from '../passes/pass-types.ts'
import type { Job } from '../project/job.ts'
import type { Rate } from '../project/shop-records.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { amountsSum } from '../specification/amounts.ts'
import { disturbsPaint } from '../specification/operation-facts.ts'
import type {
  Operation,
  Specification,
  Step,
  StepAmounts,
  WoodworkKind,
  WoodworkPart,
} from '../specification/types.ts'
import { toSquareFeet } from '../units/area.ts'
import { type WorkingMinutes, workingMinutes } from '../units/duration.ts'
import { toFeet } from '../units/length.ts'
import { type AddedRateName, defaultRate } from './default-rates.ts'
import { type HouseWork, houseWork } from './house-work.ts'
import { labourText } from './labour-text.ts'

/** One quantity of a step over one rate. `quantity` is square feet, feet, pieces or 1 by the rate's basis. */
interface LabourPart {
  readonly rate: Rate
  readonly quantity: number
  /** Person-minutes before difficulty. */
  readonly minutes: number
}

export interface WoodworkMinutes extends WoodworkPart {
  /** Person-minutes, difficulty included. */
  readonly minutes: WorkingMinutes
}

export interface StepLabour {
  readonly stepKey: string
  readonly roomId: RoomId
  /** Person-minutes for all its times. */
  readonly minutes: WorkingMinutes
  /** 1; for a daily step the working days it returns on, as counted before there is a plan. */
  readonly times: number
  readonly parts: readonly LabourPart[]
  /** The same minutes by kind of woodwork; none where the step has no amounts by kind. */
  readonly woodwork: readonly WoodworkMinutes[]
  readonly derivation: string
}

export interface Labour {
  readonly steps: readonly StepLabour[]
  /** Setting up and clearing away each day, by the house rules; person-minutes. */
  readonly dailyChores: {
    readonly minutes: WorkingMinutes
    readonly personDays: number
    readonly derivation: string
  }
  /** For the house as a whole, in no room. */
  readonly houseWork: readonly HouseWork[]
  readonly minutes: WorkingMinutes
}

/** One person's working day; shop assumption, used only for counting days before there is a plan. */
const minutesOfPersonDay = 480

/** Brush work along edges is added to wherever material is put on. */
const edgeRates: readonly AddedRateName[] = ['cutIn', 'glassEdge']
const addedRates: Partial<Record<Operation, readonly AddedRateName[]>> = {
  coat: edgeRates,
  prime: edgeRates,
  sealChalk: ['cutIn'],
  sealBare: ['cutIn'],
  fill: ['fillPatches', 'fillHoles'],
  sandFill: ['sandFillPatches', 'sandFillHoles'],
  caulk: ['caulkSpots'],
  scrape: ['scrapeEdges'],
}

/** Person-minutes of each step worked once, by its key. */
export function minutesByStep(job: Job, specification: Specification): MinutesByStep {
  return new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)]))
}

interface KnownMinutes {
  readonly rates: Job['rates']
  readonly minutes: WorkingMinutes
}
/** Neither steps nor tables of rates change in place, so each step is worked out once for a table of rates. */
const knownMinutes = new WeakMap<Step, KnownMinutes>()

/** Person-minutes of one step once: every quantity over its rate, times the difficulty. Not rounded. */
export function stepMinutes(job: Job, step: Step): WorkingMinutes {
  const known = knownMinutes.get(step)
  if (known !== undefined && known.rates === job.rates) return known.minutes
  const minutes = minutesOfParts(labourParts(job, step), step)
  knownMinutes.set(step, { rates: job.rates, minutes })
  return minutes
}

/** Hours of a whole job, step by step, each with the text that says how they came about. */
export function labour(job: Job, specification: Specification): Labour {
  const once = minutesByStep(job, specification)
  const roomDays = personDaysByRoom(specification, once, () => true)
  const disturbingDays = personDaysByRoom(specification, once, disturbsOldPaint)
  const timesOf = (step: Step) =>
    (step.operation === 'cleanDaily' ? disturbingDays : roomDays).get(step.roomId) ?? 1
  const steps = specification.steps.map((step) => stepLabour(job, step, step.daily ? timesOf(step) : 1))
  const ofSteps = steps.reduce((total, line) => total + line.minutes, 0)
  const dailyChores = choresOf(job, ofSteps)
  const ofHouse = houseWork(job, specification)
  const minutes = ofHouse.reduce((total, work) => total + work.minutes, ofSteps + dailyChores.minutes)
  return { steps, dailyChores, houseWork: ofHouse, minutes: workingMinutes(minutes) }
}

/** Person-minutes of a step once, by kind of woodwork: each kind's own, and a rate that is paid once per step shared out. */
export function woodworkMinutes(job: Job, step: Step): readonly WoodworkMinutes[] {
  const alone = step.parts.map((part) => stepMinutes(job, { ...step, amounts: part.amounts, parts: [part] }))
  const total = alone.reduce((sum, minutes) => sum + minutes, 0)
  const share = total === 0 ? 0 : stepMinutes(job, step) / total
  return step.parts.map((part, index) => ({ ...part, minutes: workingMinutes((alone[index] ?? 0) * share) }))
}

/** The rated parts that a step's time is made of, its own operation first; parts of no amount are left out. */
export function labourParts(job: Job, step: Step): readonly LabourPart[] {
  const main = ratedParts(job, step, step.operation, quantityByBasis)
  const added = (addedRates[step.operation] ?? []).flatMap((name) =>
    ratedParts(job, step, name, (_, amounts) => addedQuantity(name, amounts)).filter(
      ({ quantity }) => quantity > 0,
    ),
  )
  const worked = main.filter(({ quantity }) => quantity > 0)
  return worked.length > 0 || added.length > 0 ? [...worked, ...added] : main.slice(0, 1)
}

type Quantity = (rate: Rate, amounts: StepAmounts, operation: Operation) => number

/** One part, or one for each rate where kinds of woodwork have rates of their own. */
function ratedParts(job: Job, step: Step, name: string, quantityOf: Quantity): readonly LabourPart[] {
  const rated = step.parts.map(({ kind, amounts }) => ({ amounts, rate: rateFor(job, name, step, kind) }))
  const rates = [...new Set(rated.map(({ rate }) => rate))]
  if (rates.length < 2) {
    const rate = rates[0] ?? rateFor(job, name, step, null)
    return [partOf(rate, quantityOf(rate, step.amounts, step.operation))]
  }
  return rates.map((rate) => {
    const amounts = amountsSum(rated.filter((each) => each.rate === rate).map((each) => each.amounts))
    return partOf(rate, quantityOf(rate, amounts, step.operation))
  })
}

/** The one for the kind of woodwork or the surface class before the plain one. */
function rateFor(job: Job, name: string, step: Step, kind: WoodworkKind | null): Rate {
  const names = [kind, step.surfaceClass].flatMap((on) => (on === null ? [] : [`${name}-${on}`]))
  const found = rateOf(job, [...names, name])
  if (found === undefined) throw new RangeError(`No production rate is called "${name}" (step ${step.key}).`)
  return found
}

/** The first of these names that there is a rate for: the job's own before the default. */
export function rateOf(job: Job, names: readonly string[]): Rate | undefined {
  for (const each of names) {
    const found = job.rates[each] ?? defaultRate(each)
    if (found !== undefined) return found
  }
  return undefined
}

function partOf(rate: Rate, quantity: number): LabourPart {
  return { rate, quantity, minutes: (quantity / rate.perHour) * 60 }
}

function quantityByBasis(rate: Rate, amounts: StepAmounts, operation: Operation): number {
  switch (rate.basis) {
    case 'area':
      return toSquareFeet(amounts.equivalentArea)
    case 'length':
      return toFeet(operation === 'scrapeGlass' ? amounts.glassPerimeter : amounts.length)
    case 'count':
      return amounts.count
    case 'each':
      return 1
  }
}

function addedQuantity(name: AddedRateName, amounts: StepAmounts): number {
  switch (name) {
    case 'cutIn':
      return toFeet(amounts.cuttingIn)
    case 'glassEdge':
      return toFeet(amounts.glassPerimeter)
    case 'fillPatches':
    case 'sandFillPatches':
      return toSquareFeet(amounts.area)
    case 'fillHoles':
    case 'sandFillHoles':
    case 'caulkSpots':
      return amounts.count
    case 'scrapeEdges':
      return toFeet(amounts.length)
    case 'leadPapers':
      return 0
  }
}

function minutesOfParts(parts: readonly LabourPart[], step: Step): WorkingMinutes {
  return workingMinutes(parts.reduce((total, part) => total + part.minutes, 0) * step.difficulty)
}

interface KnownLabour {
  readonly rates: Job['rates']
  readonly system: Job['header']['unitSystem']
  readonly line: StepLabour
}
const knownLabour = new WeakMap<Step, KnownLabour>()

/** Worked out once for a table of rates and so many times, as its minutes are. */
function stepLabour(job: Job, step: Step, times: number): StepLabour {
  const known = knownLabour.get(step)
  const system = job.header.unitSystem
  if (known?.rates === job.rates && known.system === system && known.line.times === times) return known.line
  const line = newStepLabour(job, step, times)
  knownLabour.set(step, { rates: job.rates, system, line })
  return line
}

function newStepLabour(job: Job, step: Step, times: number): StepLabour {
  const parts = labourParts(job, step)
  return {
    stepKey: step.key,
    roomId: step.roomId,
    minutes: workingMinutes(minutesOfParts(parts, step) * times),
    times,
    parts,
    woodwork: woodworkMinutes(job, step).map((part) => ({
      ...part,
      minutes: workingMinutes(part.minutes * times),
    })),
    derivation: labourText(parts, step.difficulty, times, job.header.unitSystem),
  }
}

/** Days a room is worked in if one person did that work alone: how often a daily step is priced. At least 1. */
function personDaysByRoom(
  specification: Specification,
  once: ReadonlyMap<string, WorkingMinutes>,
  counts: (step: Step) => boolean,
): ReadonlyMap<RoomId, number> {
  const minutes = new Map<RoomId, number>()
  for (const step of specification.steps) {
    if (step.daily || !counts(step)) continue
    minutes.set(step.roomId, (minutes.get(step.roomId) ?? 0) + (once.get(step.key) ?? 0))
  }
  return new Map(
    [...minutes].map(([roomId, total]) => [roomId, Math.max(1, Math.ceil(total / minutesOfPersonDay))]),
  )
}

/** Sanding between new coats is not; its keys end in the coat it comes before. */
function disturbsOldPaint({ operation, key }: Step): boolean {
  return disturbsPaint(operation) && !/\/sand\/[2-9]$/.test(key)
}

/** Days that so many working minutes take one painter, beside setting up and clearing away; not rounded, and no drying is in them. */
export function painterDays({ houseRules }: Job, minutes: number): number {
  const perDay = houseRules.setUpMinutes + houseRules.cleanUpMinutes
  return minutes / Math.max(60, minutesOfPersonDay - perDay)
}

function choresOf(job: Job, stepMinutesTotal: number): Labour['dailyChores'] {
  const perDay = job.houseRules.setUpMinutes + job.houseRules.cleanUpMinutes
  const personDays = Math.ceil(painterDays(job, stepMinutesTotal))
  return {
    minutes: workingMinutes(personDays * perDay),
    personDays,
    derivation: `${personDays} person-days of ${minutesOfPersonDay} min x ${perDay} min for setting up and clearing away`,
  }
}
