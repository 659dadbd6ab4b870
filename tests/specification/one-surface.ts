import type { BuiltItem } from '../../core/project/built-records.ts'
import type { Job } from '../../core/project/job.ts'
import type { Opening } from '../../core/project/sketch-records.ts'
import type { SurfaceRef } from '../../core/project/surface-ref.ts'
import type { Condition, Existing, Finish } from '../../core/project/survey-records.ts'
import type { ExistingCoat, ProductClass, Substrate, SurfaceClass } from '../../core/project/vocabulary.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Notice, Specification, Step } from '../../core/specification/types.ts'
import { feet, inches, zeroLength } from '../../core/units/length.ts'
import {
  buildJob,
  conditionOn,
  existingOn,
  finishFor,
  type JobParts,
  rectangularRoom,
} from '../fixtures/job-builder.ts'
import {
  builtOf,
  ceilingOf,
  type HandQuantity,
  partOf,
  quantity,
  takeoffOf,
  trimOf,
  wallOf,
} from './hand-takeoff.ts'

/** A room `r` with one surface of a class; 100 sq ft unless said otherwise. */
export interface OneSurface {
  readonly surfaceClass: SurfaceClass
  readonly substrate?: Substrate
  readonly coat?: ExistingCoat
  readonly existing?: Partial<Existing>
  readonly productClass?: ProductClass
  readonly colourId?: string
  readonly sheen?: Finish['sheen']
  readonly moreCoats?: number
  readonly conditions?: readonly (readonly [Condition['kind'], Partial<Condition>?])[]
  readonly quantity?: Partial<HandQuantity>
  readonly rules?: readonly (readonly [string, boolean, Readonly<Record<string, number>>?])[]
  readonly job?: JobParts
}

const places: Readonly<Record<SurfaceClass, SurfaceRef>> = {
  ceiling: ceilingOf('r'),
  walls: wallOf('r', 'north'),
  wainscot: wallOf('r', 'south'),
  trim: trimOf('r', 'run'),
  doors: partOf('door', 'slab'),
  sash: partOf('window', 'sash'),
  stairs: builtOf('r', 'stair'),
  radiators: builtOf('r', 'radiator'),
  builtWork: builtOf('r', 'cabinet'),
}

const usualFinish: Readonly<Record<SurfaceClass, ProductClass>> = {
  ceiling: 'latexCeiling',
  walls: 'latexWall',
  wainscot: 'waterborneEnamel',
  trim: 'waterborneEnamel',
  doors: 'waterborneEnamel',
  sash: 'waterborneEnamel',
  stairs: 'floorEnamel',
  radiators: 'radiatorEnamel',
  builtWork: 'waterborneEnamel',
}

const doubleHung: Opening = {
  id: 'window' as Opening['id'],
  kind: 'window',
  name: '',
  roomId: 'r' as Opening['roomId'],
  wallId: 'north' as Opening['wallId'],
  offset: feet(2),
  width: feet(3),
  height: feet(4),
  sill: feet(3),
  head: { kind: 'square' },
  far: null,
  jambDepth: zeroLength,
  jambOf: 'wood',
  casingNear: null,
  casingFar: null,
  slab: null,
  sash: {
    operation: 'doubleHung',
    units: 1,
    lightsAcross: 1,
    lightsDown: 1,
    stile: inches(2),
    topRail: inches(2),
    meetingRail: inches(1),
    bottomRail: inches(3),
    muntin: inches(1),
    thickness: inches(1),
  },
  stool: null,
  transom: null,
  sidelights: null,
}
const door: Opening = { ...doubleHung, id: 'door' as Opening['id'], kind: 'door', sash: null }
const radiator: BuiltItem = {
  kind: 'radiator',
  id: 'radiator' as BuiltItem['id'],
  roomId: 'r' as BuiltItem['roomId'],
  name: '',
  pattern: 'tube',
  columns: 5,
  heightInches: 38,
  sections: 7,
}
/** Sash that stands above the door and is never moved. */
export const fixedWindow: Opening = {
  ...doubleHung,
  sash: null,
  transom: { height: inches(12), lightsAcross: 2, lightsDown: 1 },
}

export function oneSurfaceJob(given: OneSurface): Job {
  const { surfaceClass } = given
  const broad = surfaceClass === 'ceiling' || surfaceClass === 'walls'
  const surface = places[surfaceClass]
  return buildJob({
    rooms: [rectangularRoom('r', 12, 10, { use: 'living' })],
    existing: [
      existingOn(
        surfaceClass,
        given.substrate ?? (broad ? 'plaster' : 'wood'),
        given.coat ?? 'latexFlat',
        given.existing,
      ),
    ],
    finishes: [
      finishFor(
        surfaceClass,
        given.productClass ?? usualFinish[surfaceClass],
        given.colourId ?? 'white',
        given.sheen ?? (broad ? 'flat' : 'semiGloss'),
        given.moreCoats === undefined ? {} : { moreCoats: given.moreCoats },
      ),
    ],
    conditions: (given.conditions ?? []).map(([kind, changes], index) =>
      conditionOn(`c${index + 1}`, kind, surface, changes),
    ),
    openings: [doubleHung, door],
    builtItems: [radiator],
    rules: (given.rules ?? []).map(([id, on, numbers]) => ({ id: id as never, on, numbers: numbers ?? {} })),
    ...given.job,
  })
}

export function specifyOne(given: OneSurface): Specification {
  const surface = places[given.surfaceClass]
  return specify(
    oneSurfaceJob(given),
    takeoffOf(quantity('r', surface, given.surfaceClass, { area: 100, ...given.quantity })),
  )
}

/** The step with this key in room `r`, `walls/fill/1`; fails loudly when it is not there. */
export function stepOf(specification: Specification, name: string): Step {
  const step = specification.steps.find((each) => each.key === `r/${name}`)
  if (step === undefined) {
    throw new Error(`no step r/${name} among ${specification.steps.map((each) => each.key).join(', ')}`)
  }
  return step
}

export function hasStep(specification: Specification, name: string): boolean {
  return specification.steps.some((each) => each.key === `r/${name}`)
}

export function notices(specification: Specification, kind: Notice['kind']): readonly Notice[] {
  return specification.notices.filter((notice) => notice.kind === kind)
}

export const squareFoot = 92_903.04
