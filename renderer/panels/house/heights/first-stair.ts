import type { BuiltItem } from '../../../../core/project/built-records.ts'
import { feet, inches } from '../../../../core/units/length.ts'

/** A stair to begin with; shop assumption, to be changed to what is there. */
export const firstStair: Omit<Extract<BuiltItem, { kind: 'stair' }>, 'id' | 'roomId' | 'name' | 'kind'> = {
  treads: 13,
  risers: 14,
  stepLength: feet(3),
  treadDepth: inches(10),
  riserHeight: inches(7.5),
  paintTreads: false,
  paintRisers: true,
  stringers: 1,
  stringerLength: feet(13),
  stringerGirth: inches(12),
  balusters: 26,
  balusterHeight: inches(30),
  balusterGirth: inches(5),
  newels: 1,
  newelHeight: inches(42),
  newelGirth: inches(16),
  handrailLength: feet(14),
  handrailGirth: inches(9),
}
