import { groupedBy, present } from '../lists/lists.ts'
import type { Job } from '../project/job.ts'
import type { RoomSet } from '../project/room-sets.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import { amountsSum } from '../specification/amounts.ts'
import { productClassWords, sheenWords, stepTitle, surfaceNoun } from '../specification/trade-words.ts'
import type { Step } from '../specification/types.ts'
import { partsSum, partWords } from '../specification/woodwork.ts'
import { workingMinutes } from '../units/duration.ts'
import { minutesOnce } from './bundles.ts'
import type { MinutesByStep, PassKind, PassLine } from './pass-types.ts'

/** One line for each kind of work with one product, color and sheen, in the order in which it is begun. */
export function passLinesOf(
  job: Job,
  set: RoomSet,
  kind: PassKind,
  steps: readonly Step[],
  minutes: MinutesByStep,
): readonly PassLine[] {
  const byWork = groupedBy(steps, (step) => {
    const what = workWords(job, kind, step)
    return [what, step.operation, step.coat, step.productId, step.colourId, step.sheen].join('|')
  })
  return [...byWork.values()].map((list): PassLine => {
    const first = present(list[0])
    const classes = [...new Set(list.map((step) => step.surfaceClass))]
    return {
      operation: first.operation,
      surfaceClass: classes.length === 1 ? (classes[0] ?? null) : null,
      coat: first.coat,
      productId: first.productId,
      colourId: first.colourId,
      sheen: first.sheen,
      stepKeys: list.map((step) => step.key),
      amounts: amountsSum(list.map((step) => step.amounts)),
      parts: partsSum(list.flatMap((step) => step.parts)),
      personMinutes: workingMinutes(list.reduce((sum, step) => sum + minutesOnce(step, minutes), 0)),
      words: `${workWords(job, kind, first)}${placeWords(job, set, list)}`,
    }
  })
}

const preparing: ReadonlySet<PassKind> = new Set(['setUp', 'slow', 'repair', 'sand', 'prime'])

/** `Prime with bonding primer`, `Coat 2 with latex wall paint, Linen, eggshell`, `Sand to dull the gloss`. */
function workWords(job: Job, kind: PassKind, step: Step): string {
  const { operation, productClass, colourId, sheen } = step
  if (operation === 'sand' && !preparing.has(kind)) return 'Scuff lightly between coats'
  const what = stepTitle(step)
  const colour = colourId === null ? undefined : job.colours[colourId]?.name
  const paint = [
    ...(productClass === null ? [] : [productClassWords[productClass]]),
    ...(colour === undefined ? [] : [colour]),
    ...(sheen === null ? [] : [sheenWords[sheen]]),
  ]
  return paint.length === 0 ? what : `${what} with ${paint.join(', ')}`
}

/**
 * `: walls, crown 48' 0", doors 2 faces (Rear closet)`; woodwork by kind where all of it is worked, and rooms only where the line does
 * not go through all of the set.
 */
function placeWords(job: Job, set: RoomSet, steps: readonly Step[]): string {
  const classes = [...new Set(steps.flatMap(({ surfaceClass }) => surfaceClass ?? []))]
  const surfaces = classes.map((each) => classWords(job, each, steps)).join(', ')
  const rooms = new Set(steps.map(({ roomId }) => roomId))
  const names = set.roomIds.filter((id) => rooms.has(id)).map((id) => job.rooms[id]?.name ?? id)
  const where = names.length === set.roomIds.length ? '' : ` (${names.join(', ')})`
  return surfaces === '' ? where : `: ${surfaces}${where}`
}

function classWords(job: Job, surfaceClass: SurfaceClass, steps: readonly Step[]): string {
  const here = steps.filter((step) => step.surfaceClass === surfaceClass)
  if (here.some(({ parts }) => parts.length === 0)) return surfaceNoun(surfaceClass)
  const parts = partsSum(here.flatMap((step) => step.parts))
  return parts.map((part) => partWords(part, job.header.unitSystem)).join(', ')
}
