import { z } from 'zod'
import {
  coordinateSchema,
  type Frozen,
  idSchema,
  lengthSchema,
  localDateTimeSchema,
  longText,
  pictureHashSchema,
  positiveLengthSchema,
  shortText,
} from './schema-parts.ts'
import {
  ceilingOpeningKinds,
  openingKinds,
  roomOrders,
  roomUses,
  sashOperations,
  slabKinds,
  trimKinds,
  underlayStrengths,
} from './vocabulary.ts'

export const storeyIdSchema = idSchema<'StoreyId'>()
export const roomIdSchema = idSchema<'RoomId'>()
export const wallIdSchema = idSchema<'WallId'>()
export const openingIdSchema = idSchema<'OpeningId'>()
const ceilingOpeningIdSchema = idSchema<'CeilingOpeningId'>()
export const trimRunIdSchema = idSchema<'TrimRunId'>()
export type StoreyId = z.output<typeof storeyIdSchema>
export type RoomId = z.output<typeof roomIdSchema>
export type WallId = z.output<typeof wallIdSchema>
export type OpeningId = z.output<typeof openingIdSchema>
export type CeilingOpeningId = z.output<typeof ceilingOpeningIdSchema>
export type TrimRunId = z.output<typeof trimRunIdSchema>

/** More is a picture the book does not keep. */
const mostPixels = 20_000

/** A picture that lies under the sketch of a floor: its upper left corner, how large a pixel is, and how it is turned about that corner. */
const underlaySchema = z.strictObject({
  picture: pictureHashSchema,
  /** Pixels. */
  width: z.int().min(1).max(mostPixels),
  height: z.int().min(1).max(mostPixels),
  x: coordinateSchema,
  y: coordinateSchema,
  mmPerPixel: z.number().min(0.01).max(2000),
  /** Clockwise. */
  turnDegrees: z.number().min(-180).max(180),
  strength: z.enum(underlayStrengths),
  isShown: z.boolean(),
})
export type Underlay = Frozen<z.output<typeof underlaySchema>>

export const storeySchema = z.strictObject({
  id: storeyIdSchema,
  name: shortText,
  /** 0 is the ground storey; higher is further up. */
  level: z.int().min(-3).max(20),
  /** The photo or scan of a plan that the rooms are traced on. */
  underlay: underlaySchema.optional(),
})
export type Storey = Frozen<z.output<typeof storeySchema>>

/** One corner of the outline at the finished face and the wall that runs from it to the next corner. x right, y down. */
const cornerSchema = z.strictObject({
  wallId: wallIdSchema,
  x: coordinateSchema,
  y: coordinateSchema,
  /** What stands behind that wall; outside and unheated spaces make it cold. */
  behind: z.enum(['heated', 'outside', 'unheated']),
})
export type Corner = Frozen<z.output<typeof cornerSchema>>

const axisSchema = z.enum(['x', 'y'])

/** Heights vary along one plan axis; `at` is measured from the outline's least coordinate on that axis. */
const linePointSchema = z.strictObject({ at: lengthSchema, height: lengthSchema })
export type LinePoint = Frozen<z.output<typeof linePointSchema>>

/** Heights are above the room's floor datum (the lowest floor point of the room). */
const ceilingShapeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('flat'), height: positiveLengthSchema }),
  z.strictObject({
    kind: z.literal('shed'),
    along: axisSchema,
    startHeight: lengthSchema,
    endHeight: lengthSchema,
  }),
  z.strictObject({
    kind: z.literal('gable'),
    along: axisSchema,
    startHeight: lengthSchema,
    endHeight: lengthSchema,
    ridgeAt: positiveLengthSchema,
    ridgeHeight: positiveLengthSchema,
  }),
  z.strictObject({
    kind: z.literal('vault'),
    along: axisSchema,
    startHeight: lengthSchema,
    endHeight: lengthSchema,
    flatFrom: lengthSchema,
    flatTo: lengthSchema,
    flatHeight: positiveLengthSchema,
  }),
  z.strictObject({
    kind: z.literal('stair'),
    along: axisSchema,
    line: z.array(linePointSchema).min(2).max(20),
  }),
])
export type CeilingShape = Frozen<z.output<typeof ceilingShapeSchema>>

const floorShapeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('level') }),
  z.strictObject({
    kind: z.literal('stair'),
    along: axisSchema,
    line: z.array(linePointSchema).min(2).max(20),
  }),
])
export type FloorShape = Frozen<z.output<typeof floorShapeSchema>>

/** Small damage of a room where it differs from the house's; a number that is null is the house's. */
const allowancesSchema = z.strictObject({
  /** Nail holes, dings and dents for each 100 sq ft of wall. */
  dings: z.number().min(0).max(1000).nullable(),
  /** Nail holes and dents for each 100 ft of trim. */
  trimDings: z.number().min(0).max(1000).nullable(),
  /** Feet of open joints for each 100 ft of trim. */
  joints: z.number().min(0).max(1000).nullable(),
  /** Percent of what is painted that is touched up at the end. */
  touchUp: z.number().min(0).max(100).nullable(),
})

