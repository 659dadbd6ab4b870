import type { RoomId } from '../project/sketch-records.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import type { SurfaceClass } from '../project/vocabulary.ts'
import { type Area, zeroArea } from '../units/area.ts'
import { type Length, lengthFromUnits } from '../units/length.ts'
import { edgeLines, type FigureWords } from './figure-words.ts'
import { type Edge, edgeLengths, type FinishMark } from './finish-marks.ts'
import type { DerivationLine, SurfaceQuantity } from './takeoff-types.ts'

/** What is known of a surface before its figures are rounded and put in order. Areas are rounded already; left out is nothing. */
export interface SurfaceDraft {
  readonly key: string
  readonly surface: SurfaceRef
  readonly roomId: RoomId
  readonly surfaceClass: SurfaceClass
  readonly mark: FinishMark
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
  readonly derivation: readonly DerivationLine[]
}

export function completeSurface(draft: SurfaceDraft, words: FigureWords): SurfaceQuantity {
  const { key, surface, roomId, surfaceClass, mark, grossArea, edges } = draft
  const deductedArea = draft.deductedArea ?? zeroArea
  const netArea = Math.max(0, grossArea - deductedArea + (draft.addedArea ?? 0)) as Area
  const lengths = edgeLengths(mark, edges)
  const cuttingIn = lengthFromUnits(lengths.cuttingIn)
  const masking = lengthFromUnits(lengths.masking)
  return {
    key,
    surface,
    roomId,
    surfaceClass,
    grossArea,
    deductedArea,
    netArea,
    policyArea: draft.policyArea ?? netArea,
    equivalentArea: draft.equivalentArea ?? netArea,
    length: draft.length ?? lengthFromUnits(0),
    count: draft.count ?? 0,
    cuttingIn,
    masking,
    glassPerimeter: lengthFromUnits(draft.glassPerimeter ?? 0),
    reachHeight: lengthFromUnits(Math.max(0, draft.reach)),
    derivation: [...draft.derivation, ...edgeLines(mark, edges, cuttingIn, masking, words)],
  }
}

export function areaLine(
  kind: DerivationLine['kind'],
  text: string,
  area: Area,
  sourceId: string | null,
): DerivationLine {
  return { kind, text, area, length: null, sourceId }
}

export function lengthLine(text: string, length: Length, sourceId: string | null): DerivationLine {
  return { kind: 'length', text, area: null, length, sourceId }
}
