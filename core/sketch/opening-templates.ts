import { type Job, records } from '../project/job.ts'
import type { Casing, Opening, Sash, Slab } from '../project/sketch-records.ts'
import type { OpeningKind } from '../project/vocabulary.ts'
import { feet, inches, zeroLength } from '../units/length.ts'

/** An opening without its place. */
type OpeningTemplate = Omit<Opening, 'id' | 'name' | 'roomId' | 'wallId' | 'offset' | 'far' | 'casingFar'>

const casing: Casing = { width: inches(4.5), girth: inches(6), style: 'mitred', profiled: true }

const slab: Slab = {
  kind: 'panelled',
  thickness: inches(1.375),
  leaves: 1,
  paintNear: true,
  paintFar: true,
  edgesShow: 'near',
}

const doubleHung: Sash = {
  operation: 'doubleHung',
  units: 1,
  lightsAcross: 1,
  lightsDown: 1,
  stile: inches(2),
  topRail: inches(2),
  meetingRail: inches(1.25),
  bottomRail: inches(3),
  muntin: inches(0.875),
  thickness: inches(1.375),
}

const plain = {
  head: { kind: 'square' },
  sill: zeroLength,
  casingNear: casing,
  slab: null,
  sash: null,
  stool: null,
  transom: null,
  sidelights: null,
} as const

/** Sizes a first opening of each kind is set with: common sizes of older houses from memory, shop assumption. */
export const firstOpenings: Readonly<Record<OpeningKind, OpeningTemplate>> = {
  door: {
    ...plain,
    kind: 'door',
    width: feet(2, 8),
    height: feet(6, 8),
    jambDepth: inches(4.5),
    jambOf: 'wood',
    slab,
  },
  casedOpening: {
    ...plain,
    kind: 'casedOpening',
    width: feet(4),
    height: feet(6, 8),
    jambDepth: inches(4.5),
    jambOf: 'wood',
  },
  window: {
    ...plain,
    kind: 'window',
    width: feet(2, 6),
    height: feet(4, 6),
    sill: feet(2, 6),
    jambDepth: inches(3),
    jambOf: 'wood',
    sash: doubleHung,
    stool: { depth: inches(3.5), thickness: inches(1), apron: inches(3.5) },
  },
  fireplace: {
    ...plain,
    kind: 'fireplace',
    width: feet(3),
    height: feet(2, 6),
    jambDepth: zeroLength,
    jambOf: 'wall',
    casingNear: null,
  },
  builtIn: {
    ...plain,
    kind: 'builtIn',
    width: feet(3),
    height: feet(6, 8),
    jambDepth: zeroLength,
    jambOf: 'wood',
  },
  other: {
    ...plain,
    kind: 'other',
    width: feet(2),
    height: feet(2),
    sill: feet(3),
    jambDepth: zeroLength,
    jambOf: 'wall',
    casingNear: null,
  },
}

/** The next opening of a kind takes after the one of that kind drawn last, else after the job's first ones. */
export function openingTemplateFor(job: Job, kind: OpeningKind, first = firstOpenings): OpeningTemplate {
  const model = records(job.openings).findLast((opening) => opening.kind === kind)
  if (model === undefined) return first[kind]
  const {
    id: _id,
    name: _name,
    roomId: _room,
    wallId: _wall,
    offset: _offset,
    far: _far,
    casingFar: _casing,
    ...template
  } = model
  return template
}
