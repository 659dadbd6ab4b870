import type { Opening } from '../project/sketch-records.ts'
import type { OpeningPart, SurfaceRef } from '../project/surface-ref.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import type { FinishMark, MarkOf } from './finish-marks.ts'

type Side = 'near' | 'far'

/** The class a part is painted with. A jamb that belongs to the wall is of its class. */
export function partClass(opening: Opening, part: OpeningPart): SurfaceClass {
  switch (part) {
    case 'slab':
      return 'doors'
    case 'sash':
      return 'sash'
    case 'jamb':
      return opening.jambOf === 'wall' ? 'walls' : 'trim'
    case 'casing':
    case 'stool':
      return 'trim'
  }
}

/** The surface that a part is on one side of its opening. */
export function partRef(opening: Opening, side: Side, part: OpeningPart): SurfaceRef {
  return { kind: 'opening', openingId: opening.id, side, part }
}

/** The finish of a part as seen from one side; undefined when there is no such part or no room on that side. */
function partMark(opening: Opening, side: Side, part: OpeningPart, markOf: MarkOf): FinishMark | undefined {
  const roomId = side === 'near' ? opening.roomId : opening.far?.roomId
  if (roomId === undefined || !hasPart(opening, side, part, markOf)) return undefined
  return markOf(partRef(opening, side, part), roomId, partClass(opening, part))
}

/** Whether a part is there to be painted from a side. */
function hasPart(opening: Opening, side: Side, part: OpeningPart, markOf: MarkOf): boolean {
  switch (part) {
    case 'casing':
      return (side === 'near' ? opening.casingNear : opening.casingFar) !== null
    case 'jamb':
      return opening.jambDepth > 0 && jambSide(opening, markOf) === side
    case 'slab':
      return opening.slab !== null && (side === 'near' ? opening.slab.paintNear : opening.slab.paintFar)
    case 'sash':
      return hasOwnSash(opening)
    case 'stool':
      return opening.stool !== null && side === 'near'
  }
}

/** The sash record of a door is the glazing of its slab and is measured with it; transom and sidelights are sash. */
function hasOwnSash(opening: Opening): boolean {
  return (
    (opening.sash !== null && opening.slab === null) ||
    opening.transom !== null ||
    opening.sidelights !== null
  )
}

/** A jamb is painted once: with the near room, unless only the far one paints it. */
function jambSide(opening: Opening, markOf: MarkOf): Side {
  if (opening.far === null) return 'near'
  const surfaceClass = partClass(opening, 'jamb')
  const markFrom = (side: Side, roomId: Opening['roomId']) =>
    markOf(partRef(opening, side, 'jamb'), roomId, surfaceClass)
  if (markFrom('near', opening.roomId) !== null) return 'near'
  return markFrom('far', opening.far.roomId) === null ? 'near' : 'far'
}

/** The jamb's finish, whichever side it is painted from. */
function jambMark(opening: Opening, markOf: MarkOf): FinishMark | undefined {
  return partMark(opening, jambSide(opening, markOf), 'jamb', markOf)
}

/** Finishes in and around an opening as one side sees them; undefined for what is not there, null for what stays as it is. */
export interface OpeningMarks {
  /** Parts to be painted from this side. */
  readonly parts: readonly OpeningPart[]
  readonly casing: FinishMark | undefined
  readonly casingBeyond: FinishMark | undefined
  /** Whichever side paints it. */
  readonly jamb: FinishMark | undefined
  readonly sash: FinishMark | undefined
  readonly stool: FinishMark | undefined
  /** The other face of the door. */
  readonly slabBeyond: FinishMark | undefined
  /** Sash, else door. */
  readonly filling: FinishMark | undefined
  /** What the casing, or without one the wall, meets on its inner side. */
  readonly behindCasing: FinishMark
  /** What the wall meets. */
  readonly rim: FinishMark
}

const partOrder = ['casing', 'jamb', 'slab', 'sash', 'stool'] as const

/** The finishes in and around an opening as one side sees them. */
export function openingMarks(opening: Opening, side: Side, markOf: MarkOf): OpeningMarks {
  const beyond = side === 'near' ? 'far' : 'near'
  const casing = partMark(opening, side, 'casing', markOf)
  const jamb = opening.jambDepth > 0 ? jambMark(opening, markOf) : undefined
  const sash = partMark(opening, side, 'sash', markOf)
  const filling = sash === undefined ? partMark(opening, side, 'slab', markOf) : sash
  const behindCasing = firstThere(jamb, filling)
  return {
    parts: partOrder.filter((part) => hasPart(opening, side, part, markOf)),
    casing,
    casingBeyond: partMark(opening, beyond, 'casing', markOf),
    jamb,
    sash,
    stool: partMark(opening, side, 'stool', markOf),
    slabBeyond: partMark(opening, beyond, 'slab', markOf),
    filling,
    behindCasing,
    rim: casing === undefined ? behindCasing : casing,
  }
}

function firstThere(one: FinishMark | undefined, other: FinishMark | undefined): FinishMark {
  return one === undefined ? (other ?? null) : one
}
