import type { RoomId } from '../project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../project/surface-ref.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import { type Area, areaFromUnits, zeroArea } from '../units/area.ts'
import { type Length, lengthFromUnits, zeroLength } from '../units/length.ts'
import { edgeLines, type FigureWords } from './figure-words.ts'
import { type Edge, edgeLengths, type FinishMark, type MarkOf } from './finish-marks.ts'
import type { DerivationLine, SurfaceQuantity } from './takeoff-types.ts'

/** Which surface it is, where, and what it gets. */
export interface SurfaceFace {
  readonly key: string
  readonly surface: SurfaceRef
  readonly roomId: RoomId
  readonly surfaceClass: SurfaceClass
  readonly mark: FinishMark
}

/** A surface with the mark of its finish, which tells whether an edge beside it is cut in. */
export function faceOf(
  surface: SurfaceRef,
  roomId: RoomId,
  surfaceClass: SurfaceClass,
  markOf: MarkOf,
): SurfaceFace {
  return {
    key: surfaceKey(surface),
    surface,
    roomId,
    surfaceClass,
    mark: markOf(surface, roomId, surfaceClass),
  }
}

/** What is known of a surface before its figures are rounded and put in order. Areas are rounded already; left out is nothing. */
export interface SurfaceDraft {
  readonly face: SurfaceFace
  readonly grossArea: Area
  readonly deductedArea?: Area
  readonly addedArea?: Area
  /** Left out where policies do not touch it: the net area. */
  readonly policyArea?: Area
  /** Left out where no coefficient is published: the net area. */
  readonly equivalentArea?: Area
  readonly length?: Length
  readonly count?: number
  readonly glassPerimeter?: number
  readonly edges: readonly Edge[]
  readonly reach: number
  readonly derivation: () => readonly DerivationLine[]
}

/** Words how a surface's figures came about. */
export type Explain = (key: string) => readonly DerivationLine[]

/**
 * Figures rounded and in order. How they came about is worded when asked for, since few ever are; a class, because a getter
 * written into thousands of plain objects costs more than the figures. Spreading one leaves the derivation behind.
 */
export class MeasuredSurface implements SurfaceQuantity {
  readonly key: string
  readonly surface: SurfaceRef
  readonly roomId: RoomId
  readonly surfaceClass: SurfaceClass
  readonly grossArea: Area
  readonly deductedArea: Area
  readonly netArea: Area
  readonly policyArea: Area
  readonly equivalentArea: Area
  readonly length: Length
  readonly count: number
  readonly cuttingIn: Length
  readonly masking: Length
  readonly glassPerimeter: Length
  readonly reachHeight: Length
  readonly #explain: Explain

  constructor(draft: SurfaceDraft, explain: Explain) {
    const { face } = draft
    const deducted = draft.deductedArea ?? zeroArea
    const net = areaFromUnits(Math.max(0, draft.grossArea - deducted + (draft.addedArea ?? 0)))
    const edges = edgeLengths(face.mark, draft.edges)
    this.key = face.key
    this.surface = face.surface
    this.roomId = face.roomId
    this.surfaceClass = face.surfaceClass
    this.grossArea = draft.grossArea
    this.deductedArea = deducted
    this.netArea = net
    this.policyArea = draft.policyArea ?? net
    this.equivalentArea = draft.equivalentArea ?? net
    this.length = draft.length ?? zeroLength
    this.count = draft.count ?? 0
    this.cuttingIn = lengthFromUnits(edges.cuttingIn)
    this.masking = lengthFromUnits(edges.masking)
    this.glassPerimeter = lengthFromUnits(draft.glassPerimeter ?? 0)
    this.reachHeight = lengthFromUnits(Math.max(0, draft.reach))
    this.#explain = explain
  }

  get derivation(): readonly DerivationLine[] {
    return this.#explain(this.key)
  }
}

/** How the figures of a surface came about, worded when it is asked for; edges come last. */
export function derivationOf(draft: SurfaceDraft, words: FigureWords): readonly DerivationLine[] {
  return [...draft.derivation(), ...edgeLines(draft.face.mark, draft.edges, words)]
}

/** @param sourceId the record that the area comes from; null where it is the surface itself */
export function areaLine(
  kind: DerivationLine['kind'],
  text: string,
  area: Area,
  sourceId: string | null,
): DerivationLine {
  return { kind, text, area, length: null, sourceId }
}

/** @param sourceId the record that the length comes from; null where it is the surface itself */
export function lengthLine(text: string, length: Length, sourceId: string | null): DerivationLine {
  return { kind: 'length', text, area: null, length, sourceId }
}
