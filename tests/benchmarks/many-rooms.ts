import type { Job } from '../../core/project/job.ts'
import type { CeilingShape, Opening, Room, TrimRun } from '../../core/project/sketch-records.ts'
import type { Finish } from '../../core/project/survey-records.ts'
import { surfaceClasses } from '../../core/project/vocabulary.ts'
import { feet, inches, type Length, zeroLength } from '../../core/units/length.ts'
import { linen, plainJob } from '../fixtures/plain-room.ts'

/**
 * A house that never ends: rooms of 12 x 14 ft in a square grid, walls 6 in thick between them, ten openings each (doors shared with
 * the rooms to the east and south, the rest windows), trim on all walls, ceilings of several shapes.
 */
export function manyRooms(count: number): Job {
  const across = Math.ceil(Math.sqrt(count))
  const places = Array.from({ length: count }, (_, index) => ({
    index,
    column: index % across,
    row: Math.floor(index / across),
  }))
  const isRoom = (column: number, row: number) => column < across && row * across + column < count
  return plainJob({
    rooms: table(places.map(roomAt)),
    openings: table(
      places.flatMap(({ index, column, row }) => [
        door(index, 'south', 1, isRoom(column, row + 1) ? index + across : null),
        door(index, 'east', 1, isRoom(column + 1, row) ? index + 1 : null),
        ...windows(index),
      ]),
    ),
    trimRuns: table(places.flatMap(({ index }) => runs(index))),
    finishes: table(finishes()),
  })
}

function table<Item extends { readonly id: string }>(items: readonly Item[]): Record<string, Item> {
  return Object.fromEntries(items.map((item) => [item.id, item]))
}

function roomAt({ index, column, row }: { index: number; column: number; row: number }): Room {
  const [x, y] = [column * 12.5, row * 14.5]
  const corner = (side: string, atX: number, atY: number) => ({
    wallId: `${side}-${index}` as Room['corners'][number]['wallId'],
    x: feet(atX),
    y: feet(atY),
    behind: 'heated' as const,
  })
  const [plain] = Object.values(plainJob().rooms) as [Room]
  return {
    ...plain,
    id: `room-${index}` as Room['id'],
    name: `Room ${index}`,
    corners: [
      corner('north', x, y),
      corner('east', x + 12, y),
      corner('south', x + 12, y + 14),
      corner('west', x, y + 14),
    ],
    ceiling: ceilings[index % ceilings.length] as CeilingShape,
  }
}

const ceilings: readonly CeilingShape[] = [
  { kind: 'flat', height: feet(9) },
  { kind: 'flat', height: feet(8, 6) },
  { kind: 'shed', along: 'y', startHeight: feet(9), endHeight: feet(11) },
  {
    kind: 'gable',
    along: 'x',
    startHeight: feet(8, 6),
    endHeight: feet(8, 6),
    ridgeAt: feet(6),
    ridgeHeight: feet(12),
  },
]

const casing = { width: inches(4.5), girth: inches(6), style: 'mitred', profiled: true } as const

function opening(index: number, wall: string, name: string, changes: Partial<Opening>): Opening {
  return {
    id: `${wall}-${name}-${index}` as Opening['id'],
    kind: 'window',
    name: '',
    roomId: `room-${index}` as Opening['roomId'],
    wallId: `${wall}-${index}` as Opening['wallId'],
    offset: zeroLength,
    width: inches(28),
    height: feet(4, 6),
    sill: inches(27),
    head: { kind: 'square' },
    far: null,
    jambDepth: inches(4.5),
    jambOf: 'wood',
    casingNear: casing,
    casingFar: null,
    slab: null,
    sash: null,
    stool: null,
    transom: null,
    sidelights: null,
    ...changes,
  }
}

function windows(index: number): readonly Opening[] {
  const at = (wall: string, offsets: readonly number[]) =>
    offsets.map((offset, number) =>
      opening(index, wall, `window-${number}`, {
        offset: feet(offset),
        sash: {
          operation: 'doubleHung',
          units: 1,
          lightsAcross: 3,
          lightsDown: 2,
          stile: inches(2.25),
          topRail: inches(2.25),
          meetingRail: inches(1.25),
          bottomRail: inches(3.25),
          muntin: inches(0.875),
          thickness: inches(1.375),
        },
        stool: { depth: inches(4), thickness: inches(1), apron: inches(3.5) },
      }),
    )
  return [...at('north', [0.5, 3.6]), ...at('east', [5, 8, 11]), ...at('west', [1, 4, 7])]
}

/** Two more doors' worth of wall is kept free on the north and west walls for the neighbours' far sides. */
function door(index: number, wall: 'south' | 'east', offset: number, far: number | null): Opening {
  const farWall = wall === 'south' ? 'north' : 'west'
  return opening(index, wall, 'door', {
    kind: 'door',
    offset: feet(offset),
    width: inches(32),
    height: inches(80),
    sill: zeroLength,
    casingFar: casing,
    far:
      far === null
        ? null
        : {
            roomId: `room-${far}` as Opening['roomId'],
            wallId: `${farWall}-${far}` as Opening['wallId'],
          },
    slab: {
      kind: 'panelled',
      thickness: inches(1.375),
      leaves: 1,
      paintNear: true,
      paintFar: true,
      edgesShow: 'near',
    },
  })
}

function runs(index: number): readonly TrimRun[] {
  const run = (kind: TrimRun['kind'], height: number, girth: number, level: Length): TrimRun => ({
    id: `${kind}-${index}` as TrimRun['id'],
    roomId: `room-${index}` as TrimRun['roomId'],
    kind,
    walls: null,
    height: inches(height),
    girth: inches(girth),
    level,
    profiled: true,
  })
  return [
    run('baseboard', 7, 8, zeroLength),
    run('crown', 4, 6, zeroLength),
    ...(index % 3 === 0 ? [run('chairRail', 3, 4, feet(2, 9))] : []),
  ]
}

function finishes(): readonly Finish[] {
  return surfaceClasses.map((surfaceClass) => ({
    id: `finish-${surfaceClass}` as Finish['id'],
    scope: { level: 'house', surfaceClass },
    paint: true,
    colourId: linen.id,
    sheen: surfaceClass === 'ceiling' ? 'flat' : surfaceClass === 'walls' ? 'eggshell' : 'semiGloss',
    productClass: surfaceClass === 'trim' ? 'waterborneEnamel' : 'latexWall',
  }))
}
