import { tableOf } from '../../core/project/empty-job.ts'
import type { Job } from '../../core/project/job.ts'
import type { Outcome } from '../../core/project/problem.ts'
import type {
  Corner,
  Opening,
  OpeningId,
  Room,
  RoomId,
  TrimRunId,
  WallId,
} from '../../core/project/sketch-records.ts'
import type { ColourId, ConditionId, FinishId, KeptItemId } from '../../core/project/survey-records.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../core/sketch/commands.ts'
import { firstOpenings } from '../../core/sketch/opening-templates.ts'
import { feet, inches } from '../../core/units/length.ts'
import { plainJob } from '../fixtures/plain-room.ts'

export const study = 'study' as RoomId
export const parlour = 'parlour' as RoomId
export const north = 'north' as WallId
export const east = 'east' as WallId
export const south = 'south' as WallId
export const west = 'west' as WallId
export const door = 'door' as OpeningId
export const window = 'window' as OpeningId

export function corner(wallId: WallId, xFeet: number, yFeet: number, plusInchesX = 0): Corner {
  return { wallId, x: feet(xFeet, plusInchesX), y: feet(yFeet), behind: 'heated' }
}

/**
 * The study, 12 ft x 10 ft, and east of it, behind 5 in of partition, the parlour, 14 ft x 10 ft. A door 2 ft 8 in wide joins them, 3 ft
 * down the study's east wall; a window stands in the parlour's north wall.
 */
export function twoRooms(): Job {
  const base = plainJob()
  const model = base.rooms[study] as Room
  const next: Room = {
    ...model,
    id: parlour,
    name: 'Parlour',
    use: 'living',
    corners: [
      corner(north, 12, 0, 5),
      corner(east, 26, 0, 5),
      corner(south, 26, 10, 5),
      corner(west, 12, 10, 5),
    ],
  }
  const { casingNear } = firstOpenings.door
  const shared: Opening = {
    ...firstOpenings.door,
    id: door,
    name: '',
    roomId: study,
    wallId: east,
    offset: feet(3),
    far: { roomId: parlour, wallId: west },
    casingFar: casingNear && { ...casingNear, width: inches(5) },
  }
  const light: Opening = {
    ...firstOpenings.window,
    id: window,
    name: '',
    roomId: parlour,
    wallId: north,
    offset: feet(4),
    far: null,
    casingFar: null,
  }
  return {
    ...base,
    rooms: tableOf([model, next]),
    openings: tableOf([shared, light]),
    trimRuns: tableOf([
      {
        id: 'study-base' as TrimRunId,
        roomId: study,
        kind: 'baseboard',
        walls: null,
        height: inches(5.5),
        girth: inches(7),
        level: feet(0),
        profiled: true,
      },
      {
        id: 'parlour-rail' as TrimRunId,
        roomId: parlour,
        kind: 'chairRail',
        walls: [north, west],
        height: inches(3),
        girth: inches(4),
        level: inches(32),
        profiled: true,
      },
    ]),
    keptItems: tableOf([
      {
        id: 'lock' as KeptItemId,
        roomId: parlour,
        kind: 'lockset',
        name: '',
        on: { kind: 'opening', openingId: door },
        count: 1,
        handling: 'takeOff',
        wired: false,
        note: '',
      },
    ]),
    conditions: tableOf([
      {
        id: 'crack' as ConditionId,
        on: { level: 'surface', surface: { kind: 'wall', roomId: parlour, wallId: west, zone: 'upper' } },
        kind: 'stressCrack',
        severity: 'slight',
        length: feet(4),
        areaMm2: null,
        count: null,
        suspectedCause: '',
        causeCured: false,
        note: '',
        photo: null,
        foundOn: null,
      },
    ]),
    finishes: tableOf([
      {
        id: 'far-casing' as FinishId,
        scope: {
          level: 'surface',
          surface: { kind: 'opening', openingId: door, side: 'far', part: 'casing' },
        },
        paint: true,
        colourId: 'linen' as ColourId,
        sheen: 'satin',
        productClass: 'waterborneEnamel',
      },
    ]),
  }
}

export function applied(job: Job, command: SketchCommand): Job {
  const outcome = applyCommand(job, command)
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  return outcome.value
}

export function refusal(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error('this should have been refused')
  return outcome.problem.kind
}

/** Corners of a room in feet, for reading. */
export function cornersInFeet(job: Job, roomId: RoomId): readonly (readonly [number, number])[] {
  return (job.rooms[roomId]?.corners ?? []).map(({ x, y }) => [x / feet(1), y / feet(1)] as const)
}
