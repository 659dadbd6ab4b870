import type { Condition } from '../../project/survey-records.ts'
import { amountsSum } from '../../specification/amounts.ts'
import {
  conditionWords,
  productClassWords,
  severityWords,
  surfaceNoun,
} from '../../specification/trade-words.ts'
import type { Operation, Step } from '../../specification/types.ts'
import { squareMetres } from '../../units/area.ts'
import { roomOfCondition, surfaceWords } from '../surface-words.ts'
import { photoWords } from './photo-lines.ts'
import type { SetContext } from './set-context.ts'
import type { RepairLine } from './sheet-types.ts'
import { repairWords, shortArea, shortLength } from './sheet-words.ts'
import { amountWords } from './surface-list.ts'

/** What was found, numbered as in the drawing, then the small damage that every room has. */
export function repairLines(context: SetContext, found: readonly Condition[]): readonly RepairLine[] {
  return [
    ...found.map((condition, index) => foundLine(context, condition, index + 1)),
    ...allowanceLines(context),
  ]
}

function foundLine(context: SetContext, condition: Condition, number: number): RepairLine {
  const steps = context.steps.filter(({ because }) =>
    because.some(({ conditionIds }) => conditionIds.includes(condition.id)),
  )
  const cause =
    condition.suspectedCause === ''
      ? []
      : [`suspected cause: ${condition.suspectedCause}${condition.causeCured ? ' (put right)' : ''}`]
  return {
    number,
    what: `${conditionWords[condition.kind]}, ${severityWords[condition.severity]}`,
    where: placeOf(context, condition),
    amount: foundAmount(context, condition),
    how: howWords(steps),
    note: [...cause, ...(condition.note === '' ? [] : [condition.note])].join('; '),
    photo: photoWords(context.job, condition),
  }
}

/** `wall B`, `door F: slab`, `trim`; the room where it is not the main one. */
function placeOf(context: SetContext, condition: Condition): string {
  const { job, set, letters } = context
  const { on } = condition
  const roomId = roomOfCondition(job, condition)
  const room = roomId === null || roomId === set.id ? '' : `${job.rooms[roomId]?.name ?? roomId}: `
  if (on.level === 'room') {
    return `${room}${on.surfaceClass === null ? 'whole room' : surfaceNoun(on.surfaceClass)}`
  }
  if (on.surface.kind !== 'opening') return `${room}${surfaceWords(job, on.surface)}`
  return `${room}${letters.get(on.surface.openingId) ?? ''} ${on.surface.part}`
}

function foundAmount({ system }: SetContext, { length, areaMm2, count }: Condition): string {
  return [
    ...(length ? [shortLength(length, system)] : []),
    ...(areaMm2 ? [shortArea(squareMetres(areaMm2 / 1e6), system)] : []),
    ...(count ? [String(count)] : []),
  ].join(', ')
}

/** Each operation once with its products, in the order of work: `open to a V, fill in layers (setting filler, drying filler), sand`. */
function howWords(steps: readonly Step[]): string {
  const products = new Map<string, Set<string>>()
  for (const { operation, productClass } of steps) {
    const word = repairWords[operation]
    if (word === undefined) continue
    const known = products.get(word) ?? new Set()
    products.set(word, known)
    if (productClass !== null) known.add(productClassWords[productClass])
  }
  return [...products]
    .map(([word, names]) => (names.size === 0 ? word : `${word} (${[...names].join(', ')})`))
    .join(', ')
}

/** Nobody pointed them out: holes and dents to be filled, joints to be caulked; each kind once for all of the set. */
function allowanceLines(context: SetContext): readonly RepairLine[] {
  return [
    allowanceLine(context, 'fillSmall', 'nail holes, dings and dents'),
    allowanceLine(context, 'caulk', 'open joints'),
  ].flatMap((line) => line ?? [])
}

function allowanceLine(context: SetContext, operation: Operation, what: string): RepairLine | null {
  const steps = context.steps.filter(
    (step) =>
      step.operation === operation && step.because.every(({ conditionIds }) => conditionIds.length === 0),
  )
  if (steps.length === 0) return null
  const classes = [...new Set(steps.flatMap(({ surfaceClass }) => surfaceClass ?? []))]
  const amounts = classes.map((each) => {
    const here = steps.filter(({ surfaceClass }) => surfaceClass === each)
    return `${surfaceNoun(each)} ${amountWords(context, amountsSum(here.map((step) => step.amounts)), null)}`
  })
  return {
    number: null,
    what,
    where: '',
    amount: amounts.join(', '),
    how: howWords(steps),
    note: '',
    photo: '',
  }
}
