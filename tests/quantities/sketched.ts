import type { BuiltItem } from '../../core/project/built-records.ts'
import { type Job, records } from '../../core/project/job.ts'
import type { CeilingOpening, Opening, Room, Sash, TrimRun } from '../../core/project/sketch-records.ts'
import type { Colour, Finish } from '../../core/project/survey-records.ts'
import type { SurfaceClass } from '../../core/project/vocabulary.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { SurfaceQuantity } from '../../core/quantities/takeoff-types.ts'
import { toSquareFeet, toSquareMetres } from '../../core/units/area.ts'
import { inches, type Length, toFeet, unitsPerFoot, zeroLength } from '../../core/units/length.ts'
import { linen, plainJob } from '../fixtures/plain-room.ts'

/** Inches of a length. */
export function inchesOf(length: number): number {
  return length / inches(1)
}

/** Parts for sketches in tests: say what matters, the rest is plain. Lengths are length units. */
const plain = plainJob()
const plainRoom = records(plain.rooms)[0] as Room

export type Spot = readonly [x: number, y: number]

/** Walls are called `<id>-0`, `<id>-1`... from the first corner on. */
export function room(id: string, corners: readonly Spot[], changes: Partial<Room> = {}): Room {
  return {
    ...plainRoom,
    id: id as Room['id'],
    name: id,
    corners: corners.map(([x, y], index) => ({
      wallId: `${id}-${index}` as Room['corners'][number]['wallId'],
      x: x as Length,
      y: y as Length,
      behind: 'heated' as const,
    })),
    ...changes,
  }
}

/** A rectangle with its first corner at the origin: wall 0 along the top, then clockwise. */
export function rectangle(
  id: string,
  width: number,
  depth: number,
  changes: Partial<Room> = {},
  [x, y]: Spot = [0, 0],
): Room {
  const corners: readonly Spot[] = [
    [x, y],
    [x + width, y],
    [x + width, y + depth],
    [x, y + depth],
  ]
  return room(id, corners, changes)
}

export function opening(
  id: string,
  wallId: string,
  offset: number,
  width: number,
  height: number,
  changes: Partial<Opening> = {},
): Opening {
  return {
    id: id as Opening['id'],
    kind: 'window',
    name: '',
    roomId: wallId.slice(0, wallId.lastIndexOf('-')) as Opening['roomId'],
    wallId: wallId as Opening['wallId'],
    offset: offset as Length,
    width: width as Length,
    height: height as Length,
    sill: zeroLength,
    head: { kind: 'square' },
    far: null,
    jambDepth: zeroLength,
    jambOf: 'wood',
    casingNear: null,
    casingFar: null,
    slab: null,
    sash: null,
    stool: null,
    transom: null,
    sidelights: null,
    ...changes,
  }
}

export const casing = { width: inches(4), girth: inches(5), style: 'mitred', profiled: true } as const

export function run(roomId: string, kind: TrimRun['kind'], changes: Partial<TrimRun> = {}): TrimRun {
  return {
    id: `${roomId}-${kind}` as TrimRun['id'],
    roomId: roomId as TrimRun['roomId'],
    kind,
    walls: null,
    height: inches(6),
    girth: inches(8),
    level: zeroLength,
    profiled: true,
    ...changes,
  }
}

export function sash(changes: Partial<Sash> = {}): Sash {
  return {
    operation: 'fixed',
    units: 1,
    lightsAcross: 1,
    lightsDown: 1,
    stile: inches(2),
    topRail: inches(2),
    meetingRail: inches(1.25),
    bottomRail: inches(3),
    muntin: inches(1),
    thickness: inches(1.375),
    ...changes,
  }
}

export function ceilingOpening(
  roomId: string,
  [x, y]: Spot,
  width: number,
  depth: number,
  changes: Partial<CeilingOpening> = {},
): CeilingOpening {
  return {
    id: `${roomId}-hatch` as CeilingOpening['id'],
    roomId: roomId as CeilingOpening['roomId'],
    kind: 'hatch',
    x: x as Length,
    y: y as Length,
    width: width as Length,
    depth: depth as Length,
    revealDepth: zeroLength,
    ...changes,
  }
}

const colours = byId(['linen', 'sage', 'brick'].map(colour))

export interface Sketch {
  readonly rooms: readonly Room[]
  readonly openings?: readonly Opening[]
  readonly trimRuns?: readonly TrimRun[]
  readonly ceilingOpenings?: readonly CeilingOpening[]
  readonly builtItems?: readonly BuiltItem[]
  readonly finishes?: readonly Finish[]
  readonly unitSystem?: Job['header']['unitSystem']
  readonly houseRules?: Partial<Job['houseRules']>
}

export function sketch(parts: Sketch): Job {
  return {
    ...plain,
    header: { ...plain.header, unitSystem: parts.unitSystem ?? 'imperial' },
    houseRules: { ...plain.houseRules, ...parts.houseRules },
    rooms: byId(parts.rooms),
    openings: byId(parts.openings ?? []),
    trimRuns: byId(parts.trimRuns ?? []),
    ceilingOpenings: byId(parts.ceilingOpenings ?? []),
    builtItems: byId(parts.builtItems ?? []),
    finishes: byId(parts.finishes ?? []),
    colours,
  }
}

export function byId<Item extends { readonly id: string }>(items: readonly Item[]): Record<string, Item> {
  return Object.fromEntries(items.map((item) => [item.id, item]))
}

export function colour(id: string): Colour {
  return { ...linen, id: id as Colour['id'], name: id }
}

/** A finish of the whole house for a class of surface. */
export function houseFinish(surfaceClass: SurfaceClass, colourId: string | null): Finish {
  return finish(`house-${surfaceClass}`, { level: 'house', surfaceClass }, colourId)
}

/** A null colour leaves the surface as it is. */
export function finish(id: string, scope: Finish['scope'], colourId: string | null): Finish {
  return {
    id: id as Finish['id'],
    scope,
    paint: colourId !== null,
    colourId: colourId as Finish['colourId'],
    sheen: 'satin',
    productClass: 'latexWall',
  }
}

/** The figures of one surface of a sketch. */
export function surfaceOf(job: Job, key: string): SurfaceQuantity {
  const found = takeOff(job).byKey.get(key)
  if (found === undefined) throw new Error(`no surface ${key}`)
  return found
}

export const squareFeetOf = (area: number) => Number(toSquareFeet(area).toFixed(6))
export const squareMetresOf = (area: number) => Number(toSquareMetres(area).toFixed(6))
export const feetOf = (length: number) => Number(toFeet(length).toFixed(6))
export const ft = (value: number) => Math.round(value * unitsPerFoot)
