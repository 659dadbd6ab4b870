import type { JobHeader } from '../../core/project/job.ts'
import type { Opening, TrimRun } from '../../core/project/sketch-records.ts'
import type { Notice, Specification } from '../../core/specification/types.ts'
import { feet, inches, zeroLength } from '../../core/units/length.ts'
import { existingOn, finishFor, type JobParts, rectangularRoom } from '../fixtures/job-builder.ts'

export const squareFootMm2 = 92_903.04
export const start = ['room/protectRoom/1', 'room/dustDown/1']
/** Around the work that disturbs old paint over the published area. */
export const leadStart = ['room/postSigns/1', 'room/sheetFloor/1', 'room/sealOpenings/1']
export const leadEnd = ['room/bagSheeting/1', 'room/cleanFinal/1', 'room/wipeCheck/1']
export const end = ['room/cleanUp/1', 'room/inspect/1']

export function baseboard(roomId: string, profiled: boolean): TrimRun {
  return {
    id: `${roomId}-base` as TrimRun['id'],
    roomId: roomId as TrimRun['roomId'],
    kind: 'baseboard',
    walls: null,
    height: inches(6),
    girth: inches(6),
    level: zeroLength,
    profiled,
  }
}

export function crown(roomId: string): TrimRun {
  return { ...baseboard(roomId, true), id: `${roomId}-crown` as TrimRun['id'], kind: 'crown' }
}

export function windowIn(id: string, roomId: string, operation: 'fixed' | 'doubleHung'): Opening {
  return {
    id: id as Opening['id'],
    kind: 'window',
    name: '',
    roomId: roomId as Opening['roomId'],
    wallId: 'north' as Opening['wallId'],
    offset: feet(3),
    width: inches(32),
    height: inches(54),
    sill: feet(2),
    head: { kind: 'square' },
    far: null,
    jambDepth: zeroLength,
    jambOf: 'wood',
    casingNear: null,
    casingFar: null,
    slab: null,
    sash: {
      operation,
      units: 1,
      lightsAcross: 3,
      lightsDown: 2,
      stile: inches(2),
      topRail: inches(2),
      meetingRail: inches(1),
      bottomRail: inches(3),
      muntin: inches(0.875),
      thickness: inches(1.375),
    },
    stool: null,
    transom: null,
    sidelights: null,
  }
}

export function noticesOf(specification: Specification, kind: Notice['kind']): readonly Notice[] {
  return specification.notices.filter((notice) => notice.kind === kind)
}

export const flatCeiling = finishFor('ceiling', 'latexCeiling', 'white', 'flat')
export const sageWalls = finishFor('walls', 'latexWall', 'sage', 'matte')
export const whiteTrim = finishFor('trim', 'waterborneEnamel', 'white', 'semiGloss')
export const soundLatex = [
  existingOn('ceiling', 'gypsumBoard', 'latexFlat'),
  existingOn('walls', 'gypsumBoard', 'latexFlat'),
  existingOn('trim', 'wood', 'latexFlat', { sheen: 'eggshell' }),
]
export function plainRoom(id: string, parts: JobParts = {}): JobParts {
  return {
    rooms: [rectangularRoom(id, 12, 10)],
    trimRuns: [baseboard(id, false)],
    existing: soundLatex,
    finishes: [flatCeiling, sageWalls, whiteTrim],
    ...parts,
  }
}
export const old: Partial<JobHeader> = { yearBuilt: 1928 }
