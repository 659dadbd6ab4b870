import { type Job, records } from '../project/job.ts'
import { findScoped, scopeIndex, scopeKey } from '../project/scopes.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import type { Finish } from '../project/survey-records.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'

/**
 * Tells finishes apart: two edges with the same mark are one run of the same paint. Null is a surface that stays as it is. Where
 * no finish has been chosen yet, surfaces of one class count as one finish.
 */
export type FinishMark = string | null

export type MarkOf = (surface: SurfaceRef, roomId: RoomId, surfaceClass: SurfaceClass) => FinishMark

/** Tells surfaces apart that are cut in against one another: each by its own finish, or by its class where nothing is said. */
export function finishMarks(finishes: Job['finishes']): MarkOf {
  const index = scopeIndex(finishes)
  return (surface, roomId, surfaceClass) => {
    const finish = findScoped(index, surface, roomId, surfaceClass)
    return finish === null ? surfaceClass : markOfFinish(finish)
  }
}

/** A floor has no class to take a default from: it is painted only where it has a finish of its own. */
export function floorMark(finishes: Job['finishes'], roomId: RoomId): FinishMark {
  const finish = findScoped(scopeIndex(finishes), { kind: 'floor', roomId }, roomId, null)
  return finish === null ? null : markOfFinish(finish)
}

/** Whether two tables tell the same surfaces apart. Figures follow from which finishes are alike, not from what they are. */
export function tellApartAlike(before: Job['finishes'], after: Job['finishes']): boolean {
  if (before === after) return true
  const [one, other] = [partitionOf(before), partitionOf(after)]
  return one.length === other.length && one.every((line, index) => line === other[index])
}

/** Each scope with the number of its mark, in the order in which marks are come upon. */
function partitionOf(finishes: Job['finishes']): readonly string[] {
  const numbers = new Map<FinishMark, number>([[null, 0]])
  return records(finishes).map((finish) => {
    const mark = markOfFinish(finish)
    const number = numbers.get(mark) ?? numbers.size
    numbers.set(mark, number)
    return `${scopeKey(finish.scope)} ${number}`
  })
}

const marks = new WeakMap<Finish, string>()

function markOfFinish(finish: Finish): FinishMark {
  if (!finish.paint) return null
  const known = marks.get(finish)
  if (known !== undefined) return known
  const mark = `${finish.colourId} ${finish.sheen} ${finish.productClass}`
  marks.set(finish, mark)
  return mark
}

/** A stretch along which a surface meets something else; a null neighbour is not painted. Length units. */
export interface Edge {
  readonly neighbour: FinishMark
  readonly length: number
  /** What is met, for the derivation: `ceiling`, `door "pantry"`. */
  readonly along: string
}

interface EdgeLengths {
  readonly cuttingIn: number
  readonly masking: number
}

/** A surface that is not painted needs neither a steady hand nor tape. */
export function edgeLengths(own: FinishMark, edges: readonly Edge[]): EdgeLengths {
  let cuttingIn = 0
  let masking = 0
  if (own !== null) {
    for (const edge of edges) {
      if (edge.neighbour === null) masking += edge.length
      else if (edge.neighbour !== own) cuttingIn += edge.length
    }
  }
  return { cuttingIn, masking }
}