export const roomSchema = z.strictObject({
  id: roomIdSchema,
  storeyId: storeyIdSchema,
  name: shortText.min(1),
  use: z.enum(roomUses),
  corners: z.array(cornerSchema).min(3).max(200),
  ceiling: ceilingShapeSchema,
  floor: floorShapeSchema,
  /** What is over the ceiling. `open` rooms have no ceiling of their own: the space goes on above. */
  above: z.enum(['heated', 'unheated', 'open']),
  order: z.enum(['houseRule', ...roomOrders]),
  /** The room it is worked with, a closet with its bedroom; itself where it is worked alone; null as use and doors suggest. */
  workedWith: roomIdSchema.nullable(),
  /** The only way out of other rooms leads through here: painted last, kept passable. */
  wayOut: z.boolean(),
  /** A promise to the family: the room is given back by this moment. */
  backBy: localDateTimeSchema.nullable(),
  /** Null: the room has what the house's rules expect. */
  allowances: allowancesSchema.nullable(),
  /** Pieces of the room that were looked at and are sound, by `pieceKey`; one that is no longer there says nothing. */
  lookedAt: z.array(shortText).max(500),
  note: longText,
})
export type Room = Frozen<z.output<typeof roomSchema>>

const casingSchema = z.strictObject({
  /** Face width on the wall. */
  width: positiveLengthSchema,
  /** Developed girth of the profile including returns to the wall and the jamb edge. */
  girth: positiveLengthSchema,
  style: z.enum(['mitred', 'plinthAndCornerBlocks']),
  profiled: z.boolean(),
})
export type Casing = Frozen<z.output<typeof casingSchema>>

const slabSchema = z.strictObject({
  kind: z.enum(slabKinds),
  thickness: positiveLengthSchema,
  leaves: z.int().min(1).max(8),
  paintNear: z.boolean(),
  paintFar: z.boolean(),
  /** The side the door opens towards; its edges are finished with that side. */
  edgesShow: z.enum(['near', 'far']),
})
export type Slab = Frozen<z.output<typeof slabSchema>>

/** Members are measured on the face seen from the room. One unit is one frame; a mulled pair has two. */
const sashSchema = z.strictObject({
  operation: z.enum(sashOperations),
  units: z.int().min(1).max(12),
  /** Lights per sash (a double-hung unit has two sash of these). */
  lightsAcross: z.int().min(1).max(20),
  lightsDown: z.int().min(1).max(20),
  stile: positiveLengthSchema,
  topRail: positiveLengthSchema,
  meetingRail: positiveLengthSchema,
  bottomRail: positiveLengthSchema,
  muntin: positiveLengthSchema,
  thickness: positiveLengthSchema,
})
export type Sash = Frozen<z.output<typeof sashSchema>>

const openingHeadSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('square') }),
  /** A circular segment of this rise, inside the opening's height. */
  z.strictObject({ kind: z.literal('segment'), rise: positiveLengthSchema }),
  z.strictObject({ kind: z.literal('halfRound') }),
])

/**
 * A hole in a wall. `offset` runs along the wall from its start corner to the opening's first edge; `height` is from the
 * sill to the crown of the head; `sill` is above the floor line at the opening's first edge. One between two rooms is
 * one record with two sides: near is `roomId`, far is `far.roomId`; its place on the far wall follows by projection.
 */
export const openingSchema = z.strictObject({
  id: openingIdSchema,
  kind: z.enum(openingKinds),
  name: shortText,
  roomId: roomIdSchema,
  wallId: wallIdSchema,
  offset: lengthSchema,
  width: positiveLengthSchema,
  height: positiveLengthSchema,
  sill: lengthSchema,
  head: openingHeadSchema,
  far: z.strictObject({ roomId: roomIdSchema, wallId: wallIdSchema }).nullable(),
  /** Depth of the painted jamb or reveal; 0 where there is none to paint. */
  jambDepth: lengthSchema,
  /** `wood` jambs are trim; `wall` reveals take the wall's finish. */
  jambOf: z.enum(['wood', 'wall']),
  casingNear: casingSchema.nullable(),
  casingFar: casingSchema.nullable(),
  slab: slabSchema.nullable(),
  sash: sashSchema.nullable(),
  /** Window stool (inside sill board) and the apron under it. */
  stool: z
    .strictObject({ depth: positiveLengthSchema, thickness: positiveLengthSchema, apron: lengthSchema })
    .nullable(),
  transom: z
    .strictObject({
      height: positiveLengthSchema,
      lightsAcross: z.int().min(1).max(20),
      lightsDown: z.int().min(1).max(20),
    })
    .nullable(),
  sidelights: z
    .strictObject({
      count: z.int().min(1).max(2),
      width: positiveLengthSchema,
      lightsAcross: z.int().min(1).max(20),
      lightsDown: z.int().min(1).max(20),
    })
    .nullable(),
})
export type Opening = Frozen<z.output<typeof openingSchema>>

/** A rectangle of ceiling that is not there, in plan coordinates. */
export const ceilingOpeningSchema = z.strictObject({
  id: ceilingOpeningIdSchema,
  roomId: roomIdSchema,
  kind: z.enum(ceilingOpeningKinds),
  x: coordinateSchema,
  y: coordinateSchema,
  width: positiveLengthSchema,
  depth: positiveLengthSchema,
  /** Depth of the painted shaft or reveal around it; 0 where there is none. */
  revealDepth: lengthSchema,
})
export type CeilingOpening = Frozen<z.output<typeof ceilingOpeningSchema>>

export const trimRunSchema = z.strictObject({
  id: trimRunIdSchema,
  roomId: roomIdSchema,
  kind: z.enum(trimKinds),
  /** The walls it runs along; null is all of them. */
  walls: z.array(wallIdSchema).nullable(),
  /** Face height on the wall. */
  height: positiveLengthSchema,
  /** Developed girth of what is painted. */
  girth: positiveLengthSchema,
  /** Height of its lower edge above the floor for rails and wainscot caps; 0 for a baseboard; not used by a crown. */
  level: lengthSchema,
  profiled: z.boolean(),
})
export type TrimRun = Frozen<z.output<typeof trimRunSchema>>
