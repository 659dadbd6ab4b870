import type { OpeningPolicy } from '../project/job.ts'
import { squareMetres } from '../units/area.ts'

export interface PolicySource {
  /** The rule in words, for the screen beside its figure. */
  readonly rule: string
  /** Where it is written: standard and section, or the book. */
  readonly source: string
}

export const openingPolicySources: Readonly<Record<OpeningPolicy, PolicySource>> = {
  exactNet: {
    rule: 'Every opening is taken off at its own area.',
    source: 'geometry',
  },
  is1200Part13: {
    rule: 'Openings up to 0.5 m² are not taken off; up to 3 m² from one face of the wall only and their reveals are not added; larger ones are taken off and their reveals added. With different finishes on the two faces half is taken off each, because one jamb depth means equal reveals.',
    source: 'IS 1200 Part 13:1994, cl. 3.2; equal reveals as practiced in plastering',
  },
  minimumVoid: {
    rule: 'Openings up to 0.5 m² that lie wholly inside a wall are not taken off; those at its edge, such as doors, always are.',
    source: 'SMM7-era teaching (0.5 m²); Caribbean SMM A2 (voids at the edge)',
  },
  noDeduction: {
    rule: 'Doors and windows are not taken off, to pay for cutting in.',
    source: 'Griffith, Carpentry, "Painting", c. 1916; Building Construction V4 s. 58',
  },
  partDeduction: {
    rule: 'Half of an opening is taken off where its door or window is painted too, a third where it is not.',
    source: 'Armstrong, Cyclopedia of Painting, 1908, p. 127 (1/2 to 2/3; the lower is used)',
  },
}

/** IS 1200-13 and SMM7-era teaching: an opening of exactly this size counts as small. */
const smallVoid = squareMetres(0.5)
/** IS 1200-13 cl. 3.2: up to and including this an opening is taken off one face only. */
const oneFaceVoid = squareMetres(3)

/** What a policy needs to know of an opening in one face of a wall. */
export interface OpeningFace {
  /** Area of the whole hole. */
  readonly holeArea: number
  readonly side: 'near' | 'far'
  /** Measured rooms on both sides. */
  readonly shared: boolean
  /** Both faces of the wall get the same finish. */
  readonly sameFinish: boolean
  /** The hole touches the edge of its wall, as a door touches the floor. */
  readonly atEdge: boolean
  /** Its door, sash or lining is painted in this job. */
  readonly fillingPainted: boolean
}

/** The share of an opening's area that a policy takes off this face of the wall: 0 to 1. */
export function deductedShare(policy: OpeningPolicy, face: OpeningFace): number {
  switch (policy) {
    case 'exactNet':
      return 1
    case 'is1200Part13':
      return oneFaceShare(face)
    case 'minimumVoid':
      return face.holeArea <= smallVoid && !face.atEdge ? 0 : 1
    case 'noDeduction':
      return 0
    case 'partDeduction':
      return face.fillingPainted ? 1 / 2 : 1 / 3
  }
}

/** An opening in an outside wall has one face that is measured at all, and that one is "one face only". */
function oneFaceShare(face: OpeningFace): number {
  if (face.holeArea <= smallVoid) return 0
  if (face.holeArea > oneFaceVoid || !face.shared) return 1
  if (!face.sameFinish) return 1 / 2
  return face.side === 'near' ? 1 : 0
}

/** Whether the reveals of an opening are added to the wall work under the policy. */
export function revealsAdded(policy: OpeningPolicy, holeArea: number): boolean {
  return policy !== 'is1200Part13' || holeArea > oneFaceVoid
}
